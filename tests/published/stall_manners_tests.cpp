// What a stall model must show to ten degrees beyond the stall, after the list in 14 CFR 60, appendix A,
// attachment 7 [CFR14-60]: each point of it for each aeroplane, held in a steady stream. The list names senses,
// not numbers: a share is compared with all that a falling one may be.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/air/wake_shake.hpp"
#include "sim/motion/flight.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/stall_manners.hpp"

using namespace stallwright;
using namespace stallwright::testing;
using namespace stallwright::published;
using evidence::Published;

namespace {

constexpr double kDeg = math::kDegree;
constexpr Published kList{"CFR14-60", "appendix A, attachment 7, characteristics of the stall",
                          "from memory"};
constexpr const char* kFalls = "the list says that it falls";

/// A falling share, anything from all to none.
void falls(const std::string& what, double share) {
  evidence::sense(kList, what, share, evidence::between(0.0, 1.0), "1", kFalls);
}

std::string name_of_type() { return GENERATE("marram", "sarsen", "tarnfell"); }

}  // namespace

TEST_CASE("lateral stability falls in the break and is gone past it, and directional stability falls past it",
          "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  const Derivatives below = derivatives(held(a, stall - 8.0 * kDeg));
  CHECK(below.roll_by_sideslip < 0.0);
  CHECK(below.yaw_by_sideslip > 0.0);
  double least = 1.0;
  for (const double past : {1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0}) {
    const Derivatives d = derivatives(held(a, stall + past * kDeg));
    const double roll = d.roll_by_sideslip / below.roll_by_sideslip,
                 yaw = d.yaw_by_sideslip / below.yaw_by_sideslip;
    const std::string where =
        ", " + std::to_string(static_cast<int>(past)) + " deg past the stall over 8 deg below";
    least = std::min(least, roll);
    CHECK(roll < 0.7);
    if (past == 1.0)
      evidence::sense(kList, type + ": roll by sideslip" + where, roll, evidence::below(0.7), "1", kFalls);
    if (past == 10.0) falls(type + ": yaw by sideslip" + where, yaw);
    if (past == 3.0)
      evidence::show(
          kList, type + ": yaw by sideslip" + where, yaw, 1.0, "1",
          "in the break itself the wing on the side of the slip stalls first, by the dihedral, and "
          "its drag turns the nose into the slip: more than the fin has lost");
  }
  evidence::sense(
      kList, type + ": roll by sideslip, least of 1, 2, 3, 4, 6, 8, 10 deg past the stall over 8 deg below",
      least, evidence::between(-0.9, 0.2), "1",
      "lost or reversed: the wing that meets more angle has less lift");
  double finer = least;
  for (double past = 1.0; past <= 10.0; past += 0.5)
    finer =
        std::min(finer, derivatives(held(a, stall + past * kDeg)).roll_by_sideslip / below.roll_by_sideslip);
  evidence::show(
      kList, type + ": roll by sideslip, least of every half degree to 10 deg past over 8 deg below", finer,
      least, "1",
      "between the angles above the tip of an outer wing may let go within half a degree; its slope is "
      "then that of a jump over the step");
}

TEST_CASE("the fin loses grip in the wake of the stalled wing and of the cabin below it",
          "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  Aircraft finless = a;
  for (std::size_t i = kWingStrips + kTailStrips; i < kStrips; ++i) finless.strips[i].area_m2 = 0.0;
  const double stall = stall_angle(a);
  const auto fin = [&](double past_deg) {
    const double alpha = stall + past_deg * kDeg;
    return derivatives(held(a, alpha)).yaw_by_sideslip - derivatives(held(finless, alpha)).yaw_by_sideslip;
  };
  const double below = fin(-8.0);
  for (const double past : {0.0, 4.0, 10.0})
    falls(type + ": yaw by sideslip of the fin alone, " + std::to_string(static_cast<int>(past)) +
              " deg past the stall over 8 deg below",
          fin(past) / below);
  CHECK(fin(4.0) < 0.85 * below);
}

