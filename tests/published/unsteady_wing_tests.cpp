// Lift of a wing whose angle of attack has jumped, against Jones's curves for wings of finite aspect ratio [JONES-1940].
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "tests/published/bare_wing.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using namespace stallwright::testing;
using namespace stallwright::published;
using evidence::Published;

namespace {

constexpr double kSpeed = 35.0, kChord = 1.5;
constexpr double kBefore = 0.02, kAfter = 0.03;
constexpr Published kJones{"JONES-1940", "indicial lift of elliptic wings", "from memory"};

double lift(const Aircraft& a, const AirframeState<double>& s) {
  return lift_n(airframe_loads(a, s, flow_at(kSpeed, kAfter), Controls<double>{}), kAfter);
}

/// Share of the added lift that is there after each of some travels, in chords, rising.
std::vector<double> built_up(double aspect_ratio, const std::vector<double>& travels) {
  const Aircraft a =
      bare_wing(aspect_ratio * kChord, kChord, kChord, symmetrical_section(2.0 * M_PI, 0.4, 0.01));
  AirframeState<double> s = settled(a, attached(), flow_at(kSpeed, kBefore), 5.0);
  const RelativeFlow<double> flow = flow_at(kSpeed, kAfter);
  const double last = lift(a, settled(a, s, flow, 5.0)), first = last * kBefore / kAfter;
  constexpr double kStepChords = 0.02;
  std::vector<double> shares;
  double travelled = 0.0;
  for (const double travel : travels) {
    for (; travelled < travel - 1e-9; travelled += kStepChords)
      s = runge_kutta_step(s, kStepChords * kChord / kSpeed, [&](const AirframeState<double>& at) {
        return airframe_loads(a, at, flow, Controls<double>{}).rate;
      });
    shares.push_back((lift(a, s) - first) / (last - first));
  }
  return shares;
}

}  // namespace

TEST_CASE("lift builds up after a jump of angle as on Jones's wing of aspect ratio 6, and never leads",
          "[aircraft][published]") {
  const std::vector<double> travels{0.0, 0.5, 1.0, 2.0, 4.0};
  const std::vector<double> shares = built_up(6.0, travels);
  for (std::size_t i = 0; i < travels.size(); ++i)
    evidence::hold(kJones,
                   "aspect ratio 6, share of the steady lift " + std::to_string(travels[i]).substr(0, 3) +
                       " chords after a jump of angle",
                   shares[i], 1.0 - 0.361 * std::exp(-0.762 * travels[i]), 0.06, "1",
                   "one lag for shed and trailing vorticity together; a rectangle, not an ellipse");
  CHECK(*std::max_element(shares.begin(), shares.end()) < 1.001);
}

TEST_CASE("a short wing has more of its lift at once than a long one", "[aircraft][published]") {
  const std::vector<double> travels{0.0, 1.0, 2.0};
  const std::vector<double> shares = built_up(3.0, travels), slender = built_up(9.0, travels);
  for (std::size_t i = 0; i < travels.size(); ++i) {
    CHECK(shares[i] > slender[i]);
    evidence::show(kJones,
                   "aspect ratio 3, share of the steady lift " + std::to_string(travels[i]).substr(0, 3) +
                       " chords after a jump of angle",
                   shares[i], 1.0 - 0.283 * std::exp(-1.08 * travels[i]), "1",
                   "half of the section's lift at once is a third too much at so short a span; no aeroplane "
                   "here has one");
  }
}
