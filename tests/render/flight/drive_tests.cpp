#include <catch2/catch.hpp>
#include <chrono>
#include <fstream>
#include <thread>

#include "render/flight/drive.hpp"
#include "sim/report/hands_file.hpp"
#include "sim/report/sortie_json.hpp"
#include "tests/render/flight/ordered_flight.hpp"

using namespace stallwright;
using flight_test::Ordered;

namespace {

using Clock = std::chrono::steady_clock;

int pressed(const std::vector<Hands>& hands, bool Presses::*which) {
  int count = 0;
  for (const Hands& h : hands) count += h.presses.*which ? 1 : 0;
  return count;
}

std::vector<Hands> kept(const Ordered& ordered) {
  return read_hands(ordered.order.folder / "hands.csv", ordered.order.flown.config.type.flaps.size());
}

/// Frames at about 60 a second for so long, with hands that hold still.
template <class EachFrame>
void real_frames(Drive& drive, double seconds, const EachFrame& each) {
  const auto begin = Clock::now();
  for (int k = 0; std::chrono::duration<double>(Clock::now() - begin).count() < seconds; ++k) {
    each(k);
    drive.frame(1.0 / 60.0);
    std::this_thread::sleep_for(std::chrono::milliseconds(16));
  }
}

}  // namespace

TEST_CASE("stepped with the frames, each press reaches exactly one tick", "[flight][drive]") {
  Ordered ordered;
  auto drive = stepped_drive(ordered.flight());
  Hands hands = drive->flight().first_hands();
  // Frames shorter than a tick, and longer; several presses between two ticks are kept until there is one.
  for (int k = 0; k < 200; ++k) {
    hands.presses = {};
    hands.presses.record = k % 50 == 7;
    hands.presses.knock_it_off = k % 100 == 8;
    drive->hands(hands);
    drive->frame(k < 100 ? 0.007 : 0.05);
  }
  drive->finish();
  CHECK(pressed(kept(ordered), &Presses::record) == 4);
  CHECK(pressed(kept(ordered), &Presses::knock_it_off) == 2);
  CHECK(pressed(kept(ordered), &Presses::area_clear) == 0);
}

TEST_CASE("stepped with the frames, the same frames fly the same time, and a pause flies none",
          "[flight][drive]") {
  Ordered ordered;
  auto drive = stepped_drive(ordered.flight());
  drive->hands(drive->flight().first_hands());
  Seen seen;
  for (int k = 0; k < 50; ++k) drive->frame(0.04);
  drive->look(seen);
  CHECK(seen.now.time_s == Approx(2.0));
  CHECK(seen.before.time_s == Approx(1.98));
  drive->pause(true);
  for (int k = 0; k < 50; ++k) drive->frame(0.04);
  drive->look(seen);
  CHECK(seen.paused);
  CHECK(seen.now.time_s == Approx(2.0));
  drive->pause(false);
  drive->rate(4.0);
  for (int k = 0; k < 25; ++k) drive->frame(0.04);
  drive->look(seen);
  CHECK(seen.now.time_s == Approx(6.0));
}

TEST_CASE("on its own thread, each press reaches exactly one tick", "[flight][drive][threads]") {
  Ordered ordered;
  auto drive = threaded_drive(ordered.flight());
  Hands hands = drive->flight().first_hands();
  int given = 0;
  real_frames(*drive, 1.5, [&](int k) {
    hands.presses = {};
    hands.presses.record = k % 9 == 4;
    given += hands.presses.record ? 1 : 0;
    drive->hands(hands);
  });
  // The last one has had no frame after it: it is given time.
  hands.presses = {};
  drive->hands(hands);
  std::this_thread::sleep_for(std::chrono::milliseconds(300));
  drive->finish();
  CHECK(given > 3);
  CHECK(pressed(kept(ordered), &Presses::record) == given);
}

TEST_CASE("on its own thread it keeps real time, or says by how much it does not",
          "[flight][drive][threads]") {
  Ordered ordered;
  auto drive = threaded_drive(ordered.flight());
  drive->hands(drive->flight().first_hands());
  const auto begin = Clock::now();
  Seen seen;
  double latest_s = 0.0;
  real_frames(*drive, 3.0, [&](int) {
    drive->look(seen);
    CHECK(seen.share >= 0.0);
    CHECK(seen.share <= 1.0);
    CHECK(seen.now.time_s >= latest_s);
    latest_s = seen.now.time_s;
  });
  drive->look(seen);
  const double passed_s = std::chrono::duration<double>(Clock::now() - begin).count();
  CHECK(seen.now.time_s <= passed_s + 0.05);
  CHECK(seen.now.time_s + seen.given_up_s == Approx(passed_s).margin(0.4));
  drive->finish();
}

