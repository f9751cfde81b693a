#include "tests/published/strip_derivatives.hpp"

#include <cmath>

namespace stallwright::published {
namespace {

/// What is changed from the trim: angles, rates about the stability axes, surfaces.
struct Change {
  double alpha_rad = 0.0, beta_rad = 0.0, roll_radps = 0.0, pitch_radps = 0.0, yaw_radps = 0.0;
  double elevator_rad = 0.0, aileron_rad = 0.0, rudder_rad = 0.0;
  double alpha_rate_radps = 0.0;  ///< angle of attack passing through the trim's
};

/// Coefficients along the trim's stability axes [NELSON-1998]; lift and drag along the flow as it is.
struct Coefficients {
  double lift, drag, side, roll, pitch, yaw;
};

class Stream {
 public:
  Stream(const Aircraft& aircraft, const Trim& trim, double density_kgpm3)
      : a_(aircraft), trim_(trim), density_kgpm3_(density_kgpm3) {}

  Coefficients measured(const Change& change) const {
    AirframeState<double> s = trim_.state.airframe;
    s.elevator_rad += change.elevator_rad;
    s.aileron_rad += change.aileron_rad;
    s.rudder_rad += change.rudder_rad;
    constexpr int kSteps = 400;
    for (int i = kSteps; i > 0; --i) s = stepped(s, flow(change, -i * kStep_s));
    return coefficients(airframe_loads(a_, s, flow(change, 0.0), Controls<double>{}), change);
  }

  /// Half the difference of a change and its opposite, over its size.
  template <class Set>
  Coefficients slope(double size, Set&& set) const {
    Change up, down;
    set(up) = size;
    set(down) = -size;
    const Coefficients u = measured(up), d = measured(down);
    const double k = 0.5 / size;
    return {k * (u.lift - d.lift), k * (u.drag - d.drag),   k * (u.side - d.side),
            k * (u.roll - d.roll), k * (u.pitch - d.pitch), k * (u.yaw - d.yaw)};
  }

 private:
  AirframeState<double> stepped(const AirframeState<double>& s, const RelativeFlow<double>& flow) const {
    return runge_kutta_step(s, kStep_s, [&](const AirframeState<double>& at) {
      AirframeState<double> rate = airframe_loads(a_, at, flow, Controls<double>{}).rate;
      rate.elevator_rad = rate.aileron_rad = rate.rudder_rad = rate.flap_rad = 0.0;
      rate.throttle = rate.propeller_radps = 0.0;
      return rate;
    });
  }

  /// The stream at a time; 0 is when loads are taken.
  RelativeFlow<double> flow(const Change& c, double time_s) const {
    const double alpha = trim_.alpha_rad + c.alpha_rad + c.alpha_rate_radps * time_s,
                 v = trim_.true_airspeed_mps;
    const double ca = std::cos(trim_.alpha_rad), sa = std::sin(trim_.alpha_rad);
    RelativeFlow<double> f;
    f.velocity_B = {v * std::cos(c.beta_rad) * std::cos(alpha), v * std::sin(c.beta_rad),
                    v * std::cos(c.beta_rad) * std::sin(alpha)};
    f.rate_B = {c.roll_radps * ca - c.yaw_radps * sa, c.pitch_radps, c.roll_radps * sa + c.yaw_radps * ca};
    f.density_kgpm3 = density_kgpm3_;
    return f;
  }

  Coefficients coefficients(const AirframeLoads<double>& loads, const Change& c) const {
    const double v = trim_.true_airspeed_mps, force = 0.5 * density_kgpm3_ * v * v * a_.wing_area_m2;
    const double alpha = trim_.alpha_rad + c.alpha_rad, ca = std::cos(alpha), sa = std::sin(alpha);
    const double ct = std::cos(trim_.alpha_rad), st = std::sin(trim_.alpha_rad);
    const Vec3<double>&f = loads.force_B, &m = loads.moment_B;
    const double by_span = 1.0 / (force * a_.span_m);
    return {
        (f.x * sa - f.z * ca) / force,   -(f.x * ca + f.z * sa) / force,  f.y / force,
        (m.x * ct + m.z * st) * by_span, m.y / (force * a_.mean_chord_m), (m.z * ct - m.x * st) * by_span};
  }

  const Aircraft& a_;
  const Trim& trim_;
  double density_kgpm3_;
};

}  // namespace

std::map<std::string, double> strip_derivatives(const Aircraft& aircraft, const Trim& trim,
                                                double density_kgpm3) {
  constexpr double kAngle = 0.01, kRate = 0.02;
  const Stream stream(aircraft, trim, density_kgpm3);
  const double spans = 2.0 * trim.true_airspeed_mps / aircraft.span_m;
  const double chords = 2.0 * trim.true_airspeed_mps / aircraft.mean_chord_m;
  const auto alpha = stream.slope(kAngle, [](Change& c) -> double& { return c.alpha_rad; });
  const auto passing = stream.slope(kRate, [](Change& c) -> double& { return c.alpha_rate_radps; });
  const auto beta = stream.slope(kAngle, [](Change& c) -> double& { return c.beta_rad; });
  const auto p = stream.slope(kRate, [](Change& c) -> double& { return c.roll_radps; });
  const auto q = stream.slope(kRate, [](Change& c) -> double& { return c.pitch_radps; });
  const auto r = stream.slope(kRate, [](Change& c) -> double& { return c.yaw_radps; });
  const auto elevator = stream.slope(kAngle, [](Change& c) -> double& { return c.elevator_rad; });
  const auto aileron = stream.slope(kAngle, [](Change& c) -> double& { return c.aileron_rad; });
  const auto rudder = stream.slope(kAngle, [](Change& c) -> double& { return c.rudder_rad; });
  return {{"CL", stream.measured({}).lift},
          {"CLa", alpha.lift},
          {"CDa", alpha.drag},
          {"Cma", alpha.pitch},
          {"Cmadot", passing.pitch * chords},
          {"Cmq", q.pitch * chords},
          {"CLde", elevator.lift},
          {"Cmde", elevator.pitch},
          {"CYb", beta.side},
          {"Clb", beta.roll},
          {"Cnb", beta.yaw},
          {"Clp", p.roll * spans},
          {"Cnp", p.yaw * spans},
          {"Clr", r.roll * spans},
          {"Cnr", r.yaw * spans},
          {"Clda", aileron.roll},
          {"Cndr", rudder.yaw}};
}

}  // namespace stallwright::published
