#include "sim/cli/plan_speeds.hpp"

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/sensing/installed_system.hpp"

namespace stallwright::cli {
namespace {

TrimCondition condition_at(double cas_kt, double flap_rad, const WorkingAir& where) {
  TrimCondition c;
  c.true_airspeed_mps = tas_of_cas(cas_kt * kKnot, where.air);
  c.flap_rad = flap_rad;
  c.altitude_m = where.altitude_m;
  c.density_kgpm3 = where.air.density_kgpm3;
  return c;
}

void set_power(TrimCondition& c, const TestPoint& point) {
  // A slow point is set up in level flight; the throttle is closed when the slowing begins.
  if (point.is_steady() && point.power == PowerRule::idle) c.power = TrimCondition::Power::throttle;
  if (point.is_steady() && point.power == PowerRule::descent)
    c.climb_mps = -point.descent_fpm * kFootPerMinute;
}

}  // namespace

std::optional<Trim> steady_flight(const Aircraft& aircraft, TrimCondition condition) {
  constexpr double kStep_mps = 2.0;
  const double wanted_mps = condition.true_airspeed_mps;
  std::optional<Trim> near;
  const auto find = [&](double speed_mps) {
    condition.true_airspeed_mps = speed_mps;
    const Trim next = find_trim(aircraft, condition, near ? &*near : nullptr);
    if (next.converged) near = next;
    return next.converged;
  };
  for (double v = 1.25 * wanted_mps; v > wanted_mps; v -= kStep_mps) find(v);
  if (!find(wanted_mps)) return std::nullopt;
  return near;
}

bool has_position_error(const AircraftType& type) {
  return type.pitot_static.error_at_zero_alpha != 0.0 || type.pitot_static.error_per_rad != 0.0;
}

double indicated_kt(const AircraftType& type, const Trim& trim, const WorkingAir& where) {
  AirSample<double> still;
  still.density_kgpm3 = where.air.density_kgpm3;
  const RelativeFlow<double> flow = relative_flow(trim.state.rigid, still);
  const PitotStaticPressures<double> read = static_pitot_pressures(
      type.pitot_static, flow.velocity_B, where.air.density_kgpm3, where.air.pressure_Pa, 0.0);
  return cas_of_impact_pressure(read.impact_pa) / kKnot;
}

PlannedPoint planned_point(const Aircraft& aircraft, const TestPoint& point, const WorkingAir& where) {
  const AircraftType& type = aircraft.type;
  const double flap_rad = type.flaps[point.flap_setting].deflection_rad;
  PlannedPoint planned{point, flap_rad / math::kDegree, point_speeds(point, type, aircraft.mass.mass_kg),
                       kUnset, kUnset};
  TrimCondition c = condition_at(planned.speeds.set_up_kt(), flap_rad, where);
  set_power(c, point);
  const std::optional<Trim> trim = steady_flight(aircraft, c);
  if (!trim) return planned;
  planned.ias_kt = indicated_kt(type, *trim, where);
  planned.throttle = trim->controls.throttle;
  return planned;
}

double book_stall_ias_kt(const Aircraft& aircraft, std::size_t flap_setting, const WorkingAir& where) {
  const AircraftType& type = aircraft.type;
  TrimCondition c = condition_at(book_stall_kt(type, flap_setting, aircraft.mass.mass_kg),
                                 type.flaps[flap_setting].deflection_rad, where);
  c.power = TrimCondition::Power::throttle;
  const std::optional<Trim> trim = steady_flight(aircraft, c);
  return trim ? indicated_kt(type, *trim, where) : kUnset;
}

}  // namespace stallwright::cli
