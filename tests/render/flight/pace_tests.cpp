#include <catch2/catch.hpp>

#include "render/flight/pace.hpp"
#include "sim/crew/pilot.hpp"

using namespace stallwright;

TEST_CASE("ticks due are the time that passed, whatever the frames", "[flight][pace]") {
  for (const double frame_s : {0.001, 0.0123, 0.0167, 0.04, 0.2}) {
    CAPTURE(frame_s);
    Pace pace;
    int ticks = 0;
    double passed_s = 0.0;
    while (passed_s < 30.0) {
      ticks += pace.due(frame_s, 1.0);
      passed_s += frame_s;
    }
    CHECK(ticks * kTick_s == Approx(passed_s).margin(kTick_s + 1e-6));
    CHECK(pace.given_up_s() == 0.0);
  }
}

TEST_CASE("no time is lost silently: what is not flown is given up and counted", "[flight][pace]") {
  Pace pace;
  double passed_s = 0.0;
  int ticks = 0;
  for (const double stall_s : {0.02, 1.3, 0.05, 0.24, 7.0, 0.013}) {
    const int due = pace.due(stall_s, 1.0);
    CHECK(due <= 13);  // a quarter of a second, and what was left
    ticks += due;
    passed_s += stall_s;
  }
  CHECK(pace.given_up_s() > 7.0);
  CHECK(ticks * kTick_s + pace.given_up_s() == Approx(passed_s).margin(kTick_s));
}

TEST_CASE("faster time may owe as many seconds of its own", "[flight][pace]") {
  Pace pace;
  CHECK(pace.due(0.2, 4.0) == 40);
  CHECK(pace.given_up_s() == 0.0);
  CHECK(pace.due(0.2, 0.25) == 2);
}

TEST_CASE("nothing is due while paused, or when the clock stands or goes back", "[flight][pace]") {
  Pace pace;
  CHECK(pace.due(5.0, 0.0) == 0);
  CHECK(pace.due(0.0, 1.0) == 0);
  CHECK(pace.due(-3.0, 1.0) == 0);
  CHECK(pace.due(0.02, 1.0) == 1);
  CHECK(pace.given_up_s() == 0.0);
}

TEST_CASE("the achieved rate is what was flown, and a new rate is no lateness", "[flight][pace]") {
  Pace pace;
  for (int k = 0; k < 400; ++k) pace.flown(pace.due(0.02, 1.0), 0.02);
  CHECK(pace.achieved() == Approx(1.0).margin(0.02));
  pace.flown(pace.due(0.02, 4.0), 0.02);
  CHECK(pace.achieved() == Approx(4.0).margin(0.1));
  for (int k = 0; k < 10; ++k) pace.flown(pace.due(0.0, 0.0), 0.02 * 0.0);
  pace.flown(pace.due(0.02, 1.0), 0.02);
  CHECK(pace.achieved() == Approx(1.0).margin(0.05));
  // Half a second a frame: a quarter of it is flown.
  for (int k = 0; k < 40; ++k) pace.flown(pace.due(0.5, 1.0), 0.5);
  CHECK(pace.achieved() == Approx(0.5).margin(0.05));
}
