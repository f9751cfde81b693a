#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/study/study_sortie.hpp"

namespace stallwright {

/// Does the stall come later when it is entered faster, and by as much as the wing's delay says?
///   expected rise of angle = (tau2 alpha_dot)_fast - (tau2 alpha_dot)_slow               [GOMAN_KHRABROV]
///   expected rise of ratio = that times d(ratio)/d(alpha)
///   tau2       delay of separation, tau2_chords chord/V, s: chord at the root, where the stall begins; V the
///   true
///              airspeed at the break of each stall
///   alpha_dot  rate of the true angle of attack as the wing lets go, rad/s: slope of a straight line through
///   the last
///              tau2 before that moment
///   d(ratio)/d(alpha)  of the installed probe as the wing lets go, 1/rad: slope of the truth's static ratio
///   against its
///              angle within tau2 of that moment, mean of the study
/// On a steady ramp the boundary layer sees alpha - tau2 alpha_dot, so the wing lets go that much later. Left
/// out are the relaxation tau1 that follows (adds at most tau1 alpha_dot) and the lag of induced flow (takes
/// something off again): tau2 is taken as known to within +-tau1, rectangular. In angle this is the whole of
/// it. In ratio the wing's upwash at the probe comes in, which follows its lift: the slope is 10 to 20 % off
/// for it. And the break comes later still: the nose needs time to fall, and meanwhile the angle runs on. So
/// the rise is stated as the wing lets go, in angle and ratio, and at the break; the second is the first and
/// `run_on`, what the ratio gains in between.
struct EntryRateConfig {
  SortieConfig base;  ///< calm air and ideal instruments, for the comparison to mean anything
  std::array<double, 2> rates_ktps{1.0, 3.0};  ///< slow, fast
  int sorties = 200;                           ///< at each rate
  std::uint64_t first_seed = 1;
  int threads = 1;
};

/// The wing has let go when the root carries attached flow over no more than this share of its chord, in
/// truth: there Kirchhoff's lift, ((1 + sqrt x)/2)^2, has lost a tenth. A break dated to an earlier moment is
/// called on an attached wing.
inline constexpr double kAttached = 0.8;

/// One stall, from readings and from truth.
struct StallObservation {
  std::uint64_t seed = 0;
  bool found = false;  ///< a break and a maximum of lift
  std::string break_sign;
  double entry_rate_ktps = kNone, max_lift_error_kt = kNone;
  double break_ratio = kNone, true_airspeed_mps = kNone, attached_root = kNone;  ///< at the break
  double let_go_ratio = kNone;     ///< as the wing lets go; none when the break was called before
  double let_go_rad = kNone;       ///< true angle of attack there
  double let_go_before_s = kNone;  ///< how long before the break
  double tau2_s = kNone;
  double alpha_rate_radps = kNone;  ///< over tau2 until the wing lets go, or until the break when it had not
  double ratio_per_rad = kNone;     ///< within tau2 of that moment
  double delay_rad() const { return tau2_s * alpha_rate_radps; }
  double run_on_ratio() const { return break_ratio - let_go_ratio; }
};

/// One stall of a flown and judged sortie whose card has one stall point.
///   delay_m  distance flown in tau2
StallObservation observe_stall(const StudySortie& sortie, const std::vector<TruthRow>& truth, double delay_m);

/// A mean, or a difference of two, with its standard error.
struct SampleMean {
  double value = kNone, standard_error = kNone;
  int count = 0;
};
SampleMean sample_mean(const std::vector<double>& values);        ///< without value for fewer than two
SampleMean difference(const SampleMean& a, const SampleMean& b);  ///< a - b, independent

struct EntryRateRow {
  double asked_ktps = kNone;
  int sorties = 0, found = 0;
  SampleMean flown_ktps, break_ratio, let_go_ratio, let_go_rad, let_go_before_s, run_on_ratio,
      alpha_rate_radps, delay_rad, ratio_per_rad, max_lift_error_kt;
  int attached = 0;                      ///< breaks called while the wing was attached
  int at_aft_stop = 0;                   ///< breaks by the control at its aft stop
  std::vector<StallObservation> stalls;  ///< in order of seed
};

struct EntryRateStudy {
  std::array<EntryRateRow, 2> rows;  ///< slow, fast
  double ratio_per_rad = kNone;
  SampleMean let_go_rise_rad, expected_rise_rad;    ///< of angle, fast less slow; expected by tau2
  SampleMean break_rise, let_go_rise, run_on_rise;  ///< of ratio
  SampleMean expected_rise;                  ///< of ratio by tau2, without the uncertainty of the slope
  Interval expected_interval{kNone, kNone};  ///< 95 %
  SampleMean max_lift_shift_kt;
  double attached_share() const;  ///< of all breaks called
};

/// Do two means agree: do they differ by less than the 95 % interval of their difference?
bool agree(const SampleMean& a, const SampleMean& b);

/// Only the first stall of the card is flown, once: what came before does not matter in calm air.
/// Throws std::invalid_argument for a card without a stall, std::runtime_error where there is no truth.
EntryRateStudy run_entry_rates(const EntryRateConfig& config);

}  // namespace stallwright
