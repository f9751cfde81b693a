// Roll due to sideslip that a body gives to a wing above or below its middle, against the handbook rule [DATCOM].
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/published/bare_wing.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using namespace stallwright::testing;
using namespace stallwright::published;

namespace {

constexpr double kSpeed = 35.0, kSpan = 10.0, kSideslip = 0.02;

/// Roll due to sideslip of a flat wing without lift at a height over the body's middle, per rad.
double roll_by_sideslip(double aspect_ratio, double diameter_m, double wing_over_body_m) {
  AircraftType type =
      bare_wing_type(kSpan, kSpan / aspect_ratio, kSpan / aspect_ratio, symmetrical_section(6.0, 0.3, 0.02));
  type.body.radius_at_wing_m = 0.5 * diameter_m;
  type.body.centre.z_up_m = type.wing.stations[0].rise_m - wing_over_body_m;
  const Aircraft a = wing_alone(type);
  const auto roll = [&](double beta) {
    return measured(a, attached(), flow_at(kSpeed, 0.0, beta)).moment_B.x;
  };
  const double q = 0.5 * 1.225 * kSpeed * kSpeed;
  return (roll(kSideslip) - roll(-kSideslip)) / (2.0 * kSideslip * q * a.wing_area_m2 * kSpan);
}

}  // namespace

TEST_CASE("a body rolls a high wing out of a sideslip and a low wing into it, by about the handbook's rule",
          "[aircraft][published]") {
  const evidence::Published rule{"DATCOM", "roll due to sideslip by wing height", "from memory"};
  for (const double aspect_ratio : {6.0, 8.0})
    for (const double height : {0.6, -0.6}) {
      const double diameter = 1.2;
      const double published = -2.4 * std::sqrt(aspect_ratio) * (height / kSpan) * (diameter / kSpan);
      const std::string name = "aspect ratio " + std::to_string(static_cast<int>(aspect_ratio)) +
                               (height > 0.0 ? ", high" : ", low") +
                               " wing on a body an eighth of the span: roll due to sideslip";
      evidence::hold(rule, name, roll_by_sideslip(aspect_ratio, diameter, height), published,
                     0.3 * std::abs(published), "1/rad",
                     "30 %: the rule is a fit to tunnel tests, ours the flow round a circle");
    }
  CHECK(std::abs(roll_by_sideslip(6.0, 1.2, 0.0)) < 1e-6);
  CHECK(roll_by_sideslip(6.0, 0.0, 0.6) == Approx(0.0).margin(1e-9));
}
