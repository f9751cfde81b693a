#include "sim/study/entry_rate.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/reduction/uncertainty.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright {
namespace {

/// A card of the first stall alone, once, at a rate.
TestCard stall_card(const TestCard& card, double rate_ktps) {
  const auto stall =
      std::find_if(card.points.begin(), card.points.end(), [](const TestPoint& p) { return p.is_stall(); });
  if (stall == card.points.end()) throw std::invalid_argument("entry rates: the card has no stall");
  TestCard out = card;
  out.points = {*stall};
  out.points.front().entry_rate_ktps = rate_ktps;
  out.points.front().repeats = 1;
  return out;
}

double delay_m(const AircraftType& type) {
  return type.wing.section.tau2_chords * type.wing.stations.front().chord_m;
}

/// Mean of one figure over the stalls that have it.
template <class Figure>
SampleMean mean_of(const std::vector<StallObservation>& stalls, const Figure& figure) {
  std::vector<double> values;
  for (const StallObservation& s : stalls)
    if (s.found && std::isfinite(figure(s))) values.push_back(figure(s));
  return sample_mean(values);
}

EntryRateRow fly_rate(const EntryRateConfig& config, const TestCard& card,
                      const std::vector<TrueSet>& truth) {
  EntryRateRow row;
  row.asked_ktps = card.points.front().entry_rate_ktps;
  row.sorties = config.sorties;
  row.stalls.resize(static_cast<std::size_t>(config.sorties));
  for_each_index(config.sorties, config.threads, [&](int k) {
    SortieConfig one = config.base;
    one.card = card;
    one.seed = config.first_seed + static_cast<std::uint64_t>(k);
    MemorySink rows;
    const StudySortie flown = fly_and_judge(one, truth, rows);
    row.stalls[static_cast<std::size_t>(k)] = observe_stall(flown, rows.truth, delay_m(config.base.type));
  });
  for (const StallObservation& s : row.stalls) {
    if (!s.found) continue;
    ++row.found;
    row.attached += s.attached_root > kAttached ? 1 : 0;
    row.at_aft_stop += s.break_sign == "control at its aft stop" ? 1 : 0;
  }
  using Stall = StallObservation;
  row.flown_ktps = mean_of(row.stalls, [](const Stall& s) { return s.entry_rate_ktps; });
  row.break_ratio = mean_of(row.stalls, [](const Stall& s) { return s.break_ratio; });
  row.let_go_ratio = mean_of(row.stalls, [](const Stall& s) { return s.let_go_ratio; });
  row.let_go_rad = mean_of(row.stalls, [](const Stall& s) { return s.let_go_rad; });
  row.let_go_before_s = mean_of(row.stalls, [](const Stall& s) { return s.let_go_before_s; });
  row.run_on_ratio = mean_of(row.stalls, [](const Stall& s) { return s.run_on_ratio(); });
  row.alpha_rate_radps = mean_of(row.stalls, [](const Stall& s) { return s.alpha_rate_radps; });
  row.delay_rad = mean_of(row.stalls, [](const Stall& s) { return s.delay_rad(); });
  row.ratio_per_rad = mean_of(row.stalls, [](const Stall& s) { return s.ratio_per_rad; });
  row.max_lift_error_kt = mean_of(row.stalls, [](const Stall& s) { return s.max_lift_error_kt; });
  return row;
}

/// By tau2, with the errors that the rates of angle and what tau2 leaves out bring.
void add_expectation(EntryRateStudy& study, const AircraftType& type) {
  study.ratio_per_rad = 0.5 * (study.rows[0].ratio_per_rad.value + study.rows[1].ratio_per_rad.value);
  const SampleMean later = difference(study.rows[1].delay_rad, study.rows[0].delay_rad);
  const double left_out =
      standard_uncertainty_rectangular(type.wing.section.tau1_chords / type.wing.section.tau2_chords);
  study.expected_rise_rad = {later.value, std::hypot(later.standard_error, left_out * later.value),
                             later.count};
  study.expected_rise = {study.ratio_per_rad * later.value,
                         std::abs(study.ratio_per_rad) * study.expected_rise_rad.standard_error, later.count};
  if (later.count < 5) return;
  const double expanded = coverage_factor(0.95, later.count - 2) * study.expected_rise.standard_error;
  study.expected_interval = {study.expected_rise.value - expanded, study.expected_rise.value + expanded};
}

}  // namespace

EntryRateStudy run_entry_rates(const EntryRateConfig& config) {
  EntryRateStudy out;
  const Aircraft aircraft = make_aircraft(config.base.type, config.base.loading, config.base.airframe_seed);
  // Truth is quasi-static: the same for both rates.
  const TestCard card = stall_card(config.base.card, config.rates_ktps[0]);
  const std::vector<TrueSet> truth = find_truth(aircraft, card, working_air(card, config.base.air.day));
  for (std::size_t i = 0; i < out.rows.size(); ++i)
    out.rows[i] = fly_rate(config, stall_card(config.base.card, config.rates_ktps[i]), truth);

  const EntryRateRow &slow = out.rows[0], &fast = out.rows[1];
  out.break_rise = difference(fast.break_ratio, slow.break_ratio);
  out.let_go_rise_rad = difference(fast.let_go_rad, slow.let_go_rad);
  out.let_go_rise = difference(fast.let_go_ratio, slow.let_go_ratio);
  out.run_on_rise = difference(fast.run_on_ratio, slow.run_on_ratio);
  out.max_lift_shift_kt = difference(fast.max_lift_error_kt, slow.max_lift_error_kt);
  add_expectation(out, config.base.type);
  return out;
}

double EntryRateStudy::attached_share() const {
  const int found = rows[0].found + rows[1].found;
  return found > 0 ? static_cast<double>(rows[0].attached + rows[1].attached) / found : kNone;
}

}  // namespace stallwright
