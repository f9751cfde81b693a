#pragma once
#include "render/input/hands_page.hpp"

namespace stallwright::input {

/// What the parts of the page share while one frame is drawn.
struct PageFrame {
  ui::Registry& registry;
  const ui::Fonts& fonts;
  const HandsView& view;
  HandsPageState& state;
  Settings settings;     ///< as they are to be
  bool changed = false;  ///< they differ from what is in force
  bool close = false;

  float px(float at_scale_1) const { return at_scale_1 * fonts.scale; }
};

/// Controls that show a short text many times over, each with a name of its own in the registry.
bool named_button(PageFrame& page, const char* shown, const std::string& name, float width = 0.0f,
                  bool enabled = true);
bool named_check(PageFrame& page, const char* shown, const std::string& name, bool& value);
bool named_slider(PageFrame& page, const char* shown, const std::string& name, double& value, double high);

void draw_axes(PageFrame& page);
void draw_calibration(PageFrame& page);
void draw_switches(PageFrame& page);
void draw_keys(PageFrame& page);

}  // namespace stallwright::input
