#include "sim/reduction/resample.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright {
namespace {

constexpr double kLeastGap_s = 0.5, kGapIntervals = 2.5;

/// Rows without a gap between them, as indices into the running time: [begin, end).
struct Stretch {
  std::size_t begin, end;
};

std::vector<Stretch> stretches_of(const OwnTime& time, EvenSamples& out) {
  const double gap_s = std::max(kLeastGap_s, kGapIntervals * time.interval_s);
  std::vector<Stretch> stretches = {{0, 0}};
  for (std::size_t i = 0; i < time.s.size(); ++i) {
    const double step = i > 0 ? time.s[i] - time.s[i - 1] : 0.0;
    if (step > gap_s) {
      ++out.gaps;
      out.largest_gap_s = std::max(out.largest_gap_s, step);
    }
    if (step > gap_s || time.begins_anew[i]) stretches.push_back({i, i});
    stretches.back().end = i + 1;
  }
  return stretches;
}

/// One quantity's own samples, and how far apart they may stand.
struct Samples {
  std::vector<double> t, v;
  double gap_s;
  bool held;
};

/// Steps of it, and values that change slowly, bridge any distance.
bool is_held(Quantity quantity) { return quantity == Quantity::mark || quantity == Quantity::flap; }
bool is_slow(Quantity quantity) {
  return is_held(quantity) || quantity == Quantity::mass || quantity == Quantity::altitude;
}

Samples samples_of(const OwnTable& table, const OwnTime& time, const Stretch& stretch, Quantity quantity) {
  Samples out;
  const std::vector<double>& column = table.of(quantity);
  for (std::size_t i = stretch.begin; i < stretch.end; ++i) {
    const double value = column[time.row[i]];
    if (std::isnan(value)) continue;
    out.t.push_back(time.s[i]);
    out.v.push_back(value);
  }
  std::vector<double> steps;
  for (std::size_t i = 1; i < out.t.size(); ++i) steps.push_back(out.t[i] - out.t[i - 1]);
  double usual = time.interval_s;
  if (!steps.empty()) {
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    usual = *middle;
  }
  out.gap_s = is_slow(quantity) ? 1e300 : std::max(kLeastGap_s, kGapIntervals * usual);
  out.held = is_held(quantity);
  return out;
}

/// Value at t; `at` is the first sample after t, moved on as t rises. NaN where it is not known.
double value_at(const Samples& samples, double t, std::size_t& at) {
  constexpr double kSame_s = 1e-7;
  while (at < samples.t.size() && samples.t[at] <= t + kSame_s) ++at;
  if (at == 0) return std::nan("");
  const double t0 = samples.t[at - 1], v0 = samples.v[at - 1];
  if (std::abs(t - t0) <= kSame_s || (samples.held && at <= samples.t.size())) return v0;
  if (at == samples.t.size()) return samples.gap_s > 1e200 ? v0 : std::nan("");
  const double step = samples.t[at] - t0;
  if (step > samples.gap_s) return std::nan("");
  return v0 + (samples.v[at] - v0) * (t - t0) / step;
}

void add_stretch(const OwnTable& table, const OwnTime& time, const Stretch& stretch, EvenSamples& out) {
  std::array<Samples, kQuantities> samples;
  std::array<std::size_t, kQuantities> at{};
  for (std::size_t q = 1; q < kQuantities; ++q)
    if (!table.values[q].empty()) samples[q] = samples_of(table, time, stretch, static_cast<Quantity>(q));
  const double from = time.s[stretch.begin], until = time.s[stretch.end - 1] + 1e-7;
  std::array<double, kQuantities> values{};
  for (std::size_t k = 0;; ++k) {
    const double t = from + kRowInterval_s * static_cast<double>(k);
    if (t > until) break;
    bool known = true;
    for (std::size_t q = 1; q < kQuantities; ++q) {
      if (table.values[q].empty()) continue;
      values[q] = value_at(samples[q], t, at[q]);
      known = known && !std::isnan(values[q]);
    }
    if (!known) continue;
    out.t_s.push_back(t);
    for (std::size_t q = 1; q < kQuantities; ++q)
      if (!table.values[q].empty()) out.values[q].push_back(values[q]);
  }
}

}  // namespace

EvenSamples resampled(const OwnTable& table, const OwnTime& time) {
  EvenSamples out;
  for (const Stretch& stretch : stretches_of(time, out)) add_stretch(table, time, stretch, out);
  return out;
}

}  // namespace stallwright
