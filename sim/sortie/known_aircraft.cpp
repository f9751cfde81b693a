#include "sim/sortie/known_aircraft.hpp"

#include <algorithm>
#include <stdexcept>

#include "aircraft/math/units.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright {
namespace {

double fastest_speed_mps(const TestCard& card, const AircraftType& type, double mass_kg) {
  double fastest = 0.0;
  for (const TestPoint& point : card.points) {
    const PointSpeeds s = point_speeds(point, type, mass_kg);
    fastest = std::max({fastest, s.set_up_kt(), 1.6 * s.stall_kt});
  }
  return (fastest + 8.0) * kKnot;
}

ControlFeel feel_for(const Aircraft& aircraft, double altitude_m, double density, double stall_mps) {
  TrimCondition c;
  c.true_airspeed_mps = 1.3 * stall_mps * math::sqrt(1.225 / density);
  c.altitude_m = altitude_m;
  c.density_kgpm3 = density;
  const Trim t = find_trim(aircraft, c);
  if (!t.converged) throw std::runtime_error("no steady level flight at 1.3 times the stall speed");
  ControlFeel feel = control_feel(aircraft, t, density);
  feel.reference_mps = 1.3 * stall_mps;  // as the airspeed indicator shows it
  return feel;
}

/// Flap setting and power rule of something to remember.
struct Setting {
  std::size_t flap;
  PowerRule power;
  double descent_mps;
};

std::vector<Setting> settings_of(const TestCard& card) {
  std::vector<Setting> all{{0, PowerRule::level, 0.0}};
  for (const TestPoint& point : card.points) {
    all.push_back({point.flap_setting, PowerRule::level, 0.0});
    all.push_back({point.flap_setting, point.power, point.descent_fpm * kFootPerMinute});
  }
  return all;
}

double working_altitude_m(const TestCard& card) { return (card.terrain_ft + card.working_height_ft) * kFoot; }

double density_at_work(const SortieConfig& config) {
  return AirColumn(config.air.day).at(working_altitude_m(config.card)).density_kgpm3;
}

double fastest_true_mps(const SortieConfig& config, double mass_kg, double density) {
  return fastest_speed_mps(config.card, config.type, mass_kg) * math::sqrt(1.225 / density);
}

}  // namespace

const SteadyCurve* KnownAircraft::remembered(std::size_t flap, PowerRule power, double descent_mps) const {
  for (const Memory& m : memories)
    if (m.flap_setting == flap && m.power == power &&
        (power != PowerRule::descent || m.descent_mps == descent_mps))
      return &m.curve;
  return nullptr;
}

std::shared_ptr<const KnownAircraft> known_aircraft(const SortieConfig& config) {
  auto known = std::make_shared<KnownAircraft>();
  known->aircraft = make_aircraft(config.type, config.loading, config.airframe_seed);
  known->loading = config.loading;
  known->airframe_seed = config.airframe_seed;
  known->altitude_m = working_altitude_m(config.card);
  const double density = known->density_kgpm3 = density_at_work(config);
  const double mass = known->aircraft.mass.mass_kg, to_true = math::sqrt(1.225 / density);
  known->feel =
      feel_for(known->aircraft, known->altitude_m, density, book_stall_kt(config.type, 0, mass) * kKnot);
  known->fastest_mps = fastest_true_mps(config, mass, density);
  for (const Setting& s : settings_of(config.card)) {
    if (known->remembered(s.flap, s.power, s.descent_mps) != nullptr) continue;
    const FlapSetting& f = config.type.flaps[s.flap];
    known->memories.push_back(
        {s.flap, s.power, s.descent_mps,
         steady_curve(known->aircraft, s.power, s.descent_mps, f.deflection_rad, known->altitude_m, density,
                      std::min(known->fastest_mps, f.limit_speed_mps * to_true))});
  }
  return known;
}

bool serves(const KnownAircraft& known, const SortieConfig& config) {
  if (known.aircraft.type.name != config.type.name || !(known.loading == config.loading) ||
      known.airframe_seed != config.airframe_seed || known.altitude_m != working_altitude_m(config.card))
    return false;
  const double density = density_at_work(config);
  if (known.density_kgpm3 != density ||
      known.fastest_mps != fastest_true_mps(config, known.aircraft.mass.mass_kg, density))
    return false;
  const std::vector<Setting> settings = settings_of(config.card);
  return std::all_of(settings.begin(), settings.end(), [&](const Setting& s) {
    return known.remembered(s.flap, s.power, s.descent_mps) != nullptr;
  });
}

}  // namespace stallwright
