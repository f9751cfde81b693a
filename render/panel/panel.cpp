#include "render/panel/panel.hpp"

#include "render/panel/dials.hpp"
#include "render/panel/panel_layout.hpp"

namespace stallwright::panel {
namespace {

struct Entry {
  void (*draw)(const Dial&, const view::PanelView&);
  const char* what;
};

constexpr Entry kEntries[kDials] = {
    {airspeed_dial,
     "Airspeed as read, kt. White arc: flaps may be used, V_S0 to V_FE. Green: normal, V_S1 to V_NO. Yellow: "
     "smooth air "
     "only, V_NO to V_NE. Red line: never, V_NE. The book's speeds, calibrated, at maximum mass: lighter it "
     "stalls "
     "slower, in a turn faster."},
    {attitude_dial, "Attitude. Lines each 5 degrees of pitch, bank marks at 10, 20, 30 and 60 degrees."},
    {altimeter, "Height above sea level on the QNH set, ft: the needle goes round once in 1,000 ft."},
    {turn_and_slip,
     "Turn needle: on a block, a full turn takes two minutes. Ball: step on the pedal of the side it rolls "
     "to."},
    {heading_dial, "Heading, degrees true."},
    {vertical_speed_dial, "Vertical speed, hundreds of ft/min. It lags by about two seconds."}};

void tooltip(const Dial& dial, const char* what) {
  const ImGuiIO& io = ImGui::GetIO();
  const float x = io.MousePos.x - dial.centre.x, y = io.MousePos.y - dial.centre.y;
  if (io.WantCaptureMouse || x * x + y * y > dial.radius * dial.radius) return;
  const ui::UseFont font(dial.fonts.small);
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(dial.px(420.0f));
  ImGui::TextUnformatted(what);
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

}  // namespace

void draw_panel(const view::PanelView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to, NeedleLog* log) {
  ImDrawList& list = *ImGui::GetBackgroundDrawList();
  list.AddRectFilled(from, to, ui::colour(ui::kTheme.panel));
  const PanelLayout layout = panel_layout(from, to, fonts.scale);
  for (std::size_t k = 0; k < kDials; ++k) {
    const Dial dial{list, fonts, layout.dials[k], layout.radius, log};
    kEntries[k].draw(dial, view);
    tooltip(dial, kEntries[k].what);
  }
  for (std::size_t k = 0; k < kGauges; ++k)
    draw_gauge(k, {list, fonts, layout.gauges[k].from, layout.gauges[k].to, log}, view);
}

}  // namespace stallwright::panel
