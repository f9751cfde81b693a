#include "render/view/hold_figures.hpp"

#include <algorithm>
#include <cmath>

#include "sim/reduction/flight_log.hpp"

namespace stallwright::view {
namespace {

constexpr double kG_mps2 = 9.80665;

/// Mean and root mean square of what a function makes of rows.
struct Sum {
  double n = 0.0, sum = 0.0, squares = 0.0;
  void add(double value) {
    n += 1.0;
    sum += value;
    squares += value * value;
  }
  double mean() const { return n > 0.0 ? sum / n : kNone; }
  double rms() const { return n > 0.0 ? std::sqrt(squares / n) : kNone; }
};

void fill(HoldFigures& f, const std::vector<LogRow>& rows) {
  const auto before = [](const LogRow& row, double t_s) { return row.t_s < t_s; };
  Sum speed, bank, slip;
  for (auto row = std::lower_bound(rows.begin(), rows.end(), f.begin_s, before);
       row != rows.end() && row->t_s <= f.end_s; ++row) {
    if (row->target_kt > 0.0) {
      speed.add(row->ias_kt - row->target_kt);
      f.target_kt = row->target_kt;
    }
    bank.add(row->bank_deg);
    // The ball rolls away from the side that the aeroplane is pushed to.
    slip.add(-row->right_mps2 / kG_mps2);
  }
  f.speed_rms_kt = speed.rms();
  f.speed_mean_kt = speed.mean();
  f.bank_rms_deg = bank.rms();
  f.slip_rms_g = slip.rms();
  f.slip_mean_g = slip.mean();
}

}  // namespace

std::vector<HoldFigures> hold_figures(const std::vector<LogRow>& rows, const SetPoints& set_points,
                                      const TestCard& card) {
  std::vector<HoldFigures> all;
  for (const SetPointSet& set : set_points.sets)
    for (const SetPoint& point : set.points)
      for (const RecordWindow& window : point.windows) {
        if (window.point >= card.points.size()) continue;
        const TestPoint& asked = card.points[window.point];
        HoldFigures f;
        f.point = point.name;
        if (asked.repeats > 1) f.point += " " + std::to_string(window.repeat);
        f.flap_deg = set.flap_deg;
        f.is_stall = point.is_stall;
        f.left_band = window.left_band;
        f.forced = window.forced;
        f.begin_s = window.begin_s;
        f.end_s = point.is_stall && std::isfinite(window.break_s) ? window.break_s : window.end_s;
        f.bands = asked.bands;
        if (point.is_stall) {
          f.entry_rate_ktps = window.entry_rate_ktps;
          f.entry_wanted_ktps = asked.entry_rate_ktps;
        }
        fill(f, rows);
        all.push_back(std::move(f));
      }
  std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.begin_s < b.begin_s; });
  return all;
}

double hold_rms_kt(const std::vector<LogRow>& rows) {
  Sum speed;
  for (const Record& record : find_records(rows))
    for (std::size_t i = record.begin; i < record.end; ++i)
      if (rows[i].target_kt > 0.0) speed.add(rows[i].ias_kt - rows[i].target_kt);
  return speed.rms();
}

}  // namespace stallwright::view
