#pragma once
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

namespace stallwright {

/// Something that happened on the sortie and that the debrief must not pass over.
struct SortieEvent {
  double t_s = 0.0;
  std::string
      kind;  ///< in words: "unintended stall", "knock it off", "recorded off condition", "given up", ...
  std::string point;  ///< name of the test point; may be empty
  std::string text;   ///< what was seen
  bool danger = false;
};

/// What it took to fly one test point.
struct PointCount {
  std::string point;
  double flap_deg = 0.0;
  int records_wanted = 0, records = 0;
  int attempts = 0, timeouts = 0;
  int left_band = 0;  ///< records during which a band was left
  int forced = 0;     ///< records made past the attempt limit without being on condition
  int given_up = 0, unintended_stalls = 0, knocked_off = 0;
};

/// What was flown, by whom and in which air: the words at the head of every page, plot and table.
struct SortieSummary {
  std::string aircraft, aircraft_summary;
  std::string card, card_summary;
  std::string air;       ///< short: "calm", "light", or the name of a weather file
  std::string air_text;  ///< a sentence more; may be empty
  double sigma_kt = std::numeric_limits<double>::quiet_NaN();  ///< of the gusts at the working altitude, rms,
                                                               ///< along the flight path
  std::string pilot, sensors;
  std::uint64_t seed = 0;
  double mass_kg = std::numeric_limits<double>::quiet_NaN();
  double reference_mass_kg = std::numeric_limits<double>::quiet_NaN();
  std::string loading;  ///< "two on board, 60 l of fuel"
  double working_altitude_ft =
      std::numeric_limits<double>::quiet_NaN();                         ///< indicated, as in the time history
  double floor_altitude_ft = std::numeric_limits<double>::quiet_NaN();  ///< the same
  double wanted_uncertainty_kt = std::numeric_limits<double>::quiet_NaN();  ///< of the card
  double wanted_margin_kt = std::numeric_limits<double>::quiet_NaN();       ///< of the card
  std::string version;
  std::vector<SortieEvent> events;
  std::vector<PointCount> counts;
};

/// "light air (σ 1.6 kt)"
std::string air_words(const SortieSummary& summary);

/// "Seed 7, light air (σ 1.6 kt), sharp pilot, standard sensors": which seed and air made a plot.
std::string made_by(const SortieSummary& summary);

}  // namespace stallwright
