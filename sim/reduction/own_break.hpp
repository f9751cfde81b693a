#pragma once
#include "sim/reduction/flight_log.hpp"
#include "sim/reduction/own_log.hpp"

namespace stallwright {

/// The break of a stall record of a real flight, noted in the window (broke, break_s, break_sign):
///   the time that was given, if one was;
///   with pitch recorded, as sim/sortie/break_detector.hpp has it (without a stick its rules for the stick are idle);
///   with pitch but no acceleration, the same without the question whether lift was lost;
///   with acceleration alone, the moment at which lift, a mean over 0.42 s, has fallen 3.5 % below its largest at no less
///   a ratio: the part of that rule that needs no pitch;
///   with neither, none: the map has to give it.
void find_own_break(const OwnLog& log, const Record& record, double given_s, RecordWindow& window);

}  // namespace stallwright
