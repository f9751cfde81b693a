#include "tests/published/stall_manners.hpp"

namespace stallwright::published {
namespace {

constexpr double kSlip_rad = 2.0 * math::kDegree, kRise_rad = 0.5 * math::kDegree,
                 kDeflection_rad = 5.0 * math::kDegree;

/// Once the flow has settled from the held state to another deflection or stream.
TunnelReading settled_reading(const Held& h, const AirframeState<double>& s, double alpha_rad,
                              double beta_rad = 0.0) {
  const auto flow = testing::flow_at(kTunnelSpeed_mps, alpha_rad, beta_rad);
  return reading(h.aircraft, testing::settled(h.aircraft, s, flow, 2.0), alpha_rad, beta_rad);
}

}  // namespace

Held held(const Aircraft& a, double alpha_rad) {
  AirframeState<double> s = testing::attached();
  s.elevator_rad = -0.5 * a.type.elevator.max_negative_rad;
  return {a, risen_to(a, alpha_rad, s), alpha_rad};
}

Derivatives derivatives(const Held& h) {
  const TunnelReading zero = reading(h.aircraft, h.state, h.alpha_rad);
  const TunnelReading aside = settled_reading(h, h.state, h.alpha_rad, kSlip_rad);
  const TunnelReading above = settled_reading(h, h.state, h.alpha_rad + kRise_rad);
  AirframeState<double> e = h.state, a = h.state, r = h.state;
  e.elevator_rad -= kDeflection_rad;
  a.aileron_rad += kDeflection_rad;
  r.rudder_rad -= kDeflection_rad;
  return {(aside.roll - zero.roll) / kSlip_rad,
          (aside.yaw - zero.yaw) / kSlip_rad,
          (above.pitch - zero.pitch) / kRise_rad,
          (settled_reading(h, e, h.alpha_rad).pitch - zero.pitch) / kDeflection_rad,
          (settled_reading(h, a, h.alpha_rad).roll - zero.roll) / kDeflection_rad,
          (settled_reading(h, r, h.alpha_rad).yaw - zero.yaw) / kDeflection_rad};
}

}  // namespace stallwright::published
