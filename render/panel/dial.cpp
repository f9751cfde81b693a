#include "render/panel/dial.hpp"

#include <cmath>
#include <cstdio>
#include <numbers>

namespace stallwright::panel {
namespace {

constexpr float kRadian = static_cast<float>(std::numbers::pi / 180.0);

/// A point `length` px from another, `angle_deg` clockwise from straight up.
ImVec2 away(ImVec2 from, double angle_deg, float length) {
  const float a = static_cast<float>(angle_deg) * kRadian;
  return {from.x + length * std::sin(a), from.y - length * std::cos(a)};
}

/// Long and thin, blunt at the tip; a dark edge keeps it apart from light markings below it. Returns where the tip was drawn.
ImVec2 blade(const Dial& dial, ImVec2 pivot, double angle_deg, float tail, float length) {
  const float root = 0.036f * dial.radius, tip = 0.014f * dial.radius;
  const ImVec2 end = away(pivot, angle_deg, length), start = away(pivot, angle_deg + 180.0, tail);
  const ImVec2 corners[] = {away(start, angle_deg - 90.0, root), away(end, angle_deg - 90.0, tip),
                            away(end, angle_deg + 90.0, tip), away(start, angle_deg + 90.0, root)};
  dial.list.AddConvexPolyFilled(corners, 4, ui::colour(ui::kTheme.ivory));
  dial.list.AddPolyline(corners, 4, ui::colour(ui::kTheme.dial), ImDrawFlags_Closed, dial.px(1.0f));
  return end;
}

}  // namespace

ImVec2 Dial::at(double angle_deg, float share) const { return away(centre, angle_deg, share * radius); }

ImVec2 Dial::offset(float right_share, float down_share) const {
  return {centre.x + right_share * radius, centre.y + down_share * radius};
}

ImFont* Dial::figures() const { return radius >= px(80.0f) ? fonts.body : fonts.small; }

void face(const Dial& dial) {
  dial.list.AddCircleFilled(dial.centre, dial.radius, ui::colour(ui::kTheme.dial));
  dial.list.AddCircle(dial.centre, dial.radius - dial.px(0.75f), ui::colour(ui::kTheme.edge), 0,
                      dial.px(1.5f));
}

void tick(const Dial& dial, double angle_deg, float from_share, float to_share, float width,
          const ui::Colour& colour) {
  dial.list.AddLine(dial.at(angle_deg, from_share), dial.at(angle_deg, to_share), ui::colour(colour),
                    dial.px(width));
}

void arc(const Dial& dial, double from_deg, double to_deg, float share, float width_share,
         const ui::Colour& colour) {
  const auto turned = [](double angle_deg) { return static_cast<float>(angle_deg - 90.0) * kRadian; };
  dial.list.PathArcTo(dial.centre, share * dial.radius, turned(from_deg), turned(to_deg), 48);
  dial.list.PathStroke(ui::colour(colour), ImDrawFlags_None, width_share * dial.radius);
}

void text(const Dial& dial, ImFont* font, ImVec2 middle, const char* words, const ui::Colour& colour) {
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, words);
  dial.list.AddText(font, font->FontSize, {middle.x - size.x / 2.0f, middle.y - size.y / 2.0f},
                    ui::colour(colour), words);
}

void figure(const Dial& dial, double angle_deg, float share, int number) {
  char words[12];
  std::snprintf(words, sizeof words, "%d", number);
  text(dial, dial.figures(), dial.at(angle_deg, share), words);
}

void counter(const Dial& dial, ImFont* font, ImVec2 middle, const char* words, const char* widest) {
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, widest);
  const float right = size.x / 2.0f + dial.px(4.0f), down = font->FontSize * 0.5f;
  const ImVec2 from = {middle.x - right, middle.y - down}, to = {middle.x + right, middle.y + down};
  dial.list.AddRectFilled(from, to, ui::colour(ui::kTheme.field), dial.px(2.0f));
  dial.list.AddRect(from, to, ui::colour(ui::kTheme.edge), dial.px(2.0f));
  text(dial, font, middle, words);
}

void needle(const Dial& dial, const char* name, double value, double angle_deg, float length_share) {
  const ImVec2 tip = blade(dial, dial.centre, angle_deg, 0.2f * dial.radius, length_share * dial.radius);
  dial.list.AddCircleFilled(dial.centre, 0.075f * dial.radius, ui::colour(ui::kTheme.edge));
  if (dial.log != nullptr) dial.log->add({name, value, dial.centre, tip, 0.0f});
}

void needle_from(const Dial& dial, const char* name, double value, ImVec2 pivot, double angle_deg,
                 float length_share) {
  const ImVec2 tip = blade(dial, pivot, angle_deg, 0.0f, length_share * dial.radius);
  dial.list.AddCircleFilled(pivot, 0.06f * dial.radius, ui::colour(ui::kTheme.edge));
  if (dial.log != nullptr) dial.log->add({name, value, pivot, tip, 0.0f});
}

}  // namespace stallwright::panel
