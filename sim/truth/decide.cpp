#include "sim/truth/decide.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace stallwright {
namespace {

std::string knots(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f kt", value);
  return text;
}

void add(std::vector<std::string>& names, const std::string& name) {
  if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

/// Points that the air (not the pilot's speed hold alone) spoilt: stalled without being asked to, or never on condition.
std::vector<std::string> spoilt_by_air(const TestCard& card, const SortieOutcome& outcome) {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < card.points.size() && k < outcome.tallies.size(); ++k)
    if (outcome.tallies[k].unintended_stalls > 0) add(names, card.points[k].name);
  return names;
}

bool mostly_scatter(const SetPoint& p) {
  double scatter = 0.0, all = 0.0;
  for (const BudgetLine& line : p.budget) {
    all += line.u_ratio * line.u_ratio;
    if (line.kind == 'A') scatter += line.u_ratio * line.u_ratio;
  }
  return scatter > 0.5 * all;
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
  const std::vector<std::string> stalled = spoilt_by_air(card, outcome);
  if (!stalled.empty()) {
    j.fly_again = stalled;
    return say(Verdict::wait_for_better_air,
               "the wing stalled without being asked to at " + joined(stalled) + ": in this air that point is not safe to hold");
  }

  std::vector<std::string> missing, disordered, wide, rough, wrong;
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
        if (mostly_scatter(p.measured)) add(rough, p.measured.name);
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
  if (!rough.empty()) {
    j.fly_again = wide;
    return say(Verdict::wait_for_better_air, "scatter within the record makes " + joined(rough) +
                                                 " less certain than the " + knots(card.wanted_uncertainty_kt) +
                                                 " that the card wants");
  }
  if (!wide.empty()) {
    j.fly_again = wide;
    return say(Verdict::fly_again, joined(wide) + " known less well than the " + knots(card.wanted_uncertainty_kt) +
                                       " that the card wants: more repeats or a second entry rate bring it down");
  }
  if (!wrong.empty()) {
    j.fly_again = wrong;
    return say(Verdict::fly_again, "held against the truth, " + joined(wrong) + " is off by more than the " +
                                       knots(card.wanted_uncertainty_kt) + " that the card wants");
  }
  say(Verdict::keep, "every set point is in order and within the " + knots(card.wanted_uncertainty_kt) +
                         " that the card wants");
}

}  // namespace stallwright
