#include "render/ui/screen_text.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace stallwright::ui {
namespace {

/// A glyph is known by where its picture lies in the atlas: no two glyphs of any font share the place.
using Place = std::tuple<float, float, float, float>;
struct Letter {
  const ImFont* font;
  const ImFontGlyph* glyph;
};
using Letters = std::map<Place, Letter>;

Letters letters_of(const ImFontAtlas& atlas) {
  Letters letters;
  for (const ImFont* font : atlas.Fonts)
    for (const ImFontGlyph& glyph : font->Glyphs)
      if (glyph.Visible) letters[{glyph.U0, glyph.V0, glyph.U1, glyph.V1}] = {font, &glyph};
  return letters;
}

void append_utf8(std::string& text, unsigned letter) {
  char bytes[5] = {};
  ImTextCharToUtf8(bytes, letter);
  text += bytes;
}

/// Puts letters together to texts. AddText moves on by exactly the glyph's advance, so the next letter of the same call is
/// found at the pen, or a whole number of spaces further.
class Collector {
 public:
  void add(const Letter& letter, const ImDrawVert* quad, const Box& clip) {
    const ImFontGlyph& g = *letter.glyph;
    const float scale = (quad[2].pos.y - quad[0].pos.y) / (g.Y1 - g.Y0);
    const ImVec2 at = {quad[0].pos.x - g.X0 * scale, quad[0].pos.y - g.Y0 * scale};
    const int spaces = spaces_before(letter, scale, at, quad[0].col);
    if (spaces < 0) begin(letter, scale, at, quad[0].col, clip);
    ShownText& text = texts_.back();
    for (int k = 0; k < spaces; ++k) text.text += ' ';
    append_utf8(text.text, g.Codepoint);
    pen_x_ = at.x + g.AdvanceX * scale;
    text.line.to.x = pen_x_;
    text.ink.from = {std::min(text.ink.from.x, quad[0].pos.x), std::min(text.ink.from.y, quad[0].pos.y)};
    text.ink.to = {std::max(text.ink.to.x, quad[2].pos.x), std::max(text.ink.to.y, quad[2].pos.y)};
  }
  std::vector<ShownText> take() { return std::move(texts_); }

 private:
  /// How many spaces lie between the text so far and this letter; -1: it begins another text.
  int spaces_before(const Letter& letter, float scale, ImVec2 at, ImU32 colour) const {
    if (texts_.empty()) return -1;
    const ShownText& text = texts_.back();
    const bool alike = text.font == letter.font && text.colour == colour &&
                       std::abs(text.size_px - letter.font->FontSize * scale) < 0.05f &&
                       std::abs(text.line.from.y - at.y) < 0.05f;
    if (!alike) return -1;
    const float gap = (at.x - pen_x_) / (letter.font->GetCharAdvance(' ') * scale);
    const float whole = std::round(gap);
    return std::abs(gap - whole) < 0.02f && whole >= 0.0f && whole <= 4.0f ? static_cast<int>(whole) : -1;
  }

  void begin(const Letter& letter, float scale, ImVec2 at, ImU32 colour, const Box& clip) {
    ShownText text;
    text.font = letter.font;
    text.size_px = letter.font->FontSize * scale;
    text.line = {at, {at.x, at.y + text.size_px}};
    text.ink = {{1e9f, 1e9f}, {-1e9f, -1e9f}};
    text.clip = clip;
    text.colour = colour;
    texts_.push_back(text);
  }

  std::vector<ShownText> texts_;
  float pen_x_ = 0.0f;
};

void read_command(const ImDrawList& list, const ImDrawCmd& command, const Letters& letters, Collector& into) {
  const Box clip = {{command.ClipRect.x, command.ClipRect.y}, {command.ClipRect.z, command.ClipRect.w}};
  const ImDrawVert* vertices = list.VtxBuffer.Data + command.VtxOffset;
  const ImDrawIdx* index = list.IdxBuffer.Data + command.IdxOffset;
  for (unsigned k = 0; k + 5 < command.ElemCount;) {
    const ImDrawIdx first = index[k];
    const bool quad = index[k + 1] == first + 1 && index[k + 2] == first + 2 && index[k + 3] == first &&
                      index[k + 4] == first + 2 && index[k + 5] == first + 3;
    const ImDrawVert* v = vertices + first;
    const auto letter = quad ? letters.find({v[0].uv.x, v[0].uv.y, v[2].uv.x, v[2].uv.y}) : letters.end();
    if (letter != letters.end()) into.add(letter->second, v, clip);
    k += letter != letters.end() ? 6 : 3;
  }
}

Box common(const Box& a, const Box& b) {
  return {{std::max(a.from.x, b.from.x), std::max(a.from.y, b.from.y)},
          {std::min(a.to.x, b.to.x), std::min(a.to.y, b.to.y)}};
}

}  // namespace

float ShownText::seen_share() const {
  const Box seen = common(ink, clip);
  if (seen.width() <= 0.0f || seen.height() <= 0.0f) return 0.0f;
  return seen.width() * seen.height() / (ink.width() * ink.height());
}

std::vector<ShownText> read_texts(const ImDrawData& drawn) {
  const Letters letters = letters_of(*ImGui::GetIO().Fonts);
  Collector collector;
  for (int k = 0; k < drawn.CmdListsCount; ++k)
    for (const ImDrawCmd& command : drawn.CmdLists[k]->CmdBuffer)
      if (command.UserCallback == nullptr) read_command(*drawn.CmdLists[k], command, letters, collector);
  return collector.take();
}

bool shows(const ImDrawData& drawn, const std::string& words) {
  for (const ShownText& text : read_texts(drawn))
    if (text.text.find(words) != std::string::npos) return true;
  return false;
}

}  // namespace stallwright::ui
