#include "sim/study/map/cell_summary.hpp"

#include <algorithm>
#include <cmath>

#include "sim/study/bootstrap.hpp"

namespace stallwright {
namespace {

constexpr double kPercentile = 0.95;

void close(Chance& chance) {
  if (chance.of > 0) chance.interval = clopper_pearson(chance.times, chance.of);
}

/// Without changing what stands in the sample: only the two neighbours of the percentile are wanted in order.
double p95_of_absolutes(std::vector<double>& sample) {
  std::vector<double> absolute(sample.size());
  std::transform(sample.begin(), sample.end(), absolute.begin(), [](double e) { return std::abs(e); });
  const double h = kPercentile * static_cast<double>(absolute.size() - 1);
  const auto at = absolute.begin() + static_cast<std::ptrdiff_t>(std::floor(h));
  std::nth_element(absolute.begin(), at, absolute.end());
  const double below = *at;
  const double above = at + 1 == absolute.end() ? below : *std::min_element(at + 1, absolute.end());
  return below + (h - std::floor(h)) * (above - below);
}

std::size_t class_of(double error_kt) {
  const double place = std::floor((error_kt - kFirstClass_kt) / kClass_kt);
  return static_cast<std::size_t>(std::clamp(place, 0.0, static_cast<double>(kClasses - 1)));
}

/// Sums over the sorties that gave the set point; the errors are handed back.
std::vector<double> tally(LineResult& out, const std::vector<SortieNumbers>& sorties, std::size_t line) {
  std::vector<double> errors;
  double half_widths = 0.0;
  for (const SortieNumbers& sortie : sorties) {
    const LineNumbers& n = sortie.lines.at(line);
    if (!n.found) continue;
    errors.push_back(n.error_kt);
    half_widths += n.half_width_kt;
    out.covered.times += n.covered ? 1 : 0;
    ++out.histogram[class_of(n.error_kt)];
    ++out.records_wanted.at(static_cast<std::size_t>(n.records_wanted));
  }
  out.found = out.covered.of = static_cast<int>(errors.size());
  if (!errors.empty()) out.mean_half_width_kt = half_widths / static_cast<double>(errors.size());
  close(out.covered);
  return errors;
}

/// cell: number that keys the bootstrap.
LineResult line_result(const StudyMap& map, std::size_t cell, std::size_t line,
                       const std::vector<SortieNumbers>& sorties) {
  LineResult out;
  std::vector<double> errors = tally(out, sorties, line);
  if (errors.empty()) return out;
  const bool percentiles =
      sorties.size() >= std::size_t{kLeastForPercentile} && out.found >= kLeastFoundForPercentile;
  double sum = 0.0;
  for (const double e : errors) sum += e;
  out.mean_error_kt = sum / static_cast<double>(errors.size());
  out.rms_error_kt.value = root_mean_square(errors);
  if (out.found < kLeastForInterval) return out;
  const random::Stream stream{map.first_seed, static_cast<std::uint32_t>(cell * map.lines.size() + line),
                              random::Channel::kBootstrap};
  std::vector<Statistic> statistics{[](std::vector<double>& e) { return root_mean_square(e); }};
  if (percentiles) statistics.emplace_back(p95_of_absolutes);
  const std::vector<Interval> intervals = bootstrap_intervals(errors, statistics, stream);
  out.rms_error_kt.interval = intervals[0];
  if (!percentiles) return out;
  out.p95_error_kt = {p95_of_absolutes(errors), intervals[1]};
  std::sort(errors.begin(), errors.end());
  for (std::size_t q = 0; q < kQuantiles.size(); ++q) out.quantiles_kt[q] = quantile(errors, kQuantiles[q]);
  return out;
}

/// Mean over the sorties that have a number; NaN without any.
template <class Number>
double mean_over(const std::vector<SortieNumbers>& sorties, const Number& number_of) {
  double sum = 0.0, count = 0.0;
  for (const SortieNumbers& sortie : sorties) {
    const double value = number_of(sortie);
    if (!std::isfinite(value)) continue;
    sum += value;
    count += 1.0;
  }
  return count > 0.0 ? sum / count : kNone;
}

/// Fills in the results of a cell whose place and number of sorties are given.
///   number  keys the bootstrap
void summarise(const StudyMap& map, std::size_t number, const std::vector<SortieNumbers>& sorties,
               MapCell& out) {
  for (const SortieNumbers& sortie : sorties) {
    out.failed += sortie.failure.empty() ? 0 : 1;
    if (sortie.verdict) ++out.verdicts.at(static_cast<std::size_t>(*sortie.verdict));
    if (sortie.out_of_order) {
      ++out.out_of_order.of;
      out.out_of_order.times += *sortie.out_of_order ? 1 : 0;
    }
    if (std::isfinite(sortie.warning_margin_kt)) {
      ++out.late_warning.of;
      out.late_warning.times += sortie.warning_margin_kt < map.wanted_margin_kt ? 1 : 0;
    }
  }
  out.kept.times = out.verdicts[static_cast<std::size_t>(Verdict::keep)];
  for (const int judged : out.verdicts) out.kept.of += judged;
  for (Chance* chance : {&out.kept, &out.late_warning, &out.out_of_order}) close(*chance);
  out.warning_margin_kt = mean_over(sorties, [](const SortieNumbers& s) { return s.warning_margin_kt; });
  out.hold_rms_kt =
      std::sqrt(mean_over(sorties, [](const SortieNumbers& s) { return s.hold_rms_kt * s.hold_rms_kt; }));
  out.gust_rms_mps =
      std::sqrt(mean_over(sorties, [](const SortieNumbers& s) { return s.gust_rms_mps * s.gust_rms_mps; }));
  for (std::size_t line = 0; line < map.lines.size(); ++line)
    out.lines.push_back(line_result(map, number, line, sorties));
}

}  // namespace

void summarise_cell(StudyMap& map, std::size_t cell, const std::vector<SortieNumbers>& sorties) {
  summarise(map, cell, sorties, map.any_cell(cell));
  if (map.varied.empty() || cell != map.base_cell) return;
  const MapCell& base = map.cells[cell];
  map.unvaried = {};
  map.unvaried.key = base.key;
  map.unvaried.air = base.air;
  map.unvaried.hand = base.hand;
  map.unvaried.sorties = std::min(base.sorties, map.varied.front().sorties);
  const auto count = std::min(sorties.size(), static_cast<std::size_t>(map.unvaried.sorties));
  summarise(map, map.all_cells(), {sorties.begin(), sorties.begin() + static_cast<std::ptrdiff_t>(count)},
            map.unvaried);
}

}  // namespace stallwright
