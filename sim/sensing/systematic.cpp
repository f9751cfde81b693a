#include "sim/sensing/systematic.hpp"

namespace stallwright {

using random::Channel;

SystematicErrors<double> draw_systematic_errors(const InstrumentGrade& grade, const random::Key& key) {
  const auto draw = [&key](Channel channel, double sd, std::uint32_t index = 0) {
    return sd * random::normal(key.stream(channel), 0, index);
  };
  const auto draw3 = [&draw](Channel channel, double sd) {
    return Vec3<double>{draw(channel, sd, 0), draw(channel, sd, 1), draw(channel, sd, 2)};
  };
  SystematicErrors<double> errors;
  errors.position_error_share = draw(Channel::kDrawPositionError, grade.position_error_share);
  errors.probe_offset_pa =
      draw(Channel::kDrawProbeOffset, grade.probe_offset_ratio * kProbeOffsetPressure_pa);
  errors.probe_scale = draw(Channel::kDrawProbeScale, grade.probe_scale);
  errors.probe_mount_rad = draw(Channel::kDrawProbeMounting, grade.probe_mount_rad);
  errors.acceleration_mps2 = draw3(Channel::kDrawAccelerationBias, grade.acceleration_bias_mps2);
  errors.rate_radps = draw3(Channel::kDrawRateBias, grade.rate_bias_radps);
  errors.attitude_rad = draw3(Channel::kDrawAttitudeBias, grade.attitude_bias_rad);
  errors.gps_altitude_m = draw(Channel::kDrawGpsBias, grade.gps_altitude_bias_m);
  errors.temperature_K = draw(Channel::kDrawTemperatureBias, grade.temperature_bias_K);
  errors.mass_share = draw(Channel::kDrawMass, grade.mass_share);
  return errors;
}

}  // namespace stallwright
