#pragma once
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

namespace stallwright {

/// How the power is to be set at a test point.
enum class PowerRule {
  level,    ///< height held
  descent,  ///< a stated rate of descent held
  idle,     ///< throttle closed, propeller windmilling
};

/// "level", "descent", "idle": the word in files; and back, for one of these words.
const char* power_name(PowerRule power);
PowerRule power_named(const std::string& name);

/// What a test point asks for.
enum class TargetKind {
  speed,             ///< a stated indicated airspeed
  stall_multiple,    ///< a multiple of the flight manual's stall speed at this flap setting
  stall_margin,      ///< a number of knots above that
  below_flap_limit,  ///< a number of knots below V_FE (flaps out: below the limit of their setting)
  slow_to_break,     ///< slow down at a stated rate until the wing stalls
  slow_through,      ///< slow down at a stated rate through a range of speed, recording on the way; no break
};

/// What happens when a point is not on condition by its attempt limit.
enum class PastLimit { record_flagged, give_up };

/// Tolerances of a test point, each about its target, in the units a pilot reads.
struct Bands {
  double speed_low_kt = 3.0;   ///< how far below the target
  double speed_high_kt = 3.0;  ///< how far above
  double altitude_ft = 150.0;  ///< level power only
  double vertical_speed_fpm = 300.0;
  double bank_deg = 5.0;
  double slip_g = 0.06;          ///< lateral acceleration, the ball
  double entry_rate_ktps = 0.5;  ///< about the asked-for rate (slow_to_break, slow_through)
};

/// One condition to hold, or one stall.
struct TestPoint {
  std::string
      name;  ///< set point it serves: "fast reference", "approach", "warning", "stall", or the card's own;
             ///< no name twice in a set
  std::size_t flap_setting = 0;  ///< index in the type's list of settings
  PowerRule power = PowerRule::level;
  std::string power_reason;  ///< why a stall is flown with power; empty for the usual one, power off
  double descent_fpm = 0.0;  ///< for PowerRule::descent, positive down
  TargetKind target = TargetKind::speed;
  double target_value =
      std::numeric_limits<double>::quiet_NaN();  ///< kt, or a multiple; NaN for the slow ones
  double entry_rate_ktps = 1.0;                  ///< slow_to_break, slow_through
  double turn_bank_deg = 0.0;                    ///< slow_through: flown in a turn at this bank, to the left
  double from_above_stall_kt = std::numeric_limits<double>::quiet_NaN();  ///< where slow_through begins
  double to_above_stall_kt = std::numeric_limits<double>::quiet_NaN();    ///< and where it ends
  Bands bands;
  double settle_s = 5.0;   ///< every band met this long: on condition
  double record_s = 10.0;  ///< steady points; the slow ones record all the way
  int repeats = 1;
  int attempts = 3;          ///< tries for each repeat
  double timeout_s = 120.0;  ///< for one attempt, from set-up to on condition
  PastLimit past_limit = PastLimit::record_flagged;

  bool is_stall() const { return target == TargetKind::slow_to_break; }
  bool is_steady() const { return !is_stall() && target != TargetKind::slow_through; }
};

/// The plan of a flight. Heights are above ground; the card's set points belong to the sets of their flap setting.
struct TestCard {
  std::string key, name, summary;
  double working_height_ft = 3000.0;  ///< above ground
  double terrain_ft = 0.0;            ///< of the ground below, above mean sea level
  double floor_ft = 1500.0;           ///< above ground: below it the point is knocked off
  bool clearing_turns = true;         ///< before each point
  double order_gap =
      0.0;  ///< least difference in ratio between neighbours of a set, in expanded uncertainties
  bool verifies = false;  ///< flown with a taught unit to hear it, instead of to teach it
  double tone_band_kt =
      3.0;  ///< verifying: how far from the taught speed the tone may come in the taught flight
  double wanted_margin_kt = 5.0;       ///< least warning above the stall that the card is content with
  double protected_bank_deg = 30.0;    ///< steepest turn in which the warning is to give that margin
  double wanted_uncertainty_kt = 2.0;  ///< expanded uncertainty of a set point that it is content with
  std::vector<TestPoint> points;       ///< in flying order
};

}  // namespace stallwright
