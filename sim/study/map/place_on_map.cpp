#include "sim/study/map/place_on_map.hpp"

#include <algorithm>
#include <numeric>

#include "sim/study/map/rules.hpp"

namespace stallwright {
namespace {

/// Place of a value among things that each have one; `order` by rising value, at least one.
Between between(const std::vector<std::size_t>& order, const std::vector<double>& values, double value) {
  if (value < values[order.front()]) return {order.front(), order.front(), 0.0, true};
  if (value > values[order.back()]) return {order.back(), order.back(), 0.0, true};
  for (std::size_t i = 1; i < order.size(); ++i) {
    const double low = values[order[i - 1]], high = values[order[i]];
    if (value > high) continue;
    return {order[i - 1], order[i], high > low ? (value - low) / (high - low) : 0.0, false};
  }
  return {order.front(), order.front(), 0.0, false};
}

double blend(const Between& place, double from, double to) {
  return place.share > 0.0 ? from + place.share * (to - from) : from;
}

PlaceOnMap placed(const StudyMap& map, const Between& air, double hold_kt) {
  PlaceOnMap place;
  place.air = air;
  std::vector<std::size_t> hands;
  for (std::size_t hand = 0; hand < map.hands.size(); ++hand) {
    place.hold_rms_kt.push_back(
        blend(air, map.cell(air.from, hand).hold_rms_kt, map.cell(air.to, hand).hold_rms_kt));
    if (place.hold_rms_kt.back() == place.hold_rms_kt.back()) hands.push_back(hand);
  }
  if (hands.empty()) hands.push_back(0);
  std::stable_sort(hands.begin(), hands.end(),
                   [&](std::size_t a, std::size_t b) { return place.hold_rms_kt[a] < place.hold_rms_kt[b]; });
  place.hand = between(hands, place.hold_rms_kt, hold_kt);
  for (std::size_t line = 0; line < map.lines.size(); ++line) {
    const auto in_air = [&](std::size_t hand) {
      const auto rms = [&](std::size_t a) { return map.cell(a, hand).lines.at(line).rms_error_kt.value; };
      return blend(air, rms(air.from), rms(air.to));
    };
    place.rms_error_kt.push_back(blend(place.hand, in_air(place.hand.from), in_air(place.hand.to)));
  }
  return place;
}

}  // namespace

PlaceOnMap place_on_map(const StudyMap& map, const RecordRms& own) {
  std::vector<double> gusts;
  for (std::size_t air = 0; air < map.airs.size(); ++air) gusts.push_back(air_gust_mps(map, air));
  std::vector<std::size_t> order = airs_by_roughness(map);
  std::erase_if(order, [&](std::size_t air) { return gusts[air] != gusts[air]; });
  if (order.empty()) order.push_back(0);
  return placed(map, between(order, gusts, own.gust_mps), own.hold_kt);
}

PlaceOnMap place_in_air(const StudyMap& map, std::size_t air, double hold_kt) {
  return placed(map, {air, air, 0.0, false}, hold_kt);
}

}  // namespace stallwright
