#include "render/desk/pen.hpp"

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <cstring>

namespace stallwright::desk {

using ui::colour;

float Pen::width(ImFont* font, const char* text) {
  return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, text).x;
}

namespace {

/// Where the line that begins here ends. At blanks alone: ImGui breaks after a full stop too, and so in the middle of a number.
const char* end_of_line(ImFont* font, const char* begin, float width) {
  const char* end = begin;
  for (const char* at = begin; *at != '\0' && *at != '\n';) {
    const char* word = at + std::strspn(at, " ");
    word += std::strcspn(word, " \n");
    const float wide = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, begin, word).x;
    if (wide > width && end != begin) return end;
    end = at = word;
  }
  return end;
}

/// The beginning of the next line.
const char* next_line(const char* end) {
  if (*end == '\n') return end + 1;
  return end + std::strspn(end, " ");
}

}  // namespace

float Pen::wrapped_height(ImFont* font, const char* text, float width) {
  float height = 0.0f;
  for (; *text != '\0'; text = next_line(end_of_line(font, text, width))) height += font->FontSize;
  return height;
}

float Pen::text(ImFont* font, ImVec2 at, const ui::Colour& c, const char* text, Align align) {
  const float w = width(font, text);
  if (align == Align::middle) at.x -= 0.5f * w;
  if (align == Align::right) at.x -= w;
  // On whole pixels letters stay sharp.
  list_.AddText(font, font->FontSize, {std::round(at.x), std::round(at.y)}, colour(c), text);
  return w;
}

void Pen::fitted(ImFont* font, ImVec2 at, const ui::Colour& c, const char* text, float most) {
  if (width(font, text) <= most) {
    this->text(font, at, c, text);
    return;
  }
  const char* end = text;
  const float room = most - width(font, "\u2026");
  font->CalcTextSizeA(font->FontSize, std::max(room, 0.0f), 0.0f, text, nullptr, &end);
  const ImVec2 from{std::round(at.x), std::round(at.y)};
  list_.AddText(font, font->FontSize, from, colour(c), text, end);
  const float w = font->CalcTextSizeA(font->FontSize, FLT_MAX, 0.0f, text, end).x;
  list_.AddText(font, font->FontSize, {std::round(from.x + w), from.y}, colour(c), "\u2026");
}

float Pen::wrapped(ImFont* font, ImVec2 at, const ui::Colour& c, const char* text, float width) {
  float y = std::round(at.y);
  while (*text != '\0') {
    const char* end = end_of_line(font, text, width);
    list_.AddText(font, font->FontSize, {std::round(at.x), y}, colour(c), text, end);
    y += font->FontSize;
    text = next_line(end);
  }
  return y - std::round(at.y);
}

void Pen::line(ImVec2 from, ImVec2 to, const ui::Colour& c, float thick, float alpha) {
  list_.AddLine(from, to, colour(c, alpha), std::max(1.0f, px(thick)));
}

void Pen::dashed(ImVec2 from, ImVec2 to, const ui::Colour& c, float on, float off, float thick) {
  const float dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy);
  if (length <= 0.0f) return;
  const float step = px(on + off), drawn = px(on);
  for (float s = 0.0f; s < length; s += step) {
    const float e = std::min(s + drawn, length);
    line({from.x + dx * s / length, from.y + dy * s / length},
         {from.x + dx * e / length, from.y + dy * e / length}, c, thick);
  }
}

void Pen::box(ImVec2 from, ImVec2 to, const ui::Colour& c, float alpha) {
  list_.AddRectFilled(from, to, colour(c, alpha));
}

void Pen::frame(ImVec2 from, ImVec2 to, const ui::Colour& c, float thick) {
  list_.AddRect(from, to, colour(c), 0.0f, 0, std::max(1.0f, px(thick)));
}

void Pen::round_mark(ImVec2 at, float radius, const ui::Colour& c) {
  list_.AddCircleFilled(at, px(radius), colour(c), 20);
  list_.AddCircle(at, px(radius), colour(ui::kTheme.dial), 20, std::max(1.0f, px(1.0f)));
}

void Pen::diamond(ImVec2 at, float radius, const ui::Colour& c) {
  const float r = px(radius) * 1.25f;
  const ImVec2 top{at.x, at.y - r}, right{at.x + r, at.y}, bottom{at.x, at.y + r}, left{at.x - r, at.y};
  list_.AddQuadFilled(top, right, bottom, left, colour(c));
  list_.AddQuad(top, right, bottom, left, colour(ui::kTheme.dial), std::max(1.0f, px(1.0f)));
}

void Pen::cross(ImVec2 at, float radius, const ui::Colour& c) {
  const float r = px(radius);
  line({at.x - r, at.y - r}, {at.x + r, at.y + r}, c, 2.5f);
  line({at.x - r, at.y + r}, {at.x + r, at.y - r}, c, 2.5f);
}

void Pen::tick(ImVec2 at, float radius, const ui::Colour& c) {
  const float r = px(radius);
  const ImVec2 corner{at.x - 0.25f * r, at.y + 0.8f * r};
  line({at.x - r, at.y}, corner, c, 2.2f);
  line(corner, {at.x + r, at.y - 0.9f * r}, c, 2.2f);
}

void Pen::bar(ImVec2 at, float radius, const ui::Colour& c) {
  const float r = px(radius);
  line({at.x - r, at.y}, {at.x + r, at.y}, c, 3.0f);
}

void Pen::whisker(float x_low, float x_high, float y, float cap, const ui::Colour& c) {
  const float h = px(cap);
  line({x_low, y}, {x_high, y}, c, 1.6f);
  line({x_low, y - h}, {x_low, y + h}, c, 1.6f);
  line({x_high, y - h}, {x_high, y + h}, c, 1.6f);
}

}  // namespace stallwright::desk
