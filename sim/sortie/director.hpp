#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "aircraft/aircraft_type.hpp"
#include "sim/crew/hands.hpp"
#include "sim/crew/pilot.hpp"
#include "sim/sensing/readings.hpp"
#include "sim/sortie/break_detector.hpp"
#include "sim/sortie/card_speeds.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Where the flight of a card stands.
enum class Phase { clearing, transit, settle, record, slow, broken, recover, climb, done };
std::string phase_name(Phase phase);

/// Something worth a line in the debrief.
struct Event {
  double time_s = 0.0;
  std::size_t point = 0;  ///< index in the card
  std::string kind;       ///< "break", "unintended stall", "knock it off", "forced record", "given up", ...
  std::string text;
};

/// Counts for one point of the card; nothing that went wrong is dropped.
struct PointTally {
  int recorded = 0, forced = 0, flagged = 0, given_up = 0, timeouts = 0, unintended_stalls = 0,
      knocked_off = 0, no_break = 0;
};

/// What the recorder notes beside the readings.
struct Marks {
  int point = 0, repeat = 0, attempt = 0;  ///< from 1; point 0: none
  double target_kt = 0.0;                  ///< of a steady point, at this mass; 0 otherwise
  bool recording = false, forced = false, in_band = true;
  Phase phase = Phase::transit;
};

/// Which bands are broken at this moment, in words; empty: on condition (as soon as the settling time is over).
std::vector<std::string> broken_bands(const TestPoint& point, const PointSpeeds& speeds, double altitude_m,
                                      const Readings<double>& seen);

/// How the present point stands, for whoever coaches a person. Shares are 0 .. 1.
struct Standing {
  std::vector<std::string> out_of_band;  ///< in words; empty: within every band
  double settled_share = 0.0;            ///< of the settling time; 1: on condition
  double record_share = 0.0;
  bool turned_out = false;  ///< clearing: the first turn is done, the way back is left
  std::string refusal;      ///< why the last press did nothing, for four seconds; empty after one that did
};

/// Takes a card through its points: what to fly now, when a record starts and ends, what went wrong. It sees only
/// readings. The same director serves a simulated pilot and a person (who presses the button themselves).
class Director {
 public:
  struct Setup {
    TestCard card;
    AircraftType type;
    double mass_kg = 0.0;
    double qnh_terrain_m = 0.0;  ///< height of the ground above sea level
    double button_delay_s = 0.5, reaction_s = 0.7;
    std::vector<double> entry_rate_factor;  ///< one for each stall attempt to come, in order
    std::vector<bool> early_release;        ///< likewise
    double heading_rad = 0.0;
    /// A person flies: records begin when asked for, nothing times out, any way round will do for clearing turns.
    bool by_hand = false;
  };
  explicit Director(const Setup& setup);

  /// One tick: looks at the readings, moves on, and says what to fly until the next one.
  ///   tone  a taught unit is sounding: ends a slow run, after the pilot's reaction
  ///   pressed  by a person; ignored otherwise
  CrewTask step(double time_s, const Readings<double>& seen, bool tone = false, const Presses& pressed = {});

  Standing standing(double time_s, const Readings<double>& seen) const;
  const std::vector<PointSpeeds>& speeds() const { return speeds_; }
  double working_altitude_m() const { return working_altitude_m_; }

  /// Puts something that the director cannot see into the list of events, once for each kind.
  void remark(double time_s, const std::string& kind, const std::string& text);

  const Marks& marks() const { return marks_; }
  const std::vector<Event>& events() const { return events_; }
  const std::vector<PointTally>& tallies() const { return tallies_; }
  bool done() const { return phase_ == Phase::done; }
  /// Index of the flap setting and power rule in force, for the pilot's memory.
  std::size_t flap_setting() const { return flap_setting_; }

 private:
  enum class AfterClimb { start, count_stall, attempt_failed };

  const TestPoint& point() const { return setup_.card.points[index_]; }
  void enter(Phase phase, double time_s);
  void note(double time_s, const std::string& kind, const std::string& text);
  void begin_attempt(double time_s);
  void next_point_or_repeat(double time_s);
  void attempt_failed(double time_s, const std::string& why);
  void abandon(double time_s);
  std::optional<Break> watch_for_break(double time_s, const Readings<double>& seen);
  bool clearing_wanted() const;
  void watch_safety(double time_s, const Readings<double>& seen);
  CrewTask hold_task(const Readings<double>& seen, double speed_mps) const;
  CrewTask clearing_task(double time_s, const Readings<double>& seen);
  CrewTask steady_task(double time_s, const Readings<double>& seen);
  CrewTask slow_task(double time_s, const Readings<double>& seen, bool tone);
  CrewTask slow_through_task(CrewTask task, double time_s, const Readings<double>& seen, bool tone);
  CrewTask recover_task(double time_s, const Readings<double>& seen);
  CrewTask climb_task(double time_s, const Readings<double>& seen);
  void start_record(double time_s, bool forced);
  void finish_record(double time_s);
  double safe_speed_mps() const;
  double flap_rad() const { return setup_.type.flaps[flap_setting_].deflection_rad; }
  bool flaps_there(const Readings<double>& seen) const;
  bool within_bands(const Readings<double>& seen) const;
  double settle_time_s() const;
  // By hand (director_by_hand.cpp).
  void refuse(double time_s, const std::string& why);
  void look_at_presses(double time_s, const Presses& pressed);
  CrewTask clearing_by_hand(double time_s, const Readings<double>& seen);
  bool record_wanted(double time_s, const Readings<double>& seen, bool on_condition);
  std::string why_not(double time_s, const Readings<double>& seen) const;
  bool speed_rose_again(double time_s, const Readings<double>& seen) const;
  std::vector<std::string> off_condition(const Readings<double>& seen) const;

  Setup setup_;
  std::vector<PointSpeeds> speeds_;
  double working_altitude_m_ = 0.0, floor_altitude_m_ = 0.0;
  std::size_t index_ = 0;
  int repeat_ = 1, attempt_ = 1;
  std::size_t stalls_flown_ = 0;
  Phase phase_ = Phase::transit;
  double phase_since_s_ = 0.0, attempt_since_s_ = 0.0, met_since_s_ = -1.0, button_at_s_ = -1.0,
         tone_since_s_ = -1.0;
  double slow_from_mps_ = 0.0;
  AfterClimb after_climb_ = AfterClimb::start;
  bool record_left_band_ = false;
  int clearing_leg_ = 0;
  double clearing_begun_s_ = 0.0;
  double clearing_heading_rad_ = 0.0;
  double cleared_from_rad_ = 0.0;  ///< by hand: where the turns began
  Presses pressed_;
  std::string refusal_;
  double refused_at_s_ = 0.0;
  std::size_t flap_setting_ = 0;
  BreakDetector detector_;
  Marks marks_;
  std::vector<Event> events_;
  std::vector<PointTally> tallies_;
};

}  // namespace stallwright
