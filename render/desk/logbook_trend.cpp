#include "render/desk/logbook_trend.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/desk/axis.hpp"

namespace stallwright::desk {
namespace {

using ui::kTheme;
using view::Logbook;
using view::LogbookLine;

constexpr std::size_t kMost = 60;

struct Trend {
  const char *title, *good;
  double LogbookLine::*value;
  bool about_zero;
};
constexpr Trend kTrends[] = {
    {"Speed hold in the records, kt rms", "lower is steadier", &LogbookLine::hold_rms_kt, false},
    {"Error of the warning, kt", "below zero: late", &LogbookLine::warning_error_kt, true}};

struct Range {
  double low = 0.0, high = 1.0;
};

Range range_of(const Logbook& logbook, const Trend& trend, std::size_t shown) {
  double most = 1.0, least = 0.0;
  for (std::size_t k = 0; k < shown; ++k) {
    const double value = logbook.lines[k].*trend.value;
    if (!std::isfinite(value)) continue;
    most = std::max(most, value);
    least = std::min(least, value);
  }
  const double about = 0.1 * (most - least);
  return {trend.about_zero ? std::min(least, -1.0) - about : 0.0, most + about};
}

void draw_grid(Pen& pen, const Range& range, ImVec2 from, ImVec2 to) {
  const AxisTicks ticks =
      axis_ticks(range.low, range.high, std::max(2, static_cast<int>((to.y - from.y) / pen.px(26))));
  for (int k = 0; k < ticks.count; ++k) {
    const float y =
        to.y - static_cast<float>((ticks.at(k) - range.low) / (range.high - range.low)) * (to.y - from.y);
    const bool zero = std::abs(ticks.at(k)) < 1e-9;
    pen.line({from.x, y}, {to.x, y}, zero ? kTheme.soft : kTheme.edge);
    char text[32];
    axis_text(text, sizeof text, ticks.at(k), ticks.decimals);
    pen.text(pen.fonts().small, {from.x - pen.px(8), y - pen.px(9)}, kTheme.soft, text, Align::right);
  }
}

void draw_trend(const Logbook& logbook, const Trend& trend, std::size_t chosen, Pen& pen, ImVec2 from,
                ImVec2 to) {
  const std::size_t shown = std::min(logbook.lines.size(), kMost);
  const Range range = range_of(logbook, trend, shown);
  pen.text(pen.fonts().small, {from.x - pen.px(46), from.y - pen.px(22)}, kTheme.ivory, trend.title);
  pen.text(pen.fonts().small, {to.x, from.y - pen.px(22)}, kTheme.soft, trend.good, Align::right);
  pen.box(from, to, kTheme.dial);
  draw_grid(pen, range, from, to);
  const std::string& who = logbook.lines[chosen].who;
  ImVec2 last{};
  bool joined = false;
  // Oldest first, so that the line runs with time.
  for (std::size_t k = shown; k-- > 0;) {
    const LogbookLine& line = logbook.lines[k];
    const double value = line.*trend.value;
    if (!std::isfinite(value)) continue;
    const float share = (static_cast<float>(shown - 1 - k) + 0.5f) / static_cast<float>(shown);
    const ImVec2 at{
        from.x + share * (to.x - from.x),
        to.y - static_cast<float>((value - range.low) / (range.high - range.low)) * (to.y - from.y)};
    const bool same = line.who == who;
    if (same && joined) pen.line(last, at, kTheme.measured, 1.5f, 0.7f);
    if (same)
      pen.round_mark(at, 4, kTheme.measured);
    else
      pen.list().AddCircle(at, pen.px(3), ui::colour(kTheme.soft), 16, std::max(1.0f, pen.px(1.0f)));
    if (k == chosen) pen.list().AddCircle(at, pen.px(8), ui::colour(kTheme.ivory), 24, pen.px(1.5f));
    if (same) last = at;
    joined = joined || same;
  }
  pen.frame(from, to, kTheme.edge);
}

}  // namespace

void draw_trends(const Logbook& logbook, std::size_t chosen, Pen& pen, ImVec2 from, ImVec2 to) {
  const float left = from.x + pen.px(46), gap = pen.px(34), below = pen.px(64);
  const float height = 0.5f * (to.y - from.y - below - 2.0f * gap) + pen.px(4);
  float y = from.y + pen.px(26);
  for (const Trend& trend : kTrends) {
    draw_trend(logbook, trend, chosen, pen, {left, y}, {to.x, y + height});
    y += height + gap;
  }
  y -= gap - pen.px(4);
  pen.text(pen.fonts().small, {0.5f * (left + to.x), y}, kTheme.soft, "flights, oldest to newest",
           Align::middle);
  const LogbookLine& line = logbook.lines[chosen];
  char text[256];
  if (line.problem.empty())
    std::snprintf(
        text, sizeof text,
        "Each flight has its own seed and air; ringed: seed %llu, %s air. Joined: %s. Open: others.",
        static_cast<unsigned long long>(line.seed), line.air.c_str(),
        line.who.empty() ? "flights without a name" : line.who.c_str());
  else
    std::snprintf(text, sizeof text, "Each flight has its own seed and air; the chosen one cannot be read.");
  pen.wrapped(pen.fonts().small, {from.x, y + pen.px(22)}, kTheme.soft, text, to.x - from.x);
}

}  // namespace stallwright::desk
