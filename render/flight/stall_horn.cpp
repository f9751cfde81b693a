#include "render/flight/stall_horn.hpp"

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

constexpr double kOnAfter_s = 0.1, kOffBelow_rad = 0.5 * math::kDegree, kLeastAir_mps = 15.0;

}  // namespace

double horn_alpha_rad(const AircraftType& type, double flap_rad) {
  double shift = type.flaps.back().stall_shift_rad;
  for (std::size_t k = 1; k < type.flaps.size(); ++k) {
    const FlapSetting &low = type.flaps[k - 1], &high = type.flaps[k];
    if (flap_rad > high.deflection_rad) continue;
    const double share = (flap_rad - low.deflection_rad) / (high.deflection_rad - low.deflection_rad);
    shift = low.stall_shift_rad + share * (high.stall_shift_rad - low.stall_shift_rad);
    break;
  }
  return type.horn_alpha_rad + shift;
}

StallHorn advance(const StallHorn& before, const AircraftType& type, double alpha_rad, double flap_rad,
                  double airspeed_mps, double dt_s) {
  const double on_rad = horn_alpha_rad(type, flap_rad);
  StallHorn next = before;
  if (airspeed_mps < kLeastAir_mps || alpha_rad < on_rad - (before.sounds ? kOffBelow_rad : 0.0)) return {};
  next.above_s += dt_s;
  next.sounds = before.sounds || next.above_s >= kOnAfter_s;
  return next;
}

}  // namespace stallwright
