#include "sim/cli/plan_air.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/turbulence_intensity.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright::cli {
namespace {

constexpr double kLightWind20_kt = 15.0;  ///< mean wind at 20 ft of light turbulence [MIL-F-8785C 3.7]
constexpr double kSpread = 3.0;           ///< lull to gust in standard deviations (from memory: 3 to 4)
constexpr double kCloudClearance_ft = 1000.0;
constexpr double kVisibility_km = 10.0;
constexpr double kDryLapse_Cp1000ft = 2.98;       ///< dry adiabatic: g/c_p = 9.76 K/km
constexpr double kStandardLapse_Cp1000ft = 1.98;  ///< 6.5 K/km [USSA-1976]

/// The narrowest half band of speed on the card, kt.
double tightest_band_kt(const TestCard& card) {
  double tightest = 10.0;
  for (const TestPoint& point : card.points)
    if (point.is_steady())
      tightest = std::min({tightest, point.bands.speed_low_kt, point.bands.speed_high_kt});
  return tightest;
}

AirItem wind_item(const TestCard& card) {
  const double light_kt = severity_sigma_kt(Severity::kLight, card.working_height_ft * kFoot);
  return {"surface wind", fixed(2.0 / 3.0 * kLightWind20_kt, 0) + " kt or less",
          fixed(kLightWind20_kt, 0) + " kt makes light turbulence: gusts of \u03c3 " + fixed(light_kt, 1) +
              " kt at the working height, against the card's tightest band of \u00b1" +
              fixed(tightest_band_kt(card), 1) + " kt",
          "MIL-F-8785C; two thirds of it ours"};
}

AirItem gust_item(const TestCard& card) {
  const double band_kt = tightest_band_kt(card);
  return {"gust spread", fixed(kSpread * band_kt, 1) + " kt or less",
          "gust less mean wind, about " + fixed(kSpread, 0) +
              " \u03c3: more, and \u03c3 is wider than \u00b1" + fixed(band_kt, 1) + " kt",
          "ours; the " + fixed(kSpread, 0) + " from memory"};
}

AirItem sun_item(const AirNeeds& needs) {
  const double floor_h = stirred_after_sunrise_h(needs.fair_day, needs.card.floor_ft);
  const double work_h = stirred_after_sunrise_h(needs.fair_day, needs.card.working_height_ft);
  return {"hours after sunrise", "done by " + fixed(floor_h, 1) + " h",
          "on the library's fair-weather day stirred air reaches the floor after " + fixed(floor_h, 1) +
              " h, the working height after " + fixed(work_h, 1) + " h",
          "this project's model"};
}

AirItem lapse_item(const TestCard& card) {
  const double span = card.working_height_ft / 1000.0;
  return {"colder at working height by", fixed(kStandardLapse_Cp1000ft * span, 0) + " \u00b0C at most",
          fixed(kDryLapse_Cp1000ft * span, 0) +
              " \u00b0C is convection; no cumulus, no dust devils, no circling birds; an inversion is best",
          "standard against dry adiabatic lapse"};
}

AirItem cloud_item(const TestCard& card) {
  return {"cloud base", fixed(card.working_height_ft + kCloudClearance_ft, 0) + " ft above ground",
          "working height and " + fixed(kCloudClearance_ft, 0) +
              " ft; the legal distance, 500 to 1,000 ft, differs by country: local rules govern",
          "visual minima, from memory"};
}

}  // namespace

double stirred_after_sunrise_h(const ConvectiveDay& day, double height_ft) {
  constexpr double kOvershoot = 1.2, kStep_h = 0.05;
  const Daylight light = daylight_hours(day);
  for (double h = 0.0; light.rise_h + h < light.set_h; h += kStep_h) {
    ConvectiveDay then = day;
    then.hour = light.rise_h + h;
    const MixedLayer layer = mixed_layer(then);
    if (layer.scale_mps > 0.0 && kOvershoot * layer.depth_m >= height_ft * kFoot) return h;
  }
  return kUnset;
}

std::vector<AirItem> air_to_wait_for(const AirNeeds& needs) {
  const TestCard& card = needs.card;
  return {wind_item(card),
          gust_item(card),
          {"visibility", fixed(kVisibility_km, 0) + " km or more",
           "the horizon is the pitch reference; legal minima are lower and differ by country and airspace: "
           "local rules govern",
           "common practice"},
          cloud_item(card),
          sun_item(needs),
          lapse_item(card),
          {"moisture", "dry, no icing", "water or ice in a port reads as another angle and another speed",
           "common practice"},
          {"highest ground", fixed(card.terrain_ft, 0) + " ft or lower",
           "within 5 NM; the floor counts from there: where it is higher, change terrain_ft and plan again",
           "common practice"}};
}

}  // namespace stallwright::cli
