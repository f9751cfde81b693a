#include <catch2/catch.hpp>

#include "render/input/feet.hpp"
#include "render/input/key_axis.hpp"
#include "render/input/lever_takeover.hpp"
#include "render/input/mouse_stick.hpp"

using namespace stallwright::input;

namespace {

template <class T, class Feel>
T hold(T thing, int direction, double seconds, const Feel& feel, double dt_s = 0.01) {
  for (double t = 0.0; t < seconds - 1e-9; t += dt_s) thing = advance(thing, direction, dt_s, feel);
  return thing;
}

}  // namespace

TEST_CASE("a tap of a stick key is a small correction and a held key reaches the stop", "[hands]") {
  const double tap = hold(KeyAxis{}, 1, 0.08, kPitchKeys).deflection;
  CHECK(tap > 0.01);
  CHECK(tap < 0.04);
  CHECK(hold(KeyAxis{}, 1, 0.5, kPitchKeys).deflection > 8.0 * tap);
  CHECK(hold(KeyAxis{}, 1, 1.2, kPitchKeys).deflection == 1.0);
  CHECK(hold(KeyAxis{}, -1, 1.2, kPitchKeys).deflection == -1.0);
}

TEST_CASE("a stick key that is let go springs back, without passing the middle, to exactly nothing",
          "[hands]") {
  KeyAxis axis = hold(KeyAxis{}, 1, 0.5, kPitchKeys);
  double before = axis.deflection;
  for (int k = 0; k < 300; ++k) {
    axis = advance(axis, 0, 0.01, kPitchKeys);
    CHECK(axis.deflection >= 0.0);
    CHECK((axis.deflection < before || axis.deflection == 0.0));
    before = axis.deflection;
  }
  CHECK(axis.deflection == 0.0);
}

TEST_CASE("a second tap begins as slowly as the first", "[hands]") {
  KeyAxis axis = hold(KeyAxis{}, 1, 0.9, kRollKeys);
  axis = hold(axis, 0, 2.0, kRollKeys);
  CHECK(hold(axis, 1, 0.08, kRollKeys).deflection == Approx(hold(KeyAxis{}, 1, 0.08, kRollKeys).deflection));
}

TEST_CASE("a key against a deflection takes it back quickly", "[hands]") {
  const KeyAxis full = hold(KeyAxis{}, 1, 1.5, kRollKeys);
  CHECK(hold(full, -1, 0.4, kRollKeys).deflection < 0.0);
}

TEST_CASE("a key does nearly the same at 20 frames a second as at 100", "[hands]") {
  for (const double seconds : {0.1, 0.4, 0.8})
    CHECK(hold(KeyAxis{}, 1, seconds, kPitchKeys, 0.05).deflection ==
          Approx(hold(KeyAxis{}, 1, seconds, kPitchKeys, 0.01).deflection).epsilon(0.02));
  CHECK(hold(KeyLever{}, 1, 1.0, kPowerKeys, 0.05).value ==
        Approx(hold(KeyLever{}, 1, 1.0, kPowerKeys, 0.01).value).epsilon(0.03));
}

TEST_CASE(
    "a press of a power key is one fine step, a held one runs ever faster, and it stays where it is left",
    "[hands]") {
  KeyLever lever{0.5};
  lever = hold(lever, 1, 0.1, kPowerKeys);
  CHECK(lever.value == Approx(0.51));
  lever = hold(lever, 0, 1.0, kPowerKeys);
  CHECK(lever.value == Approx(0.51));
  const double one = hold(KeyLever{}, 1, 1.0, kPowerKeys).value,
               two = hold(KeyLever{}, 1, 2.0, kPowerKeys).value;
  CHECK(one > 0.1);
  CHECK(two > 2.5 * one);
  CHECK(hold(KeyLever{}, 1, 4.0, kPowerKeys).value == 1.0);
  CHECK(hold(KeyLever{}, -1, 1.0, kPowerKeys).value == 0.0);
}

TEST_CASE("a press of a trim key moves the trim by less than half a hundredth", "[hands]") {
  CHECK(hold(KeyLever{}, -1, 0.1, kTrimKeys).value == Approx(-0.004));
}

TEST_CASE("assisting feet go to the side of the ball, gently, and not beyond their reach", "[hands]") {
  Feet feet = advance(Feet{}, 0.1, 0.02);
  CHECK(feet.pedal_right > 0.0);
  CHECK(feet.pedal_right <= kFeetRate_ps * 0.02 + 1e-12);
  CHECK(advance(Feet{}, -0.1, 0.02).pedal_right == -feet.pedal_right);
  for (int k = 0; k < 3000; ++k) feet = advance(feet, 5.0, 0.02);
  CHECK(feet.pedal_right == Approx(kFeetReach));
  for (int k = 0; k < 100; ++k) feet = released(feet, 0.02);
  CHECK(feet.pedal_right == Approx(0.0).margin(1e-12));
}

TEST_CASE("feet that hold the ball in the middle stay, and are not moved by a reading that is no number",
          "[hands]") {
  const Feet holding{0.2, 0.2};
  CHECK(advance(holding, 0.0, 0.02).pedal_right == Approx(0.2));
  CHECK(advance(holding, std::nan(""), 0.02).pedal_right == Approx(0.2));
}

TEST_CASE("the pointer in the middle is the trim, up is forward, right is right, four fifths is the stop",
          "[hands]") {
  CHECK(mouse_stick(640, 360, 1280, 720).aft == 0.0);
  CHECK(mouse_stick(640, 360, 1280, 720).right == 0.0);
  CHECK(mouse_stick(640, 200, 1280, 720).aft < -0.1);
  CHECK(mouse_stick(700, 360, 1280, 720).right > 0.01);
  CHECK(mouse_stick(640, 360 + 288, 1280, 720).aft == Approx(1.0));
  CHECK(mouse_stick(640 - 288, 360, 1280, 720).right == Approx(-1.0));
  CHECK(mouse_stick(10, 10, 0, 0).aft == 0.0);
}

TEST_CASE("a lever counts once it has been moved", "[hands]") {
  LeverTakeover lever = advance({}, 0.5);
  CHECK_FALSE(lever.counts);
  lever = advance(lever, 0.51);
  CHECK_FALSE(lever.counts);
  lever = advance(lever, 0.53);
  CHECK(lever.counts);
  CHECK(advance(lever, 0.5).counts);
}
