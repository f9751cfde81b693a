#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"
#include "sim/reduction/set_points.hpp"
#include "sim/study/sensitivity/sobol_indices.hpp"

namespace stallwright {

/// The map: one card flown many times over air x hold quality, and what became of every set point. Errors are measured
/// less true, in knots through the one map of ratio to speed; a positive one is a ratio taken at too high a speed.
/// Whatever is not known is NaN (kNone): a page leaves its place empty.

/// A number with its 95 % interval.
struct Estimate {
  double value = kNone;
  Interval interval{kNone, kNone};
};

/// How often something happened, with the 95 % interval of Clopper and Pearson.
struct Chance {
  int times = 0, of = 0;
  Interval interval{kNone, kNone};
  double share() const { return of > 0 ? static_cast<double>(times) / of : kNone; }
};

/// Errors counted in classes of kClass_kt from kFirstClass_kt on; what lies outside is counted in the first or last.
inline constexpr double kFirstClass_kt = -8.0, kClass_kt = 0.25;
inline constexpr std::size_t kClasses = 64;

/// Quantiles of the signed error that are kept of every line.
inline constexpr std::array<double, 5> kQuantiles{0.05, 0.25, 0.5, 0.75, 0.95};

/// A cell of fewer sorties gives no percentile, its interval would be wider than it is useful; nor does a line that fewer
/// than kLeastFoundForPercentile of them gave, since the others may well be the worst.
inline constexpr int kLeastForPercentile = 200;
inline constexpr int kLeastFoundForPercentile = 150;
/// A line that fewer sorties gave has no interval for its RMS error, and no rule of thumb is made of it: a bootstrap of so
/// few holds the truth far less often than it says (simulated with normal errors: in 75 % of samples of 5, 88 % of 20,
/// 91 % of 50).
inline constexpr int kLeastForInterval = 30;

/// One set point of one flap setting, as reduced from one window of its records (nested windows of the same sortie). A
/// stall has no window and is there once.
struct MapLine {
  std::size_t set = 0, card_point = 0;  ///< by order of flap settings on the card; index in the card
  std::string name;                     ///< "warning"
  double flap_deg = 0.0;
  bool is_stall = false;
  double share = 1.0;       ///< of the record: 1, then less
  double window_s = kNone;  ///< none for a stall
};

/// A column of the map: an air.
struct MapAir {
  std::string name;          ///< as the recipe calls it: "light", "day 07:30", "slight"
  double sigma_mps = kNone;  ///< of the vertical gusts, asked for at the working height (thermals apart)
};

/// One line in one cell, over its sorties.
struct LineResult {
  int found = 0;  ///< sorties that gave the set point
  double mean_error_kt = kNone;
  Estimate rms_error_kt;              ///< interval by bootstrap; none under kLeastForInterval found
  Estimate p95_error_kt;              ///< 95th percentile of |error|; see kLeastForPercentile
  double mean_half_width_kt = kNone;  ///< of the 95 % interval that the reduction states
  Chance covered;                     ///< those intervals that hold the truth, of found
  std::array<double, kQuantiles.size()> quantiles_kt{kNone, kNone, kNone, kNone, kNone};  ///< as p95
  std::array<int, kClasses> histogram{};                                                  ///< of found
  /// Sorties in which so many records altogether bring the interval under what the card wants: index 1 to 9, in air like
  /// this, by each sortie's own budget; index 0: no number does.
  std::array<int, 10> records_wanted{};
};

/// One cell: an air and a pilot, flown many times with the same seeds as every other cell.
struct MapCell {
  std::string key;                ///< "03-light-current"; names its files
  std::size_t air = 0, hand = 0;  ///< indices into airs and hands
  std::string varied, value;  ///< of a varied cell: what, and to what ("entry rate", "2 kt/s"); else empty
  int sorties = 0;            ///< planned, and with results flown
  int failed = 0;             ///< the card was not finished, or nothing could be reduced
  /// By Verdict, of those judged; what the warning protects in other flight is not looked at.
  std::array<int, 3> verdicts{};
  Chance kept;  ///< the verdict is to keep the set points; of those judged
  /// The warning as recorded comes less than StudyMap::wanted_margin_kt above the true stall; of sorties that gave one.
  Chance late_warning;
  Chance out_of_order;               ///< some complete set is out of order; of sorties with a complete set
  double warning_margin_kt = kNone;  ///< mean over sorties of what that margin is in truth
  double hold_rms_kt = kNone;  ///< rms over steady records of airspeed read less target, all sorties together
  double gust_rms_mps = kNone;    ///< rms over steady records of the true vertical gust, all sorties together
  std::vector<LineResult> lines;  ///< as StudyMap::lines; empty until the sorties are flown
};

/// What is varied all at once, flown after the map, and what it tells: which input matters most.
struct Sensitivity {
  struct Input {
    std::string name, from, to;  ///< "air", "calm", "1.56 m/s"
  };
  int base = 0;  ///< base points; 0: not wanted
  std::vector<Input> inputs;
  int loadings = 0;                  ///< how many loadings the mass is chosen from
  MapCell cell;                      ///< its key and sorties: base (inputs + 2); failed once flown
  std::vector<std::uint64_t> seeds;  ///< of its sorties, as they are flown
  /// Of |error|, by MapLine (none for those that are not of whole records) and input; empty until flown.
  std::vector<std::vector<SobolIndex>> indices;
};

struct StudyMap {
  std::string version;   ///< of the program that flew it
  std::string identity;  ///< 16 hexadecimal digits: of recipe, aeroplane, card, airs, seeds and version
  std::string recipe_key, recipe, summary;  ///< file name without ending; name and summary in it
  std::string aircraft_key, aircraft, card_key, card, sensors;
  std::uint64_t first_seed = 1, airframe_seed = 1;  ///< sortie k of every cell flies with first_seed + k
  double mass_kg = kNone,
         cg_aft_m = kNone;  ///< as loaded for every cell but those that vary it; aft of the datum
  double wanted_margin_kt = kNone, wanted_uncertainty_kt = kNone;  ///< of the card

