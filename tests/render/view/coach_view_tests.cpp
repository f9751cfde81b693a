#include "render/flight/needles.hpp"
#include "render/view/coach_view.hpp"
#include "tests/render/view/coach_scene.hpp"

using namespace stallwright;
using coach_test::Coached;
using coach_test::says;

TEST_CASE("the coach names the point, its flaps, the record of several and the try", "[coach][view]") {
  Coached c("short");
  c.at(2, Phase::settle);
  CHECK(c.look().point == "2 of 4: approach, flaps up");
  c.now.marks.attempt = 3;
  CHECK(c.look().point == "2 of 4: approach, flaps up, try 3");
  c.now.marks.attempt = 1;
  c.card.points[1].flap_setting = 1;
  c.card.points[1].repeats = 2;
  c.now.marks.repeat = 2;
  CHECK(c.look().point == "2 of 4: approach, flaps 15°, record 2 of 2");
}

TEST_CASE("clearing turns give headings as they are spoken, north as 360", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::clearing);
  c.now.asked.heading_rad = -90.0 * math::kDegree;
  CHECK(c.look().phase == "Clearing turns: a quarter turn out, to 270 or the other way");
  c.now.turned_out = true;
  c.now.asked.heading_rad = -0.2 * math::kDegree;
  CHECK(c.look().phase == "Clearing turns: back to heading 360");
  c.now.readings.heading_rad = 7.0 * math::kDegree;
  CHECK(says(c.look().now, "heading 007"));
  CHECK(c.view.bars.empty());
}

TEST_CASE("a steady point says what to hold by its power", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::settle);
  char wanted[80];
  std::snprintf(wanted, sizeof wanted, "Hold %.0f kt at 3000 ft, wings level", c.speed().target_kt);
  CHECK(c.look().phase == wanted);
  c.card.points[0].power = PowerRule::idle;
  std::snprintf(wanted, sizeof wanted, "Throttle closed: hold %.0f kt in the glide", c.speed().target_kt);
  CHECK(c.look().phase == wanted);
  c.card.points[0].power = PowerRule::descent;
  c.card.points[0].descent_fpm = 500.0;
  std::snprintf(wanted, sizeof wanted, "Hold %.0f kt, descending at 500 ft/min", c.speed().target_kt);
  CHECK(c.look().phase == wanted);
}

TEST_CASE("what is off stands in words, then settling, then the key that records", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::settle);
  c.now.out_of_band = {"4 kt slow", "9 deg bank"};
  CHECK(c.look().now == "4 kt slow, 9 deg bank");
  c.now.out_of_band.clear();
  c.now.settled_share = 0.4;
  CHECK(c.look().now == "settling");
  c.now.settled_share = 1.0;
  CHECK(c.look().now == "on condition: record now (R)");
  CHECK(c.look({false, true}).now == "on condition");
}

TEST_CASE("no more is listed than can be read at once, in what is off and in a refusal", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::settle);
  c.now.out_of_band = {"12 kt slow", "350 ft high", "53 deg bank", "ball out"};
  c.now.refusal = "not on condition: 12 kt slow, 350 ft high, 53 deg bank, ball out";
  CHECK(c.look().now == "12 kt slow, 350 ft high, 53 deg bank, …");
  CHECK(c.view.refusal == "not on condition: 12 kt slow, 350 ft high, 53 deg bank, …");
  c.now.refusal = "not on condition: 12 kt slow, 350 ft high, 53 deg bank";
  CHECK(c.look().refusal == c.now.refusal);
}

TEST_CASE("a record counts down, unless a band is left", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::record);
  c.now.record_share = 0.2;
  CHECK(c.look().now == "hold it: 12 s more");
  c.now.out_of_band = {"ball out"};
  CHECK(c.look().now == "ball out");
}

TEST_CASE("on the way to the stall speed is held against the clock", "[coach][view]") {
  Coached c("short");
  c.at(4, Phase::slow);
  CHECK(c.look().phase == "Throttle closed. Let it slow by 1 kt a second, wings level, to the break");
  c.now.asked.speed_mps = 48.0 * kKnot;
  c.fly_kt(52.0);
  CHECK(c.look().now == "52 kt now, 48 by the clock: slow down more");
  c.fly_kt(44.0);
  CHECK(c.look().now == "44 kt now, 48 by the clock: not so fast");
  c.fly_kt(48.4);
  CHECK(c.look().now == "48 kt now, 48 by the clock: good");
  REQUIRE(c.bar("speed") != nullptr);
  CHECK(c.bar("speed")->off == Approx(0.4));
  CHECK(c.bar("speed")->within);
}

TEST_CASE("after the break it is urgent, and says which sign was seen", "[coach][view]") {
  Coached c("short");
  for (const Phase phase : {Phase::broken, Phase::recover}) {
    c.at(4, phase);
    c.now.last_event.kind = "break";
    c.now.last_event.text = "uncommanded nose-down pitch";
    CHECK(c.look().urgent);
    CHECK(c.view.phase == "RECOVER: stick forward, full power, wings level");
    CHECK(c.view.now == "break: uncommanded nose-down pitch");
    CHECK(c.view.bars.empty());
  }
  c.at(4, Phase::climb);
  CHECK_FALSE(c.look().urgent);
}

