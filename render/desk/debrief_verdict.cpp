// First page of the debrief: the answer, and how far off each set point is.
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"
#include "render/desk/debrief_pages.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::PointView;

/// Left edges of the table's columns, px at scale 1 from its own; numbers are set to the right of theirs.
struct Columns {
  float name = 0, above = 200, should = 288, off = 308, sure = 486, why = 506;
};

void number(Pen& pen, ImVec2 right_top, double value, const ui::Colour& colour) {
  char text[32];
  if (std::isfinite(value))
    axis_text(text, sizeof text, value, 1);
  else
    std::snprintf(text, sizeof text, "\u2013");
  pen.text(pen.fonts().body, right_top, colour, text, Align::right);
}

void table_head(Pen& pen, ImVec2 at, float right) {
  const Columns c;
  const auto put = [&](float x, const char* first, const char* second, Align align) {
    pen.text(pen.fonts().small, {at.x + pen.px(x), at.y}, kTheme.soft, first, align);
    pen.text(pen.fonts().small, {at.x + pen.px(x), at.y + pen.px(16)}, kTheme.soft, second, align);
  };
  put(c.name, "", "set point", Align::left);
  put(c.above, "above stall,", "kt", Align::right);
  put(c.should, "it should", "be, kt", Align::right);
  put(c.off + 22, "", "it is", Align::left);
  put(c.sure, "known to", "\u00b1 kt, 95 %", Align::right);
  put(c.why, "", "and why", Align::left);
  pen.line({at.x, at.y + pen.px(37)}, {right, at.y + pen.px(37)}, kTheme.edge);
}

/// The mark says how bad it is: ticked within what it is known to, barred beyond, crossed where there is nothing.
void verdict_mark(Pen& pen, ImVec2 at, const PointView& p) {
  if (!p.found || p.order == "OUT OF ORDER")
    pen.cross(at, 5, kTheme.danger);
  else if (p.covered)
    pen.tick(at, 6, kTheme.within);
  else
    pen.bar(at, 6, kTheme.outside);
}

void table_row(Pen& pen, ImVec2 at, float right, const PointView& p) {
  const Columns c;
  const float y = at.y;
  const bool warning = p.name == "warning";
  ImFont* font = warning ? pen.fonts().bold : pen.fonts().body;
  pen.fitted(font, {at.x, y}, kTheme.ivory, p.name.c_str(), pen.px(122));
  number(pen, {at.x + pen.px(c.above), y}, p.above_stall_kt, kTheme.measured);
  number(pen, {at.x + pen.px(c.should), y}, p.true_above_stall_kt, kTheme.truth);
  verdict_mark(pen, {at.x + pen.px(c.off + 7), y + pen.px(10)}, p);
  pen.text(font, {at.x + pen.px(c.off + 22), y}, kTheme.ivory, p.off.c_str());
  number(pen, {at.x + pen.px(c.sure), y}, p.expanded_kt, kTheme.soft);
  const float x = at.x + pen.px(c.why);
  const bool ordered = p.order != "OUT OF ORDER" && p.order != "too close";
  pen.fitted(pen.fonts().small, {x, y + pen.px(2)}, ordered ? kTheme.soft : kTheme.outside,
             ordered ? p.why.c_str() : p.order.c_str(), right - x);
}

