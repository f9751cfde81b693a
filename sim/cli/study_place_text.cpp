#include "sim/cli/study_place_text.hpp"

#include <cmath>
#include <nlohmann/json.hpp>

#include "sim/cli/cli_common.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/map/rules.hpp"

namespace stallwright::cli {
namespace {

using Json = nlohmann::ordered_json;

template <class Name>
std::string between_words(const Between& place, const std::string& beyond, const Name& name) {
  if (place.beyond) return beyond + " " + name(place.from);
  if (place.share <= 0.0) return "at " + name(place.from);
  if (place.share >= 1.0) return "at " + name(place.to);
  return "between " + name(place.from) + " and " + name(place.to);
}

/// "light 1.05 and moderate 2.90"
template <class Name, class Value>
std::string both_words(const Between& place, const Name& name, const Value& value) {
  const auto one = [&](std::size_t i) { return name(i) + " " + fixed(value(i), 2); };
  return one(place.from) + (place.to != place.from ? " and " + one(place.to) : "");
}

/// "expect ±0.5 kt at the approach, ±0.9 kt at the stall (RMS)"
///   worse  than all that the map has, in air or hands
std::string expected_words(const StudyMap& map, const PlaceOnMap& place, bool worse) {
  std::string points;
  for (const std::size_t line : whole_lines(map))
    if (std::isfinite(place.rms_error_kt[line]))
      points += (points.empty() ? "" : ", ") + std::string("\u00b1") + fixed(place.rms_error_kt[line], 1) +
                " kt at the " + line_name(map, line);
  return points.empty() ? "the map has no set point there"
                        : (worse ? "expect at least " : "expect ") + points + " (RMS)";
}

/// One line for each thing that differs.
std::string unlike_text(const std::vector<Unlike>& unlike) {
  std::string text;
  for (const Unlike& one : unlike)
    text += filled("Not as on the map: ",
                   one.what + " " + one.sortie + " in this sortie, " + one.study + " in the study.");
  return text;
}

Json between_json(const Between& place, const std::string& from, const std::string& to) {
  return {{"from", from}, {"to", to}, {"share", place.share}, {"beyond", place.beyond}};
}

}  // namespace

std::string place_text(const StudyMap& map, const PlacedSortie& sortie) {
  const PlaceOnMap& place = sortie.place;
  const auto air = [&](std::size_t i) { return map.airs[i].name; };
  const auto hand = [&](std::size_t i) { return map.hands[i]; };
  const bool smoother = sortie.own.gust_mps < air_gust_mps(map, place.air.from);
  const bool steadier = sortie.own.hold_kt < place.hold_rms_kt[place.hand.from];
  const bool worse = (place.air.beyond && !smoother) || (place.hand.beyond && !steadier);
  const std::string past_air = smoother ? "smoother than" : "rougher than";
  const std::string past_hand = steadier ? "steadier than" : "less steady than";
  std::string text = filled("You are here: ", between_words(place.air, past_air, air) + ", " +
                                                  between_words(place.hand, past_hand, hand) + ": " +
                                                  expected_words(map, place, worse) + ".") +
                     unlike_text(sortie.unlike);
  const std::string by_gusts =
      "gusts of " + fixed(sortie.own.gust_mps, 2) + " m/s rms in the steady records; the map has " +
      both_words(place.air, air, [&](std::size_t i) { return air_gust_mps(map, i); });
  const std::string by_name =
      "truth.csv is missing, so its gusts are not known: taken by name, " + sortie.by_name;
  const std::string by_hold =
      fixed(sortie.own.hold_kt, 2) + " kt rms of airspeed less target; in this air the map has " +
      both_words(place.hand, hand, [&](std::size_t i) { return place.hold_rms_kt[i]; });
  text += filled("Air:  ", sortie.by_name.empty() ? by_gusts : by_name);
  text += filled("Hold: ", by_hold);
  return text +
         filled("",
                "Straight lines between the cells; one sortie's few records scatter, so take the place "
                "for a guess.");
}

std::string place_json(const StudyMap& map, const PlacedSortie& sortie) {
  const auto number = [](double v) { return std::isfinite(v) ? Json(v) : Json(nullptr); };
  const PlaceOnMap& place = sortie.place;
  Json lines = Json::array(), unlike = Json::array();
  for (const Unlike& one : sortie.unlike)
    unlike.push_back({{"what", one.what}, {"sortie", one.sortie}, {"study", one.study}});
  for (std::size_t i = 0; i < map.lines.size(); ++i)
    lines.push_back({{"name", map.lines[i].name},
                     {"flap_deg", map.lines[i].flap_deg},
                     {"window_s", number(map.lines[i].window_s)},
                     {"rms_error_kt", number(place.rms_error_kt[i])}});
  const Json json{
      {"format", "stallwright-place-1"},
      {"identity", map.identity},
      {"hold_rms_kt", number(sortie.own.hold_kt)},
      {"gust_rms_mps", number(sortie.own.gust_mps)},
      {"air", between_json(place.air, map.airs[place.air.from].name, map.airs[place.air.to].name)},
      {"pilot", between_json(place.hand, map.hands[place.hand.from], map.hands[place.hand.to])},
      {"lines", lines},
      {"unlike", unlike}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace stallwright::cli
