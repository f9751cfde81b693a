#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <optional>

#include "aircraft/math/elementary.hpp"
#include "sim/sortie/break_detector.hpp"

using namespace stallwright;

namespace {

constexpr double kTick_s = 0.02;
constexpr double kFull_m2 = 20.0;  ///< lift area that the wing can make

/// Steady flight near the stall: what each test bends to its purpose.
BreakSample slow_flight(double t_s) { return {t_s, 8.0 * math::kDegree, 0.0, 0.6, 22.0, kFull_m2, 0.8, 0.0}; }

/// Feeds ten seconds; what happens begins at 5 s (`since` counts from there).
std::optional<Break> watch(const std::function<void(BreakSample&, double since)>& bend) {
  BreakDetector detector(30.0, 0.97 * kFull_m2);
  for (int k = 0; k < 500; ++k) {
    const double t = kTick_s * k;
    BreakSample now = slow_flight(t);
    if (t >= 5.0) bend(now, t - 5.0);
    if (const auto found = detector.update(now)) return found;
  }
  return std::nullopt;
}

/// The nose falls at 5 deg/s.
void fall(BreakSample& now, double since) {
  now.pitch_rad -= 5.0 * math::kDegree * since;
  now.pitch_rate_radps = -5.0 * math::kDegree;
}

}  // namespace

TEST_CASE(
    "a nose that falls while lift goes and the angle stays is a break, dated to the start of the fall") {
  const auto found = watch([](BreakSample& now, double since) {
    fall(now, since);
    now.lift_area_m2 *= 1.0 - 0.1 * since;
  });
  REQUIRE(found);
  CHECK(found->sign == "uncommanded nose-down pitch");
  CHECK(found->time_s == Approx(5.0).margin(0.03));
}

TEST_CASE("a nose that falls while the angle grows and lift does not is a break") {
  const auto found = watch([](BreakSample& now, double since) {
    fall(now, since);
    now.ratio += 0.1 * since;
  });
  REQUIRE(found);
  CHECK(found->time_s == Approx(5.0).margin(0.03));
}

TEST_CASE("a gust that takes lift and angle down together is no break, however far the nose falls") {
  const auto found = watch([](BreakSample& now, double since) {
    fall(now, since);
    now.lift_area_m2 *= 1.0 - 0.2 * since;
    now.ratio -= 0.3 * since;
  });
  CHECK_FALSE(found);
}

TEST_CASE("a nose lowered by the stick is no break") {
  const auto lowered = [](double forward) {
    return watch([forward](BreakSample& now, double since) {
      fall(now, std::min(since, 2.0));
      now.lift_area_m2 *= 1.0 - 0.1 * since;
      now.stick_aft -= forward;
      if (since > 2.0) now.pitch_rate_radps = 0.0;
    });
  };
  CHECK_FALSE(lowered(0.05));
  CHECK(lowered(0.03));
}

TEST_CASE("a wing far from its full lift does not break") {
  const auto found = watch([](BreakSample& now, double since) {
    fall(now, since);
    now.lift_area_m2 *= 1.0 - 0.1 * since;
  });
  REQUIRE(found);
  BreakDetector low(30.0, 1.1 * kFull_m2);
  for (int k = 0; k < 500; ++k) {
    BreakSample now = slow_flight(kTick_s * k);
    if (now.time_s >= 5.0) {
      fall(now, now.time_s - 5.0);
      now.lift_area_m2 *= 1.0 - 0.1 * (now.time_s - 5.0);
    }
    CHECK_FALSE(low.update(now));
  }
}

TEST_CASE("one sample of lift does not stand for the wing's full lift") {
  BreakDetector detector(30.0, 1.05 * kFull_m2);
  for (int k = 0; k < 500; ++k) {
    BreakSample now = slow_flight(kTick_s * k);
    if (k == 255) now.lift_area_m2 *= 1.6;
    if (now.time_s >= 5.0) {
      fall(now, now.time_s - 5.0);
      now.ratio += 0.1 * (now.time_s - 5.0);
    }
    CHECK_FALSE(detector.update(now));
  }
}

TEST_CASE(
    "the stick at its aft stop is a break after a second, dated to reaching it, and none after half of one") {
  const auto found = watch([](BreakSample& now, double since) {
    if (since < 2.0)
      now.stick_aft = 0.6 + 0.2 * since;
    else
      now.stick_aft = 1.0;
  });
  REQUIRE(found);
  CHECK(found->sign == "control at its aft stop");
  CHECK(found->time_s == Approx(6.9).margin(0.15));
  CHECK_FALSE(watch([](BreakSample& now, double since) { now.stick_aft = since < 0.5 ? 1.0 : 0.6; }));
}

TEST_CASE("a wing that drops as lift goes is a break, a banked turn is none") {
  const auto bank = [](BreakSample& now, double since) {
    now.bank_rad = std::min(25.0 * since, 45.0) * math::kDegree;
  };
  const auto found = watch([&](BreakSample& now, double since) {
    bank(now, since);
    now.lift_area_m2 *= 1.0 - 0.05 * since;
  });
  REQUIRE(found);
  CHECK(found->sign == "wing drop");
  CHECK(found->time_s == Approx(5.4).margin(0.05));
  CHECK_FALSE(watch(bank));
}

TEST_CASE("above the speed that was set nothing is a break") {
  const auto found = watch([](BreakSample& now, double since) {
    fall(now, since);
    now.lift_area_m2 *= 1.0 - 0.1 * since;
    now.indicated_airspeed_mps = 31.0;
  });
  CHECK_FALSE(found);
}
