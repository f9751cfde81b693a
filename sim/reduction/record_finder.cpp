#include "sim/reduction/record_finder.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "aircraft/input_error.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/own_break.hpp"
#include "sim/reduction/resample.hpp"

namespace stallwright {
namespace {

constexpr std::size_t kRowsPerSecond = 50;
constexpr double kHand_s = 0.5, kClimbLag_s = 2.0;
constexpr double kSameFlap_deg = 3.0;
constexpr double kBelowSlowest_kt = 2.0, kLeastDrop_kt = 5.0, kMush_kt = 1.5;
constexpr double kLongestEntry_s = 120.0;

std::size_t rows_in(double seconds) {
  return static_cast<std::size_t>(std::lround(seconds * static_cast<double>(kRowsPerSecond)));
}

/// What is looked at, beside the rows: speed meaned over a second, climb as an instrument shows
/// it, and how many rows before each one
/// follow without a gap.
struct View {
  std::vector<double> speed_kt, climb_fpm;
  std::vector<std::size_t> run;
};

View view_of(const OwnLog& log) {
  View view;
  const std::size_t n = log.rows.size(), half = kRowsPerSecond / 2;
  const double keep = std::exp(-kRowInterval_s / kClimbLag_s);
  view.speed_kt.resize(n);
  view.climb_fpm.assign(n, 0.0);
  view.run.assign(n, 0);
  std::vector<double> sum(n + 1, 0.0);
  for (std::size_t i = 0; i < n; ++i) sum[i + 1] = sum[i] + log.rows[i].ias_kt;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t from = i > half ? i - half : 0, to = std::min(n, i + half + 1);
    view.speed_kt[i] = (sum[to] - sum[from]) / static_cast<double>(to - from);
    if (i > 0 && unbroken(log, i - 1, i + 1)) view.run[i] = view.run[i - 1] + 1;
    if (view.run[i] == 0) continue;
    const double now_fpm = (log.rows[i].altitude_ft - log.rows[i - 1].altitude_ft) / kRowInterval_s * 60.0;
    view.climb_fpm[i] = now_fpm + keep * (view.climb_fpm[i - 1] - now_fpm);
  }
  return view;
}

/// Flaps as the point asks; where nothing tells them, the card's only setting is taken.
bool flaps_fit(const ColumnMap& map, const OwnLog& log, const TestPoint& point, const LogRow& row) {
  if (log.lacks.flap) return true;
  const double wanted = point.flap_setting < map.flaps_deg.size() ? map.flaps_deg[point.flap_setting] : 0.0;
  return std::abs(row.flap_deg - wanted) <= kSameFlap_deg;
}

void require_flaps(const ColumnMap& map, const TestCard& card, const OwnLog& log) {
  std::size_t most = 0;
  bool several = false;
  for (const TestPoint& point : card.points) {
    most = std::max(most, point.flap_setting);
    several = several || point.flap_setting != card.points.front().flap_setting;
  }
  if (several && log.lacks.flap)
    throw InputError(map.file +
                     ": flap: expected column.flap or [[flap]] to tell the card's flap settings apart, "
                     "found neither");
  if (!log.lacks.flap && most > 0 && map.flaps_deg.size() <= most)
    throw InputError(map.file +
                     ": constants.flaps_deg: expected the angles of the card's flap settings up to " +
                     std::to_string(most) + ", found " + std::to_string(map.flaps_deg.size()));
}

double mass_at(const ColumnMap& map, const OwnLog& log, std::size_t point, const LogRow& row) {
  return log.lacks.mass ? stand_in_mass_kg(map, point) : row.mass_kg;
}

bool on_condition(const OwnLog& log, const View& view, const TestPoint& point, double target_kt,
                  std::size_t i) {
  const LogRow& row = log.rows[i];
  const Bands& bands = point.bands;
  const double off_kt = row.ias_kt - target_kt;
  const double climb = point.power == PowerRule::descent ? -point.descent_fpm : 0.0;
  const bool climb_ok = point.power == PowerRule::idle || log.lacks.altitude ||
                        std::abs(view.climb_fpm[i] - climb) <= bands.vertical_speed_fpm;
  return off_kt >= -bands.speed_low_kt && off_kt <= bands.speed_high_kt && climb_ok &&
         std::abs(row.bank_deg) <= bands.bank_deg &&
         std::abs(row.right_mps2) <= bands.slip_g * kStandardGravity_mps2;
}

/// Does the speed stay about the target through the record?
bool holds(const View& view, const TestPoint& point, double target_kt, std::size_t begin, std::size_t end) {
  const double low = target_kt - 2.0 * point.bands.speed_low_kt,
               high = target_kt + 2.0 * point.bands.speed_high_kt;
  double first = 0.0, second = 0.0;
  const std::size_t half = (end - begin) / 2;
  for (std::size_t i = begin; i < begin + 2 * half; ++i) {
    if (view.speed_kt[i] < low || view.speed_kt[i] > high) return false;
    (i < begin + half ? first : second) += view.speed_kt[i] / static_cast<double>(half);
  }
  return std::abs(second - first) <= 0.5 * (point.bands.speed_low_kt + point.bands.speed_high_kt) / 2.0;
}

void find_steady(const ColumnMap& map, const TestCard& card, const OwnLog& log, const View& view,
                 std::size_t k, std::vector<ChosenRecord>& found) {
  const TestPoint& point = card.points[k];
  const std::size_t settle = rows_in(point.settle_s + kHand_s), length = rows_in(point.record_s);
  std::size_t met = 0;
  int repeat = 0;
  for (std::size_t i = 0; i < log.rows.size() && repeat < point.repeats; ++i) {
    const double target_kt = own_target_kt(map, card, k, mass_at(map, log, k, log.rows[i]));
    if (view.run[i] == 0 || !flaps_fit(map, log, point, log.rows[i]) ||
        !on_condition(log, view, point, target_kt, i))
      met = 0;
    else
      ++met;
    if (met <= settle) continue;
    const std::size_t end = i + length;
    if (end >= log.rows.size() || view.run[end] < length || !holds(view, point, target_kt, i, end)) continue;
    found.push_back({k, ++repeat, log.rows[i].t_s, log.rows[end].t_s});
    met = 0;
    i = end;
  }
}

/// Where slowing down began that ended at `lowest`, but not before the speed that a stall is entered from (14 CFR
/// 23.201(b), amendment 62, and common practice: card_speeds.hpp): what lies before is no part of it.
std::size_t entry_of(const View& view, std::size_t lowest, double rate_ktps) {
  const std::size_t two = 2 * kRowsPerSecond, step = kRowsPerSecond / 5;
  const double from_kt = std::max(1.3 * view.speed_kt[lowest], view.speed_kt[lowest] + 10.0);
  const std::size_t earliest = lowest - std::min({lowest, view.run[lowest], rows_in(kLongestEntry_s)});
  std::size_t at = lowest;  // past the time of mushing near the lowest speed, in which it hardly falls
  while (at > earliest &&
         (view.speed_kt[at] < view.speed_kt[lowest] + kMush_kt || at + 3 * kRowsPerSecond > lowest))
    --at;
  while (at >= earliest + two + step && view.speed_kt[at] < from_kt &&
         view.speed_kt[at - two] - view.speed_kt[at] >= 2.0 * 0.2 * rate_ktps)
    at -= step;
  return at;
}

/// The stall point of these flaps whose rate is nearest; none: the card's size.
std::size_t nearest_stall(const ColumnMap& map, const TestCard& card, const OwnLog& log, const LogRow& row,
                          double rate_ktps) {
  std::size_t best = card.points.size();
  for (std::size_t k = 0; k < card.points.size(); ++k) {
    const TestPoint& point = card.points[k];
    if (!point.is_stall() || !flaps_fit(map, log, point, row)) continue;
    const auto off = [&](std::size_t p) { return std::abs(card.points[p].entry_rate_ktps - rate_ktps); };
    if (best == card.points.size() || off(k) < off(best)) best = k;
  }
  return best;
}

/// Slowest target of the flaps that a row has, kt; infinite without steady points.
double slowest_target_kt(const ColumnMap& map, const TestCard& card, const OwnLog& log, const LogRow& row) {
  double slowest = 1e9;
  for (std::size_t k = 0; k < card.points.size(); ++k)
    if (card.points[k].is_steady() && flaps_fit(map, log, card.points[k], row))
      slowest = std::min(slowest, own_target_kt(map, card, k, mass_at(map, log, k, row)));
  return slowest;
}

bool is_lowest(const View& view, std::size_t i) {
  const std::size_t reach = 10 * kRowsPerSecond;
  const std::size_t from = i - std::min({i, reach, view.run[i]});
  for (std::size_t k = from; k < std::min(view.speed_kt.size(), i + reach); ++k) {
    if (k > i && view.run[k] == 0) break;
    if (view.speed_kt[k] < view.speed_kt[i] || (k < i && view.speed_kt[k] == view.speed_kt[i])) return false;
  }
  return true;
}

/// Last row of the record of a stall: a second and a half after its break, for which six seconds after the lowest speed
/// are searched (a wing that mushes breaks late, by the stick at its stop). Where the log cannot tell a break, two
/// seconds after the lowest speed; 0 for a slowing down that ended without one.
std::size_t end_of_stall(const OwnLog& log, const View& view, std::size_t begin, std::size_t lowest) {
  const auto reached = [&](double seconds) {
    std::size_t end = lowest;
    while (end + 1 < log.rows.size() && view.run[end + 1] > 0 && end < lowest + rows_in(seconds)) ++end;
    return end;
  };
  if (log.lacks.pitch && log.lacks.acceleration) return reached(2.0);
  const std::size_t last = reached(6.0);
  RecordWindow window;
  find_own_break(log, {begin, last + 1, 0, 1, 1}, kNone, window);
  if (!window.broke) return 0;
  // A break is dated back from when it is certain, and the record has to reach that far to show it.
  std::size_t end = std::min(std::max(lowest, row_at(log, window.break_s + 1.5)), last);
  for (window.broke = false; end < last; end = std::min(end + rows_in(0.5), last)) {
    find_own_break(log, {begin, end, 0, 1, 1}, kNone, window);
    if (window.broke) break;
  }
  return end;
}

void find_stalls(const ColumnMap& map, const TestCard& card, const OwnLog& log, const View& view,
                 std::vector<ChosenRecord>& found) {
  constexpr double kAirborne_kt = 25.0;
  for (std::size_t i = 0; i < log.rows.size(); ++i) {
    if (view.speed_kt[i] < kAirborne_kt ||
        view.speed_kt[i] > slowest_target_kt(map, card, log, log.rows[i]) - kBelowSlowest_kt ||
        !is_lowest(view, i))
      continue;
    const std::size_t first = nearest_stall(map, card, log, log.rows[i], 1.0);
    if (first == card.points.size()) continue;
    const std::size_t begin = entry_of(view, i, card.points[first].entry_rate_ktps);
    const double drop_kt = view.speed_kt[begin] - view.speed_kt[i];
    const std::size_t end = drop_kt < kLeastDrop_kt ? 0 : end_of_stall(log, view, begin, i);
    if (end == 0) continue;
    const double rate = drop_kt / (log.rows[i].t_s - log.rows[begin].t_s);
    found.push_back(
        {nearest_stall(map, card, log, log.rows[i], rate), 1, log.rows[begin].t_s, log.rows[end].t_s});
  }
}

}  // namespace

std::vector<ChosenRecord> find_records_by_flight(const ColumnMap& map, const TestCard& card,
                                                 const OwnLog& log) {
  require_flaps(map, card, log);
  const View view = view_of(log);
  std::vector<ChosenRecord> found;
  for (std::size_t k = 0; k < card.points.size(); ++k)
    if (card.points[k].is_steady()) find_steady(map, card, log, view, k, found);
  find_stalls(map, card, log, view, found);
  std::stable_sort(found.begin(), found.end(),
                   [](const ChosenRecord& a, const ChosenRecord& b) { return a.begin_s < b.begin_s; });
  std::map<std::size_t, int> count;
  for (ChosenRecord& record : found) record.repeat = ++count[record.point];
  return found;
}

}  // namespace stallwright
