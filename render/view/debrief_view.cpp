#include "render/view/debrief_view.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "render/view/flight_view.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/verdict_text.hpp"
#include "sim/truth/truth_text.hpp"

namespace stallwright::view {
namespace {

std::array<double, kParts> parts(const ErrorSplit& split, bool is_stall) {
  return {split.sensor_kt, split.air_kt, is_stall ? kNone : split.hold_kt, is_stall ? split.entry_kt : kNone,
          split.remainder_kt};
}

std::string order_words(const std::string& word) {
  if (word == "yes") return "in order";
  return word == "NO" ? "OUT OF ORDER" : word;
}

/// What somebody without the estimator would write down.
const ReadingError* plain_reading(const JudgedPoint& point) {
  for (const ReadingError& r : point.readings)
    if (reading_words(r.name) == (point.measured.is_stall ? "break" : "window mean") && r.split.known())
      return &r;
  return nullptr;
}

PointView point_view(const JudgedSet& set, std::size_t index) {
  const JudgedPoint& judged = set.points[index];
  const SetPoint& measured = judged.measured;
  PointView p;
  p.name = measured.name;
  p.is_stall = measured.is_stall;
  p.found = measured.found();
  p.covered = judged.covered;
  p.ratio = measured.ratio;
  p.low = measured.interval_low;
  p.high = measured.interval_high;
  p.true_ratio = judged.true_ratio;
  p.above_stall_kt = judged.measured.is_stall ? kNone : judged.margin_kt;
  p.true_above_stall_kt = judged.measured.is_stall ? kNone : judged.true_margin_kt;
  p.true_speed_kt = judged.true_speed_kt;
  p.error_kt = judged.error_kt;
  p.expanded_kt = judged.expanded_kt;
  p.split_known = judged.split.known();
  p.part_kt = parts(judged.split, p.is_stall);
  p.plain_part_kt.fill(kNone);
  if (const ReadingError* plain = plain_reading(judged)) {
    p.plain_part_kt = parts(plain->split, p.is_stall);
    p.plain_error_kt = plain->split.sum_kt();
  }
  p.off = p.found ? off_words(p.name, p.error_kt) : "not found";
  if (p.split_known && std::abs(p.error_kt) >= 0.05) p.why = why_words(p.part_kt);
  p.order = order_words(order_word(set, index));
  return p;
}

/// Where round knots stand on the ratio axis, from the sampled map.
std::vector<KnotsMark> knots_marks(const KnotsScale& scale) {
  std::vector<KnotsMark> marks;
  const std::size_t n = std::min(scale.ratio.size(), scale.speed_kt.size());
  if (n < 2) return marks;
  const Ticks ticks = nice_ticks(scale.speed_kt[n - 1], scale.speed_kt[0], 14);
  for (const double kt : ticks.values)
    for (std::size_t i = 1; i < n; ++i) {
      const double a = scale.speed_kt[i - 1], b = scale.speed_kt[i];
      if (!(a >= kt && kt >= b && a > b)) continue;
      marks.push_back({scale.ratio[i - 1] + (a - kt) / (a - b) * (scale.ratio[i] - scale.ratio[i - 1]),
                       fixed(kt, ticks.decimals)});
      break;
    }
  std::sort(marks.begin(), marks.end(),
            [](const KnotsMark& a, const KnotsMark& b) { return a.ratio < b.ratio; });
  return marks;
}

SetView set_view(const JudgedSet& set, const std::vector<KnotsScale>& scales) {
  SetView v;
  v.flap_deg = set.flap_deg;
  v.title = flap_words(set.flap_deg) + ", " + fixed(set.mass_kg, 0) + " kg";
  v.order_ok = set.order_ok;
  for (std::size_t i = 0; i < set.points.size(); ++i) v.points.push_back(point_view(set, i));
  for (const KnotsScale& scale : scales)
    if (scale.flap_deg == set.flap_deg) v.knots = knots_marks(scale);
  return v;
}

/// Bars reach as far as nine parts in ten need: one wild part must not flatten all others.
double part_span_kt(std::vector<double> sizes_kt) {
  constexpr double kLeast_kt = 0.5, kShare = 0.9;
  std::erase_if(sizes_kt, [](double kt) { return !std::isfinite(kt); });
  if (sizes_kt.empty()) return kLeast_kt;
  std::sort(sizes_kt.begin(), sizes_kt.end());
  const auto at = static_cast<std::size_t>(kShare * static_cast<double>(sizes_kt.size() - 1));
  return std::max(kLeast_kt, std::min(1.08 * sizes_kt.back(), 1.6 * sizes_kt[at]));
}

void set_axes(DebriefView& v) {
  Extent ratios;
  std::vector<double> sizes_kt;
  for (const SetView& set : v.sets)
    for (const PointView& p : set.points) {
      for (const double ratio : {p.ratio, p.low, p.high, p.true_ratio}) ratios.add(ratio);
      if (!p.split_known) continue;
      for (std::size_t i = 0; i < kParts; ++i) sizes_kt.push_back(std::abs(p.part_kt[i]));
      for (std::size_t i = 0; i < kParts; ++i) sizes_kt.push_back(std::abs(p.plain_part_kt[i]));
      sizes_kt.push_back(std::abs(p.error_kt));
      sizes_kt.push_back(std::abs(p.plain_error_kt));
    }
  const Extent wide = ratios.widened(0.06, 0.1);
  v.ratio_low = wide.low();
  v.ratio_high = wide.high();
  v.part_span_kt = part_span_kt(std::move(sizes_kt));
}

std::string sentence(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

/// The warning that errs most towards late, which is what a pilot must hear first.
const PointView* worst_warning(const DebriefView& v, const SetView** of) {
  const PointView* worst = nullptr;
  for (const SetView& set : v.sets)
    for (const PointView& p : set.points) {
      if (p.name != "warning" || !std::isfinite(p.error_kt)) continue;
      if (worst != nullptr && p.error_kt >= worst->error_kt) continue;
      worst = &p;
      *of = &set;
    }
  return worst;
}

void say_headline(DebriefView& v) {
  const SetView* set = nullptr;
  const PointView* warning = worst_warning(v, &set);
  if (warning == nullptr) {
    v.headline = "No warning was taught on this flight.";
    return;
  }
  v.headline = v.sets.size() > 1 ? "Your warning, " + set->title.substr(0, set->title.find(',')) + ","
                                 : "Your warning";
  if (v.sets.size() > 1 && v.headline.find("Flaps") != std::string::npos)
    v.headline[v.headline.find("Flaps")] = 'f';
  v.headline += " is " + warning->off + ".";
  v.because = warning->why;
  if (!v.because.empty()) v.because = sentence(v.because) + " ";
  v.because += "It would come " + fixed(warning->above_stall_kt, 1) +
               " kt above the stall; taught without error, " + fixed(warning->true_above_stall_kt, 1) +
               " kt.";
}

void say_head(DebriefView& v, const SortieSummary& summary) {
  v.title = summary.aircraft + " (invented), " + summary.card;
  v.flown = fixed(summary.mass_kg, 0) + " kg: " + summary.loading;
  v.made_by = made_by(summary);
  v.cautions = cautions();
  v.events = summary.events;
  v.counts = summary.counts;
}

WorkInput work_input(const DebriefInput& page, std::vector<HoldFigures> records) {
  return {std::move(records), page.summary.counts, page.summary.events, page.summary.sigma_kt};
}

std::vector<GuardView> guard_views(const Protection& protection) {
  std::vector<GuardView> views;
  for (const ProtectionRow& row : protection.rows) {
    const std::string flight = flaps_text(row.flap_deg) + ", " + power_name(row.power);
    auto at =
        std::find_if(views.begin(), views.end(), [&](const GuardView& g) { return g.flight == flight; });
    if (at == views.end()) at = views.insert(at, GuardView{flight, {}, {kNone, kNone, kNone}, {}});
    const std::size_t bank = row.bank_deg < 15.0 ? 0 : row.bank_deg < 37.5 ? 1 : 2;
    // fmin passes over what does not exist.
    at->margin_kt[bank] = std::fmin(at->margin_kt[bank], row.margin_kt);
    at->unwarned[bank] = at->unwarned[bank] || !std::isfinite(row.margin_kt);
    at->in_use[bank] = at->in_use[bank] || row.in_use;
  }
  return views;
}

HeardView heard_view(const VerifiedPoint& point) {
  HeardView h;
  h.name = flap_words(point.flap_deg) + ", " + point.name;
  h.flight = verified_flight_words(point);
  h.tone = tone_words(point);
  h.margin = std::isfinite(point.margin_kt) ? fixed(point.margin_kt, 1) + " kt" : kNoNumber;
  h.outcome = verified_outcome(point);
  if (!point.text.empty()) h.outcome += ": " + point.text;
  h.ok = point.ok;
  h.judged = point.in_use;
  return h;
}

}  // namespace

DebriefView debrief_view(const Debrief& debrief, const std::vector<LogRow>& rows) {
  const DebriefInput& page = debrief.page;
  DebriefView v;
  say_head(v, page.summary);
  for (const JudgedSet& set : page.judgement.sets) v.sets.push_back(set_view(set, page.scales));
  set_axes(v);
  say_headline(v);
  v.verdict = verdict_sentence(page.judgement);
  v.reason = sentence(page.judgement.reason);
  v.protects = sentence(page.protection.sentence);
  v.guard = guard_views(page.protection);
  v.next = next_steps(page.judgement, page.summary);
  v.flight = flight_view(page.history, page.summary);
  v.records = hold_figures(rows, page.set_points, debrief.flown.config.card);
  v.work = work_on(work_input(page, v.records));
  return v;
}

DebriefView debrief_view(const VerificationDebrief& debrief, const std::vector<LogRow>& rows) {
  DebriefView v;
  v.verifying = true;
  say_head(v, debrief.page.summary);
  v.headline = verification_verdict(debrief);
  v.because = sentence(debrief.verification.sentence);
  for (const VerifiedPoint& point : debrief.verification.points) v.heard.push_back(heard_view(point));
  v.flight = flight_view(debrief.page.history, debrief.page.summary);
  v.records = hold_figures(rows, debrief.page.set_points, debrief.flown.config.card);
  v.work = work_on(work_input(debrief.page, v.records));
  return v;
}

DebriefView open_debrief(const std::filesystem::path& folder) {
  const FlownSortie flown = read_sortie(folder);
  const FlightLog log = read_flight_log(folder / "log.csv", flown.config.card);
  if (flown.config.card.verifies) return debrief_view(make_verification(folder), log.rows);
  return debrief_view(make_debrief(folder), log.rows);
}

}  // namespace stallwright::view
