#pragma once
#include <cstdint>

#include "aircraft/math/vec3.hpp"
#include "sim/random/noise_key.hpp"

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

/// Which normal numbers go to which reading.
///   draw(channel, index)  one of them
template <class T, class Draw>
SensorNoise<T> sensor_noise_from(Draw&& draw) {
  using random::Channel;
  const auto draw3 = [&draw](Channel channel) {
    return Vec3<T>{draw(channel, 0), draw(channel, 1), draw(channel, 2)};
  };
  SensorNoise<T> noise;
  noise.impact = draw(Channel::kSensorIas, 0);
  noise.static_pressure = draw(Channel::kSensorAltitude, 0);
  noise.probe = draw(Channel::kSensorRatio, 0);
  noise.probe_drift = draw(Channel::kSensorDrift, 0);
  noise.temperature = draw(Channel::kSensorTemperature, 0);
  noise.acceleration = draw3(Channel::kSensorAcceleration);
  noise.rate = draw3(Channel::kSensorRates);
  noise.attitude = draw3(Channel::kSensorAttitude);
  return noise;
}

/// The numbers of a sample; sample counts 50 a second from the start of the sortie.
SensorNoise<double> sensor_noise(const random::Key& key, std::uint64_t sample);

/// The same of several sorties, with numbers for a GPS fix on every sample.
template <class T>
requires(!std::is_integral_v<T>) SensorNoise<T> sensor_noise(const random::NoiseKey<T>& key,
                                                             const T& sample) {
  SensorNoise<T> noise = sensor_noise_from<T>(
      [&](random::Channel channel, std::uint32_t index) { return normal(key, channel, sample, index); });
  noise.gps_speed = normal(key, random::Channel::kSensorGps, sample, 0);
  noise.gps_altitude = normal(key, random::Channel::kSensorGps, sample, 2);
  return noise;
}

}  // namespace stallwright
