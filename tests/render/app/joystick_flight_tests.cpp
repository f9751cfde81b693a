// A stick, a twist grip and a throttle lever that exist only in SDL, moved by the simulated pilot's loops: they fly a point of
// the card to its record; then the plug is pulled in the air.
#include <catch2/catch.hpp>

#include "render/input/assignment.hpp"
#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/screen_reading.hpp"
#include "tests/render/input/events.hpp"
#include "tests/sim/sortie/by_hand.hpp"

using namespace stallwright;
using cli_test::Folder;
using events::Virtual;
using input::Axis;

namespace {

/// Raw value of an axis that asks for this: the way from raw to deflection, backwards.
template <class Way>
int raw_for(double wanted, const Way& way) {
  int low = -32768, high = 32767;
  const bool rises = way(high) > way(low);
  while (high - low > 1) {
    const int middle = low + (high - low) / 2;
    ((way(middle) < wanted) == rises ? low : high) = middle;
  }
  return low;
}

/// Moves the device's axes so that the cockpit has these hands.
class Mover {
 public:
  void move(Virtual& stick, const Hands& hands, double trim) const {
    const double aft = hands.stick_aft - trim;
    set(stick, Axis::pitch, aft / (aft > 0.0 ? 1.0 - trim : 1.0 + trim));
    set(stick, Axis::roll, hands.stick_right);
    set(stick, Axis::pedals, hands.pedal_right);
    const auto at = input::assigned(settings_, Axis::throttle, devices_);
    stick.axis(at->axis, raw_for(hands.throttle, [&](int raw) { return input::lever(raw, at->shape); }));
  }

 private:
  void set(Virtual& stick, Axis axis, double deflection) const {
    const auto at = input::assigned(settings_, axis, devices_);
    stick.axis(at->axis, raw_for(deflection, [&](int raw) { return input::shaped(raw, at->shape); }));
  }
  input::Settings settings_;
  std::vector<input::DeviceInfo> devices_ = {{"any", "any", input::DeviceKind::stick, 4, false}};
};

}  // namespace

TEST_CASE("a joystick flies a point to its record, is unplugged in the air, and flies again when it is back",
          "[cockpit][device]") {
  const Folder folder;
  const app::Options options =
      app_test::options(folder.path(), {"--fly", "--aircraft", "marram", "--frames", "20000"});
  enum class Step { flying, unplugged, back, over } step = Step::flying;
  const Mover mover;
  std::optional<by_hand_test::Person> person;
  double trim = 0.0, since_s = 0.0, unplugged_throttle = 0.0;
  bool noticed_out = false, noticed_in = false, button = false, paused_page = false;
  std::size_t found = 0;
  app::Cockpit cockpit(options);
  std::optional<Virtual> stick;  // gone before SDL is
  cockpit.run([&](app::Cockpit& c) {
    if (c.flight_screen() == nullptr) return c.quit();
    const Seen& seen = *c.flight();
    paused_page = paused_page || c.flight_screen()->page_open();
    const Flight& flight = c.flight_screen()->drive().flight();
    if (!person) {
      // One tick a frame, as the pilot's loops expect.
      app_test::tap(SDLK_COMMA);
      person.emplace(load_aircraft_type(find_aircraft_file("marram")));
      trim = flight.first_hands().stick_aft;
      stick.emplace(SDL_JOYSTICK_TYPE_FLIGHT_STICK, 4, 8, 1, "Test stick");
      return;
    }
    const double now_s = seen.now.time_s;
    if (step == Step::flying) {
      const Hands hands = person->next(flight.sortie());
      mover.move(*stick, hands, trim);
      if (seen.now.marks.phase == Phase::clearing && now_s > 4.0 && now_s < 4.03) app_test::tap(SDLK_c);
      if (hands.presses.record != button) stick->button(0, button = hands.presses.record);
      found = seen.now.set_points->size();
      // The next point is under way, in whatever it asks for.
      if (found == 0 || seen.now.marks.point < 2) return;
      stick.reset();
      unplugged_throttle = seen.now.controls.throttle;
      since_s = now_s;
      step = Step::unplugged;
    } else if (step == Step::unplugged) {
      noticed_out = noticed_out || app_test::shows("Test stick was unplugged");
      if (now_s - since_s < 3.0) return;
      CHECK(seen.now.controls.stick_aft == Approx(trim).margin(0.01));
      // Let go, the ailerons stand where the aeroplane is rigged to fly straight.
      CHECK(seen.now.controls.stick_right == Approx(0.0).margin(0.05));
      CHECK(seen.now.controls.throttle == Approx(unplugged_throttle).margin(0.02));
      CHECK(seen.now.airborne);
      stick.emplace(SDL_JOYSTICK_TYPE_FLIGHT_STICK, 4, 8, 1, "Test stick");
      stick->axis(0, 32767);
      since_s = now_s;
      step = Step::back;
    } else if (step == Step::back) {
      noticed_in = noticed_in || app_test::shows("Test stick was plugged in");
      if (now_s - since_s < 0.6) return;
      CHECK(seen.now.controls.stick_right > 0.9);
      step = Step::over;
      c.quit();
    }
  });
  CHECK(step == Step::over);
  CHECK(found == 1);
  CHECK(noticed_out);
  CHECK(noticed_in);
  CHECK_FALSE(paused_page);
  const FlownSortie flown = read_sortie(app_test::only_sortie(folder.path()));
  CHECK(flown.ended);
  REQUIRE_FALSE(flown.outcome.tallies.empty());
  CHECK(flown.outcome.tallies.front().recorded == 1);
}
