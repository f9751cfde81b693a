// What to work on, with what happened and what it took; and what a verifying flight heard.
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"
#include "render/desk/debrief_pages.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;

void draw_items(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  float y = from.y;
  for (std::size_t k = 0; k < view.work.size(); ++k) {
    const view::WorkItem& item = view.work[k];
    const float x = from.x + pen.px(34), width = to.x - x;
    const float height =
        pen.px(24) + Pen::wrapped_height(pen.fonts().body, item.sentence.c_str(), width) + pen.px(18);
    if (y + height - pen.px(18) > to.y) {
      char more[80];
      std::snprintf(more, sizeof more, "and %zu more of less weight", view.work.size() - k);
      pen.text(pen.fonts().small, {x, y}, kTheme.soft, more);
      return;
    }
    char number[24];
    std::snprintf(number, sizeof number, "%zu", k + 1);
    if (item.danger)
      pen.cross({from.x + pen.px(8), y + pen.px(11)}, 6, kTheme.danger);
    else
      pen.text(pen.fonts().bold, {from.x, y}, kTheme.soft, number);
    pen.text(pen.fonts().bold, {x, y}, kTheme.ivory, item.what.c_str());
    pen.wrapped(pen.fonts().body, {x, y + pen.px(24)}, kTheme.ivory, item.sentence.c_str(), width);
    y += height;
  }
}

void cell(Pen& pen, float right, float y, double value, int decimals, bool with_sign, double most) {
  char text[32] = "\u2013";
  if (std::isfinite(value)) axis_text(text, sizeof text, value, decimals, with_sign);
  const bool beyond = std::abs(value) > most;
  if (beyond) pen.bar({right + pen.px(9), y + pen.px(9)}, 4, kTheme.outside);
  pen.text(pen.fonts().small, {right, y}, beyond ? kTheme.ivory : kTheme.soft, text, Align::right);
}

/// How each record was flown; barred where the rms, or the entry rate, stands beyond the card's band.
void draw_records(const view::DebriefView& view, Pen& pen, ImVec2 at, float right) {
  constexpr const char* kHeads[] = {"held to, kt rms", "fast +, kt", "bank, \u00b0 rms", "ball, g rms",
                                    "entry, kt/s"};
  constexpr float kAt[] = {300, 396, 492, 580, 672};
  pen.text(pen.fonts().bold, at, kTheme.ivory, "How each record was flown");
  float y = at.y + pen.px(26);
  for (std::size_t k = 0; k < 5; ++k)
    pen.text(pen.fonts().small, {at.x + pen.px(kAt[k]), y}, kTheme.soft, kHeads[k], Align::right);
  pen.line({at.x, y + pen.px(20)}, {right, y + pen.px(20)}, kTheme.edge);
  y += pen.px(25);
  for (const view::HoldFigures& r : view.records) {
    char text[96];
    std::snprintf(text, sizeof text, r.flap_deg == 0.0 ? "%s" : "%s, flaps %.0f\u00b0", r.point.c_str(),
                  r.flap_deg);
    pen.fitted(pen.fonts().small, {at.x, y}, kTheme.ivory, text, pen.px(200));
    const auto x = [&](std::size_t k) { return at.x + pen.px(kAt[k]); };
    cell(pen, x(0), y, r.speed_rms_kt, 1, false, r.bands.speed_low_kt);
    cell(pen, x(1), y, r.speed_mean_kt, 1, true, r.bands.speed_low_kt);
    cell(pen, x(2), y, r.bank_rms_deg, 1, false, r.bands.bank_deg);
    cell(pen, x(3), y, r.slip_rms_g, 3, false, r.bands.slip_g);
    const double off = std::abs(r.entry_rate_ktps - r.entry_wanted_ktps);
    cell(pen, x(4), y, r.entry_rate_ktps, 1, false, off > r.bands.entry_rate_ktps ? 0.0 : 1e9);
    y += pen.px(20);
  }
}

float records_height(const view::DebriefView& view, const Pen& pen) {
  return view.records.empty() ? 0.0f : pen.px(54.0f + 20.0f * static_cast<float>(view.records.size()));
}

