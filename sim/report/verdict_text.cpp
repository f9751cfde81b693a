#include "sim/report/verdict_text.hpp"

#include <algorithm>
#include <cmath>

#include "sim/crew/pilot_grade.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright {
namespace {

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
  return text;
}

/// Why a point should be flown again, from what is on the table.
std::string why_again(const JudgedPoint& point, const SortieSummary& summary) {
  std::vector<std::string> why;
  if (!point.measured.found()) why.emplace_back("no set point came of it");
  if (point.expanded_kt > summary.wanted_uncertainty_kt)
    why.push_back("known to ± " + fixed(point.expanded_kt, 1) + " kt, the card wants ± " +
                  fixed(summary.wanted_uncertainty_kt, 1) + " kt");
  for (const std::string& flag : point.measured.flags) why.push_back(flag);
  return joined(why, "; ");
}

void add_points_again(const Judgement& judgement, const SortieSummary& summary,
                      std::vector<std::string>& steps) {
  for (const JudgedSet& set : judgement.sets)
    for (const JudgedPoint& point : set.points) {
      const auto& names = judgement.fly_again;
      if (std::find(names.begin(), names.end(), point.measured.name) == names.end()) continue;
      const std::string why = why_again(point, summary);
      steps.push_back(flap_words(set.flap_deg) + ", " + point.measured.name +
                      (why.empty() ? "." : ": " + why + "."));
    }
}

/// The warning is the set point that people lean on; a late one is said aloud.
void add_late_warnings(const Judgement& judgement, std::vector<std::string>& steps) {
  constexpr double kWorthSaying_kt = 0.5;
  for (const JudgedSet& set : judgement.sets)
    for (const JudgedPoint& point : set.points)
      if (point.measured.name == "warning" && point.error_kt < -kWorthSaying_kt)
        steps.push_back(flap_words(set.flap_deg) + ": with this set point the warning would come " +
                        fixed(-point.error_kt, 1) + " kt later than it should.");
}

}  // namespace

std::string air_words(const SortieSummary& summary) {
  std::string words = summary.air + " air";
  if (std::isfinite(summary.sigma_kt)) words += " (\u03c3 " + fixed(summary.sigma_kt, 1) + " kt)";
  return words;
}

std::string made_by(const SortieSummary& summary) {
  return "Seed " + std::to_string(summary.seed) + ", " + air_words(summary) + ", " +
         pilot_words(summary.pilot) + ", " + summary.sensors + " sensors";
}

std::string verdict_sentence(const Judgement& judgement) {
  switch (judgement.verdict) {
    case Verdict::keep:
      return "Keep these set points.";
    case Verdict::fly_again:
      return "Fly again: " + joined(judgement.fly_again, ", ") + ".";
    case Verdict::wait_for_better_air:
      return "Wait for better air.";
  }
  return "";
}

std::vector<std::string> next_steps(const Judgement& judgement, const SortieSummary& summary) {
  std::vector<std::string> steps;
  switch (judgement.verdict) {
    case Verdict::keep:
      steps.emplace_back(
          "Load these set points and verify them (the card verify listens to them): hear whether the warning "
          "comes where it should, and keeps quiet on the approach.");
      break;
    case Verdict::fly_again:
      steps.emplace_back("Fly only these points again, trimmed and settled before the record:");
      add_points_again(judgement, summary, steps);
      break;
    case Verdict::wait_for_better_air:
      steps.push_back("Do not load these set points. More tries at this card in " + air_words(summary) +
                      " will not help much.");
      steps.emplace_back(
          "Early morning, before the ground warms, is often smoother (common practice). To see what the air "
          "did, "
          "fly the same card and seed in calm air and compare the two pages.");
      break;
  }
  add_late_warnings(judgement, steps);
  return steps;
}

std::vector<std::string> cautions() {
  return {
      "Stalls kill. This is a rehearsal only: the flight manual, local rules and a qualified instructor "
      "govern.",
      "The aeroplane is invented and is not yours. None of its numbers may be set in a real aeroplane.",
      "This is not an approved training device.",
      "In flight: height to recover, clearing turns, an instructor who knows the aeroplane's stall, and the "
      "floor of the card as a hard limit.",
  };
}

std::string order_word(const JudgedSet& set, std::size_t point) {
  const SetPoint& mine = set.points.at(point).measured;
  if (!mine.found()) return "not found";
  if (set.order_ok) return "yes";
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const SetPoint& other = set.points[i].measured;
    if (i == point || !other.found()) continue;
    // Fastest first, and the ratio rises as the speed falls.
    if (i < point ? other.ratio >= mine.ratio : other.ratio <= mine.ratio) return "NO";
  }
  const bool all_found = std::all_of(set.points.begin(), set.points.end(),
                                     [](const JudgedPoint& p) { return p.measured.found(); });
  return all_found ? "too close" : "incomplete";
}

double expanded_ratio(const SetPoint& point) { return 0.5 * (point.interval_high - point.interval_low); }

double knots_per_ratio(const JudgedPoint& point) {
  const double from_interval = std::abs(point.expanded_kt / expanded_ratio(point.measured));
  if (std::isfinite(from_interval) && from_interval > 0.0) return from_interval;
  const double from_slope = std::abs(1.0 / point.measured.slope_per_kt);
  return std::isfinite(from_slope) ? from_slope : kNone;
}

std::string reading_words(const std::string& name) {
  std::string key = name;
  std::replace(key.begin(), key.end(), '_', ' ');
  if (key == "spot") return "spot reading";
  if (key == "lift corrected") return "lift-corrected";
  if (key == "max lift") return "maximum lift";
  return key;
}

bool is_adopted(const std::string& name) {
  const std::string words = reading_words(name);
  return words == "lift-corrected" || words == "maximum lift";
}

std::string flap_words(double flap_deg) {
  if (flap_deg == 0.0) return "Flaps up";
  return "Flaps " + shortest(flap_deg) + "\u00b0";
}

}  // namespace stallwright
