#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/report/sortie_summary.hpp"

namespace stallwright {

/// "Keep these set points." / "Fly again: approach, warning." / "Wait for better air."
std::string verdict_sentence(const Judgement& judgement);

/// What to do next, in plain words, one sentence or two to an entry.
std::vector<std::string> next_steps(const Judgement& judgement, const SortieSummary& summary);

/// The cautions that stand wherever a person could act on what they see; the first is the one line for
/// terminals.
std::vector<std::string> cautions();

/// Whether a point of a set is in order: "yes"; "NO" when it does not stand above the faster and below the
/// slower neighbour in ratio; "too close" when it does and the set's order still
/// does not hold; "incomplete" when that is for want of another point; "not found".
std::string order_word(const JudgedSet& set, std::size_t point);

/// Half of the 95 % interval, in ratio.
double expanded_ratio(const SetPoint& point);

/// Knots to one unit of ratio at a point, a positive number; NaN when unknown. From the judged interval, else
/// from the slope.
double knots_per_ratio(const JudgedPoint& point);

/// "lift_corrected" -> "lift-corrected" and so on: the words of the debrief for a reading; other names as
/// they are.
std::string reading_words(const std::string& name);

/// Whether a reading is the one that the set point takes.
bool is_adopted(const std::string& name);

/// "Flaps 20°"
std::string flap_words(double flap_deg);

}  // namespace stallwright
