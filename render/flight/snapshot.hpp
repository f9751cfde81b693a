#pragma once
#include <memory>
#include <string>
#include <vector>

#include "aircraft/airframe_state.hpp"
#include "render/flight/needles.hpp"
#include "sim/motion/rigid_body.hpp"
#include "sim/sensing/readings.hpp"
#include "sim/sortie/director.hpp"

namespace stallwright {

/// A set point as far as the flight has come, for the probe scale.
struct SetPointSoFar {
  std::string name;
  double flap_deg = 0.0;
  double ratio = 0.0, low = 0.0, high = 0.0;  ///< adopted, and its 95 % interval
};

/// What the flight hands to whatever draws and sounds it: a value, made after each tick, never reached into.
struct Snapshot {
  double time_s = 0.0;
  RigidState<double> rigid;   ///< for the outside view alone; the panel shows readings
  Readings<double> readings;  ///< of this tick
  Needles needles;            ///< the same as the dials show it, after their own lag
  Controls<double> controls;  ///< in force
  Marks marks;
  CrewTask asked;  ///< what the card asks for now
  double usual_pitch_deg = kUnset,
         usual_throttle = kUnset;  ///< that hold what is asked, from memory; NaN: none
  double pitch_trim = 0.0;         ///< -1 .. 1, nose up positive
  double altimeter_setting_hpa = 1013.25;
  double propeller_radps = 0.0;
  double power_share = 0.0;      ///< of the engine's full power, 0 windmilling .. 1
  double airspeed_mps = 0.0;     ///< true, for the wind's noise
  Vec3<double> seat_shake_mps2;  ///< body axes: what the pilot's seat feels faster than about 2 Hz
  double buffet_g =
      0.0;            ///< rms of the same over the last half second, as far as the wing's own flow makes it
  bool horn = false;  ///< the aeroplane's own stall warning
  bool tone = false;  ///< of a taught unit under verification
  bool airborne = true, done = false;
  std::string failure;                   ///< why the flight ended before the card did
  std::vector<std::string> out_of_band;  ///< in words
  double settled_share = 0.0;            ///< 0 .. 1 of the settling time on condition; 1: a record may begin
  double record_share = 0.0;             ///< 0 .. 1 of the record
  std::size_t events = 0;                ///< how many so far
  Event last_event;
  bool turned_out = false;  ///< clearing: half done, the way back is left
  std::string refusal;      ///< why the last press did nothing, for four seconds; empty after one that did
  std::shared_ptr<const std::vector<SetPointSoFar>> set_points;  ///< never null
};

}  // namespace stallwright
