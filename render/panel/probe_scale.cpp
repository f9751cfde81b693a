#include "render/panel/probe_scale.hpp"

#include <algorithm>
#include <cmath>

#include "render/panel/peg_names.hpp"
#include "render/panel/ruler.hpp"

namespace stallwright::panel {
namespace {

using ui::kTheme;

/// Level, with an end bar each side. An interval that is no pair of numbers has none.
void whisker(const Ruler& r, const view::Peg& p, float level, NeedleLog* log) {
  if (!std::isfinite(p.low) || !std::isfinite(p.high)) return;
  const ui::Colour& colour = p.lit ? kTheme.ivory : kTheme.soft;
  const float low = r.x(p.low), high = r.x(p.high), width = p.lit ? 1.8f : 1.2f;
  r.line({low, level}, {high, level}, colour, width);
  for (const float end : {low, high})
    r.line({end, level - r.px(3.0f)}, {end, level + r.px(3.0f)}, colour, width);
  if (log == nullptr) return;
  log->add({"low", p.low, {r.left, level}, {low, level}, r.right - r.left});
  log->add({"high", p.high, {r.left, level}, {high, level}, r.right - r.left});
}

/// A peg stands on the line, whisker through it: full where it is lit, hollow and short where not.
void peg(const Ruler& r, const view::Peg& p, NeedleLog* log) {
  const float x = r.x(p.ratio), tall = r.px(p.lit ? 15.0f : 10.0f), half = r.px(3.0f);
  whisker(r, p, r.y - tall * 0.55f, log);
  const ImVec2 a = {x - half, r.y - tall}, b = {x + half, r.y};
  r.list.AddRectFilled(a, b, ui::colour(p.lit ? kTheme.ivory : kTheme.panel));
  r.list.AddRect(a, b, ui::colour(p.lit ? kTheme.panel : kTheme.soft), 0.0f, 0, r.px(1.0f));
  if (log != nullptr) log->add({"peg", p.ratio, {r.left, r.y}, {x, r.y}, r.right - r.left});
}

void pegs(const Ruler& r, NeedleLog* log) {
  const auto of = [&](bool lit) {
    for (std::size_t k = 0; k < r.view.peg_count; ++k)
      if (r.view.pegs[k].lit == lit) peg(r, r.view.pegs[k], log);
  };
  of(false);
  of(true);  // over the others
}

/// On ground of its own, so that the needle passes behind the words.
void name_on_ground(const Ruler& r, ImVec2 at, const char* words, const ui::Colour& colour) {
  const float gap = r.px(2.0f);
  r.list.AddRectFilled({at.x - gap, at.y},
                       {at.x + r.width(r.fonts.small, words) + gap, at.y + r.fonts.small->FontSize},
                       ui::colour(kTheme.panel));
  r.text(r.fonts.small, at, words, colour);
}

void names(const Ruler& r) {
  const auto row_top = [&](int row) { return r.from.y + r.px(3.0f + kNameRow_px * static_cast<float>(row)); };
  if (r.view.peg_count == 0) {
    name_on_ground(r, {r.left, row_top(r.name_rows - 1)}, "no set points yet", kTheme.soft);
    return;
  }
  const PegNames placed = place_names(r.view, *r.fonts.small, r.name_rows, r.px(8.0f), r.left, r.right);
  for (std::size_t k = 0; k < placed.count; ++k) {  // leaders first: words stand over them
    const PegName& name = placed.names[k];
    const float x = r.x(r.view.pegs[name.peg].ratio), top = row_top(name.row) + r.fonts.small->FontSize;
    r.line({x, r.y - r.px(15.0f)}, {std::clamp(x, name.x, name.x + name.width), top}, kTheme.edge, 1.2f);
  }
  for (std::size_t k = 0; k < placed.count; ++k) {
    const PegName& name = placed.names[k];
    name_on_ground(r, {name.x, row_top(name.row)}, name.words.data(),
                   r.view.pegs[name.peg].lit ? kTheme.ivory : kTheme.soft);
  }
}

void needle_line(const Ruler& r) {
  const float x = r.x(r.view.ratio);
  r.line({x, r.from.y + r.px(2.0f)}, {x, r.y}, kTheme.ivory, 2.0f);
}

void bead(const Ruler& r, NeedleLog* log) {
  const ImVec2 at = {r.x(r.view.ratio), r.y};
  r.list.AddCircleFilled(at, r.px(6.5f), ui::colour(kTheme.panel));
  r.list.AddCircleFilled(at, r.px(5.0f), ui::colour(kTheme.ivory));
  if (log != nullptr) log->add({"probe ratio", r.view.ratio, {r.left, r.y}, at, r.right - r.left});
}

}  // namespace

void draw_probe_scale(const view::ProbeScaleView& view, const ui::Fonts& fonts, ImVec2 from, ImVec2 to,
                      NeedleLog* log) {
  const Ruler r = ruler(view, fonts, from, to);
  r.list.AddRectFilled(from, to, ui::colour(kTheme.panel));
  r.line({from.x, to.y}, to, kTheme.edge, 1.0f);
  draw_ruler(r);
  pegs(r, log);
  needle_line(r);
  names(r);
  bead(r, log);
}

}  // namespace stallwright::panel
