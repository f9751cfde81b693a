#include "sim/truth/decide.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/reduction/repeats.hpp"
#include "sim/truth/truth_text.hpp"

namespace stallwright {
namespace {

void add(std::vector<std::string>& names, const std::string& name) {
  if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

/// "approach is", "approach and warning are"
std::string they_are(const std::vector<std::string>& names) {
  return joined(names) + (names.size() == 1 ? " is" : " are");
}

/// Points at which the wing let go without being asked to.
std::vector<std::string> stalled_unasked(const TestCard& card, const SortieOutcome& outcome) {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < card.points.size() && k < outcome.tallies.size(); ++k)
    if (outcome.tallies[k].unintended_stalls > 0) add(names, card.points[k].name);
  return names;
}

/// How rough the air was in the roughest record of a point; 0 if nothing is known.
double roughness(const SetPoint& p) {
  double most = 0.0;
  for (const RecordWindow& w : p.windows)
    if (std::isfinite(w.load_factor_sd)) most = std::max(most, w.load_factor_sd);
  return most;
}

bool forced(const SetPoint& p) {
  return std::any_of(p.windows.begin(), p.windows.end(), [](const RecordWindow& w) { return w.forced; });
}

/// What would bring a wide point under the limit, from its budget.
std::string repeats_words(const JudgedPoint& p, double wanted_kt) {
  const double kt_per_ratio = 2.0 * p.expanded_kt / (p.measured.interval_high - p.measured.interval_low);
  const RepeatsWanted wanted = repeats_wanted(p.measured, wanted_kt, kt_per_ratio);
  if (wanted.records == 0)
    return p.measured.name + ": no number of repeats in this air, its instruments and method alone leave " +
           knots_text(wanted.half_width_kt);
  return p.measured.name + ": " + std::to_string(wanted.records) +
         " records altogether in air like this would bring it to " + knots_text(wanted.half_width_kt);
}

/// What rough air spoilt, and how.
struct RoughAir {
  double most = 0.0;
  std::vector<std::string> off_condition, wide, stalls, missing, all;
};

RoughAir rough_air(const Judgement& j, const TestCard& card, const SortieOutcome& outcome) {
  RoughAir rough;
  if (outcome.record_gust_mps < kSmoothGust_mps) return rough;
  for (const JudgedSet& set : j.sets)
    for (const JudgedPoint& p : set.points) rough.most = std::max(rough.most, roughness(p.measured));
  if (rough.most <= kRough) return rough;
  for (const JudgedSet& set : j.sets) {
    for (const JudgedPoint& p : set.points) {
      const std::string& name = p.measured.name;
      std::vector<std::string>* spoilt = nullptr;
      if (!p.measured.found())
        spoilt = &rough.missing;
      else if (roughness(p.measured) <= kRough)
        continue;
      else if (p.measured.is_stall)
        spoilt = &rough.stalls;
      else if (forced(p.measured))
        spoilt = &rough.off_condition;
      else if (p.expanded_kt > card.wanted_uncertainty_kt)
        spoilt = &rough.wide;
      if (spoilt == nullptr) continue;
      add(*spoilt, name);
      add(rough.all, name);
    }
  }
  return rough;
}

std::string rough_air_reason(const RoughAir& rough, const TestCard& card) {
  char swing[32];
  std::snprintf(swing, sizeof swing, "%.2f g", rough.most);
  std::vector<std::string> clauses;
  if (!rough.off_condition.empty())
    clauses.push_back(joined(rough.off_condition) + " could not be brought on condition");
  if (!rough.wide.empty())
    clauses.push_back(they_are(rough.wide) + " less certain than the " +
                      knots_text(card.wanted_uncertainty_kt) + " that the card wants");
  if (!rough.missing.empty()) clauses.push_back(joined(rough.missing) + " could not be had");
  if (!rough.stalls.empty()) clauses.push_back("a gust may have decided where the wing let go in the stall");
  std::string text = std::string("the air was rough, the load factor swung by ") + swing +
                     " about its mean (standard deviation; smooth air: under 0.05 g): ";
  for (std::size_t i = 0; i < clauses.size(); ++i) text += (i == 0 ? "" : "; ") + clauses[i];
  return text;
}

}  // namespace

void decide(Judgement& j, const SetPoints& measured, const TestCard& card, const SortieOutcome& outcome) {
  const auto say = [&](Verdict verdict, const std::string& reason) {
    j.verdict = verdict;
    j.reason = reason;
  };
  if (!outcome.finished) {
    for (const SetPointSet& set : measured.sets)
      for (const SetPoint& p : set.points)
        if (!p.found()) add(j.fly_again, p.name);
    return say(Verdict::fly_again, "the flight ended before the card did" +
                                       (outcome.failure.empty() ? std::string() : ": " + outcome.failure));
  }
  const RoughAir rough = rough_air(j, card, outcome);
  if (const std::vector<std::string> stalled = stalled_unasked(card, outcome); !stalled.empty()) {
    j.fly_again = rough.all;
    for (const std::string& name : stalled) add(j.fly_again, name);
    const std::string what =
        "with the wing at its full lift the nose fell without being asked to at " + joined(stalled);
    if (rough.most > kRough)
      return say(Verdict::wait_for_better_air, what + ": in this air that point is not safe to hold");
    return say(Verdict::fly_again, what + " although the air was smooth: come down to the speed more gently");
  }
  if (!rough.all.empty()) {
    j.fly_again = rough.all;
    return say(Verdict::wait_for_better_air, rough_air_reason(rough, card));
  }

  std::vector<std::string> missing, disordered, wide, wrong;
  std::string more;
  for (const SetPointSet& set : measured.sets) {
    for (const SetPoint& p : set.points)
      if (!p.found()) add(missing, p.name);
    if (!set.order_ok && missing.empty())
      for (const SetPoint& p : set.points)
        for (const std::string& note : set.order_notes)
          if (note.find(p.name) != std::string::npos) add(disordered, p.name);
  }
  for (const JudgedSet& set : j.sets) {
    for (const JudgedPoint& p : set.points) {
      if (!p.measured.found()) continue;
      if (p.expanded_kt > card.wanted_uncertainty_kt) {
        add(wide, p.measured.name);
        more += (more.empty() ? "" : "; ") + repeats_words(p, card.wanted_uncertainty_kt);
      }
      if (std::abs(p.error_kt) > card.wanted_uncertainty_kt) add(wrong, p.measured.name);
    }
  }
  if (!missing.empty()) {
    j.fly_again = missing;
    return say(Verdict::fly_again, joined(missing) + " could not be had from this flight");
  }
  if (!disordered.empty()) {
    j.fly_again = disordered;
    return say(Verdict::fly_again, "the set points are not in order: see " + joined(disordered));
  }
  if (!wide.empty()) {
    j.fly_again = wide;
    return say(Verdict::fly_again, joined(wide) + " known less well than the " +
                                       knots_text(card.wanted_uncertainty_kt) +
                                       " that the card wants: " + more);
  }
  if (!wrong.empty()) {
    j.fly_again = wrong;
    return say(Verdict::fly_again, "held against the truth, " + they_are(wrong) + " off by more than the " +
                                       knots_text(card.wanted_uncertainty_kt) + " that the card wants");
  }
  say(Verdict::keep, "every set point is in order and within the " + knots_text(card.wanted_uncertainty_kt) +
                         " that the card wants");
}

}  // namespace stallwright
