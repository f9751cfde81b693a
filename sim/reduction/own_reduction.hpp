#pragma once
#include <vector>

#include "sim/reduction/record_windows.hpp"
#include "sim/reduction/reduce.hpp"

namespace stallwright {

/// Half-widths of what stands in for numbers that nobody recorded, each taken as rectangular (ours, for lack of better):
/// in calm air a hand holds the load factor within 0.03 g of 1; a light aeroplane's mass at some time of a flight, fuel
/// and baggage being anybody's guess, lies within 5 % of the one that its speeds are stated for.
inline constexpr double kAssumedLoadFactor_g = 0.03;
inline constexpr double kAssumedMassShare = 0.05;
/// Without accelerations lift cannot be seen to fall; its largest is then taken to lie within this time before the
/// break. In 18 stalls rehearsed in calm air on three aeroplanes, entered at 0.7 to 1.4 kt/s, the adopted ratio had been
/// passed 0.8 to 4.2 s before the break, half of them less than 1.2 s. What comes out without accelerations was 0.04 to
/// 0.11 of ratio too high, which is late, and the interval held the truth each time.  (tuned)
inline constexpr double kMaximumBeforeBreak_s = 2.0;

/// Set points of a real flight. Its records are marked among the rows, then reduced as a sortie's log is
/// (sim/reduction/reduce.hpp), with an uncertainty budget that has a line for all that the recorder lacks; what was
/// assumed stands among the flags and the warnings.
///   instruments  whose errors the budget states where the log has the quantity
/// Throws InputError as mark_records and own_target_kt do, and where the load factor of the steady records is not about
/// one (a recorder that takes gravity away, or another unit) or their airspeed never changes.
SetPoints reduce_own_log(OwnLog log, const std::vector<ChosenRecord>& records, const ColumnMap& map,
                         const TestCard& card, const InstrumentGrade& instruments);

}  // namespace stallwright
