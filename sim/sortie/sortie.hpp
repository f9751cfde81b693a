#pragma once
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/aircraft.hpp"
#include "sim/air/air_preset.hpp"
#include "sim/air/discrete_gust.hpp"
#include "sim/air/thermals.hpp"
#include "sim/air/turbulence.hpp"
#include "sim/air/wake_shake.hpp"
#include "sim/crew/pilot.hpp"
#include "sim/motion/felt.hpp"
#include "sim/motion/flight.hpp"
#include "sim/sensing/instruments.hpp"
#include "sim/sensing/warning_unit.hpp"
#include "sim/sortie/director.hpp"
#include "sim/sortie/known_aircraft.hpp"
#include "sim/sortie/log_row.hpp"
#include "sim/sortie/smooth_twin.hpp"
#include "sim/sortie/sortie_air.hpp"
#include "sim/sortie/sortie_config.hpp"

namespace stallwright {

/// Errors of a sortie's instruments, and of the mass that is entered (always its own).
SystematicErrors<double> drawn_errors(const SortieConfig& config);

/// Takes the rows as they come; a file writer, or memory.
class SortieSink {
 public:
  virtual ~SortieSink() = default;
  /// Every tick, before its rows: whether they are wanted (making them takes as long as a fifth of the flight).
  ///   attached_root  share of the wing root's chord that carries attached flow, in truth
  virtual bool wants(const Marks& /*marks*/, double /*attached_root*/) { return true; }
  virtual void row(const LogRow& log, const TruthRow& truth) = 0;
};

/// Keeps all rows.
class MemorySink : public SortieSink {
 public:
  void row(const LogRow& log_line, const TruthRow& truth_line) override {
    log.push_back(log_line);
    truth.push_back(truth_line);
  }
  std::vector<LogRow> log;
  std::vector<TruthRow> truth;
};

/// What is known when a sortie has ended, beside its rows.
struct SortieOutcome {
  enum class Failure { none, time_limit, met_the_ground, not_finite };
  bool finished = false;  ///< every point of the card was dealt with
  std::string failure;    ///< why not: a state that was not finite (with time), or the time limit
  Failure failure_kind = Failure::none;
  double ended_s = 0.0;
  double entered_mass_kg = 0.0;
  std::vector<Event> events;
  std::vector<PointTally> tallies;
  SystematicErrors<double> errors;  ///< as drawn
  /// Rms of the vertical gusts about their mean in the roughest record, from the truth; NaN: not looked at. It tells rough air
  /// from a hand that pulls.
  double record_gust_mps = kUnset;
};

/// What a tick saw, kept for whoever shows the flight.
struct TickSeen {
  Readings<double> readings;
  CrewTask asked;
  Vec3<double> specific_force_B_mps2;  ///< true, at the centre of gravity
  Vec3<double> angular_acceleration_B_radps2;
  double alpha_rad = 0.0;  ///< true, of the body axis
  double true_airspeed_mps = 0.0;
  bool tone = false;
};

/// How far a step goes through the air, and at which height it begins.
struct Travel {
  double airspeed_mps = 0.0, height_m = 0.0;
};

/// Everything that one moment's rows are made of, beside the flight itself.
struct Moment {
  AirSample<double> air;
  Felt<double> felt;
  SensedTruth<double> sensed;
};

inline constexpr int kStepsPerTick = 2;

/// One sortie, tick by tick (50 Hz; two steps of the flight each). The order within a tick is fixed here and
/// nowhere else: sense, direct, fly by hand, log, then step the air and the aeroplane twice.
class Sortie {
 public:
  /// Sets the aeroplane up in steady flight at the working height, on the card's first heading.
  /// Throws std::runtime_error if no steady flight exists there.
  explicit Sortie(const SortieConfig& config) : Sortie(config, known_aircraft(config)) {}
  /// known  made for this aeroplane, loading, airframe, card and day
  Sortie(const SortieConfig& config, std::shared_ptr<const KnownAircraft> known);

  /// One tick; false when the card is done, the time is over or the state is no longer finite.
  ///   hands  for a sortie flown by hand, already as_recorded; ignored otherwise
  bool tick(SortieSink& sink, const Hands& hands = {});

  /// Hands and feet that hold the aeroplane as it is now: for a person to begin with.
  Hands first_hands() const;
  const Controls<double>& controls() const { return controls_; }
  const Director& director() const { return director_; }
  /// The simulated pilot of this sortie: where a person flies, whoever they may hand the stick to.
  const Pilot& pilot() const { return pilot_; }
  /// As of the last tick; before the first one everything is zero.
  const TickSeen& seen() const { return seen_; }

  double time_s() const { return kTick_s * static_cast<double>(tick_); }
  const Aircraft& aircraft() const { return known_->aircraft; }
  const FlightState<double>& state() const { return state_; }
  SortieOutcome outcome() const;

  /// The parts of a tick, for whoever steps the flight and reads the instruments of several sorties at once, in the order in
  /// which `tick` uses them: ready, air, (loads, instruments), act, then twice: air, travel_in, (step the flight), follow; at
  /// the end close_tick.
  bool ready();  ///< false: no more ticks
  AirSample<double> air() const;
  /// Directs and flies by hand, from what the instruments show.
  ///   moment  called for the rows' sake, when they are wanted; the flight must be as it is at that moment
  CrewTask act(const Readings<double>& readings, double attached_root, const std::function<Moment()>& moment,
               SortieSink& sink, const Hands& hands = {});
  Travel travel_in(const AirSample<double>& air) const;
  FlightState<double>& flight() { return state_; }
  void follow(const Travel& travel, int step_of_tick);
  bool close_tick(bool finite);

  /// What a lane needs to take a sortie over at its start.
  struct Aboard {
    const KnownAircraft& known;
    const SortieAir& air;
    const SampleGrade<double>& grade;
    const AirPreset& preset;
    const TurbulenceState& turbulence;
    const ShakeState<double>& shake;
    const InstrumentState<double>& instruments;
    const SystematicErrors<double>& errors;
    random::Key key;
    bool dryden_alone;  ///< no other turbulence, no thermals, no discrete gusts
  };
  Aboard aboard() const;

 private:
  void add_thermals(double height_m, AirSample<double>& air) const;
  void add_discrete_gusts(AirSample<double>& air) const;
  void step_gusts(double height_m, double airspeed_mps, std::uint64_t step);
  void follow_with_twin(const AirSample<double>& air, TruthRow& row);
  TruthRow truth_row(const Moment& moment) const;

  SortieConfig config_;
  random::Key key_;
  std::shared_ptr<const KnownAircraft> known_;
  SortieAir here_;
  std::optional<ThermalField> thermals_;
  Pilot pilot_;
  Director director_;
  SystematicErrors<double> errors_;
  double entered_mass_kg_ = 0.0;

  FlightState<double> state_;
  TurbulenceState turbulence_;
  std::vector<DiscreteGustState<double>> gusts_;  ///< one for each of the preset
  ShakeState<double> shake_;
  PilotState crew_;
  SampleGrade<double> sampled_;
  InstrumentState<double> instruments_;
  Controls<double> controls_;
  SmoothTwin twin_;
  TickSeen seen_;
  WarningUnitState unit_;
  std::uint64_t tick_ = 0;
  std::string failure_;
  SortieOutcome::Failure failure_kind_ = SortieOutcome::Failure::none;
};

/// Flies a whole sortie into a sink.
SortieOutcome fly_sortie(const SortieConfig& config, SortieSink& sink);

}  // namespace stallwright
