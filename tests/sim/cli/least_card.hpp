#pragma once
#include <string>

namespace stallwright::cli_test {

/// Three points, no clearing turns, short records: the least that makes a set.
inline const std::string kLeastCard = R"(format = "stallwright-card-1"
[card]
name = "Least card"
summary = "Three points, for tests."
working_height_ft = 3000
floor_ft = 1500
clearing_turns = false
[[point]]
name = "approach"
flap_setting = 0
power = "level"
stall_multiple = 1.4
settle_s = 2
record_s = 8
[[point]]
name = "warning"
flap_setting = 0
power = "level"
above_stall_kt = 8
settle_s = 2
record_s = 8
[point.bands]
speed_low_kt = 2.5
speed_high_kt = 2.5
vertical_speed_fpm = 500
[[point]]
name = "stall"
flap_setting = 0
power = "idle"
slow_to_break_ktps = 1.0
settle_s = 2
)";

/// Answers of a sortie: whichever, but an answer.
inline bool answered(int status) { return status == 0 || status == 1; }

}  // namespace stallwright::cli_test
