#include "sim/study/nested_windows.hpp"

#include <algorithm>
#include <cmath>
#include <exception>

#include "sim/reduction/reduce.hpp"

namespace stallwright {
namespace {

constexpr std::size_t kLeastRows = 20;  ///< of a record, see find_records

/// The truth is judged against set points, so the other half of each row need not be kept.
class LogSink : public SortieSink {
 public:
  void row(const LogRow& log_line, const TruthRow&) override { log.push_back(log_line); }
  std::vector<LogRow> log;
};

WindowValue value_of(const WindowLine& line, const Judgement& judgement) {
  const JudgedPoint* p = point_of(line, judgement);
  return p != nullptr ? WindowValue{true, p->covered, p->error_kt, p->expanded_kt} : WindowValue{};
}

std::vector<std::size_t> flaps_of(const TestCard& card) {
  std::vector<std::size_t> flaps;
  for (const TestPoint& point : card.points)
    if (std::find(flaps.begin(), flaps.end(), point.flap_setting) == flaps.end())
      flaps.push_back(point.flap_setting);
  return flaps;
}

}  // namespace

std::vector<WindowLine> window_lines(const TestCard& card) {
  const std::vector<std::size_t> flaps = flaps_of(card);
  std::vector<WindowLine> lines;
  for (std::size_t set = 0; set < flaps.size(); ++set) {
    WindowLine stall{set, 0, "stall", true, 1.0, kNone};
    bool stall_wanted = false;
    for (std::size_t k = 0; k < card.points.size(); ++k) {
      const TestPoint& point = card.points[k];
      if (point.flap_setting != flaps[set]) continue;
      if (point.is_stall() && !stall_wanted) stall.card_point = k;
      stall_wanted = stall_wanted || point.is_stall();
      if (!point.is_steady()) continue;
      for (const double share : kWindowShares)
        lines.push_back({set, k, point.name, false, share, share * point.record_s});
    }
    if (stall_wanted) lines.push_back(stall);
  }
  return lines;
}

void cut_records(std::vector<LogRow>& log, const TestCard& card, double share) {
  for (const Record& record : find_records(log)) {
    if (!card.points[record.point].is_steady()) continue;
    const std::size_t rows = record.end - record.begin;
    const auto kept = static_cast<std::size_t>(std::floor(share * static_cast<double>(rows)));
    for (std::size_t i = record.begin + std::clamp(kept, kLeastRows, rows); i < record.end; ++i)
      log[i].recording = 0;
  }
}

const JudgedPoint* point_of(const WindowLine& line, const Judgement& judgement) {
  if (line.set >= judgement.sets.size()) return nullptr;
  for (const JudgedPoint& p : judgement.sets[line.set].points) {
    const bool same = line.is_stall ? p.measured.is_stall
                                    : !p.measured.is_stall && p.measured.card_point == line.card_point;
    if (same && p.measured.found() && std::isfinite(p.error_kt) && std::isfinite(p.expanded_kt)) return &p;
  }
  return nullptr;
}

void for_each_window(std::vector<LogRow>& log, const SortieConfig& config, const std::vector<TrueSet>& truth,
                     const SortieOutcome& outcome,
                     const std::function<void(double share, const Judgement&)>& told) {
  double left = 1.0;  // of each record, after the cuts so far
  for (const double share : kWindowShares) {
    cut_records(log, config.card, share / left);
    left = share;
    told(share,
         judge(reduce(log, config.card, config.instruments), truth, config.card, config.type, outcome));
  }
}

namespace {

std::vector<WindowValue> values_of(std::vector<LogRow>& log, const SortieConfig& config,
                                   const std::vector<TrueSet>& truth, const SortieOutcome& outcome) {
  const std::vector<WindowLine> lines = window_lines(config.card);
  std::vector<WindowValue> values(lines.size());
  try {
    for_each_window(log, config, truth, outcome, [&](double share, const Judgement& judgement) {
      for (std::size_t i = 0; i < lines.size(); ++i)
        if (lines[i].share == share) values[i] = value_of(lines[i], judgement);
    });
  } catch (const std::exception&) {
    // Counts as not found, which the table shows.
    std::fill(values.begin(), values.end(), WindowValue{});
  }
  return values;
}

}  // namespace

std::vector<WindowValue> fly_windows(const SortieConfig& config, const std::vector<TrueSet>& truth) {
  try {
    LogSink flown;
    const SortieOutcome outcome = fly_sortie(config, flown);
    return values_of(flown.log, config, truth, outcome);
  } catch (const std::exception&) {
    return std::vector<WindowValue>(window_lines(config.card).size());
  }
}

std::vector<std::vector<WindowValue>> fly_window_sorties(const SortieConfig& base,
                                                         const std::vector<TrueSet>& truth,
                                                         std::uint64_t first_seed, int sorties, int threads,
                                                         const StudyProgress& progress) {
  std::vector<std::vector<WindowValue>> flown(static_cast<std::size_t>(std::max(0, sorties)));
  fly_each_sortie(base, first_seed, sorties, threads, progress, [&](int k, EndedSortie& ended) {
    flown[static_cast<std::size_t>(k)] = values_of(ended.rows.log, base, truth, ended.outcome);
  });
  return flown;
}

}  // namespace stallwright
