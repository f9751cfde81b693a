#include "render/input/hands_page.hpp"

#include "render/input/hands_page_parts.hpp"
#include "render/ui/theme.hpp"

namespace stallwright::input {
namespace {

void heading(const PageFrame& page, const char* text) {
  const ui::UseFont bold(page.fonts.large);
  ImGui::TextUnformatted(text);
}

void draw_foot(PageFrame& page) {
  if (ui::button(page.registry, "Back to the flight")) page.close = true;
  ImGui::SameLine();
  // Asked twice: a calibration and a set of keys are soon lost and long made.
  if (!page.state.reset_asked) {
    page.state.reset_asked = ui::button(page.registry, "Everything as delivered");
    return;
  }
  if (ui::button(page.registry, "Yes, lose my own settings")) {
    page.settings = Settings{};
    page.changed = true;
    page.state.reset_asked = false;
  }
  ImGui::SameLine();
  if (ui::button(page.registry, "No")) page.state.reset_asked = false;
}

}  // namespace

void draw_switches(PageFrame& page) {
  Settings& s = page.settings;
  page.changed |= ui::check(page.registry, "Feet follow the ball where there are no pedals", s.feet_assist);
  page.changed |= ui::check(page.registry, "Stick by mouse", s.mouse_stick);
  ImGui::SameLine();
  page.changed |= ui::check(page.registry, "Devices shake with buffet", s.rumble);
  float volume = static_cast<float>(s.volume), size = static_cast<float>(s.ui_scale);
  ImGui::SetNextItemWidth(page.px(150.0f));
  if (ui::slider(page.registry, "Volume", volume, 0.0f, 1.0f, "%.2f")) {
    s.volume = static_cast<double>(volume);
    page.changed = true;
  }
  ImGui::SameLine();
  page.changed |= ui::check(page.registry, "Mute", s.mute);
  ImGui::SetNextItemWidth(page.px(150.0f));
  if (ui::slider(page.registry, "Size of type, from the next start", size, 0.8f, 2.0f, "%.2f")) {
    s.ui_scale = static_cast<double>(size);
    page.changed = true;
  }
}

HandsIntent draw_hands_page(ui::Registry& registry, const ui::Fonts& fonts, const HandsView& view,
                            const Settings& settings, HandsPageState& state) {
  PageFrame page{registry, fonts, view, state, settings};
  heading(page, "Hands and ears");
  ImGui::SameLine();
  {
    const ui::UseFont small(page.fonts.small);
    ImGui::TextUnformatted("  ring above the line: the device    bar below it: the hand");
  }
  ImGui::SameLine(0.56f * ImGui::GetContentRegionAvail().x);
  draw_foot(page);
  // Both halves scroll by themselves and let the keyboard walk in and out of them.
  constexpr ImGuiWindowFlags kHalf = ImGuiWindowFlags_NavFlattened;
  const float left = 0.54f * ImGui::GetContentRegionAvail().x;
  ImGui::BeginChild("devices", {left, 0.0f}, false, kHalf);
  draw_axes(page);
  draw_calibration(page);
  ImGui::Separator();
  draw_switches(page);
  ImGui::EndChild();
  ImGui::SameLine();
  ImGui::BeginChild("keys", {0.0f, 0.0f}, false, kHalf);
  draw_keys(page);
  ImGui::EndChild();
  HandsIntent intent;
  if (page.changed) intent.changed = page.settings;
  intent.listen = state.waiting.has_value();
  intent.close = page.close;
  return intent;
}

}  // namespace stallwright::input
