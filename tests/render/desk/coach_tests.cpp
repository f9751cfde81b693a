#include "render/desk/coach.hpp"
#include "tests/render/desk/desk_checks.hpp"
#include "tests/render/view/coach_scene.hpp"

using namespace stallwright;
using coach_test::Coached;
using desk_test::Desk;

namespace {

/// The strip where the flight has it: over the dials, as high as it asks to be.
desk::CoachIntent draw(Desk& desk, const view::CoachView& view, bool guide = true) {
  return desk.frame([&](ui::Registry& registry, const ui::Fonts& fonts, ImVec2 to) {
    const ImVec2 end{to.x, to.y - 204.0f * fonts.scale}, from{0.0f, end.y - desk::coach_height(fonts, guide)};
    ImGui::SetNextWindowPos(from);
    ImGui::SetNextWindowSize({end.x - from.x, end.y - from.y});
    ImGui::Begin("coach", nullptr, ImGuiWindowFlags_NoDecoration);
    const desk::CoachIntent intent = desk::draw_coach(view, registry, fonts, from, end);
    ImGui::End();
    return intent;
  });
}

void check_strip(Desk& desk, const view::CoachView& view, bool guide) {
  draw(desk, view, guide);
  draw(desk, view, guide);
  desk_test::check_legible(desk.ui);
  const ImVec2 to = desk.ui.screen().to;
  const float end = to.y - 204.0f * desk.ui.fonts().scale;
  const float begin = end - desk::coach_height(desk.ui.fonts(), guide);
  CHECK(ui_test::out_of(desk.ui.texts(), {{0.0f, begin}, {to.x, end}}, 1.0f) == std::vector<std::string>{});
}

/// As much as any flight has to say.
void at_worst(Coached& c) {
  c.now.marks.attempt = 12;
  c.now.out_of_band = {"flaps not as the card asks",  "12 kt slow",  "350 ft high",
                       "-1303 ft/min vertical speed", "53 deg bank", "ball out"};
  c.now.readings.vertical_speed_mps -= 2303.0 * kFootPerMinute;
  c.bank_deg(-153.0);
  c.now.usual_pitch_deg = 12.0;
  c.now.usual_throttle = 1.0;
  c.now.last_event = {0.0, 0, "unintended stall", "uncommanded nose-down pitch"};
  const Phase phase = c.now.marks.phase;
  if (phase == Phase::transit || phase == Phase::settle)
    c.now.refusal =
        "not on condition: flaps not as the card asks, 12 kt slow, 350 ft high, -1303 ft/min vertical "
        "speed, 53 deg bank, ball out";
  else
    c.now.refusal = "no clearing turns are asked for now";
}

}  // namespace

TEST_CASE("each phase of each card is legible on the strip at every size", "[coach][desk]") {
  for (const desk_test::Size size : desk_test::kSizes)
    for (const char* card : {"short", "thorough", "verify"})
      for (const bool guide : {true, false}) {
        Desk desk(size);
        Coached c(card);
        for (int point = 1; point <= static_cast<int>(c.card.points.size()); ++point)
          for (const Phase phase : {Phase::clearing, Phase::transit, Phase::settle, Phase::record,
                                    Phase::slow, Phase::broken, Phase::recover, Phase::climb, Phase::done})
            for (const bool worst : {false, true}) {
              c.at(point, phase);
              if (phase == Phase::slow && c.point().is_steady()) continue;
              if (phase == Phase::record && !c.point().is_steady()) continue;
              if (worst) at_worst(c);
              CAPTURE(size.width, card, guide, c.point().name, phase_name(phase), worst);
              check_strip(desk, c.look({true, guide}), guide);
              if (worst) c.now.refusal.clear();
              check_strip(desk, c.look({true, guide}), guide);
            }
      }
}

TEST_CASE("the strip of a flight that is watched offers nothing to press", "[coach][desk]") {
  Desk desk;
  Coached c("short");
  c.at(1, Phase::settle);
  check_strip(desk, c.look({false, false}), false);
  CHECK(desk.ui.containing("the simulated pilot flies") != nullptr);
  CHECK(desk.registry.find("Record") == nullptr);
}

TEST_CASE("each button of the strip returns its own intent, where it may be pressed", "[coach][desk]") {
  Desk desk;
  Coached c("short");
  const auto press = [&](const char* label) {
    desk.registry.press(label);
    return draw(desk, c.look());
  };
  c.at(1, Phase::settle);
  desk::CoachIntent intent = press("Record");
  CHECK((intent.record && !intent.record_anyway && !intent.area_clear && !intent.knock_it_off));
  intent = press("Record anyway");
  CHECK((!intent.record && intent.record_anyway && !intent.area_clear && !intent.knock_it_off));
  intent = press("Knock it off");
  CHECK((!intent.record && !intent.record_anyway && !intent.area_clear && intent.knock_it_off));
  c.at(1, Phase::clearing);
  intent = press("Area clear");
  CHECK((!intent.record && !intent.record_anyway && intent.area_clear && !intent.knock_it_off));
  c.at(1, Phase::record);
  CHECK_FALSE(press("Record").record);
}

TEST_CASE("a figure of nothing has no minus before it", "[coach][desk]") {
  Desk desk;
  Coached c("short");
  c.at(1, Phase::settle);
  c.bank_deg(-0.3);
  draw(desk, c.look());
  CHECK(desk.ui.equal_to("-0°") == nullptr);
  CHECK(desk.ui.equal_to("+0°") != nullptr);
}

TEST_CASE("a run to the stall has no rule that never fills", "[coach][desk]") {
  Desk desk;
  Coached c("short");
  c.at(4, Phase::slow);
  c.now.settled_share = 1.0;
  draw(desk, c.look());
  CHECK(desk.ui.containing("RECORDING") != nullptr);
  CHECK(desk.ui.containing("on condition") == nullptr);
}
