// RMS errors with their intervals by air, one panel for each pilot.
#include <algorithm>
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/page/page_parts.hpp"

namespace stallwright::study_parts {
namespace {

constexpr double kWidth = 420, kLeft = 96, kRight = 404, kTop = 40, kStep = 15, kGap = 12;

struct Look {
  Mark mark;
  std::string_view fill;
};
constexpr std::array<Look, 6> kLooks{Look{Mark::circle, theme::kPaper},
                                     Look{Mark::square, theme::kMeasured},
                                     Look{Mark::triangle, theme::kInk},
                                     Look{Mark::diamond, theme::kPaper},
                                     Look{Mark::inverted_triangle, theme::kMeasured},
                                     Look{Mark::cross, theme::kInk}};

const Look& look_of(std::size_t i) { return kLooks[i % kLooks.size()]; }

double largest_kt(const StudyMap& map) {
  Extent extent;
  extent.add(1.0);
  for (const MapCell& cell : map.cells)
    for (const std::size_t line : whole_lines(map)) {
      extent.add(cell.lines.at(line).rms_error_kt.value);
      extent.add(cell.lines.at(line).rms_error_kt.interval.upper);
    }
  return 1.05 * extent.high();
}

void draw_axis(Svg& svg, const Scale& x, double bottom) {
  const Ticks ticks = nice_ticks(x.low, x.high, 7);
  for (const double kt : ticks.values) {
    svg.line({x(kt), kTop}, {x(kt), bottom}, {theme::kGrid, 1.0});
    svg.text({x(kt), bottom + 18}, page_fixed(kt, ticks.decimals), {14, Anchor::middle});
  }
  svg.text({0.5 * (kLeft + kRight), bottom + 36}, "RMS error, kt",
           {14, Anchor::middle, false, false, theme::kSoftInk});
  svg.line({x(0.0), kTop}, {x(0.0), bottom}, {theme::kInk, 1.2});
}

Svg panel(const StudyMap& map, std::size_t hand, const std::vector<std::size_t>& lines, const Scale& x) {
  const double row = kStep * static_cast<double>(lines.size()) + kGap;
  const double bottom = kTop + row * static_cast<double>(map.airs.size());
  Svg svg(kWidth, bottom + 44, "RMS errors of a " + map.hands[hand] + " pilot by air");
  svg.text({kLeft, 22}, map.hands[hand], {17, Anchor::start, true});
  draw_axis(svg, x, bottom);
  for (std::size_t air = 0; air < map.airs.size(); ++air) {
    const double top = kTop + row * static_cast<double>(air);
    svg.text({kLeft - 10, top + 0.5 * row + 4}, map.airs[air].name, {14, Anchor::end});
    if (air > 0) svg.line({kLeft - 60, top}, {kRight, top}, {theme::kGrid, 1.0});
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const Estimate& rms = map.cell(air, hand).lines.at(lines[i]).rms_error_kt;
      const double y = top + 0.5 * kGap + kStep * (static_cast<double>(i) + 0.5);
      svg.whisker(x(rms.interval.lower), x(rms.interval.upper), y, 3.5, {theme::kInk, 1.2});
      svg.mark(look_of(i).mark, {x(rms.value), y}, 5.0, look_of(i).fill);
    }
  }
  return svg;
}

Svg legend(const StudyMap& map, const std::vector<std::size_t>& lines) {
  Svg svg(1280, 30, "Marks of the set points");
  double x = 10;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string name = line_name(map, lines[i]);
    svg.mark(look_of(i).mark, {x, 14}, 6.0, look_of(i).fill);
    svg.text({x + 13, 19}, name, {14});
    x += 44 + text_width(name, 14);
  }
  return svg;
}

}  // namespace

std::string error_panels(const StudyMap& map) {
  const Scale x{0.0, largest_kt(map), kLeft, kRight};
  std::string out;
  std::size_t sets = 0;
  for (const MapLine& line : map.lines) sets = std::max(sets, line.set + 1);
  for (std::size_t set = 0; set < sets; ++set) {
    std::vector<std::size_t> lines;
    for (const std::size_t line : whole_lines(map))
      if (map.lines[line].set == set) lines.push_back(line);
    std::string pictures;
    for (std::size_t hand = 0; hand < map.hands.size(); ++hand)
      pictures += html::element("figure", panel(map, hand, lines, x).str());
    out +=
        html::element("figure", legend(map, lines).str()) + html::element("div", pictures, "class=\"three\"");
  }
  return out +
         html::text_element("p",
                            "Whiskers: 95 % interval by bootstrap. Two that do not overlap differ beyond "
                            "chance; two that do may differ too. " +
                                made_by(map),
                            "class=\"note\"");
}

}  // namespace stallwright::study_parts
