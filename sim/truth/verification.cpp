#include "sim/truth/verification.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/reduction/flight_log.hpp"
#include "sim/truth/protection.hpp"
#include "sim/truth/truth_text.hpp"

namespace stallwright {
namespace {

constexpr double kSameFlaps_deg = 0.5;
constexpr double kBankOff_deg =
    10.0;  ///< moves the stall of a 30 deg turn by 5 %; rough air does not do it for seconds

/// The taught warning whose flaps are nearest, as the unit takes it.
struct TaughtWarning {
  const SetPointSet* set = nullptr;
  const SetPoint* point = nullptr;
};

TaughtWarning nearest_warning(const SetPoints& taught, double flap_deg) {
  TaughtWarning best;
  for (const SetPointSet& set : taught.sets)
    for (const SetPoint& p : set.points)
      if (p.name == "warning" && p.found() &&
          (best.set == nullptr ||
           std::abs(set.flap_deg - flap_deg) < std::abs(best.set->flap_deg - flap_deg)))
        best = {&set, &p};
  return best;
}

/// Indicated speed around a row, mean of half a second, without a kink from noise.
double speed_around(const std::vector<LogRow>& rows, std::size_t at, const Record& record) {
  constexpr std::size_t kHalf = 12;
  const std::size_t from = std::max(record.begin, at > kHalf ? at - kHalf : 0),
                    to = std::min(record.end - 1, at + kHalf);
  double sum = 0.0;
  for (std::size_t i = from; i <= to; ++i) sum += rows[i].ias_kt;
  return sum / static_cast<double>(to - from + 1);
}

/// Mean bank of the last two seconds before a row, either way, deg: the turn that the tone was heard in.
double bank_before(const std::vector<LogRow>& rows, std::size_t at, const Record& record) {
  constexpr std::size_t kBack = 100;
  const std::size_t from = std::max(record.begin, at > kBack ? at - kBack : 0);
  double sum = 0.0;
  for (std::size_t i = from; i <= at; ++i) sum += rows[i].bank_deg;
  return std::abs(sum / static_cast<double>(at - from + 1));
}

void judge_slow_run(const std::vector<LogRow>& rows, const Record& record, const TestCard& card,
                    VerifiedPoint& v) {
  std::size_t at = record.begin;
  while (at < record.end && rows[at].tone == 0) ++at;
  if (at == record.end) {
    v.text = "no tone down to " + knots_text(rows[record.end - 1].ias_kt);
    v.set_point_off = true;
    return;
  }
  v.tone_kt = speed_around(rows, at, record);
  v.margin_kt = v.tone_kt - v.stall_kt;
  if (at == record.begin) {
    v.text = "the tone stood already at " + knots_text(v.tone_kt) + ", where the run began";
    return;
  }
  // The stall speed is that of the turn which the card asks for; a person may have flown another.
  const double bank_deg = bank_before(rows, at, record);
  if (std::abs(bank_deg - v.bank_deg) > kBankOff_deg) {
    v.text = "flown at " + std::to_string(std::lround(bank_deg)) + " deg of bank, not the " +
             std::to_string(std::lround(v.bank_deg)) + " that the card asks for: fly it again";
    return;
  }
  v.text = knots_text(v.margin_kt) + " above the stall";
  v.ok = v.margin_kt >= card.wanted_margin_kt;
  if (!v.ok) v.text += ", the card wants " + knots_text(card.wanted_margin_kt);
  const double off_kt = v.tone_kt - v.taught_kt;
  if (std::abs(off_kt) > card.tone_band_kt) {
    v.ok = false;
    v.text +=
        "; " + knots_text(std::abs(off_kt)) + (off_kt > 0.0 ? " earlier" : " later") + " than it was taught";
  }
  v.set_point_off = !v.ok;
}

void judge_steady_point(const std::vector<LogRow>& rows, const Record& record, VerifiedPoint& v) {
  for (std::size_t i = record.begin; i < record.end; ++i)
    if (rows[i].tone != 0 && (i == record.begin || rows[i - 1].tone == 0)) ++v.nuisance_tones;
  v.ok = v.nuisance_tones == 0;
  v.set_point_off = !v.ok;
  v.text = v.ok ? "silent" : std::to_string(v.nuisance_tones) + (v.nuisance_tones == 1 ? " tone" : " tones");
}

VerifiedPoint described(const TestCard& card, std::size_t k, const AircraftType& type, double stall_kt,
                        const Taught& taught, double entered_kg) {
  const TestPoint& point = card.points[k];
  VerifiedPoint v;
  v.card_point = k;
  v.name = point.name;
  v.flap_deg = type.flaps[point.flap_setting].deflection_rad / math::kDegree;
  v.power = point.power;
  v.bank_deg = point.turn_bank_deg;
  v.slow_run = point.target == TargetKind::slow_through;
  const TaughtWarning warning = nearest_warning(taught.set_points, v.flap_deg);
  if (warning.point == nullptr) return v;
  v.taught_flap_deg = warning.set->flap_deg;
  const bool same_flaps = std::abs(v.taught_flap_deg - v.flap_deg) < kSameFlaps_deg;
  v.in_use = same_flaps && v.bank_deg <= card.protected_bank_deg;
  if (!v.slow_run) return v;
  v.stall_kt = stall_kt;
  if (same_flaps && v.power == taught.power && v.bank_deg == 0.0)
    v.taught_kt = warning.point->target_kt * std::sqrt(entered_kg / warning.set->mass_kg);
  return v;
}

/// Points that were flown and are not judged, and why.
std::string unjudged(const Verification& out) {
  std::vector<std::string> said;
  std::string text;
  for (const VerifiedPoint& v : out.points) {
    if (v.in_use) continue;
    const bool taught = std::abs(v.taught_flap_deg - v.flap_deg) < kSameFlaps_deg;
    const std::string why =
        taught ? v.name + " (beyond the bank that is protected)" : flaps_text(v.flap_deg) + " (not taught)";
    if (std::find(said.begin(), said.end(), why) != said.end()) continue;
    said.push_back(why);
    text += (text.empty() ? "; not judged: " : ", ") + why;
  }
  return text;
}

std::string praise(const Verification& out) {
  bool silent = false, compared = false;
  for (const VerifiedPoint& v : out.points) {
    silent = silent || (v.in_use && !v.slow_run);
    compared = compared || (v.in_use && std::isfinite(v.taught_kt));
  }
  return "the tone came " + std::string(compared ? "where it was taught, and " : "") +
         "far enough above the stall on every run in use" +
         (silent ? ", and was silent where it should be" : "") +
         (compared ? "" : "; no run could be compared with the speed of the teaching");
}

void conclude(Verification& out) {
  int in_use = 0;
  std::string failed;
  for (const VerifiedPoint& v : out.points) {
    if (!v.in_use) continue;
    in_use += v.slow_run ? 1 : 0;
    if (v.ok) continue;
    failed += (failed.empty() ? "" : "; ") + v.name + ", " + v.text;
    const std::string again = "warning, " + flaps_text(v.taught_flap_deg);
    if (v.set_point_off &&
        std::find(out.fly_again.begin(), out.fly_again.end(), again) == out.fly_again.end())
      out.fly_again.push_back(again);
  }
  out.pass = in_use > 0 && failed.empty();
  out.sentence = in_use == 0
                     ? "no slow run of this card has the flaps of a taught warning: nothing was verified"
                     : (out.pass ? praise(out) : failed) + unjudged(out);
}

}  // namespace

WarningUnit unit_for(const SetPoints& taught) {
  WarningUnit unit;
  for (const SetPointSet& set : taught.sets)
    for (const SetPoint& p : set.points)
      if (p.name == "warning" && p.found()) unit.warnings.push_back({set.flap_deg, p.ratio});
  return unit;
}

std::vector<double> stalls_of_runs(const TestCard& card, const Aircraft& aircraft, const StillAir& air) {
  std::vector<double> stalls_kt;
  for (const TestPoint& point : card.points)
    stalls_kt.push_back(
        point.target == TargetKind::slow_through
            ? protected_flight(aircraft, point.flap_setting, point.power, point.turn_bank_deg, 0.0, air)
                  .stall_kt
            : kNone);
  return stalls_kt;
}

Verification verify(const std::vector<LogRow>& rows, const TestCard& card, const AircraftType& type,
                    const std::vector<double>& stalls_kt, const Taught& taught) {
  Verification out;
  const double entered_kg = rows.empty() ? kNone : rows.front().mass_kg;
  const std::vector<Record> records = find_records(rows);
  for (std::size_t k = 0; k < card.points.size(); ++k) {
    VerifiedPoint v = described(card, k, type, stalls_kt.at(k), taught, entered_kg);
    const VerifiedPoint untouched = v;
    bool flown = false, all_ok = true;
    for (const Record& record : records) {
      if (record.point != k || (flown && !all_ok)) continue;
      v = untouched;
      if (v.slow_run)
        judge_slow_run(rows, record, card, v);
      else
        judge_steady_point(rows, record, v);
      flown = true;
      all_ok = v.ok;
    }
    if (!flown) v.text = "could not be flown";
    out.points.push_back(v);
  }
  conclude(out);
  return out;
}

}  // namespace stallwright
