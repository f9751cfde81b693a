#pragma once
#include <cstdint>

#include "aircraft/math/vec3.hpp"
#include "sim/random/philox.hpp"

namespace stallwright {

using math::Vec3;

inline constexpr double kSample_s = 0.02;         ///< instruments are read 50 times a second
inline constexpr std::uint64_t kGpsSamples = 10;  ///< a GPS fix every tenth sample, 5 Hz

/// The standard normal numbers of one sample, before the grade scales them. Each is a function of (seed,
/// sortie, channel, sample), so a reading's noise depends neither on the samples before it nor on how the
/// flight was stepped. A pack of lanes fills one of these from as many sorties.
template <class T>
struct SensorNoise {
  T impact{}, static_pressure{}, probe{}, probe_drift{}, temperature{};
  Vec3<T> acceleration, rate, attitude;  ///< attitude: roll, pitch, yaw
  T gps_speed{}, gps_altitude{};         ///< meant on samples that bring a fix; zero on the others

  static SensorNoise none() { return {}; }
  friend bool operator==(const SensorNoise&, const SensorNoise&) = default;
};

/// The numbers of a sample; sample counts 50 a second from the start of the sortie.
SensorNoise<double> sensor_noise(const random::Key& key, std::uint64_t sample);

}  // namespace stallwright
