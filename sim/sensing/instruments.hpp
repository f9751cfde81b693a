#pragma once
#include <cstdint>

#include "aircraft/airframe_state.hpp"
#include "sim/sensing/installed_system.hpp"
#include "sim/sensing/readings.hpp"
#include "sim/sensing/sample_grade.hpp"
#include "sim/sensing/sampling.hpp"
#include "sim/sensing/sensor_noise.hpp"
#include "sim/sensing/systematic.hpp"

/// From what is so to what the instruments show, 50 times a second.
///
/// Every reading goes through the same steps, in this order:
///   1. the sensor meets the flow or motion: position error with its residual, mounting with its error
///   2. lag: tubes (Poiseuille) or the sensor's own filter, in closed form over the sample (sampling.hpp)
///   3. systematic error of the transducer: scale, then offset or bias, then drift
///   4. noise, one number a sample
///   5. resolution: the nearest step
///   6. what is computed from such readings: indicated airspeed, heights, vertical speed, ratio
/// Ratio, airspeed and height thus carry the noise and steps of the pressures that they come from.
/// Faults (blocked port, leak, crossed tubes) will act on the pressures between 1 and 2, dropouts after 5.
/// GPS: lag, then a fix every tenth sample with bias and noise, held in between.
/// Vertical speed, of every grade: the difference of the pressure altitude from its own lag of 2 s, over 2 s,
/// as a capsule with a capillary does it (common practice); on a steady climb it shows the climb exactly.
namespace stallwright {

/// All that the instruments can feel at one moment.
template <class T>
struct SensedTruth {
  SensedFlow<T> flow;
  T temperature_K{};
  T altimeter_setting_pa{T(ussa1976::kPressure)};  ///< the QNH that the pilot has set
  T altitude_m{}, ground_speed_mps{};              ///< geometric
  Vec3<T> attitude_rad;                            ///< roll, pitch, yaw
  Vec3<T> rate_B_radps, specific_force_B_mps2;     ///< at the centre of gravity
  T propeller_radps{};
  T flap_rad{};  ///< where the flaps are, not where the lever is
  Controls<T> controls;
};

/// What the instruments remember from one sample to the next.
template <class T>
struct InstrumentState {
  Lag<T> impact, static_pressure, probe, vertical_speed;
  Vec3<Lag<T>> attitude, rate, acceleration;
  Lag<T> gps_speed, gps_altitude;
  T gps_speed_fix_mps{}, gps_altitude_fix_m{};
  T probe_drift_pa{};
  friend bool operator==(const InstrumentState&, const InstrumentState&) = default;
};

/// Instruments that have been in these conditions for long, with a fix just taken and no drift yet.
template <class T>
InstrumentState<T> settled_instruments(const AircraftType& type, const SystematicErrors<T>& errors,
                                       const SensedTruth<T>& truth);

template <class T>
struct Sensed {
  InstrumentState<T> state;
  Readings<T> readings;
};

/// One sample. Pure: the noise comes in, the new memory goes out.
///   state   after the sample before, or settled_instruments at the start
///   fix     whether this sample brings a GPS fix (a truth value, or a mask of lanes)
template <class T, class Fix>
Sensed<T> advance(const AircraftType& type, const SampleGrade<T>& grade, const SystematicErrors<T>& errors,
                  const SensorNoise<T>& noise, const InstrumentState<T>& state, const SensedTruth<T>& truth,
                  const Fix& fix);

/// The same of one aeroplane.
///   sample  counts 50 a second from the start of the sortie; a GPS fix comes where it divides by kGpsSamples
inline Sensed<double> advance(const AircraftType& type, const SampleGrade<double>& grade,
                              const SystematicErrors<double>& errors, const SensorNoise<double>& noise,
                              const InstrumentState<double>& state, const SensedTruth<double>& truth,
                              std::uint64_t sample);

}  // namespace stallwright

#include "sim/sensing/instruments_impl.hpp"
