// Where a plain wing stalls and how much it carries there, by Prandtl's line with a section that stalls: solved
// again here by Fourier series and Newton's method [LIFTING-LINE] [NACA-TR-572], with a section written out a
// second time, against the model's sixteen strips.
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>

#include "tests/published/bare_wing.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/nonlinear_lifting_line.hpp"
#include "tests/published/section_fit.hpp"
#include "tests/sim/motion/wind_tunnel.hpp"

using namespace stallwright;
using namespace stallwright::testing;
using namespace stallwright::published;
using evidence::Published;

namespace {

constexpr double kDeg = M_PI / 180.0;
constexpr double kSpeed = 35.0;
constexpr double kStep = 0.1 * kDeg;
constexpr Published kLine{"LIFTING-LINE", "nonlinear, 12 terms, solved in the test", "worked by hand"};
constexpr Published kCritical{"NACA-TR-572", "greatest lift of tapered wings", "from memory"};

Aircraft bare_wing(PlanForm plan, const StaticLift& section) {
  const double span = 10.0;
  return published::bare_wing(
      span, span * plan.chord_over_span(0.0), span * plan.chord_over_span(1.0),
      symmetrical_section(section.slope_per_rad, section.stall_rad, section.width_rad));
}

double coefficient(const Aircraft& a, const AirframeState<double>& s, double alpha_rad) {
  const RelativeFlow<double> flow = flow_at(kSpeed, alpha_rad);
  return lift_n(airframe_loads(a, s, flow, Controls<double>{}), alpha_rad) /
         (0.5 * 1.225 * kSpeed * kSpeed * a.wing_area_m2);
}

/// What a wing does as its angle rises slowly from attached flow.
struct WingStall {
  double greatest = 0.0, greatest_at_rad = 0.0;  ///< lift coefficient of the wing, and where
  double first = 0.0, first_station = 0.0;       ///< when the first section reaches its own greatest lift
};

WingStall by_line(PlanForm plan, const StaticLift& section) {
  NonlinearLiftingLine line(plan, section, 12);
  WingStall out;
  const double peak = section.peak_rad();
  for (double alpha = 0.0; alpha < 24.0 * kDeg && line.move_to(alpha); alpha += kStep) {
    if (line.lift() > out.greatest) out.greatest = line.lift(), out.greatest_at_rad = alpha;
    const double station = line.most_loaded();
    if (out.first == 0.0 && line.local_angle(station) > peak)
      out.first = line.lift(), out.first_station = station;
    if (line.lift() < 0.97 * out.greatest) break;
  }
  return out;
}

WingStall by_strips(PlanForm plan, const StaticLift& section) {
  const Aircraft a = bare_wing(plan, section);
  AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, 8.0 * kDeg), 1.0);
  WingStall out;
  const double peak = section.peak_rad();
  // A fifth of a degree a second: the flow's memory of 5 chords trails by 0.03 deg.
  for (double alpha = 8.0 * kDeg; alpha < 24.0 * kDeg; alpha += kStep) {
    s = settled(a, s, flow_at(kSpeed, alpha), 0.5);
    const double lift = coefficient(a, s, alpha);
    if (lift > out.greatest) out.greatest = lift, out.greatest_at_rad = alpha;
    std::size_t most = kWingStrips / 2;
    for (std::size_t k = most; k < kWingStrips; ++k)
      if (s.lagged_alpha_rad[k] > s.lagged_alpha_rad[most]) most = k;
    if (out.first == 0.0 && s.lagged_alpha_rad[most] > peak)
      out.first = lift, out.first_station = 2.0 * a.strips[most].span_position_m / a.span_m;
    if (lift < 0.97 * out.greatest) break;
  }
  return out;
}

std::string named(PlanForm plan, const StaticLift& section) {
  char text[80];
  std::snprintf(text, sizeof text, "aspect ratio %g, taper %g, stall width %g deg: ", plan.aspect_ratio,
                plan.taper, section.width_rad / kDeg);
  return text;
}

}  // namespace

TEST_CASE(
    "greatest lift of a wing, its angle and the place where it stalls first are the nonlinear lifting line's",
    "[aircraft][published]") {
  const auto plan = GENERATE(PlanForm{6.0, 1.0}, PlanForm{8.0, 1.0}, PlanForm{8.0, 0.6}, PlanForm{8.0, 0.4},
                             PlanForm{8.0, 0.25});
  for (const double width : {2.0, 1.0}) {
    const StaticLift section{6.0, 15.0 * kDeg, width * kDeg};
    const WingStall line = by_line(plan, section), strips = by_strips(plan, section);
    const std::string which = named(plan, section);
    evidence::hold(kLine, which + "greatest lift", strips.greatest, line.greatest, 0.02 * line.greatest, "1",
                   "2 %: sixteen strips are good to 1 % of slope, and separation spreads sideways");
    evidence::hold(kLine, which + "angle of greatest lift", strips.greatest_at_rad / kDeg,
                   line.greatest_at_rad / kDeg, 0.8, "deg",
                   "a flat top, which the sideways spread of separation widens");
    evidence::hold(kLine, which + "lift when the first section is at its greatest", strips.first, line.first,
                   0.015 * line.first, "1", "1 % of slope, and a strip's width");
    evidence::hold(kLine, which + "station of that section", strips.first_station, line.first_station, 0.125,
                   "half spans", "one strip");
    CHECK(strips.first < strips.greatest);
    CHECK(strips.greatest < section.peak());
  }
}

TEST_CASE("a tapered wing stalls first near one less its taper, a rectangular one in the middle",
          "[aircraft][published]") {
  // Exact for elliptical loading: c_l goes as sqrt(1 - y^2)/(1 - (1 - taper) y), greatest at y = 1 - taper.
  const StaticLift section{6.0, 15.0 * kDeg, 2.0 * kDeg};
  const Published rule{"LIFTING-LINE", "elliptical loading over a straight taper", "worked by hand"};
  for (const double taper : {1.0, 0.6, 0.4, 0.25}) {
    const PlanForm plan{8.0, taper};
    evidence::hold(rule, named(plan, section) + "station that stalls first, by strips",
                   by_strips(plan, section).first_station, 1.0 - taper, 0.125, "half spans",
                   "one strip; no straight taper is loaded quite elliptically");
  }
}

TEST_CASE("a rectangular wing reaches nine tenths of its section's greatest lift", "[aircraft][published]") {
  for (const double aspect_ratio : {6.0, 8.0})
    for (const double width : {2.0, 1.0}) {
      const StaticLift section{6.0, 15.0 * kDeg, width * kDeg};
      const PlanForm plan{aspect_ratio, 1.0};
      evidence::hold(kCritical, named(plan, section) + "greatest lift over the section's",
                     by_strips(plan, section).greatest / section.peak(), 0.925, 0.035, "1",
                     "0.90 to 0.95 by the section that stalls first");
    }
  const StaticLift section{6.0, 15.0 * kDeg, 2.0 * kDeg};
  for (const double taper : {0.6, 0.25}) {
    const PlanForm plan{8.0, taper};
    evidence::show(
        kCritical, named(plan, section) + "greatest lift over the section's",
        by_strips(plan, section).greatest / section.peak(), 0.925, "1",
        "no loss by the small Reynolds number of a narrow tip, which the model does not know, and a gentle "
        "section lets its neighbours catch up");
  }
}
