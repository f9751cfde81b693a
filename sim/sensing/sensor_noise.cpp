#include "sim/sensing/sensor_noise.hpp"

namespace stallwright {

using random::Channel;

SensorNoise<double> sensor_noise(const random::Key& key, std::uint64_t sample) {
  const auto draw = [&](Channel channel, std::uint32_t index) {
    return random::normal(key.stream(channel), sample, index);
  };
  SensorNoise<double> noise = sensor_noise_from<double>(draw);
  if (sample % kGpsSamples == 0) {
    noise.gps_speed = draw(Channel::kSensorGps, 0);
    noise.gps_altitude = draw(Channel::kSensorGps, 2);
  }
  return noise;
}

}  // namespace stallwright