float draw_counts(const view::DebriefView& view, Pen& pen, ImVec2 at, float right) {
  ImFont* small = pen.fonts().small;
  pen.text(pen.fonts().bold, at, kTheme.ivory, "What it took");
  constexpr const char* kHeads[] = {"records", "tries", "timed out", "left a band", "off cond."};
  constexpr float kAt[] = {200, 252, 322, 402, 474};
  const float head = at.y + pen.px(28);
  for (std::size_t k = 0; k < 5; ++k)
    pen.text(small, {at.x + pen.px(kAt[k]), head}, kTheme.soft, kHeads[k], Align::right);
  pen.line({at.x, head + pen.px(20)}, {right, head + pen.px(20)}, kTheme.edge);
  float y = head + pen.px(25);
  for (const PointCount& c : view.counts) {
    char text[64];
    std::snprintf(text, sizeof text, c.flap_deg == 0.0 ? "%s" : "%s, flaps %.0f\u00b0", c.point.c_str(),
                  c.flap_deg);
    pen.fitted(small, {at.x, y}, kTheme.ivory, text, pen.px(150));
    const int values[] = {c.records, c.attempts, c.timeouts, c.left_band, c.forced};
    for (std::size_t k = 0; k < 5; ++k) {
      std::snprintf(text, sizeof text, k == 0 ? "%d of %d" : "%d", values[k], c.records_wanted);
      const bool loud = k >= 2 && values[k] > 0;
      pen.text(loud ? pen.fonts().bold : small, {at.x + pen.px(kAt[k]), y - (loud ? pen.px(2) : 0.0f)},
               loud || k < 2 ? kTheme.ivory : kTheme.soft, text, Align::right);
    }
    y += pen.px(20);
  }
  return y;
}

void draw_events(const view::DebriefView& view, Pen& pen, ImVec2 at, ImVec2 to) {
  pen.text(pen.fonts().bold, at, kTheme.ivory, "What happened");
  float y = at.y + pen.px(26);
  if (view.events.empty())
    pen.text(pen.fonts().small, {at.x, y}, kTheme.soft, "Nothing out of the ordinary.");
  for (std::size_t k = 0; k < view.events.size(); ++k) {
    if (y + pen.px(36) > to.y && k + 1 < view.events.size()) {
      char more[80];
      std::snprintf(more, sizeof more, "and %zu more, marked on the flight's page", view.events.size() - k);
      pen.text(pen.fonts().small, {at.x, y}, kTheme.soft, more);
      return;
    }
    const SortieEvent& e = view.events[k];
    char text[256];
    std::snprintf(text, sizeof text, "%.0f s", e.t_s);
    pen.text(pen.fonts().small, {at.x + pen.px(48), y}, kTheme.soft, text, Align::right);
    if (e.danger) pen.cross({at.x + pen.px(60), y + pen.px(9)}, 4, kTheme.danger);
    std::snprintf(text, sizeof text, "%s%s%s: %s", e.kind.c_str(), e.point.empty() ? "" : ", ",
                  e.point.c_str(), e.text.c_str());
    pen.fitted(pen.fonts().small, {at.x + pen.px(72), y}, kTheme.ivory, text, to.x - at.x - pen.px(72));
    y += pen.px(20);
  }
}

}  // namespace

void draw_work_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  const float left = to.x - pen.px(478);
  const float right = left - pen.px(44);
  // Many records leave no room for their table; the sentences then say what counts.
  const float table = records_height(view, pen);
  const bool room = table > 0.0f && table < 0.5f * (to.y - from.y);
  draw_items(view, pen, from, {right, room ? to.y - table - pen.px(12) : to.y});
  if (room) draw_records(view, pen, {from.x, to.y - table}, right);
  const float y = draw_counts(view, pen, {left, from.y}, to.x);
  draw_events(view, pen, {left, y + pen.px(18)}, to);
}

void draw_heard_page(const view::DebriefView& view, Pen& pen, ImVec2 from, ImVec2 to) {
  pen.text(pen.fonts().huge, from, kTheme.ivory, view.headline.c_str());
  float y = from.y + pen.px(46);
  y += pen.wrapped(pen.fonts().body, {from.x, y}, kTheme.soft, view.because.c_str(), to.x - from.x) +
       pen.px(20);
  constexpr const char* kHeads[] = {"point", "flown with", "tone at", "above the stall", "outcome"};
  constexpr float kAt[] = {0, 236, 396, 496, 630};
  for (std::size_t k = 0; k < 5; ++k)
    pen.text(pen.fonts().small, {from.x + pen.px(kAt[k]), y}, kTheme.soft, kHeads[k]);
  pen.line({from.x, y + pen.px(21)}, {to.x, y + pen.px(21)}, kTheme.edge);
  y += pen.px(30);
  for (const view::HeardView& h : view.heard) {
    const std::string* texts[] = {&h.name, &h.flight, &h.tone, &h.margin};
    for (std::size_t k = 0; k < 4; ++k)
      pen.fitted(pen.fonts().body, {from.x + pen.px(kAt[k]), y}, h.judged ? kTheme.ivory : kTheme.soft,
                 texts[k]->c_str(), pen.px(kAt[k + 1] - kAt[k] - 12));
    const ImVec2 mark{from.x + pen.px(kAt[4] + 6), y + pen.px(10)};
    if (h.judged && h.ok) pen.tick(mark, 6, kTheme.within);
    if (h.judged && !h.ok) pen.cross(mark, 5, kTheme.danger);
    const float x = from.x + pen.px(kAt[4] + 24);
    y += pen.wrapped(pen.fonts().body, {x, y}, h.judged ? kTheme.ivory : kTheme.soft, h.outcome.c_str(),
                     to.x - x) +
         pen.px(10);
  }
}

}  // namespace stallwright::desk
