#pragma once
#include <string>

namespace stallwright {

/// One row of the table of pilots: how current the hands are. Sources: the crossover model's delay, neuromuscular lag
/// and crossover frequencies by McRuer and Krendel, AGARD-AG-188 (from memory); the rest is common practice,
/// chosen so that the three rows span what an examiner sees.
struct PilotGrade {
  std::string name;
  double delay_s;                ///< perception to movement
  double neuromuscular_s;        ///< lag of the arm
  double pitch_crossover_radps;  ///< of the attitude loop
  double roll_crossover_radps;
  double speed_crossover_radps;  ///< of speed closed with pitch
  double remnant_deg;            ///< rms of what is not explained by the error, as perceived attitude
  double scan_s;                 ///< between looks at the airspeed indicator
  double speed_band_kt;          ///< error that is left alone
  double altitude_band_ft;
  double bank_band_deg;
  double trim_time_s;       ///< how soon a steady force is trimmed out (integral action)
  double power_sd;          ///< error of the remembered power setting, share of full
  double button_delay_s;    ///< decision to button
  double break_reaction_s;  ///< break to forward stick
  double entry_rate_bias;   ///< asked-for entry rate times (1 + this) on average
  double entry_rate_sd;     ///< and this scatter from stall to stall
  double early_release;     ///< chance of letting go before the break
};

/// "sharp", "current", "rusty", or "sharp-current" and "current-rusty": half way between two rows in every number.
/// Throws InputError naming the five otherwise.
PilotGrade pilot_grade(const std::string& name);

/// "sharp, sharp-current, current, current-rusty, rusty"
inline constexpr const char* kPilotGrades = "sharp, sharp-current, current, current-rusty, rusty";

/// Hands between the rows: 0 sharp, 1 current, 2 rusty, in between straight lines in every number; beyond, the ends.
PilotGrade pilot_grade_at(double place);

/// What stands in the place of a grade where a person flies: "by hand". Its reaction is the time between a break and the
/// card taking the recovery to have begun; its other figures move nothing.
PilotGrade by_hand_grade();
inline constexpr const char* kByHand = "by hand";

/// "current pilot", or "flown by hand".
std::string pilot_words(const std::string& grade_name);

}  // namespace stallwright
