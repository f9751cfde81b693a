#pragma once
#include <cstddef>

#include "render/desk/pen.hpp"
#include "render/ui/widgets.hpp"

namespace stallwright::desk {

/// One of several, as buttons that break into a new line where they do not fit. The chosen one is marked by a lighter ground, a
/// light frame and a dot.
///   name_of  the label of an entry, unique on the page; it stays valid during the call
/// Returns the height that was used; `chosen` changes when one is pressed.
template <class NameOf>
float options(ui::Registry& registry, Pen& pen, const char* name, ImVec2 at, float width, std::size_t count,
              NameOf name_of, std::size_t& chosen);

/// One entry; true when pressed.
bool option(ui::Registry& registry, Pen& pen, const char* label, ImVec2 at, ImVec2 size, bool chosen);

/// A heading over a thin rule; returns where what follows begins.
float heading(Pen& pen, float x, float y, float right, const char* text);

template <class NameOf>
float options(ui::Registry& registry, Pen& pen, const char* name, ImVec2 at, float width, std::size_t count,
              NameOf name_of, std::size_t& chosen) {
  const float height = pen.px(30), gap = pen.px(6);
  float x = at.x, y = at.y;
  ImGui::PushID(name);
  for (std::size_t k = 0; k < count; ++k) {
    const char* label = name_of(k);
    const float wide = Pen::width(pen.fonts().body, label) + pen.px(35);
    if (x > at.x && x + wide > at.x + width) {
      x = at.x;
      y += height + gap;
    }
    if (option(registry, pen, label, {x, y}, {wide, height}, k == chosen)) chosen = k;
    x += wide + gap;
  }
  ImGui::PopID();
  return y + height - at.y;
}

}  // namespace stallwright::desk
