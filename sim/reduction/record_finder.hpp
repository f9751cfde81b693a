#pragma once
#include <vector>

#include "sim/reduction/record_windows.hpp"

namespace stallwright {

/// Guesses where the records of a log are, for the pilot to approve or correct.
///
/// Steady points: on condition as the card has it. Speed within the band about the point's target, bank, vertical speed
/// (by power rule) and ball within theirs, flaps as the point asks, for the settling time and half a second for the hand
/// on the button; then the record lasts as long as the card says. It is refused, and looked for further on, where the
/// speed leaves twice the band, or drifts through half of it from the record's one half to the other. As many as the
/// card has repeats are taken, the first ones.
///
/// Stalls: a lowest speed, 2 kt or more below the slowest target of its flap setting and the lowest for 10 s either way,
/// that was come to by slowing down without a stop (at least a fifth of the asked-for rate over 2 s, 5 kt in all), with
/// a break on the way where the log can tell one. The record goes from the beginning of slowing down, or from the
/// speed that a stall is entered from if that comes later, to 1.5 s after the break or until it is certain (2 s after
/// the lowest speed where the log cannot tell one). Among stalls of one flap setting the point with the nearest rate
/// gets it.
///
/// The rows must hold masses and flaps as far as the log has them. Throws InputError for a missing target, and where the
/// card has several flap settings and the log or the map does not tell the flaps.
std::vector<ChosenRecord> find_records_by_flight(const ColumnMap& map, const TestCard& card,
                                                 const OwnLog& log);

}  // namespace stallwright
