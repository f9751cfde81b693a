// The guide as a stranger reads it: one thing at a time, by the key that puts it right.
#include "tests/render/view/coach_scene.hpp"

using namespace stallwright;
using coach_test::Coached;
using coach_test::says;

TEST_CASE("the guide says nothing where it is not wanted", "[coach][view][guide]") {
  Coached c("short");
  c.at(1, Phase::settle);
  CHECK(c.look({true, false}).guide.empty());
  CHECK_FALSE(c.look({true, true}).guide.empty());
}

TEST_CASE("clearing: bank, look, call it clear, then back", "[coach][view][guide]") {
  Coached c("short");
  c.at(1, Phase::clearing);
  CHECK(c.look().guide ==
        "Left arrow or Right arrow: bank about 25°, then let go. Hold 1 or 3 to look round. Seen enough? C "
        "calls "
        "the area clear.");
  c.now.turned_out = true;
  CHECK(says(c.look().guide, "Now back the other way"));
}

TEST_CASE("setting a point up: flaps first, then wings, speed, height", "[coach][view][guide]") {
  Coached c("short");
  c.at(2, Phase::settle);
  c.card.points[1].flap_setting = 1;
  c.bank_deg(20.0);
  c.fly_kt(c.speed().target_kt + 5.0);
  CHECK(c.look().guide == "F lowers the flaps a step: 15° is asked for.");
  c.fly_kt(c.type.flaps[1].limit_speed_mps / kKnot + 1.0);
  CHECK(says(c.look().guide, "Too fast for the flaps: below 80 kt first"));
  c.card.points[1].flap_setting = 0;
  c.now.readings.flap_rad = 15.0 * math::kDegree;
  CHECK(c.look().guide == "Shift+F raises the flaps a step: the card asks for flaps up.");
  c.now.readings.flap_rad = 0.0;
  CHECK(c.look().guide == "Level the wings with Left arrow.");
  c.bank_deg(-20.0);
  CHECK(c.look().guide == "Level the wings with Right arrow.");
  c.bank_deg(0.0);
  c.fly_kt(c.speed().target_kt + 5.0);
  CHECK(c.look().guide == "Fast: raise the nose a little with Down arrow.");
  c.fly_kt(c.speed().target_kt - 5.0);
  CHECK(c.look().guide == "Slow: lower the nose a little with Up arrow.");
}

TEST_CASE("setting a point up: height with power, but not while it is coming back", "[coach][view][guide]") {
  Coached c("short");
  c.at(2, Phase::settle);
  const double level_m = c.now.readings.indicated_altitude_m;
  c.now.readings.indicated_altitude_m = level_m - 100.0 * kFoot;
  CHECK(c.look().guide == "Low: a little more power with Page Up.");
  c.now.readings.vertical_speed_mps = 150.0 * kFootPerMinute;
  CHECK(says(c.look().guide, "Speed with the nose, height with power."));
  c.now.readings.indicated_altitude_m = level_m;
  c.now.readings.vertical_speed_mps = 250.0 * kFootPerMinute;
  CHECK(c.look().guide == "Climbing: a little less power with Page Down.");
  c.now.readings.vertical_speed_mps = -250.0 * kFootPerMinute;
  CHECK(c.look().guide == "Sinking: a little more power with Page Up.");
}

TEST_CASE("setting a point up: attitude and power from memory, never minus nothing", "[coach][view][guide]") {
  Coached c("short");
  c.at(2, Phase::settle);
  c.now.usual_pitch_deg = -0.3;
  c.now.usual_throttle = 0.424;
  CHECK(says(c.look().guide, " About 0° of pitch and 42 % of throttle hold it."));
}

TEST_CASE("setting a point up: the nose is not chased after the needle", "[coach][view][guide]") {
  Coached c("short");
  c.at(2, Phase::settle);
  c.now.usual_pitch_deg = 4.0;
  c.now.usual_throttle = 0.4;
  c.fly_kt(c.speed().target_kt - 6.0);
  c.now.readings.pitch_rad = 2.0 * math::kDegree;
  CHECK(says(c.look().guide, "Slow: lower the nose a little with Up arrow."));
  c.now.readings.pitch_rad = 0.5 * math::kDegree;
  CHECK(says(c.look().guide, "Slow, but the nose is low enough: hold it there and let the speed come."));
  c.fly_kt(c.speed().target_kt + 6.0);
  CHECK(says(c.look().guide, "Fast: raise the nose a little with Down arrow."));
  c.now.readings.pitch_rad = 7.5 * math::kDegree;
  CHECK(says(c.look().guide, "Fast, but the nose is high enough"));
}