TEST_CASE("the climb and the end of the card", "[coach][view]") {
  Coached c("short");
  c.at(4, Phase::climb);
  c.now.readings.indicated_altitude_m -= 400.0 * kFoot;
  c.now.asked.speed_mps = 63.0 * kKnot;
  CHECK(c.look().phase == "Full power, flaps up: climb to 3000 ft at about 63 kt");
  CHECK(c.view.now == "400 ft to climb");
  c.now = {};
  c.now.marks.phase = Phase::done;
  CHECK(c.look().point == "Short card");
  CHECK(c.view.phase == "The card is flown");
  CHECK(c.view.now == "land, and be debriefed");
  CHECK(c.view.guide.empty());
}

TEST_CASE("bars measure from the target, with the bands that the director goes by", "[coach][view]") {
  Coached c("short");
  c.at(2, Phase::settle);
  c.fly_kt(c.speed().target_kt - 2.4);
  c.now.readings.indicated_altitude_m += 151.0 * kFoot;
  c.now.readings.vertical_speed_mps = -120.0 * kFootPerMinute;
  c.bank_deg(-5.5);
  c.look();
  REQUIRE(c.bar("speed") != nullptr);
  CHECK(c.bar("speed")->off == Approx(-2.4));
  CHECK(c.bar("speed")->low == Approx(2.5));
  CHECK(c.bar("speed")->within);
  CHECK(c.bar("height")->off == Approx(151.0));
  CHECK_FALSE(c.bar("height")->within);
  CHECK(c.bar("climb")->off == Approx(-120.0));
  CHECK(c.bar("bank")->off == Approx(-5.5));
  CHECK_FALSE(c.bar("bank")->within);
}

TEST_CASE("the ball's bar goes out where the band does, on the side where the ball lies", "[coach][view]") {
  Coached c("short");
  c.at(1, Phase::record);
  const double limit = c.point().bands.slip_g * kStandardGravity_mps2;
  for (const double share : {0.95, 1.05}) {
    c.now.readings.right_mps2 = share * limit;  // the seat pushes to the right, the ball rolls left
    c.now.readings.down_mps2 = -kStandardGravity_mps2;
    c.look();
    REQUIRE(c.bar("ball") != nullptr);
    const bool broken = !broken_bands(c.point(), c.speed(), 914.4, c.now.readings).empty();
    CHECK(broken == (share > 1.0));
    CHECK(c.bar("ball")->within == !broken);
    CHECK(c.bar("ball")->off == Approx(advance(Needles{}, c.now.readings, 0.02).slip_balls));
  }
}

TEST_CASE("a slow run may begin within the director's own bands", "[coach][view]") {
  Coached c("short");
  c.at(4, Phase::settle);
  c.fly_kt(c.speed().entry_kt + 3.9);
  CHECK(says(c.look().phase, "record, then slow down"));
  CHECK(c.bar("speed")->within);
  c.fly_kt(c.speed().entry_kt - 4.1);
  c.look();
  CHECK_FALSE(c.bar("speed")->within);
  CHECK(c.bar("height") == nullptr);
  CHECK(c.bar("climb") == nullptr);
}

TEST_CASE("a descent is measured from its rate, a glide has neither height nor climb", "[coach][view]") {
  Coached c("verify");
  c.at(6, Phase::settle);
  REQUIRE(c.point().power == PowerRule::descent);
  c.look();
  CHECK(c.bar("climb")->off == Approx(0.0).margin(1e-9));
  CHECK(c.bar("height") == nullptr);
  c.card.points[5].power = PowerRule::idle;
  c.look();
  CHECK(c.bar("climb") == nullptr);
  CHECK(c.bar("height") == nullptr);
}

TEST_CASE("a verifying run says until when, and in what turn", "[coach][view]") {
  Coached c("verify");
  c.at(1, Phase::slow);
  CHECK(c.look().phase == "Let it slow by 0.5 kt a second, until the tone");
  c.at(3, Phase::slow);
  CHECK(c.look().phase ==
        "Let it slow by 0.5 kt a second, throttle closed, 30° of bank to the left, until the tone");
  c.bank_deg(-27.0);
  c.look();
  CHECK(c.bar("bank")->off == Approx(3.0));
}

TEST_CASE("only what would do something may be pressed, and nothing by who watches", "[coach][view]") {
  Coached c("short");
  struct Case {
    Phase phase;
    bool record, clear, knock_it_off;
  };
  for (const Case& k : {Case{Phase::clearing, false, true, true}, Case{Phase::transit, true, false, true},
                        Case{Phase::settle, true, false, true}, Case{Phase::record, false, false, true},
                        Case{Phase::slow, false, false, true}, Case{Phase::broken, false, false, true},
                        Case{Phase::recover, false, false, false}, Case{Phase::climb, false, false, false}}) {
    c.at(4, k.phase);
    CAPTURE(phase_name(k.phase));
    c.look();
    CHECK(c.view.may_record == k.record);
    CHECK(c.view.may_clear == k.clear);
    CHECK(c.view.may_knock_off == k.knock_it_off);
    c.look({false, true});
    CHECK_FALSE((c.view.may_record || c.view.may_clear || c.view.may_knock_off));
    CHECK(c.view.guide.empty());
    CHECK(c.view.watched);
  }
}
