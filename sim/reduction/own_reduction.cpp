#include "sim/reduction/own_reduction.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/motion/flight.hpp"
#include "sim/reduction/own_break.hpp"
#include "sim/reduction/point_reduction.hpp"
#include "sim/reduction/uncertainty.hpp"

namespace stallwright {
namespace {

/// A log slower than this tells the maximum of lift less well than its own rows do.
constexpr double kQuickEnough_s = 0.1;
/// What stands in for a number is known to about a quarter of itself: dof 8, as for the other judged lines.
constexpr double kJudgedDof = 8.0;

bool no_full_load_factor(const Lacks& lacks) { return lacks.acceleration || lacks.chordwise; }

/// Instruments whose errors are what was assumed in place of the numbers that are lacking.
InstrumentGrade widened(InstrumentGrade grade, const Lacks& lacks) {
  if (no_full_load_factor(lacks))
    grade.acceleration_bias_mps2 =
        std::hypot(lacks.acceleration ? 0.0 : grade.acceleration_bias_mps2,
                   standard_uncertainty_rectangular(kAssumedLoadFactor_g) * kStandardGravity_mps2);
  if (lacks.mass)
    grade.mass_share = std::hypot(grade.mass_share, standard_uncertainty_rectangular(kAssumedMassShare));
  return grade;
}

/// The same lines under their true names.
void rename_lines(const Lacks& lacks, SetPoint& point) {
  for (BudgetLine& line : point.budget) {
    if (line.name == "acceleration bias" && no_full_load_factor(lacks)) {
      line.name = lacks.acceleration ? "load factor taken as 1" : "load factor from its normal part";
      line.note = "within " + number_text(kAssumedLoadFactor_g) + " g in calm air (ours), rectangular";
      line.shared = Shared::sortie;
    }
    if (line.name == "mass entered" && lacks.mass) {
      line.name = "mass assumed";
      line.note = "within 5 % of the mass that the targets are stated for (ours), rectangular";
    }
  }
}

/// How fast ratio rises on the way to a break, 1/s: the most that any of the stalls shows over the last two seconds.
double ratio_rate(const OwnLog& log, const SetPoint& point) {
  double most = 0.0;
  for (const RecordWindow& window : point.windows) {
    if (!window.broke) continue;
    const std::size_t at = row_at(log, window.break_s), begin = row_at(log, window.begin_s);
    if (at <= begin + 10 || at >= log.rows.size()) continue;
    const std::size_t early = at > begin + 100 ? at - 100 : begin;
    most = std::max(most, std::abs(log.rows[at].ratio - log.rows[early].ratio) /
                              (log.rows[at].t_s - log.rows[early].t_s));
  }
  return most;
}

void widen_stall(const OwnLog& log, SetPoint& point) {
  const double rate = ratio_rate(log, point);
  if (log.lacks.acceleration)
    point.budget.push_back(
        {"maximum lift unseen", 'B', standard_uncertainty_rectangular(rate * kMaximumBeforeBreak_s),
         kJudgedDof, "no acceleration recorded: anywhere in the last 2 s before the break; rectangular"});
  if (log.interval_s > kQuickEnough_s)
    point.budget.push_back({"slow rows", 'B', standard_uncertainty_rectangular(rate * 0.5 * log.interval_s),
                            kJudgedDof,
                            "half an interval of the log's rows times the rate of ratio; rectangular"});
}

/// Readings beside the adopted one carry the systematic part of its budget as well.
void widen(const OwnLog& log, SetPoint& point) {
  rename_lines(log.lacks, point);
  if (!point.found()) return;
  if (point.is_stall) {
    const double before = point.u;
    widen_stall(log, point);
    detail::conclude(point);
    const double more = std::sqrt(std::max(0.0, point.u * point.u - before * before));
    for (Reading* reading : {&point.at_break, &point.peak}) reading->u = std::hypot(reading->u, more);
    point.max_lift.u = point.u;
  }
  if (log.lacks.acceleration)
    for (RecordWindow& window : point.windows) window.load_factor_sd = kNone;
}

void flag(const OwnLog& log, SetPoint& point) {
  const Lacks& lacks = log.lacks;
  if (!point.found()) return;
  if (lacks.acceleration) point.flags.push_back("no acceleration recorded: load factor taken as 1");
  if (lacks.acceleration && point.is_stall)
    point.flags.push_back("maximum lift not seen: the ratio is likely too high, which is late");
  if (lacks.chordwise) point.flags.push_back("load factor from its normal part alone");
  if (lacks.mass) point.flags.push_back("mass assumed");
  for (const RecordWindow& window : point.windows)
    if (window.break_sign == "lift lost") point.flags.push_back("break found from lift alone");
  for (const RecordWindow& window : point.windows)
    if (window.break_sign == "as given") point.flags.push_back("break as given in the map");
  std::sort(point.flags.begin(), point.flags.end());
  point.flags.erase(std::unique(point.flags.begin(), point.flags.end()), point.flags.end());
}

std::vector<std::string> lack_warnings(const Lacks& lacks) {
  std::vector<std::string> words;
  if (lacks.acceleration)
    words.push_back(
        "no acceleration in the log: the load factor is taken as 1 within " +
        number_text(kAssumedLoadFactor_g) +
        " g, as in calm air, and lift is not seen to fall at a stall, whose ratio then comes out too high "
        "rather than too low, so that a warning taken from it comes late; the budgets have lines for both");
  if (lacks.chordwise)
    words.emplace_back(
        "the normal acceleration alone, and no pitch to make up for the forward one: the load factor "
        "lacks the part along the wing's chord; the budgets have a line for it");
  if (lacks.mass)
    words.emplace_back(
        "no mass in the log or the map: the targets' mass is taken within 5 %; the budgets have a line "
        "for it");
  if (lacks.pitch)
    words.emplace_back(
        lacks.acceleration
            ? "no pitch and no acceleration in the log: a break has to be given in the map (break_s)"
            : "no pitch in the log: a break is looked for in the lift alone");
  else if (lacks.stick)
    words.emplace_back(
        "no stick in the log: a nose that the pilot pushed down cannot be told from one that fell");
  return words;
}

/// Breaks for the reduction to take over, from every stall record.
SetPoints breaks_of(const OwnLog& log, const std::vector<ChosenRecord>& records, const TestCard& card) {
  SetPoint point;
  point.is_stall = true;
  for (const ChosenRecord& chosen : records) {
    if (!card.points[chosen.point].is_stall()) continue;
    RecordWindow window;
    window.point = chosen.point;
    window.repeat = chosen.repeat;
    window.attempt = 1;
    find_own_break(log, record_of(log, chosen), chosen.break_s, window);
    point.windows.push_back(window);
  }
  SetPoints out;
  out.sets.emplace_back();
  out.sets.back().points.push_back(point);
  return out;
}

/// The slope of ratio against lift needs lift that is not the same all the way.
void check_lift_changes(const OwnLog& log, const TestCard& card) {
  std::map<std::size_t, std::vector<double>> lift;
  for (const Record& record : find_records(log.rows))
    if (card.points[record.point].is_steady())
      for (std::size_t i = record.begin; i < record.end; ++i)
        lift[card.points[record.point].flap_setting].push_back(lift_area_m2(log.rows[i]));
  for (const auto& [flap, values] : lift) {
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    if (*high - *low <= 1e-6 * *high)
      throw InputError(log.file +
                       ": expected an airspeed that changes a little in the steady records, found the same "
                       "all the way (a dead channel)");
  }
}

void check_load_factor(const OwnLog& log, const TestCard& card) {
  constexpr double kLeast = 0.7, kMost = 1.4;
  if (log.lacks.acceleration) return;
  for (const Record& record : find_records(log.rows)) {
    if (!card.points[record.point].is_steady()) continue;
    double n = 0.0;
    for (std::size_t i = record.begin; i < record.end; ++i)
      n += std::hypot(log.rows[i].forward_mps2, log.rows[i].right_mps2, log.rows[i].down_mps2) /
           kStandardGravity_mps2 / static_cast<double>(record.end - record.begin);
    if (n < kLeast || n > kMost)
      throw InputError(log.file +
                       ": column.normal: expected a load factor of about 1 in steady flight, found " +
                       number_text(std::round(n * 1000.0) / 1000.0) + " at " +
                       moment_text(log, log.rows[record.begin].t_s) +
                       " (another unit, or gravity taken away: offset in the map puts it back)");
  }
}

}  // namespace

SetPoints reduce_own_log(OwnLog log, const std::vector<ChosenRecord>& records, const ColumnMap& map,
                         const TestCard& card, const InstrumentGrade& instruments) {
  mark_records(records, map, card, log);
  check_load_factor(log, card);
  check_lift_changes(log, card);
  const SetPoints breaks = breaks_of(log, records, card);
  ReductionTerms terms;
  terms.breaks = &breaks;
  SetPoints out = reduce(log.rows, card, widened(instruments, log.lacks), terms);
  for (SetPointSet& set : out.sets) {
    for (SetPoint& point : set.points) {
      widen(log, point);
      flag(log, point);
    }
    detail::check_order(set, card.order_gap);
  }
  out.warnings = log.warnings;
  for (const std::string& words : lack_warnings(log.lacks)) out.warnings.push_back(words);
  out.warnings.push_back("the instrument errors in the budgets are those of the program's '" +
                         instruments.name + "' instruments, not known to be those of this aeroplane");
  return out;
}

}  // namespace stallwright
