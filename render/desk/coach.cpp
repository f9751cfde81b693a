#include "render/desk/coach.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/ui/theme.hpp"

namespace stallwright::desk {
namespace {

using ui::colour;
using ui::kTheme;

constexpr float kLeftShare = 0.36f, kButtonsShare = 0.17f, kNameWide_px = 48.0f, kFigureWide_px = 86.0f;

void write(ImDrawList& list, ImFont* font, ImVec2 at, const ui::Colour& c, const char* text,
           float wrap = 0.0f) {
  list.AddText(font, font->FontSize, at, colour(c), text, nullptr, wrap);
}

void draw_bead(ImDrawList& list, ImVec2 at, bool within, float s) {
  if (within) {
    list.AddCircleFilled(at, 5.0f * s, colour(kTheme.within));
    list.AddCircle(at, 5.0f * s, colour(kTheme.ivory), 0, 1.2f * s);
    return;
  }
  list.AddRectFilled({at.x - 5.0f * s, at.y - 9.0f * s}, {at.x + 5.0f * s, at.y + 9.0f * s},
                     colour(kTheme.outside));
  list.AddLine({at.x - 5.0f * s, at.y}, {at.x + 5.0f * s, at.y}, colour(kTheme.panel), 2.0f * s);
}

/// A band as a bar: its name, the allowed part as an open box about the target, the value a round bead, the figure. Outside the
/// box the bead turns into a barred orange one.
void draw_bar(ImDrawList& list, const view::BandBar& bar, const ui::Fonts& fonts, ImVec2 from, ImVec2 to) {
  const float s = fonts.scale, y = 0.5f * (from.y + to.y), text_y = y - 0.5f * fonts.small->FontSize;
  const float left = from.x + kNameWide_px * s, width = to.x - kFigureWide_px * s - left;
  write(list, fonts.small, {from.x, text_y}, kTheme.soft, bar.name);
  // The box takes the middle half; a value that is far out stands at the end of the line.
  const double span = std::max(bar.low + bar.high, 1e-6) * 2.0;
  const double middle = 0.5 * (bar.high - bar.low);
  const auto at = [&](double off) {
    return left + static_cast<float>(std::clamp(0.5 + (off - middle) / span, 0.02, 0.98)) * width;
  };
  list.AddLine({left, y}, {left + width, y}, colour(kTheme.edge), 2.0f * s);
  const float tall = 7.0f * s;
  list.AddRect({at(-bar.low), y - tall}, {at(bar.high), y + tall}, colour(kTheme.ivory), 0.0f, 0, 1.5f * s);
  list.AddLine({at(0.0), y - tall}, {at(0.0), y + tall}, colour(kTheme.soft), 1.0f * s);
  draw_bead(list, {at(bar.off), y}, bar.within, s);
  char text[48];
  const bool fine = bar.unit[0] == '\0', degree = bar.unit[0] == '\xc2';
  const double steps = fine ? 10.0 : 1.0, off = std::round(bar.off * steps) / steps + 0.0;  // no "-0"
  std::snprintf(text, sizeof text, fine ? "%+.1f%s%s" : "%+.0f%s%s", off, fine || degree ? "" : " ",
                bar.unit);
  const ImVec2 size = fonts.small->CalcTextSizeA(fonts.small->FontSize, 1e6f, 0.0f, text);
  write(list, fonts.small, {to.x - size.x, text_y}, bar.within ? kTheme.ivory : kTheme.outside, text);
}

/// Settling or record progress: a rule that fills, with its word. How long a run to the stall takes nobody knows: the word alone.
void draw_progress(ImDrawList& list, const view::CoachView& view, const ui::Fonts& fonts, ImVec2 from,
                   float width) {
  const float s = fonts.scale;
  const double share = view.recording ? view.record_share : view.settled_share;
  const char* word = view.recording ? (view.forced ? "RECORDING, off condition" : "RECORDING")
                     : share >= 1.0 ? "on condition"
                     : share > 0.0  ? "settling"
                                    : "not on condition";
  write(list, fonts.small, from, view.recording ? kTheme.measured : kTheme.soft, word);
  if (view.recording && share <= 0.0) return;
  const float y = from.y + fonts.small->FontSize + 4.0f * s, tall = 7.0f * s;
  list.AddRect({from.x, y}, {from.x + width, y + tall}, colour(kTheme.soft), 0.0f, 0, 1.0f * s);
  const ui::Colour& fill = view.recording ? kTheme.measured : kTheme.within;
  list.AddRectFilled({from.x + s, y + s},
                     {from.x + s + static_cast<float>(share) * (width - 2.0f * s), y + tall - s},
                     colour(fill));
}

void draw_words(ImDrawList& list, const view::CoachView& view, const ui::Fonts& fonts, ImVec2 from,
                float width) {
  const float s = fonts.scale;
  write(list, fonts.small, from, kTheme.soft, view.point.c_str());
  const float y = from.y + fonts.small->FontSize + 3.0f * s;
  write(list, fonts.bold, {from.x, y}, view.urgent ? kTheme.danger : kTheme.ivory, view.phase.c_str(), width);
  const ImVec2 size = fonts.bold->CalcTextSizeA(fonts.bold->FontSize, 1e6f, width, view.phase.c_str());
  write(list, fonts.body, {from.x, y + size.y + 2.0f * s},
        view.refusal.empty() ? kTheme.ivory : kTheme.outside,
        view.refusal.empty() ? view.now.c_str() : view.refusal.c_str(), width);
}

/// What may be pressed now stands out; the rest is dimmed, so that the next step shows.
CoachIntent draw_buttons(ui::Registry& registry, const view::CoachView& view, const ui::Fonts& fonts,
                         ImVec2 from, float width) {
  CoachIntent intent;
  const float s = fonts.scale, half = 0.5f * (width - 6.0f * s), tall = fonts.small->FontSize + 10.0f * s;
  const float right = from.x + half + 6.0f * s, below = from.y + tall + 5.0f * s;
  const ui::UseFont small(fonts.small);
  ImGui::SetCursorScreenPos(from);
  intent.record = ui::button(registry, "Record", {half, tall}, view.may_record);
  ImGui::SetCursorScreenPos({right, from.y});
  intent.record_anyway = ui::button(registry, "Record anyway", {half, tall}, view.may_record);
  ImGui::SetCursorScreenPos({from.x, below});
  intent.area_clear = ui::button(registry, "Area clear", {half, tall}, view.may_clear);
  ImGui::SetCursorScreenPos({right, below});
  intent.knock_it_off = ui::button(registry, "Knock it off", {half, tall}, view.may_knock_off);
  return intent;
}

}  // namespace

float coach_height(const ui::Fonts& fonts, bool guide) { return (guide ? 112.0f : 88.0f) * fonts.scale; }

CoachIntent draw_coach(const view::CoachView& view, ui::Registry& registry, const ui::Fonts& fonts,
                       ImVec2 from, ImVec2 to) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float s = fonts.scale, gap = 12.0f * s, width = to.x - from.x;
  list.AddRectFilled(from, to, colour(kTheme.panel));
  list.AddLine(from, {to.x, from.y}, colour(kTheme.edge), 2.0f * s);
  const float guide_tall = view.guide.empty() ? 0.0f : fonts.body->FontSize + 8.0f * s;
  const float bottom = to.y - guide_tall;
  const float left = kLeftShare * width, buttons = std::max(kButtonsShare * width, 236.0f * s);
  draw_words(list, view, fonts, {from.x + gap, from.y + 6.0f * s}, left - gap);
  const float bars_from = from.x + left + gap, bars_to = to.x - buttons - 2.0f * gap;
  const float column = (bars_to - bars_from - gap) / 2.0f, row = (bottom - from.y - 8.0f * s) / 3.0f;
  for (std::size_t k = 0; k < view.bars.size() && k < 5; ++k) {
    const float x = bars_from + static_cast<float>(k % 2) * (column + gap);
    const float y = from.y + 5.0f * s + static_cast<float>(k / 2) * row;
    draw_bar(list, view.bars[k], fonts, {x, y}, {x + column, y + row});
  }
  if (view.bars.size() < 6 && !view.bars.empty()) {
    const float x = bars_from + column + gap;
    draw_progress(list, view, fonts, {x, from.y + 5.0f * s + 2.0f * row}, column);
  }
  if (!view.guide.empty()) {
    list.AddLine({from.x + gap, bottom}, {to.x - gap, bottom}, colour(kTheme.edge), s);
    write(list, fonts.body, {from.x + gap, bottom + 3.0f * s}, kTheme.ivory, view.guide.c_str());
  }
  const ImVec2 right{to.x - buttons - gap, from.y + 10.0f * s};
  if (!view.watched) return draw_buttons(registry, view, fonts, right, buttons);
  write(list, fonts.body, right, kTheme.ivory, "Watching:\nthe simulated pilot flies", buttons);
  return {};
}

}  // namespace stallwright::desk
