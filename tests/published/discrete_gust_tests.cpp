// The shapes of discrete gusts, and the numbers of the load-factor formula. [CFR14-23] [MIL-F-8785C 3.7]
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "aircraft/math/units.hpp"
#include "sim/air/discrete_gust.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;

TEST_CASE("discrete gusts have the regulation's and the specification's shapes", "[air][published]") {
  const evidence::Published regulation{"CFR14-23", "23.333(c), one-minus-cosine gust", "from memory"};
  const evidence::Published specification{"MIL-F-8785C", "3.7, discrete gust", "from memory"};
  constexpr double kChord_m = 1.5, kUde_ftps = 50.0;
  // In chords: U = (Ude/2)(1 - cos(2 pi s/(25 c))).
  const auto in_chords = [&](double chords) {
    return kUde_ftps * gust_share(GustShape::kOneMinusCosine, chords * kChord_m, 25.0 * kChord_m).share;
  };
  const struct {
    double chords, published;
  } points[] = {{-1.0, 0.0},  {0.0, 0.0},    {3.125, 7.322330}, {6.25, 25.0},
                {12.5, 50.0}, {18.75, 25.0}, {25.0, 0.0},       {30.0, 0.0}};
  for (const auto& p : points)
    evidence::hold(regulation, "gust of 50 ft/s at " + std::to_string(p.chords).substr(0, 5) + " chords",
                   in_chords(p.chords), p.published, 1e-6, "ft/s", "printed digits");
  // In lengths: (vm/2)(1 - cos(pi x/dm)), then vm.
  const auto in_lengths = [](double x) { return gust_share(GustShape::kRampAndHold, 80.0 * x, 80.0).share; };
  const struct {
    double lengths, published;
  } ramp[] = {{-0.1, 0.0}, {0.0, 0.0}, {0.25, 0.1464466}, {0.5, 0.5}, {1.0, 1.0}, {1.5, 1.0}, {40.0, 1.0}};
  for (const auto& p : ramp)
    evidence::hold(specification, "share of the ramp at x/dm " + std::to_string(p.lengths).substr(0, 4),
                   in_lengths(p.lengths), p.published, 1e-7, "1", "printed digits");
}

TEST_CASE("the constant of the gust load formula is the change from SI to its units", "[air][published]") {
  // n - 1 = Kg Ude V a/(498 W/S), V in knots, W/S in lb/ft2, against rho0 V U a/(2 W/S).
  constexpr double kPsf = 4.4482216152605 / (kFoot * kFoot);
  const double constant = 2.0 * kPsf / (1.225 * kKnot * kFoot);
  const evidence::Published formula{"CFR14-23", "23.341, gust load factor", "from memory"};
  evidence::hold(formula, "constant of the formula in knots and pounds", constant, 498.0, 0.8, "1",
                 "printed digits: 498.5 to four");
  // Worked: W/S 15 lb/ft2, a 5/rad, c 5 ft, V 120 kt, Ude 50 ft/s at sea level: mu 15.70, Kg 0.658, n - 1 2.64.
  const double loading = 15.0, slope = 5.0, chord_ft = 5.0, speed_kt = 120.0, up_ftps = 50.0;
  const double mu = 2.0 * loading / (0.0023769 * chord_ft * slope * 32.174),
               alleviation = 0.88 * mu / (5.3 + mu);
  const double si = alleviation * 1.225 * speed_kt * kKnot * up_ftps * kFoot * slope / (2.0 * loading * kPsf);
  evidence::hold(formula, "load added to a loading of 15 lb/ft2 at 120 kt by 50 ft/s, in SI", si,
                 alleviation * up_ftps * speed_kt * slope / (498.0 * loading), 0.002 * si, "1",
                 "0.2 %: 498 is rounded");
}
