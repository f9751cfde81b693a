#include "sim/reduction/own_time.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {
namespace {

constexpr double kDay_s = 86400.0, kHalfDay_s = 43200.0;
constexpr double kAnew_s = 5.0;

double median(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// Rows of one value of time: [begin, end).
struct Tick {
  std::size_t begin, end;
};
std::vector<Tick> ticks_of(const std::vector<double>& t) {
  std::vector<Tick> ticks;
  for (std::size_t i = 0; i < t.size(); ++i) {
    if (i == 0 || t[i] != t[i - 1]) ticks.push_back({i, i});
    ticks.back().end = i + 1;
  }
  return ticks;
}

/// A clock that ticks more slowly than rows are written. The first tick may have begun before its first row, so its rows
/// are put at its end.
void spread(std::vector<double>& t, const std::vector<Tick>& ticks) {
  std::vector<double> steps, counts;
  for (std::size_t k = 0; k + 1 < ticks.size(); ++k) {
    const double step = t[ticks[k + 1].begin] - t[ticks[k].begin];
    if (step > 0.0) steps.push_back(step);
    counts.push_back(static_cast<double>(ticks[k].end - ticks[k].begin));
  }
  const double step = median(steps), usual = std::max(1.0, median(counts));
  for (std::size_t k = 0; k < ticks.size(); ++k) {
    const auto count = static_cast<double>(ticks[k].end - ticks[k].begin);
    const double each = step / std::max(count, usual);
    const double late = k == 0 ? step - each * count : 0.0;
    for (std::size_t i = ticks[k].begin; i < ticks[k].end; ++i)
      t[i] += late + each * static_cast<double>(i - ticks[k].begin);
  }
}

}  // namespace

OwnTime running_time(const std::vector<double>& raw, bool clock, const std::string& file,
                     const std::vector<std::size_t>& line) {
  OwnTime out;
  std::vector<double> t = raw;
  const auto warn = [&](const std::string& text) { out.warnings.push_back(file + text); };
  const std::vector<Tick> ticks = ticks_of(t);
  if (ticks.size() * 2 < t.size() && ticks.size() > 2) {
    spread(t, ticks);
    warn(": its clock ticks more slowly than its rows come (" + std::to_string(t.size()) + " rows, " +
         std::to_string(ticks.size()) + " times): rows of one tick are spread evenly over it");
  }
  double shift = 0.0;
  std::size_t repeated = 0, back = 0;
  std::vector<double> intervals;
  for (std::size_t i = 0; i < t.size(); ++i) {
    double now = t[i] + shift;
    bool anew = false;
    if (!out.s.empty()) {
      const double last = out.s.back();
      if (clock && now < last - kHalfDay_s) {
        shift += kDay_s;
        now += kDay_s;
        warn(":" + std::to_string(line[i]) + ": the clock passes midnight here; a day is added from here on");
      }
      if (now < last - kAnew_s) {
        anew = true;
        const double next = last + std::max(median(intervals), 0.01);
        shift += next - now;
        warn(":" + std::to_string(line[i]) + ": time falls from " + number_text(t[i - 1]) + " to " +
             number_text(t[i]) + " s: the recorder began anew; its time is counted on from " +
             number_text(std::round(next * 1000.0) / 1000.0) + " s");
        now = next;
      }
      if (now <= last) {
        ++(now == last ? repeated : back);
        continue;
      }
      if (!anew) intervals.push_back(now - last);
    }
    out.s.push_back(now);
    out.row.push_back(i);
    out.begins_anew.push_back(anew);
  }
  if (repeated > 0)
    warn(": " + std::to_string(repeated) + " rows left out whose time repeats the one before");
  if (back > 0) warn(": " + std::to_string(back) + " rows left out whose time runs backwards");
  if (out.s.size() < 2) throw InputError(file + ": expected times that rise from row to row, found none");
  out.interval_s = median(intervals);
  return out;
}

}  // namespace stallwright
