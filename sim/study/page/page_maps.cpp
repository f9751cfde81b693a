// The maps of the study page: errors and chances by hands and air.
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/map/rules.hpp"
#include "sim/study/page/page_parts.hpp"
#include "sim/study/page/shaded_grid.hpp"

namespace stallwright::study_parts {
namespace {

constexpr std::array<double, 3> kKnots{1.0, 2.0, 3.0}, kShares{0.01, 0.05, 0.20};

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

ShadedGrid::Place error_place(const LineResult& line) {
  ShadedGrid::Place place;
  place.value = as_shown(line.rms_error_kt.value, 0.1);
  place.text = page_fixed(line.rms_error_kt.value, 1);
  if (line.found == 0) {
    place.below = "not found";
    return place;
  }
  place.below = std::isfinite(line.p95_error_kt.value)
                    ? "95 % within " + page_fixed(line.p95_error_kt.value, 1)
                    : "no percentile";
  place.further = std::to_string(line.found) + " sorties";
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
  for (const std::size_t line : whole_lines(map))
    pictures += picture(grid_of(map, line_name(map, line) + ": RMS error, kt", kKnots,
                                [&](const MapCell& cell) { return error_place(cell.lines.at(line)); }));
  if (pictures.empty()) return "";
  return html::text_element(
             "p",
             "The large figure is the RMS error in knots, measured less true. Below it what 95 % of sorties "
             "stay within; under " +
                 std::to_string(kLeastForPercentile) +
                 " sorties no percentile is given. Under each air its gusts: rms of the vertical ones.") +
         html::element("figure", shade_legend({"under 1 kt", "1 to 2 kt", "2 to 3 kt", "3 kt and more"},
                                              {"1 kt line", "2 kt line", "3 kt line"})
                                     .str()) +
         placed(map, pictures) + html::text_element("p", made_by(map), "class=\"note\"");
}

std::string chance_maps(const StudyMap& map) {
  const auto chance_map = [&](const std::string& title, Chance MapCell::*chance) {
    return picture(
        grid_of(map, title, kShares, [&](const MapCell& cell) { return chance_place(cell.*chance); }));
  };
  return html::text_element(
             "p",
             "Share of sorties, with the 95 % interval of Clopper and Pearson below. Late: the "
             "warning as recorded comes less than " +
                 page_fixed(map.wanted_margin_kt, 1) +
                 " kt above the true stall. Out of order: the set points of a set do not rise "
                 "as speed falls.") +
         html::element("figure", shade_legend({"under 1 %", "1 to 5 %", "5 to 20 %", "20 % and more"},
                                              {"1 % line", "5 % line", "20 % line"})
                                     .str()) +
         placed(map, chance_map("Late warning", &MapCell::late_warning) +
                         chance_map("A set out of order", &MapCell::out_of_order));
}

}  // namespace stallwright::study_parts