TEST_CASE("idle and descent have their own use of the throttle", "[coach][view][guide]") {
  Coached c("verify");
  c.at(6, Phase::settle);
  c.now.readings.vertical_speed_mps -= 250.0 * kFootPerMinute;
  CHECK(c.look().guide == "Sinking too fast: a little more power with Page Up.");
  c.now.readings.vertical_speed_mps += 500.0 * kFootPerMinute;
  CHECK(c.look().guide == "Sinking too slowly: a little less power with Page Down.");
  c.card.points[5].power = PowerRule::idle;
  CHECK(c.look().guide == "Close the throttle: I.");
}

TEST_CASE("on condition the guide names the key that records, and what comes after", "[coach][view][guide]") {
  Coached c("short");
  c.at(1, Phase::settle);
  c.now.settled_share = 1.0;
  CHECK(c.look().guide == "Press R: the record takes 15 s.");
  c.at(4, Phase::settle);
  c.now.settled_share = 1.0;
  CHECK(c.look().guide ==
        "Press R, then close the throttle with I and raise the nose slowly with Down arrow.");
  Coached v("verify");
  v.at(1, Phase::settle);
  v.now.settled_share = 1.0;
  CHECK(v.look().guide == "Press R, leave the power, and raise the nose slowly with Down arrow.");
}

TEST_CASE("slowing down: throttle, wings, then the nose", "[coach][view][guide]") {
  Coached c("short");
  c.at(4, Phase::slow);
  c.now.readings.throttle = 0.4;
  CHECK(c.look().guide == "Close the throttle: I.");
  c.now.readings.throttle = 0.0;
  c.bank_deg(9.0);
  CHECK(c.look().guide == "Level the wings with Left arrow.");
  c.bank_deg(0.0);
  CHECK(c.look().guide ==
        "Keep raising the nose with Down arrow, a touch at a time. Horn, buffet, then the nose drops by "
        "itself.");
  c.now.asked.speed_mps -= 4.0 * kKnot;
  CHECK(says(c.look().guide, "More: raise the nose with Down arrow"));
  c.now.asked.speed_mps += 8.0 * kKnot;
  CHECK(says(c.look().guide, "Slowing too fast"));
}

TEST_CASE("verifying: the turn is held to the left, and the tone is waited for", "[coach][view][guide]") {
  Coached c("verify");
  c.at(3, Phase::slow);
  CHECK(c.look().guide == "Bank 30° to the left: Left arrow.");
  c.bank_deg(-40.0);
  CHECK(c.look().guide == "Bank 30° to the left: Right arrow.");
  c.bank_deg(-30.0);
  CHECK(says(c.look().guide, "until the tone sounds"));
}

TEST_CASE("recovery: stick and power, then wings, then out of the dive", "[coach][view][guide]") {
  Coached c("short");
  c.at(4, Phase::recover);
  c.fly_kt(c.speed().stall_kt);
  CHECK(c.look().guide ==
        "Hold Up arrow: nose below the horizon. Shift+I: full power. Wings level with Left arrow and Right "
        "arrow.");
  c.fly_kt(1.2 * c.speed().stall_kt);
  CHECK(c.look().guide == "Flying again. Full power: Shift+I.");
  c.now.readings.throttle = 1.0;
  c.bank_deg(20.0);
  CHECK(c.look().guide == "Flying again. Level the wings with Left arrow.");
  c.bank_deg(0.0);
  CHECK(says(c.look().guide, "out of the dive with Down arrow"));
}

TEST_CASE("climbing back: power, speed, flaps", "[coach][view][guide]") {
  Coached c("short");
  c.at(4, Phase::climb);
  CHECK(c.look().guide == "Full power: Shift+I.");
  c.now.readings.throttle = 1.0;
  c.fly_kt(c.now.asked.speed_mps / kKnot - 6.0);
  CHECK(c.look().guide == "Slow: lower the nose a little with Up arrow.");
  c.fly_kt(c.now.asked.speed_mps / kKnot);
  c.now.readings.flap_rad = 0.3;
  CHECK(c.look().guide == "Flaps up, a step at a time: Shift+F.");
  c.now.readings.flap_rad = 0.0;
  c.fly_kt(c.now.asked.speed_mps / kKnot + 8.0);
  CHECK(c.look().guide == "Fast: raise the nose a little with Down arrow.");
}