TEST_CASE("pitch, roll and yaw answer less to their controls at the stall, and less again past it",
          "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  const Derivatives below = derivatives(held(a, stall - 8.0 * kDeg)), at = derivatives(held(a, stall)),
                    past = derivatives(held(a, stall + 4.0 * kDeg));
  falls(type + ": pitch by elevator, at the stall over 8 deg below", at.elevator / below.elevator);
  falls(type + ": pitch by elevator, 4 deg past over at the stall", past.elevator / at.elevator);
  falls(type + ": roll by aileron, at the stall over 8 deg below", at.aileron / below.aileron);
  falls(type + ": yaw by rudder, at the stall over 8 deg below", at.rudder / below.rudder);
  falls(type + ": yaw by rudder, 4 deg past over at the stall", past.rudder / at.rudder);
  evidence::sense(kList, type + ": roll by aileron, 4 deg past over at the stall", past.aileron / at.aileron,
                  evidence::between(-0.5, 0.5), "1",
                  "mostly gone; a down-going aileron may stall its wing and so reverse");
  CHECK(at.aileron < 0.85 * below.aileron);
  CHECK(past.elevator < 0.9 * at.elevator);
  CHECK(past.rudder > 0.6 * at.rudder);  // the pedals are what is left
}

TEST_CASE("six, eight and ten degrees past the stall no control is worth more than below it",
          "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  const Derivatives below = derivatives(held(a, stall - 8.0 * kDeg));
  for (const double past : {6.0, 8.0, 10.0}) {
    const Derivatives d = derivatives(held(a, stall + past * kDeg));
    CAPTURE(type, past, d.elevator, d.aileron, d.rudder);
    CHECK(std::abs(d.elevator) < 0.7 * below.elevator);
    CHECK(std::abs(d.aileron) < 0.4 * below.aileron);
    CHECK(std::abs(d.rudder) < 0.9 * below.rudder);
  }
}

TEST_CASE(
    "pitch stability changes at the stall: more nose down with angle in the break, none when the tail is "
    "deep in it",
    "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  const double below = derivatives(held(a, stall - 8.0 * kDeg)).pitch_by_alpha;
  double most = 0.0, least = 1e9;
  for (double past = 0.0; past <= 10.0; past += 1.0) {
    const double slope = derivatives(held(a, stall + past * kDeg)).pitch_by_alpha / below;
    most = std::max(most, slope);
    least = std::min(least, slope);
  }
  CHECK(below < 0.0);
  evidence::sense(
      kList,
      type + ": pitch stability, greatest less least of whole degrees to 10 past the stall over 8 deg below",
      most - least, evidence::above(0.5), "1", "the list says that it changes: by half at least");
  CHECK(least < 0.3);  // and somewhere beyond it nearly leaves, or turns round
}

TEST_CASE(
    "no two airframes roll off alike: the side and the size go with the seed, and full aileron may not hold "
    "it",
    "[aircraft][published]") {
  const std::string type = name_of_type();
  const double stall = stall_angle(in_tunnel(type));
  int to_the_right = 0, seeds = 0;
  double quiet = 0.0, least = 1e9, most = 0.0, worst = 0.0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed, ++seeds) {
    const Aircraft a = in_tunnel(type, seed);
    const auto share = [&](double alpha_rad, double& roll) {
      AirframeState<double> s = risen_to(a, alpha_rad);
      roll = reading(a, s, alpha_rad).roll;
      // Against the roll-off, as a pilot would.
      s.aileron_rad = (roll > 0.0 ? -1.0 : 1.0) * a.type.aileron.max_negative_rad;
      s = settled(a, s, flow_at(kTunnelSpeed_mps, alpha_rad), 2.0);
      return std::abs(roll) / std::max(1e-6, std::abs(reading(a, s, alpha_rad).roll - roll));
    };
    double roll_below = 0.0, roll = 0.0;
    quiet = std::max(quiet, share(stall - 8.0 * kDeg, roll_below));
    worst = std::max(worst, share(stall + 6.0 * kDeg, roll));
    double deeper = 0.0;
    worst = std::max(worst, share(stall + 8.0 * kDeg, deeper));
    to_the_right += roll > 0.0 ? 1 : 0;
    least = std::min(least, std::abs(roll)), most = std::max(most, std::abs(roll));
  }
  CAPTURE(type, to_the_right, least, most);
  evidence::sense(
      kList, type + ": share of twelve airframes that roll off to the right, 6 deg past the stall",
      to_the_right / 12.0, evidence::between(0.16, 0.84), "1", "neither side always: 2 of 12 at least");
  CHECK(most > 3.0 * least);
  evidence::sense(kList, type + ": greatest share of full aileron that holds the wings 8 deg below the stall",
                  quiet, evidence::below(0.03), "1", "nothing to hold there");
  CHECK(worst > 0.4);  // past the stall: half the stick's travel and more, where it still does anything
}

