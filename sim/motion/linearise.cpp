#include "sim/motion/linearise.hpp"

#include <algorithm>

#include "sim/motion/linear_motion.hpp"

namespace stallwright {

Eigen::VectorXd linear_state(const FlightState<double>& s) { return motion_numbers<AircraftModel>(s); }

FlightState<double> flight_state(const FlightState<double>& about, const Eigen::VectorXd& x) {
  return motion_state<AircraftModel>(about, x);
}

Eigen::VectorXd linear_state_rate(const Aircraft& aircraft, const FlightState<double>& s,
                                  const AirSample<double>& air) {
  return motion_rate(AircraftModel{aircraft, air}, s);
}

Eigen::MatrixXd central_jacobian(const std::function<Eigen::VectorXd(const Eigen::VectorXd&)>& f,
                                 const Eigen::VectorXd& x, const Eigen::VectorXd& step) {
  Eigen::MatrixXd j;
  for (Eigen::Index k = 0; k < x.size(); ++k) {
    Eigen::VectorXd up = x, down = x;
    up[k] += step[k];
    down[k] -= step[k];
    const Eigen::VectorXd column = (f(up) - f(down)) / (up[k] - down[k]);
    if (k == 0) j.resize(column.size(), x.size());
    j.col(k) = column;
  }
  return j;
}

LinearModel linearise(const Aircraft& aircraft, const FlightState<double>& about,
                      const AirSample<double>& air) {
  // Beyond its end settings the flap does nothing: there the difference is taken from the inner side alone.
  Eigen::VectorXd u = motion_inputs<AircraftModel>(about);
  const std::vector<FlapSetting>& flaps = aircraft.type.flaps;
  u[kFlap] =
      std::clamp(u[kFlap], flaps.front().deflection_rad + kNudge, flaps.back().deflection_rad - kNudge);
  return linearise_model(AircraftModel{aircraft, air}, about, u);
}

}  // namespace stallwright
