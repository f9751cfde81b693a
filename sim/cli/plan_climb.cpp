#include "sim/cli/plan_climb.hpp"

#include <set>

#include "aircraft/math/units.hpp"
#include "sim/air/airspeed.hpp"
#include "sim/motion/performance.hpp"

namespace stallwright::cli {

ClimbRow climb_row(const Aircraft& aircraft, std::size_t flap_setting, const WorkingAir& where) {
  const FlapSetting& flap = aircraft.type.flaps[flap_setting];
  ClimbCondition c{flap.deflection_rad, where.altitude_m, where.air.density_kgpm3};
  if (flap.deflection_rad > 0.0) c.fastest_mps = tas_of_cas(flap.limit_speed_mps, where.air);
  const double stall_mps =
      tas_of_cas(book_stall_kt(aircraft.type, flap_setting, aircraft.mass.mass_kg) * kKnot, where.air);
  const BestFigure best = best_climb(aircraft, stall_mps, c);
  return {flap.deflection_rad / math::kDegree, best.value / kFootPerMinute,
          cas_of_tas(best.speed_mps, where.air) / kKnot};
}

std::vector<std::size_t> climb_settings(const TestCard& card) {
  std::set<std::size_t> settings{0};
  for (const TestPoint& point : card.points) settings.insert(point.flap_setting);
  return {settings.begin(), settings.end()};
}

}  // namespace stallwright::cli