  std::vector<MapAir> airs;        ///< columns, in the recipe's order
  std::vector<std::string> hands;  ///< rows: grades of pilot, in the recipe's order
  std::vector<MapLine> lines;      ///< set by set: each steady point, longest window first, then the stall
  std::vector<MapCell> cells;      ///< airs x hands: cell(air, hand)
  std::vector<MapCell> varied;     ///< one thing changed at a time about base_cell; may be empty
  std::size_t base_cell = 0;       ///< index in cells, when there are varied ones
  MapCell
      unvaried;  ///< the base cell's first sorties, as many as a varied cell has: the same seeds; empty without those
  Sensitivity sensitivity;

  std::size_t cell_index(std::size_t air, std::size_t hand) const { return air * hands.size() + hand; }
  const MapCell& cell(std::size_t air, std::size_t hand) const { return cells.at(cell_index(air, hand)); }

  /// All cells in the order in which they are flown: those of the map, then the varied ones.
  std::size_t all_cells() const { return cells.size() + varied.size(); }
  MapCell& any_cell(std::size_t i) { return i < cells.size() ? cells[i] : varied.at(i - cells.size()); }
  const MapCell& any_cell(std::size_t i) const {
    return i < cells.size() ? cells[i] : varied.at(i - cells.size());
  }

  /// What is flown and has blocks: all cells, and after them the sorties that vary everything at once.
  std::size_t flown_cells() const { return all_cells() + (sensitivity.base > 0 ? 1 : 0); }
  const MapCell& flown_cell(std::size_t i) const { return i < all_cells() ? any_cell(i) : sensitivity.cell; }
  /// Seed of sortie k of a flown cell.
  std::uint64_t sortie_seed(std::size_t flown, int k) const {
    return flown < all_cells() ? first_seed + static_cast<std::uint64_t>(k)
                               : sensitivity.seeds.at(static_cast<std::size_t>(k));
  }
};

}  // namespace stallwright
