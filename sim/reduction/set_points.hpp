#pragma once
#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace stallwright {

inline constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

/// A value with its standard uncertainty (same unit).
struct Reading {
  double ratio = kNone, u = kNone;
  double type_a_u = kNone;  ///< the part from scatter alone
  double dof = kNone;
};

/// What an effect is the same for. Repeats bring down only what each record has for itself, other days what each sortie
/// has; what belongs to the aeroplane and its instruments stays.
enum class Shared { record, sortie, installation };

/// One line of an uncertainty budget, already multiplied by its sensitivity: in ratio.
struct BudgetLine {
  std::string name;
  char kind = 'B';  ///< A statistics of the record, B other knowledge (JCGM 100)
  double u_ratio = 0.0;
  double dof = std::numeric_limits<double>::infinity();
  std::string note;
  Shared shared = Shared::record;
};

/// One record window of one point, as found in the log.
struct RecordWindow {
  std::size_t point = 0;  ///< index in the card
  int sortie = 0;         ///< where several were combined: which, from 1
  int repeat = 0, attempt = 0;
  double begin_s = kNone, end_s = kNone, button_s = kNone;
  bool left_band = false;  ///< some sample stood outside a band
  bool forced = false;     ///< recorded past the attempt limit without being on condition
  bool broke = false;      ///< stall points: a break was found
  double break_s = kNone;
  std::string break_sign;  ///< "uncommanded nose-down pitch", "control at its aft stop" or "wing drop"
  double entry_rate_ktps = kNone;
  double load_factor_sd =
      kNone;  ///< scatter of the load factor, on the way to a break before it: how rough the air was
};

/// A set point with everything that is known of it without the truth.
struct SetPoint {
  std::string name;
  std::size_t card_point = 0;
  bool is_stall = false;
  double target_kt = kNone;  ///< indicated, at the reference mass; stall: none
  double speed_kt =
      kNone;  ///< where the adopted ratio belongs: target at this mass; stall: lowest corrected 1 g speed
  double ratio = kNone, u = kNone, dof = kNone;        ///< adopted estimate
  double interval_low = kNone, interval_high = kNone;  ///< 95 %
  double slope_per_kt = kNone;  ///< d(ratio)/d(speed) at the point, from the pooled slope (negative)
  std::vector<BudgetLine> budget;
  std::vector<std::string> flags;
  // Steady points.
  Reading spot, window_mean, lift_corrected;
  // Stall.
  Reading at_break, peak, max_lift;
  std::vector<RecordWindow> windows;
  bool found() const { return std::isfinite(ratio); }
};

/// The set points of one flap setting, fastest first.
struct SetPointSet {
  double flap_deg = 0.0;
  double mass_kg = kNone;
  bool order_ok = false;
  std::vector<std::string> order_notes;
  double slope_per_x = kNone;  ///< d(ratio)/dx pooled over the steady points, x = n m g/(q_c S)
  std::vector<SetPoint> points;
};

/// What `reduce` makes of one log: set-points.json.
struct SetPoints {
  std::string card, aircraft;
  std::vector<SetPointSet> sets;
  std::vector<std::string> warnings;
};

/// An error taken apart, kt each (sim/truth/error_split.hpp says how); they add up to it.
struct ErrorSplit {
  double sensor_kt = kNone, air_kt = kNone, hold_kt = kNone, entry_kt = kNone, remainder_kt = kNone;
  bool known() const { return std::isfinite(remainder_kt); }
  double sum_kt() const { return sensor_kt + air_kt + hold_kt + entry_kt + remainder_kt; }
};

/// How one reading of a point compares with the truth.
struct ReadingError {
  std::string name;
  double ratio = kNone, u = kNone, error_ratio = kNone, error_deg = kNone, error_kt = kNone;
  ErrorSplit split{};
};

/// One set point held against the truth.
struct JudgedPoint {
  SetPoint measured;
  double true_ratio = kNone, true_speed_kt = kNone, true_alpha_deg = kNone;
  double measured_speed_kt = kNone;  ///< measured ratio through the one knots map
  double error_ratio = kNone, error_deg = kNone, error_kt = kNone;
  double margin_kt = kNone, true_margin_kt = kNone;  ///< speed above the 1 g stall speed, measured and true
  double expanded_kt = kNone;                        ///< half of the 95 % interval, in knots
  bool covered = false;                              ///< the 95 % interval holds the truth
  ErrorSplit split{};                                ///< of error_kt
  std::vector<ReadingError> readings;
};

struct JudgedSet {
  double flap_deg = 0.0, mass_kg = kNone, stall_speed_kt = kNone;
  bool order_ok = false;
  std::vector<JudgedPoint> points;
};

enum class Verdict { keep, fly_again, wait_for_better_air };

/// What the debrief says: judgement.json.
struct Judgement {
  Verdict verdict = Verdict::keep;
  std::string reason;
  std::vector<std::string> fly_again;  ///< names of points
  std::vector<JudgedSet> sets;
};

}  // namespace stallwright