TEST_CASE(
    "lift of the whole aeroplane is more on the way into the stall than on the way out, at 1 and 3 deg/s",
    "[aircraft][published]") {
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  double before = 0.0;
  for (const double rate : {1.0, 3.0}) {
    AirframeState<double> s = risen_to(a, stall - 8.0 * kDeg);
    double lift[2] = {};
    double alpha = stall - 8.0 * kDeg;
    const int steps = static_cast<int>(18.0 / rate / 0.01);
    for (int way : {1, -1})
      for (int i = 0; i < steps; ++i) {
        alpha += way * rate * kDeg * 0.01;
        s = settled(a, s, flow_at(kTunnelSpeed_mps, alpha), 0.01);
        if (std::abs(alpha - stall - 3.0 * kDeg) < 0.006 * rate * kDeg)
          lift[way > 0 ? 0 : 1] = reading(a, s, alpha).lift;
      }
    const double wider = lift[0] / lift[1] - 1.0;
    evidence::sense(kList,
                    type + ": lift on the way in over the way out less one, 3 deg past the stall, " +
                        std::to_string(static_cast<int>(rate)) + " deg/s",
                    wider, evidence::between(0.02, 0.30), "1", "the list asks for hysteresis: 2 % at least");
    CHECK(wider > before);  // a quicker entry opens the loop
    before = wider;
  }
}

TEST_CASE("buffet is felt before the break and grows beyond it", "[aircraft][published]") {
  // Felt: 0.03 g from peak to peak at the centre of gravity, here of a stretch of ten seconds.
  const std::string type = name_of_type();
  const Aircraft a = in_tunnel(type);
  const double stall = stall_angle(a);
  const auto peak_to_peak_g = [&](double alpha_rad) {
    const Held h = held(a, alpha_rad);
    RelativeFlow<double> flow = flow_at(kTunnelSpeed_mps, alpha_rad);
    ShakeState<double> shake;
    double low = 1e9, high = -1e9;
    for (std::uint64_t i = 0; i < 1000; ++i) {
      shake = advance_shake(shake, kTunnelSpeed_mps, a.mean_chord_m, kStep_s, shake_noise(random::Key{}, i));
      flow.shake = shake.now;
      const double g =
          airframe_loads(a, h.state, flow, Controls<double>{}).force_B.z / a.mass.mass_kg / 9.80665;
      low = std::min(low, g), high = std::max(high, g);
    }
    return high - low;
  };
  CHECK(peak_to_peak_g(stall - 8.0 * kDeg) < 0.015);
  double onset = stall - 8.0 * kDeg;
  while (onset < stall + 5.0 * kDeg && peak_to_peak_g(onset) < 0.03) onset += 0.5 * kDeg;
  evidence::sense({"CFR14-60", "appendix A, buffet felt from 0.03 g peak to peak", "from memory"},
                  type + ": buffet is felt this far below the stall", (stall - onset) / kDeg,
                  evidence::between(0.25, 5.75), "deg", "before the break, and not in ordinary flight");
  double before = peak_to_peak_g(stall);
  for (const double past : {2.0, 5.0}) {
    CHECK(peak_to_peak_g(stall + past * kDeg) > 1.1 * before);
    before = peak_to_peak_g(stall + past * kDeg);
  }
}
