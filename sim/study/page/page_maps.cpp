// The maps of the study page: errors and chances by hands and air.
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/page/page_parts.hpp"
#include "sim/study/page/shaded_grid.hpp"

namespace stallwright::study_parts {
namespace {

constexpr std::array<double, 3> kShares{0.01, 0.05, 0.20};

/// Steps of an RMS error: the last is where twice of it, about the 95 % interval of an error, is all that the card wants.
std::array<double, 3> error_steps_kt(const StudyMap& map) {
  const double most = 0.5 * map.wanted_uncertainty_kt;
  return {0.25 * most, 0.5 * most, most};
}

/// What the figures in a place say, so that shade and figures never differ.
double as_shown(double value, double step) { return std::round(value / step) * step; }

std::string interval_words(const Interval& interval, double factor) {
  if (!std::isfinite(interval.lower)) return "";
  return page_fixed(factor * interval.lower, 1) + " to " + page_fixed(factor * interval.upper, 1);
}

/// Pilots down, airs across, with places to be filled.
template <class PlaceOf>
ShadedGrid grid_of(const StudyMap& map, const std::string& title, const std::array<double, 3>& bounds,
                   const PlaceOf& place_of) {
  ShadedGrid grid;
  grid.title = title;
  grid.row_title = "pilot's hands";
  grid.column_title = "air";
  grid.rows = map.hands;
  grid.bounds = bounds;
  for (const MapAir& air : map.airs) {
    grid.columns.push_back(air.name);
    grid.column_notes.push_back(std::isfinite(air.sigma_mps) ? page_fixed(air.sigma_mps, 2) + " m/s" : "");
  }
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand)
    for (std::size_t air = 0; air < map.airs.size(); ++air)
      grid.places.push_back(place_of(map.cell(air, hand)));
  return grid;
}

ShadedGrid::Place error_place(const LineResult& line, int sorties) {
  ShadedGrid::Place place;
  place.value = as_shown(line.rms_error_kt.value, 0.01);
  place.text = page_fixed(line.rms_error_kt.value, 2);
  if (line.found == 0) {
    place.below = "not found";
    return place;
  }
  place.below = std::isfinite(line.p95_error_kt.value) ? "95 %: " + page_fixed(line.p95_error_kt.value, 2)
                                                       : "no percentile";
  place.further = line.found == sorties ? "mean " + page_fixed(line.mean_error_kt, 2)
                                        : std::to_string(line.found) + " of " + std::to_string(sorties);
  return place;
}

ShadedGrid::Place chance_place(const Chance& chance) {
  ShadedGrid::Place place;
  place.value = as_shown(chance.share(), 0.001);
  place.text = page_fixed(100.0 * chance.share(), 1) + (chance.of > 0 ? " %" : "");
  place.below = interval_words(chance.interval, 100.0) + (chance.of > 0 ? " %" : "");
  place.further = std::to_string(chance.times) + " of " + std::to_string(chance.of);
  return place;
}

/// Two side by side, one below the other where the airs are many.
std::string placed(const StudyMap& map, const std::string& pictures) {
  return html::element("div", pictures, map.airs.size() > 5 ? "class=\"single\"" : "class=\"pair\"");
}

std::string picture(const ShadedGrid& grid) { return html::element("figure", shaded_grid(grid).str()); }

}  // namespace

std::string heat_maps(const StudyMap& map) {
  std::string pictures;
  const std::array<double, 3> steps = error_steps_kt(map);
  for (const std::size_t line : whole_lines(map))
    pictures +=
        picture(grid_of(map, line_name(map, line) + ": RMS error, kt", steps,
                        [&](const MapCell& cell) { return error_place(cell.lines.at(line), cell.sorties); }));
  if (pictures.empty()) return "";
  const auto kt = [&](std::size_t i) { return shortest(steps[i]); };
  return html::text_element(
             "p",
             "The large figure is the RMS error in knots, measured less true. Below it what 95 % of sorties "
             "stay within (under " +
                 std::to_string(kLeastForPercentile) +
                 " sorties no percentile is given) and the mean error, or how many sorties gave the set "
                 "point "
                 "where some did not. From " +
                 kt(2) + " kt on, twice the RMS is more than the " +
                 page_fixed(map.wanted_uncertainty_kt, 1) +
                 " kt of uncertainty that the card wants. Under each air its gusts: rms of the vertical "
                 "ones.") +
         html::element("figure", shade_legend({"under " + kt(0) + " kt", kt(0) + " to " + kt(1) + " kt",
                                               kt(1) + " to " + kt(2) + " kt", kt(2) + " kt and more"},
                                              {kt(0) + " kt line", kt(1) + " kt line", kt(2) + " kt line"})
                                     .str()) +
         placed(map, pictures) + html::text_element("p", made_by(map), "class=\"note\"");
}

std::string chance_maps(const StudyMap& map) {
  const auto chance_map = [&](const std::string& title, const auto& chance_of) {
    return picture(
        grid_of(map, title, kShares, [&](const MapCell& cell) { return chance_place(chance_of(cell)); }));
  };
  const auto sent_back = [](const MapCell& cell) {
    const Chance& kept = cell.kept;
    return Chance{kept.of - kept.times, kept.of, {1.0 - kept.interval.upper, 1.0 - kept.interval.lower}};
  };
  return html::text_element(
             "p",
             "Share of sorties, with the 95 % interval of Clopper and Pearson below. Sent back: the debrief "
             "says to fly some points again or to wait for better air, because a point is missing, wrong or "
             "less "
             "certain than the card wants, or because the air was rough where it counts. A set that is sent "
             "back may be right all the same. Late: the warning as recorded comes "
             "less than " +
                 page_fixed(map.wanted_margin_kt, 1) +
                 " kt above the true stall at 1 g. Out of order: the set points of a set do not rise "
                 "as speed falls.") +
         html::element("figure", shade_legend({"under 1 %", "1 to 5 %", "5 to 20 %", "20 % and more"},
                                              {"1 % line", "5 % line", "20 % line"})
                                     .str()) +
         placed(map,
                chance_map("Sent back by the debrief", sent_back) +
                    chance_map("Late warning", [](const MapCell& cell) { return cell.late_warning; }) +
                    chance_map("A set out of order", [](const MapCell& cell) { return cell.out_of_order; }));
}

}  // namespace stallwright::study_parts
