#include <algorithm>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/report/flown_summary.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright {
namespace {

/// Speed lost per second over the second before and the one after, kt/s; the ends take what there is.
std::vector<double> entry_rates(const std::vector<double>& t_s, const std::vector<double>& ias_kt) {
  constexpr double kHalf_s = 1.0;
  std::vector<double> rates(t_s.size(), kNone);
  std::size_t from = 0, to = 0;
  for (std::size_t i = 0; i < t_s.size(); ++i) {
    while (t_s[from] < t_s[i] - kHalf_s) ++from;
    while (to + 1 < t_s.size() && t_s[to] < t_s[i] + kHalf_s) ++to;
    if (to > from) rates[i] = (ias_kt[from] - ias_kt[to]) / (t_s[to] - t_s[from]);
  }
  return rates;
}

void add_recorded(TimeHistory& history, const std::vector<LogRow>& log, std::size_t rows) {
  for (std::size_t i = 0; i < rows; ++i) {
    history.t_s.push_back(log[i].t_s);
    history.ias_kt.push_back(log[i].ias_kt);
    history.altitude_ft.push_back(log[i].altitude_ft);
    history.ratio.push_back(log[i].ratio);
    history.pitch_deg.push_back(log[i].pitch_deg);
    history.bank_deg.push_back(log[i].bank_deg);
  }
  history.entry_ktps = entry_rates(history.t_s, history.ias_kt);
}

void add_truth(TimeHistory& history, const std::vector<TruthRow>& truth, const Day& day, std::size_t rows) {
  const AirColumn column(day);
  for (std::size_t i = 0; i < rows; ++i) {
    // The wing's own angle has the gusts in it; the curve is of the aeroplane against the mean air.
    const double alpha = truth[i].alpha_deg * math::kDegree, beta = truth[i].beta_deg * math::kDegree;
    const double in_plane = truth[i].tas_kt * kKnot * math::cos(beta);
    history.alpha_deg.push_back(math::atan2(in_plane * math::sin(alpha) + truth[i].gust_down_mps,
                                            in_plane * math::cos(alpha) + truth[i].gust_forward_mps) /
                                math::kDegree);
    const AtmosphereState<double> air = column.at(truth[i].altitude_ft * kFoot);
    history.true_speed_kt.push_back(cas_of_tas(truth[i].tas_kt * kKnot, air) / kKnot);
    history.separation.push_back(0.5 * (truth[i].attached_left + truth[i].attached_right));
  }
}

TimeHistory::Band band_of(const TestCard& card, const LogRow& row) {
  const TestPoint& point = card.points.at(static_cast<std::size_t>(row.point - 1));
  TimeHistory::Band band;
  band.begin_s = row.t_s;
  band.name = point.name;
  band.low_kt = row.target_kt - point.bands.speed_low_kt;
  band.high_kt = row.target_kt + point.bands.speed_high_kt;
  band.low_ft = band.high_ft = kNone;  // height is free where power is not for holding it
  if (point.power == PowerRule::level) {
    const double working_ft = card.terrain_ft + card.working_height_ft;
    band.low_ft = working_ft - point.bands.altitude_ft;
    band.high_ft = working_ft + point.bands.altitude_ft;
  }
  return band;
}

/// One band for each stretch of one attempt at a steady point.
void add_bands(TimeHistory& history, const TestCard& card, const std::vector<LogRow>& log) {
  for (std::size_t i = 0; i < log.size();) {
    std::size_t j = i;
    while (j < log.size() && log[j].point == log[i].point && log[j].repeat == log[i].repeat &&
           log[j].attempt == log[i].attempt && log[j].target_kt == log[i].target_kt)
      ++j;
    if (log[i].point > 0 && log[i].target_kt > 0.0) {
      TimeHistory::Band band = band_of(card, log[i]);
      band.end_s = log[j - 1].t_s;
      history.bands.push_back(band);
    }
    i = j;
  }
}

void add_windows(TimeHistory& history, const TestCard& card, const SetPoints& set_points) {
  for (const SetPointSet& set : set_points.sets)
    for (const SetPoint& point : set.points)
      for (const RecordWindow& window : point.windows) {
        const bool repeated = window.point < card.points.size() && card.points[window.point].repeats > 1;
        std::string name = point.name;
        if (repeated) name.append(" ").append(std::to_string(window.repeat));
        history.windows.push_back(
            {window.begin_s, window.end_s, name, point.is_stall, window.left_band, window.forced});
        if (window.broke) history.breaks.push_back({window.break_s, name, window.break_sign});
      }
  std::sort(history.windows.begin(), history.windows.end(),
            [](const auto& a, const auto& b) { return a.begin_s < b.begin_s; });
}

}  // namespace

TimeHistory flown_history(const FlownSortie& flown, const std::vector<LogRow>& log,
                          const std::vector<TruthRow>& truth, const SetPoints& set_points) {
  const std::size_t rows = std::min(log.size(), truth.size());
  TimeHistory history;
  add_recorded(history, log, rows);
  add_truth(history, truth, flown.config.air.day, rows);
  add_bands(history, flown.config.card, log);
  add_windows(history, flown.config.card, set_points);
  return history;
}

}  // namespace stallwright
