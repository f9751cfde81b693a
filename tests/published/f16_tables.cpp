#include "tests/published/f16_tables.hpp"

#include <algorithm>
#include <cmath>

#include "tests/published/csv_rows.hpp"

namespace stallwright::published {
namespace {

/// Interval of a rising grid that x is in, or the end one, and how far along it (outside 0..1 beyond the ends).
struct Place {
  std::size_t below = 0;
  double share = 0.0;
};

Place place_in(const std::vector<double>& grid, double x) {
  if (grid.size() == 1) return {};
  const auto above = std::upper_bound(grid.begin() + 1, grid.end() - 1, x);
  const std::size_t i = static_cast<std::size_t>(above - grid.begin()) - 1;
  return {i, (x - grid[i]) / (grid[i + 1] - grid[i])};
}

double between(double a, double b, double share) { return a + share * (b - a); }

/// Rate of the power's lag, 1/s, by what is still missing, percent [STEVENS_LEWIS].
double lag_ps(double missing_pct) {
  return missing_pct <= 25.0 ? 1.0 : missing_pct >= 50.0 ? 0.1 : 1.9 - 0.036 * missing_pct;
}

}  // namespace

void F16Table::add(double alpha_deg, double second_deg, double value) {
  if (second_deg_.empty() || second_deg_.back() != second_deg) second_deg_.push_back(second_deg);
  if (second_deg_.size() == 1) alpha_deg_.push_back(alpha_deg);
  values_.push_back(value);
}

double F16Table::operator()(double alpha_deg, double second_deg) const {
  const Place a = place_in(alpha_deg_, alpha_deg), s = place_in(second_deg_, second_deg);
  const auto along = [&](std::size_t column) {
    const double* v = values_.data() + column * alpha_deg_.size() + a.below;
    return between(v[0], v[1], a.share);
  };
  return second_deg_.size() == 1 ? along(0) : between(along(s.below), along(s.below + 1), s.share);
}

F16Tables f16_tables(F16Source source) {
  F16Tables tables;
  for (const auto& row : csv_cells("f16_aero_tables.csv")) {
    const bool other = source == F16Source::textbook && row.size() > 5 && !row[5].empty();
    const double second_deg = row[2] == "-" ? 0.0 : csv_number(row[3]);
    tables[row[0]].add(csv_number(row[1]), second_deg, csv_number(row[other ? 5 : 4]));
  }
  return tables;
}

F16Engine::F16Engine() {
  const std::array<std::string, 3> names{"idle", "mil", "max"};
  for (const auto& row : csv_cells("f16_engine_tables.csv")) {
    const auto which = std::find(names.begin(), names.end(), row[0]) - names.begin();
    const auto mach = static_cast<std::size_t>(std::lround(csv_number(row[1]) / 0.2));
    const auto height = static_cast<std::size_t>(std::lround(csv_number(row[2]) / 10000.0));
    thrust_lbf_.at(static_cast<std::size_t>(which)).at(mach).at(height) = csv_number(row[3]);
  }
}

double F16Engine::setting(std::size_t which, double mach, double height_ft) const {
  const std::vector<double> fifths{0.0, 0.2, 0.4, 0.6, 0.8, 1.0}, heights{0.0, 1e4, 2e4, 3e4, 4e4, 5e4};
  const Place m = place_in(fifths, mach), h = place_in(heights, height_ft);
  const auto& t = thrust_lbf_[which];
  return between(between(t[m.below][h.below], t[m.below][h.below + 1], h.share),
                 between(t[m.below + 1][h.below], t[m.below + 1][h.below + 1], h.share), m.share);
}

double F16Engine::thrust_lbf(double power_pct, double mach, double height_ft) const {
  const double military = setting(1, mach, height_ft);
  if (power_pct < 50.0) return between(setting(0, mach, height_ft), military, power_pct / 50.0);
  return between(military, setting(2, mach, height_ft), (power_pct - 50.0) / 50.0);
}

double F16Engine::commanded_pct(double throttle) {
  return throttle <= 0.77 ? 64.94 * throttle : 217.38 * throttle - 117.38;
}

double F16Engine::power_rate_pctps(double power_pct, double commanded_pct) {
  if (commanded_pct >= 50.0 && power_pct >= 50.0) return 5.0 * (commanded_pct - power_pct);
  if (commanded_pct >= 50.0) return lag_ps(60.0 - power_pct) * (60.0 - power_pct);
  if (power_pct >= 50.0) return 5.0 * (40.0 - power_pct);
  return lag_ps(commanded_pct - power_pct) * (commanded_pct - power_pct);
}

}  // namespace stallwright::published
