#include "sim/motion/trim.hpp"

#include <algorithm>
#include <cmath>

#include "sim/motion/steady_flight.hpp"

namespace stallwright {
namespace {

using Search = SteadyFlight<AircraftModel>;
using Vector = Search::Vector;
constexpr std::size_t kMemory = Search::kMemory;

Vector first_guess(const Search& search, const Trim* start) {
  const Aircraft& aircraft = search.model.aircraft;
  const TrimCondition& c = search.condition;
  Vector x = Vector::Zero();
  const bool path = c.power == TrimCondition::Power::path;
  if (start != nullptr) {
    Search::pack_memory(start->state, x.data());
    const EulerAngles<double> e = euler_angles(start->state.rigid.attitude_EB);
    double* m = x.data() + kMemory;
    m[0] = search.alpha_given() ? start->true_airspeed_mps / 50.0 : start->alpha_rad;
    m[1] = start->beta_rad;
    m[2] = e.pitch_rad;
    m[3] = start->state.airframe.elevator_rad;
    m[4] = start->state.airframe.aileron_rad;
    m[5] = start->state.airframe.rudder_rad;
    m[6] = path ? start->state.airframe.throttle : 0.1 * start->climb_mps;
    return x;
  }
  FlightState<double> flight;
  AirframeState<double>& s = flight.airframe;
  s.separation.fill(1.0);
  s.flap_rad = c.flap_rad;
  const double speed = search.alpha_given() ? 40.0 : c.true_airspeed_mps;
  // Plain guesses: lift slope 4.5 per rad from -4 deg; a closed throttle windmills near J = 0.95 and glides at 1 in 8.
  const double weight = aircraft.mass.mass_kg * kStandardGravity_mps2;
  const double lift = weight / (0.5 * c.density_kgpm3 * speed * speed * aircraft.wing_area_m2);
  const double alpha = search.alpha_given() ? c.alpha_rad : std::clamp(lift / 4.5 - 0.07, -0.1, 0.15);
  const bool idle = !path && c.throttle < 0.2;
  s.propeller_radps = idle ? 2.0 * math::kPi * speed / (0.95 * aircraft.type.propeller.diameter_m)
                           : aircraft.type.engine.rated_speed_radps * 0.8;
  // Let the induced flow settle on a fixed attitude before Newton sees it.
  RelativeFlow<double> flow;
  flow.velocity_B = {speed * math::cos(alpha), 0.0, speed * math::sin(alpha)};
  flow.density_kgpm3 = c.density_kgpm3;
  const double propeller = s.propeller_radps;
  for (int i = 0; i < 100; ++i) {
    s = runge_kutta_step(s, 0.01, [&](const AirframeState<double>& at) {
      return airframe_loads(aircraft, at, flow, Controls<double>{}).rate;
    });
    s.propeller_radps = propeller;
    s.flap_rad = c.flap_rad;
  }
  Search::pack_memory(flight, x.data());
  double* m = x.data() + kMemory;
  m[0] = search.alpha_given() ? speed / 50.0 : alpha;
  m[2] = alpha + (path ? c.climb_mps / speed : idle ? -0.125 : 0.05);
  m[6] = path ? 0.5 : 0.1 * speed * (idle ? -0.125 : 0.05);
  return x;
}

}  // namespace

AirSample<double> trim_air(const TrimCondition& condition) {
  AirSample<double> air;
  air.density_kgpm3 = condition.density_kgpm3;
  return air;
}

Trim find_trim(const Aircraft& aircraft, const TrimCondition& condition, const Trim* start) {
  const AircraftModel model{aircraft, trim_air(condition)};
  Search search{model, condition};
  search.held.airframe.flap_rad = condition.flap_rad;
  Vector x = first_guess(search, start);
  const Vector f = search.search(x);
  Trim t;
  t.state = search.state(x);
  const FlightDerivative<double> d = flight_derivative(aircraft, t.state, Controls<double>{}, model.air);
  t.residual = f.cwiseAbs().maxCoeff();
  t.converged = f.allFinite() && t.residual <= 1e-7;
  const double* m = x.data() + kMemory;
  t.alpha_rad = search.alpha_given() ? condition.alpha_rad : m[0];
  t.true_airspeed_mps = search.alpha_given() ? m[0] * 50.0 : condition.true_airspeed_mps;
  t.beta_rad = m[1];
  t.climb_mps = -d.rate.rigid.position_E_m.z;
  t.load_factor = norm(d.specific_force_B_mps2) / kStandardGravity_mps2;

  const AircraftType& type = aircraft.type;
  const auto stick = [&](const ControlSurface& surface, double angle) {
    return angle > 0.0 ? angle / surface.max_positive_rad : angle / surface.max_negative_rad;
  };
  t.controls.stick_aft = -stick(type.elevator, m[3]);
  t.controls.stick_right = m[4] / type.aileron.max_negative_rad;
  t.controls.pedal_right = -stick(type.rudder, m[5]);
  t.controls.throttle = t.state.airframe.throttle;
  t.controls.flap_rad = condition.flap_rad;
  const double most = std::max(
      {std::abs(t.controls.stick_aft), std::abs(t.controls.stick_right), std::abs(t.controls.pedal_right)});
  t.within_stops = most <= 1.0 && t.controls.throttle >= 0.0 && t.controls.throttle <= 1.0;
  return t;
}

}  // namespace stallwright
