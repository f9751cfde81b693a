#pragma once
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/study/study_sortie.hpp"

namespace stallwright {

/// Many sorties of one card: how far off are the set points, and do their intervals keep their word?
struct StudyConfig {
  SortieConfig base;             ///< its air and seed are not used
  int sorties = 200;             ///< in each air
  std::uint64_t first_seed = 1;  ///< sortie k flies with first_seed + k, the same seeds in every air
  int threads = 1;               ///< changes the time, never the result; 0: as many as the machine has
  std::vector<AirPreset> airs;
};

/// A component of the uncertainty budget, as it comes out over a row's sorties.
struct BudgetShare {
  std::string name;               ///< empty: there is no budget
  double variance_share = kNone;  ///< of u^2, mean over the sorties
  double coverage_without =
      kNone;  ///< share of sorties whose interval would hold the truth without this component
};

/// One set point in one air. Errors are measured less true, in knots through the one map; a positive one is a
/// ratio taken at too high a speed. Counts and shares are of sorties unless said otherwise.
struct StudyRow {
  std::size_t set = 0;                   ///< by order of flap settings on the card
  std::vector<std::size_t> card_points;  ///< a stall may have several: entry rates
  std::string name;
  double flap_deg = 0.0;
  bool is_stall = false;

  int sorties = 0, found = 0;
  int missing() const { return sorties - found; }
  double mean_error_kt = kNone, rms_error_kt = kNone,
         largest_error_kt = kNone;           ///< adopted; the last of |error|
  double mean_expanded_kt = kNone;           ///< half of the adopted 95 % interval
  int covered = 0;                           ///< adopted 95 % intervals that hold the truth
  int covered_type_a = 0;                    ///< the same for the interval of Type A alone: +- t_95(dof) u_A
  Interval coverage_interval{kNone, kNone};  ///< 95 %, Clopper and Pearson, for covered of found
  std::array<std::string, 2> other_names;    ///< spot, window_mean; break, peak
  std::array<double, 2> other_rms_kt{kNone, kNone};
  double coverage() const { return found > 0 ? static_cast<double>(covered) / found : kNone; }
  double type_a_coverage() const { return found > 0 ? static_cast<double>(covered_type_a) / found : kNone; }

  BudgetShare dominant;  ///< the largest component
  BudgetShare surplus;   ///< the largest that is not drawn as stated: what makes a wide interval wide

  /// Sorties in which it happened at least once at this point.
  int timed_out = 0, flagged = 0, forced = 0, given_up = 0, unintended_stalls = 0, knocked_off = 0,
      no_break = 0;
  int wing_stalled = 0;  ///< in truth, see wing_stalled_at
  PointTally total;      ///< how often altogether
};

/// One air of a study.
struct StudyAir {
  AirPreset air;
  std::vector<StudyRow> rows;        ///< set by set, steady points in card order, then the stall
  std::array<int, 3> verdicts{};     ///< by Verdict; sorties that were judged
  int unintended_stall_sorties = 0;  ///< at any point
  int of_them_wait = 0;              ///< of those, with the verdict to wait for better air
  int wing_stalled_sorties = 0,
      of_those_wait = 0;             ///< the same for a wing that stalled in truth at a steady point
  std::vector<StudySortie> sorties;  ///< in order of seed; those with a `failure` are counted in `failed`
  int failed = 0;
};

struct Study {
  StudyConfig config;
  std::vector<StudyAir> airs;
};

/// Flies and adds up. Truth is found once for each air (its day sets density). Throws std::runtime_error when
/// a point of the card has no steady flight.
Study run_study(const StudyConfig& config, const StudyProgress& progress = {});

/// Rows of a card from sorties already flown; for run_study and tests.
std::vector<StudyRow> study_rows(const TestCard& card, const AircraftType& type,
                                 const std::vector<StudySortie>& sorties);

}  // namespace stallwright
