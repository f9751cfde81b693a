#pragma once
#include <Eigen/Core>
#include <functional>

#include "sim/motion/flight_model.hpp"
#include "sim/motion/trim.hpp"

namespace stallwright {

/// Places of the rigid motion in the state of a linear model. Behind them follow, in the order of
/// AirframeState, the induced inflow, lagged angle and separation of every strip, the tail's downwash, the
/// wake and the propeller's speed. Heading and position are left out: nothing depends on them.
enum RigidPlace : Eigen::Index { kU, kV, kW, kP, kQ, kR, kPhi, kTheta, kRigidPlaces };

/// Places of the inputs of a linear model: surface angles (rad), throttle (0..1), flap (rad).
enum InputPlace : Eigen::Index { kElevator, kAileron, kRudder, kThrottle, kFlap, kInputPlaces };

inline constexpr Eigen::Index kFlowPlaces = AircraftModel::kMemory;
inline constexpr Eigen::Index kLinearPlaces = kRigidPlaces + kFlowPlaces;

/// Small motions about a steady flight:
///   d(dx)/dt = A dx + B du
///   dx  u, v, w (m/s), p, q, r (rad/s), roll and pitch angle (rad), then the airframe's flow memory in its
///   own
///       units;  du  elevator, aileron, rudder (rad), throttle, flap (rad) from their trimmed values
/// Surfaces, throttle and flap are held (inputs, not states); so is air density, and gravity with it.
/// A model with no flow states (A is 8 x 8) is a rigid aeroplane with quasi-steady air, as textbooks print
/// it.
struct LinearModel {
  Eigen::MatrixXd a, b;
};

/// The numbers of a flight that a linear model follows.
Eigen::VectorXd linear_state(const FlightState<double>& s);

/// The flight with these numbers; position, heading and controls are those of `about`.
FlightState<double> flight_state(const FlightState<double>& about, const Eigen::VectorXd& x);

/// Rates of those numbers. Roll and pitch angle follow from the body rates,
///   phi' = p + tan(theta) (q sin(phi) + r cos(phi)),  theta' = q cos(phi) - r sin(phi)   [STEVENS_LEWIS],
/// singular at 90 degrees of pitch.
Eigen::VectorXd linear_state_rate(const Aircraft& aircraft, const FlightState<double>& s,
                                  const AirSample<double>& air);

/// Matrix of df_i/dx_k by central differences, (f(x + h e_k) - f(x - h e_k))/(2 h_k); error of order h^2.
Eigen::MatrixXd central_jacobian(const std::function<Eigen::VectorXd(const Eigen::VectorXd&)>& f,
                                 const Eigen::VectorXd& x, const Eigen::VectorXd& step);

/// Linear model about a flight, steady or not (the constant part of its rates is left out). Steps are 1e-6 of
/// 10 m/s, 1 rad, 1 rad/s, 1 (separation, wake, throttle) and 100 rad/s (propeller). At the flap's end
/// settings the difference is one-sided; at one between them, where its effect has a kink, it is the mean of
/// the two sides.
LinearModel linearise(const Aircraft& aircraft, const FlightState<double>& about,
                      const AirSample<double>& air);

}  // namespace stallwright