/// What the warning is worth in other flight: knots between it and the stall.
void draw_guard(const view::DebriefView& view, Pen& pen, ImVec2 at, ImVec2 to) {
  constexpr const char* kBanks[] = {"wings level", "30\u00b0 of bank", "45\u00b0 of bank"};
  constexpr float kAt[] = {292, 402, 512};
  const float row = pen.px(23);
  const auto rows = static_cast<float>(view.guard.size());
  if (view.guard.empty() || at.y + pen.px(52) + rows * row > to.y) return;
  pen.text(pen.fonts().small, at, kTheme.soft,
           "knots from the warning to the stall, the least of light and heavy; bold: what the card is for");
  float y = at.y + pen.px(20);
  for (std::size_t k = 0; k < 3; ++k)
    pen.text(pen.fonts().small, {at.x + pen.px(kAt[k]), y}, kTheme.soft, kBanks[k], Align::right);
  pen.line({at.x, y + pen.px(20)}, {to.x, y + pen.px(20)}, kTheme.edge);
  y += pen.px(26);
  for (const view::GuardView& g : view.guard) {
    const bool any = g.in_use[0] || g.in_use[1] || g.in_use[2];
    pen.text(any ? pen.fonts().bold : pen.fonts().body, {at.x, y}, any ? kTheme.ivory : kTheme.soft,
             g.flight.c_str());
    for (std::size_t k = 0; k < 3; ++k) {
      char text[32] = "none";
      if (!g.unwarned[k]) axis_text(text, sizeof text, g.margin_kt[k], 1);
      pen.text(g.in_use[k] ? pen.fonts().bold : pen.fonts().body, {at.x + pen.px(kAt[k]), y},
               g.unwarned[k] ? kTheme.danger
               : g.in_use[k] ? kTheme.ivory
                             : kTheme.soft,
               text, Align::right);
    }
    y += row;
  }
}

void draw_table(const view::DebriefView& view, Pen& pen, ImVec2 at, ImVec2 to) {
  std::size_t lines = 0;
  for (const view::SetView& set : view.sets) lines += set.points.size() + (view.sets.size() > 1 ? 1 : 0);
  table_head(pen, at, to.x);
  float y = at.y + pen.px(46);
  const float room = (to.y - y - pen.px(24)) / static_cast<float>(lines == 0 ? 1 : lines);
  const float row = std::fmin(std::fmax(room, pen.px(20)), pen.px(34));
  for (const view::SetView& set : view.sets) {
    if (view.sets.size() > 1) {
      pen.text(pen.fonts().small, {at.x, y + row - pen.px(20)}, kTheme.soft, set.title.c_str());
      y += row;
    }
    for (const PointView& p : set.points) {
      table_row(pen, {at.x, y}, to.x, p);
      y += row;
    }
  }
  y += pen.px(8);
  y += pen.wrapped(
      pen.fonts().small, {at.x, y}, kTheme.soft,
      "Ticked: the truth lies within what the set point is known to. Barred: it does not. A warning is "
      "late when it stands slower than it should; other set points are fast or slow.",
      to.x - at.x);
  draw_guard(view, pen, {at.x, y + pen.px(26)}, to);
}

/// A heading, unless it goes on with the one before, and what it says; returns where the next begins.
float passage(Pen& pen, float x, float y, float width, const char* heading, const char* text) {
  if (*text == '\0') return y;
  if (*heading != '\0') {
    pen.text(pen.fonts().small, {x, y}, kTheme.soft, heading);
    y += pen.px(20);
  }
  return y + pen.wrapped(pen.fonts().body, {x, y}, kTheme.ivory, text, width) + pen.px(16);
}

}  // namespace

void draw_verdict_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  pen.text(pen.fonts().huge, from, kTheme.ivory, view.headline.c_str());
  float y = from.y + pen.px(46);
  y += pen.wrapped(pen.fonts().body, {from.x, y}, kTheme.soft, view.because.c_str(), to.x - from.x);
  y += pen.px(22);
  const float gap = pen.px(44), left = from.x + 0.34f * (to.x - from.x);
  draw_table(view, pen, {left + gap, y}, to);
  float text_y = y;
  pen.text(pen.fonts().small, {from.x, text_y}, kTheme.soft, "Verdict");
  text_y += pen.px(18);
  text_y +=
      pen.wrapped(pen.fonts().large, {from.x, text_y}, kTheme.ivory, view.verdict.c_str(), left - from.x) +
      pen.px(14);
  const float width = left - from.x;
  text_y = passage(pen, from.x, text_y, width, "Why", view.reason.c_str());
  text_y = passage(pen, from.x, text_y, width, "What the warning protects", view.protects.c_str());
  for (std::size_t k = 0; k < view.next.size(); ++k) {
    const float height = Pen::wrapped_height(pen.fonts().body, view.next[k].c_str(), width);
    if (text_y + height + pen.px(20) > to.y) break;
    text_y = passage(pen, from.x, text_y, width, k == 0 ? "What to do next" : "", view.next[k].c_str());
  }
}

}  // namespace stallwright::desk
