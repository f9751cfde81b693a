#include "sim/reduction/own_break.hpp"

#include <algorithm>
#include <cmath>

#include "sim/reduction/point_reduction.hpp"

namespace stallwright {
namespace {

constexpr std::size_t kMean = 21;  ///< rows, 0.42 s
constexpr double kLiftLost = 0.035;
constexpr double kNearSlowest = 1.3;

void note(RecordWindow& window, double time_s, const char* sign) {
  window.broke = true;
  window.break_s = time_s;
  window.break_sign = sign;
}

/// Lift lost that the angle does not account for. Rows well above the slowest speed are no stall, whatever gusts do.
void find_lift_lost(const OwnLog& log, const Record& record, RecordWindow& window) {
  double slowest_kt = 1e9;
  for (std::size_t i = record.begin; i < record.end; ++i)
    slowest_kt = std::min(slowest_kt, log.rows[i].ias_kt);
  double most = 0.0, ratio_there = 0.0;
  for (std::size_t i = record.begin + kMean; i < record.end; ++i) {
    double lift = 0.0, ratio = 0.0;
    for (std::size_t k = i + 1 - kMean; k <= i; ++k) {
      lift += lift_area_m2(log.rows[k]) / static_cast<double>(kMean);
      ratio += log.rows[k].ratio / static_cast<double>(kMean);
    }
    if (lift > most) {
      most = lift;
      ratio_there = ratio;
    } else if (log.rows[i].ias_kt < kNearSlowest * slowest_kt && lift <= (1.0 - kLiftLost) * most &&
               ratio >= ratio_there) {
      note(window, log.rows[i].t_s, "lift lost");
      return;
    }
  }
}

/// Nose, stick and bank alone: where lift cannot be seen, that it was lost cannot be asked for. Lift that is the same all
/// the way passes the detector's question as soon as the angle grows.
void find_by_attitude(const OwnLog& log, const Record& record, RecordWindow& window) {
  const auto row = log.rows.begin();
  std::vector<LogRow> rows(row + static_cast<std::ptrdiff_t>(record.begin),
                           row + static_cast<std::ptrdiff_t>(record.end));
  for (LogRow& r : rows) r.impact_pressure_pa = rows.front().impact_pressure_pa;
  detail::find_break(rows, {0, rows.size(), record.point, record.repeat, record.attempt}, window);
}

}  // namespace

void find_own_break(const OwnLog& log, const Record& record, double given_s, RecordWindow& window) {
  if (record.begin >= record.end) return;
  if (std::isfinite(given_s))
    note(window, given_s, "as given");
  else if (!log.lacks.pitch && !log.lacks.acceleration)
    detail::find_break(log.rows, record, window);
  else if (!log.lacks.pitch)
    find_by_attitude(log, record, window);
  else if (!log.lacks.acceleration)
    find_lift_lost(log, record, window);
}

}  // namespace stallwright
