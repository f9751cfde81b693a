#include "sim/sensing/sensor_noise.hpp"

namespace stallwright {

using random::Channel;

SensorNoise<double> sensor_noise(const random::Key& key, std::uint64_t sample) {
  const auto draw = [&](Channel channel, std::uint32_t index = 0) {
    return random::normal(key.stream(channel), sample, index);
  };
  const auto draw3 = [&draw](Channel channel) {
    return Vec3<double>{draw(channel, 0), draw(channel, 1), draw(channel, 2)};
  };
  SensorNoise<double> noise;
  noise.impact = draw(Channel::kSensorIas);
  noise.static_pressure = draw(Channel::kSensorAltitude);
  noise.probe = draw(Channel::kSensorRatio);
  noise.probe_drift = draw(Channel::kSensorDrift);
  noise.temperature = draw(Channel::kSensorTemperature);
  noise.acceleration = draw3(Channel::kSensorAcceleration);
  noise.rate = draw3(Channel::kSensorRates);
  noise.attitude = draw3(Channel::kSensorAttitude);
  if (sample % kGpsSamples == 0) {
    noise.gps_speed = draw(Channel::kSensorGps, 0);
    noise.gps_altitude = draw(Channel::kSensorGps, 2);
  }
  return noise;
}

}  // namespace stallwright
