#pragma once
#include <array>
#include <map>
#include <string>
#include <vector>

namespace stallwright::published {

/// Coefficient over angle of attack and perhaps a second angle (sideslip or elevator), deg. Linear between the
/// entries; outside them the end interval's slope goes on, as the book does it.
class F16Table {
 public:
  /// Entries must come with all angles of attack for the first second angle, then for the next (both rising).
  void add(double alpha_deg, double second_deg, double value);
  double operator()(double alpha_deg, double second_deg = 0.0) const;

 private:
  std::vector<double> alpha_deg_, second_deg_, values_;
};

/// Which of two sources that differ in 23 entries the tables are taken from.
enum class F16Source { nasa, textbook };

/// Tables of data/f16_aero_tables.csv by their names there.
using F16Tables = std::map<std::string, F16Table>;
F16Tables f16_tables(F16Source source);

/// Thrust at idle, military and full power over Mach number (0..1 by 0.2) and height (0..50,000 ft), lbf; linear
/// between.
class F16Engine {
 public:
  F16Engine();
  /// At a power of 0..100 percent: idle, 50 military, 100 full.
  double thrust_lbf(double power_pct, double mach, double height_ft) const;
  /// Power that a throttle of 0..1 asks for, percent.
  static double commanded_pct(double throttle);
  /// How fast power follows, percent/s.
  static double power_rate_pctps(double power_pct, double commanded_pct);

 private:
  double setting(std::size_t which, double mach, double height_ft) const;
  std::array<std::array<std::array<double, 6>, 6>, 3> thrust_lbf_{};  // setting, Mach, height
};

}  // namespace stallwright::published
