#include <cstdio>

#include "render/input/hands_page_parts.hpp"
#include "render/ui/theme.hpp"

namespace stallwright::input {
namespace {

using ui::kTheme;

/// The travel as a line; above it a ring where the device stands, below it a bar where the hand stands. A lever begins at
/// the left.
void draw_travel(const PageFrame& page, Axis axis, const AxisSeen& seen) {
  const bool lever = axis == Axis::throttle;
  const float width = page.px(250.0f), height = page.px(30.0f), end = page.px(8.0f);
  const ImVec2 from = ImGui::GetCursorScreenPos();
  const float y = from.y + 0.5f * height, left = from.x + end, right = from.x + width - end;
  const auto x_of = [&](double value) {
    const double share = lever ? value : 0.5 + 0.5 * value;
    return left + static_cast<float>(share) * (right - left);
  };
  ImDrawList& draw = *ImGui::GetWindowDrawList();
  draw.AddLine({left, y}, {right, y}, ui::colour(kTheme.soft), page.px(1.5f));
  const auto tick = [&](float x) {
    draw.AddLine({x, y - page.px(5.0f)}, {x, y + page.px(5.0f)}, ui::colour(kTheme.soft), page.px(1.5f));
  };
  tick(left);
  tick(right);
  if (!lever) tick(x_of(0.0));
  if (seen.source)
    draw.AddCircle({x_of(seen.straight), y - page.px(8.0f)}, page.px(4.5f), ui::colour(kTheme.measured), 16,
                   page.px(2.0f));
  const float x = x_of(seen.out);
  draw.AddRectFilled({x - page.px(2.0f), y + page.px(1.0f)}, {x + page.px(2.0f), y + page.px(14.0f)},
                     ui::colour(kTheme.ivory));
  ImGui::Dummy({width, height});
}

void source_text(const PageFrame& page, Axis axis, char (&text)[160]) {
  const AxisSeen& seen = page.view.axes[place_of(axis)];
  const AxisSetting& chosen = page.settings.axes[place_of(axis)];
  if (page.state.finding == axis)
    std::snprintf(text, sizeof text, "now move what is to be the %s", kAxisNames[place_of(axis)]);
  else if (seen.source)
    std::snprintf(text, sizeof text, "%.36s, axis %d%s",
                  (*page.view.devices)[seen.source->device].name.c_str(), seen.source->axis + 1,
                  chosen.device == kAutomatic ? " (by itself)" : "");
  else if (chosen.device == kAutomatic || chosen.device == kKeyboard)
    std::snprintf(text, sizeof text, "keyboard");
  else
    std::snprintf(text, sizeof text, "keyboard, until %.36s is plugged in",
                  chosen.device_name.empty() ? "the chosen device" : chosen.device_name.c_str());
}

bool axis_button(PageFrame& page, const char* verb, Axis axis, bool enabled) {
  ImGui::SameLine();
  return named_button(page, verb, std::string(verb) + ' ' + kAxisNames[place_of(axis)], 0.0f, enabled);
}

/// At the right end of the line.
void draw_values(const PageFrame& page, const AxisSeen& seen) {
  char text[80];
  if (seen.source)
    std::snprintf(text, sizeof text, "device %+.2f   hand %+.2f", seen.straight, seen.out);
  else
    std::snprintf(text, sizeof text, "hand %+.2f", seen.out);
  const ui::UseFont small(page.fonts.small);
  ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - ImGui::CalcTextSize(text).x);
  ImGui::TextUnformatted(text);
}

void draw_choice_of_device(PageFrame& page, Axis axis) {
  AxisSetting& chosen = page.settings.axes[place_of(axis)];
  if (axis_button(page, "Find", axis, !page.view.devices->empty())) {
    page.state.finding = axis;
    page.state.found_from = page.view.raw;
  }
  if (axis_button(page, "Automatic", axis, chosen.device != kAutomatic)) {
    chosen = {};
    page.changed = true;
  }
  if (axis_button(page, "Keyboard", axis, chosen.device != kKeyboard)) {
    chosen = {};
    chosen.device = kKeyboard;
    page.changed = true;
  }
}

/// Sense, dead zone, curve of the device that serves now. Touching one makes the device a choice of its own.
void draw_shape(PageFrame& page, Axis axis) {
  const AxisSeen& seen = page.view.axes[place_of(axis)];
  if (!seen.source) return;
  AxisShape shape = seen.source->shape;
  const std::string of = std::string(" of ") + kAxisNames[place_of(axis)];
  bool touched = named_check(page, "turned round", "turned round" + of, shape.inverted);
  ImGui::SameLine();
  touched |= named_slider(page, "dead zone", "dead zone" + of, shape.dead_zone, 0.5);
  if (axis != Axis::throttle) {
    ImGui::SameLine();
    touched |= named_slider(page, "soft middle", "soft middle" + of, shape.curve, 1.0);
  }
  if (!touched) return;
  make_own(page.settings, axis, page.view);
  page.settings.axes[place_of(axis)].shape = shape;
  page.changed = true;
}

void find_axis(PageFrame& page) {
  if (!page.state.finding) return;
  const auto found = moved_axis(page.state.found_from, page.view.raw);
  if (!found) return;
  const DeviceInfo& device = (*page.view.devices)[found->device];
  AxisSetting& chosen = page.settings.axes[place_of(*page.state.finding)];
  chosen = {device.guid, device.name, found->axis, {}};
  // A lever pushed forward reads low on what is sold (common practice): power, then, at that end.
  if (*page.state.finding == Axis::throttle) chosen.shape.inverted = true;
  page.state.finding.reset();
  page.changed = true;
}

}  // namespace

void draw_axes(PageFrame& page) {
  find_axis(page);
  char text[160];
  for (std::size_t k = 0; k < kAxes; ++k) {
    const Axis axis = static_cast<Axis>(k);
    ImGui::PushID(static_cast<int>(k));
    {
      const ui::UseFont bold(page.fonts.bold);
      ImGui::TextUnformatted(kAxisNames[k]);
    }
    ImGui::SameLine(page.px(90.0f));
    source_text(page, axis, text);
    ImGui::TextUnformatted(text);
    draw_values(page, page.view.axes[k]);
    draw_travel(page, axis, page.view.axes[k]);
    draw_choice_of_device(page, axis);
    draw_shape(page, axis);
    ImGui::Spacing();
    ImGui::PopID();
  }
}

void draw_calibration(PageFrame& page) {
  HandsPageState& state = page.state;
  if (!state.calibrating) {
    if (ui::button(page.registry, "Calibrate", {0.0f, 0.0f}, !page.view.devices->empty())) {
      state.calibrating = true;
      state.travels = {};
    }
    return;
  }
  state.travels = widened(state.travels, page.view);
  ImGui::TextUnformatted(
      "Move all of them to every stop. Then let go, so that they rest in the middle, and say done.");
  if (ui::button(page.registry, "Done calibrating")) {
    page.settings = calibrated_settings(page.settings, state.travels, page.view);
    page.changed = true;
    state.calibrating = false;
  }
  ImGui::SameLine();
  if (ui::button(page.registry, "Calibrate another time")) state.calibrating = false;
}

}  // namespace stallwright::input
