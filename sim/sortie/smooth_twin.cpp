#include "sim/sortie/smooth_twin.hpp"

namespace stallwright {

AirSample<double> SmoothTwin::without_gusts(AirSample<double> air) {
  air.gust_B_mps = {};
  air.gust_rate_B_radps = {};
  return air;
}

void SmoothTwin::begin(const FlightState<double>& real, const AirSample<double>& air) {
  state_ = real;
  state_.rigid.velocity_B_mps = real.rigid.velocity_B_mps - air.gust_B_mps;
  flying_ = true;
}

void SmoothTwin::step(const Aircraft& aircraft, const Controls<double>& controls,
                      const AirSample<double>& air, const FlightState<double>& real_after) {
  state_ = flight_step(aircraft, state_, controls, without_gusts(air));
  RigidState<double>& own = state_.rigid;
  const RigidState<double>& real = real_after.rigid;
  // The velocity stays what it is in earth axes, whatever attitude it is now seen from.
  if (!(own.attitude_EB == real.attitude_EB))
    own.velocity_B_mps =
        transpose(rotation_EB(real.attitude_EB)) * (rotation_EB(own.attitude_EB) * own.velocity_B_mps);
  own.attitude_EB = real.attitude_EB;
  own.rate_B_radps = real.rate_B_radps;
  own.position_E_m = real.position_E_m;
}

}  // namespace stallwright
