// Which input matters most: Sobol' indices of each set point.
#include <algorithm>
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/page/page_parts.hpp"

namespace stallwright::study_parts {
namespace {

constexpr double kWidth = 630, kLeft = 128, kRight = 400, kNumbers = 412, kTop = 62, kRow = 40;
constexpr double kLow = -0.3, kHigh = 1.3;

void draw_axis(Svg& svg, const Scale& x, double bottom) {
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    svg.line({x(share), kTop}, {x(share), bottom}, {share == 0.0 ? theme::kInk : theme::kGrid, 1.2});
    svg.text({x(share), bottom + 18}, shortest(share), {14, Anchor::middle});
  }
  svg.mark(Mark::circle, {kLeft + 4, 42}, 5.5, theme::kPaper);
  svg.text({kLeft + 16, 47}, "alone (first order)", {14});
  svg.mark(Mark::diamond, {kLeft + 158, 42}, 5.5, theme::kInk);
  svg.text({kLeft + 170, 47}, "with others (total)", {14});
}

/// One index: mark and whisker, cut off at the ends of the axis; an arrow where the mark lies beyond. The numbers stand beside it.
void draw_share(Svg& svg, const Scale& x, const Estimate& share, double y, Mark mark, std::string_view fill) {
  if (!std::isfinite(share.value)) return;
  const Stroke stroke{theme::kInk, 1.3};
  const auto inside = [](double value) { return std::clamp(value, kLow, kHigh); };
  svg.line({x(inside(share.interval.lower)), y}, {x(inside(share.interval.upper)), y}, stroke);
  for (const double end : {share.interval.lower, share.interval.upper})
    if (x.holds(end)) svg.line({x(end), y - 3.5}, {x(end), y + 3.5}, stroke);
  if (x.holds(share.value))
    svg.mark(mark, {x(share.value), y}, 5.0, fill);
  else
    svg.text({x(inside(share.value)), y + 5}, share.value < kLow ? "\u2190" : "\u2192",
             {15, Anchor::middle, true, true});
  svg.text({kNumbers, y + 4.5}, estimate_words(share, 2), {14});
}

Svg chart(const StudyMap& map, std::size_t line) {
  const Sensitivity& about = map.sensitivity;
  const Scale x{kLow, kHigh, kLeft, kRight};
  const double bottom = kTop + kRow * static_cast<double>(about.inputs.size());
  Svg svg(kWidth, bottom + 26, "Sobol' indices of the " + line_name(map, line));
  svg.text({0, 18}, line_name(map, line), {18, Anchor::start, true});
  svg.text({kNumbers, 18}, "share (95 % interval)", {14, Anchor::start, false, false, theme::kSoftInk});
  draw_axis(svg, x, bottom);
  for (std::size_t i = 0; i < about.inputs.size(); ++i) {
    const double y = kTop + kRow * (static_cast<double>(i) + 0.5);
    svg.text({kLeft - 10, y + 5}, about.inputs[i].name, {15, Anchor::end, true});
    const SobolIndex& index = about.indices.at(line).at(i);
    draw_share(svg, x, {index.first, index.first_interval}, y - 8, Mark::circle, theme::kPaper);
    draw_share(svg, x, {index.total, index.total_interval}, y + 9, Mark::diamond, theme::kInk);
    svg.line({0, y + 0.5 * kRow}, {kWidth, y + 0.5 * kRow}, {theme::kGrid, 1.0});
  }
  svg.text({kLeft - 10, bottom + 18}, "share of variance", {14, Anchor::end, false, false, theme::kSoftInk});
  return svg;
}

std::string input_list(const Sensitivity& about) {
  std::string text = "Varied at once: ";
  for (const Sensitivity::Input& input : about.inputs)
    text += (&input == &about.inputs.front() ? "" : "; ") + input.name +
            (input.name == "seed"   ? " (all that chance decides)"
             : input.name == "mass" ? ", one of " + input.from + ", " + input.to
                                    : " from " + input.from + " to " + input.to);
  return text + ".";
}

int least_used(const Sensitivity& about) {
  int least = about.base;
  for (const auto& line : about.indices)
    for (const SobolIndex& index : line) least = std::min(least, index.used);
  return least;
}

}  // namespace

std::string sensitivity(const StudyMap& map) {
  const Sensitivity& about = map.sensitivity;
  if (about.indices.empty()) return "";
  std::string pictures;
  for (const std::size_t line : whole_lines(map)) pictures += html::element("figure", chart(map, line).str());
  return html::text_element("p", input_list(about)) +
         html::text_element(
             "p",
             "Shares of the variance of |error| in knots: of how large an error is. Alone: what "
             "would go if that input were known. With others: what would stay if all the others "
             "were known.") +
         html::element("div", pictures, "class=\"pair\"") +
         html::text_element(
             "p",
             "Sobol' indices: first order by Saltelli and others (Computer Physics Communications 181, 2010, "
             "table 2 b), total by Jansen (1999), from " +
                 std::to_string(about.base) + " base points of a scrambled Sobol' sequence, " +
                 std::to_string(about.cell.sorties) + " sorties; " + std::to_string(about.cell.failed) +
                 " were not finished. " +
                 (least_used(about) == about.base
                      ? std::string("Each index uses all base points")
                      : "Each index uses " + std::to_string(least_used(about)) + " base points or more") +
                 "; intervals by bootstrap over them. From few points an index may come out under 0 or over "
                 "1.",
             "class=\"note\"");
}

}  // namespace stallwright::study_parts