TEST_CASE("on its own thread a pause holds time still, and what was pressed in it is not lost",
          "[flight][drive][threads]") {
  Ordered ordered;
  auto drive = threaded_drive(ordered.flight());
  Hands hands = drive->flight().first_hands();
  drive->hands(hands);
  std::this_thread::sleep_for(std::chrono::milliseconds(200));
  drive->pause(true);
  std::this_thread::sleep_for(std::chrono::milliseconds(100));
  Seen seen;
  drive->look(seen);
  const double held_s = seen.now.time_s;
  hands.presses.area_clear = true;
  drive->hands(hands);
  std::this_thread::sleep_for(std::chrono::milliseconds(300));
  drive->look(seen);
  CHECK(seen.now.time_s == held_s);
  drive->pause(false);
  std::this_thread::sleep_for(std::chrono::milliseconds(200));
  drive->finish();
  CHECK(pressed(kept(ordered), &Presses::area_clear) == 1);
}

TEST_CASE("a flight that is left closes its folder, once, in either drive", "[flight][drive]") {
  for (const bool threaded : {false, true}) {
    CAPTURE(threaded);
    Ordered ordered;
    auto drive = threaded ? threaded_drive(ordered.flight()) : stepped_drive(ordered.flight());
    Hands hands = drive->flight().first_hands();
    hands.presses.area_clear = true;
    drive->hands(hands);
    if (threaded)
      std::this_thread::sleep_for(std::chrono::milliseconds(400));
    else
      for (int k = 0; k < 20; ++k) drive->frame(0.04);
    drive->finish();
    drive->finish();
    CHECK(drive->flight().over());
    CHECK(drive->flight().trouble().empty());
    const FlownSortie flown = read_sortie(ordered.order.folder);
    CHECK(flown.ended);
    CHECK_FALSE(flown.outcome.finished);
    CHECK(flown.outcome.failure == "the pilot ended the flight");
    CHECK(kept(ordered).size() > 5);
  }
}

TEST_CASE("a drive that is dropped in flight ends its thread and closes the folder",
          "[flight][drive][threads]") {
  Ordered ordered;
  {
    auto drive = threaded_drive(ordered.flight());
    drive->hands(drive->flight().first_hands());
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
  }
  CHECK(read_sortie(ordered.order.folder).ended);
}

TEST_CASE("a verifying flight shows the set points that its unit was taught", "[flight][drive]") {
  Ordered ordered;
  ordered.order.sources.card = find_card_file("verify");
  ordered.order.flown.config.card = load_test_card(ordered.order.sources.card);
  SetPoint warning;
  warning.name = "warning";
  warning.ratio = 0.2;
  warning.interval_low = 0.18;
  warning.interval_high = 0.22;
  Taught taught;
  taught.set_points.sets = {{}};
  taught.set_points.sets[0].points = {warning};
  ordered.order.flown.taught = taught;
  auto drive = stepped_drive(ordered.flight());
  Seen seen;
  drive->look(seen);
  REQUIRE(seen.now.set_points->size() == 1);
  CHECK(seen.now.set_points->front().name == "warning");
  CHECK(seen.now.set_points->front().ratio == 0.2);
  drive->hands(drive->flight().first_hands());
  for (int k = 0; k < 10; ++k) drive->frame(0.04);
  drive->look(seen);
  CHECK(seen.now.set_points->size() == 1);
}

TEST_CASE("bumps of moderate air are felt, and are no buffet", "[flight][drive]") {
  Ordered ordered(false, "moderate");
  auto drive = stepped_drive(ordered.flight());
  Seen seen;
  double hardest_mps2 = 0.0;
  for (int k = 0; k < 500; ++k) {
    drive->frame(0.04);
    drive->look(seen);
    hardest_mps2 = std::max(hardest_mps2, std::abs(seen.now.seat_shake_mps2.z));
    REQUIRE(seen.now.buffet_g == 0.0);
  }
  CHECK(hardest_mps2 > 0.5);
  drive->finish();
}
