#pragma once
#include <map>
#include <string>

#include "sim/motion/flight_model.hpp"

/// An aeroplane that is known by its stability derivatives alone, as a model for trim and linearise.
namespace stallwright::published {

/// Numbers of a file of derivatives in tests/published/data by their names there; missing ones are zero.
class Derivatives {
 public:
  explicit Derivatives(const std::string& file);
  double operator[](const std::string& name) const;
  void set(const std::string& name, double value) { values_[name] = value; }

 private:
  std::map<std::string, double> values_;
};

struct DerivativeState {
  RigidState<double> rigid;
  double elevator_rad = 0.0, aileron_rad = 0.0, rudder_rad = 0.0;
  double throttle = 1.0;  ///< thrust over that of the reference speed
};

/// Lift across and drag along the flow, body axes along the flow at angle of attack zero; rates made non-dimensional by
/// b/2V and c/2V at the speed flown. Feet, slugs and pounds inside; the state in our units.
///   CL = CL0 + CLa alpha + CLq q + CLadot alpha' + CLde de          CD = CD0 + CDa alpha
///   Cm = Cm0 + Cma alpha + Cmq q + Cmadot alpha' + Cmde de          thrust along x, T = T1 (V/V1)^n
///   CY, Cl, Cn  by beta, p, r, da, dr
struct DerivativeModel {
  using State = DerivativeState;
  static constexpr std::size_t kMemory = 0;

  Derivatives d;
  double density_slugpft3 = 0.0, gravity_ftps2 = 32.2;
  double reference_ftps = 0.0, reference_thrust_lbf = 0.0, thrust_power = 0.0;

  double mass_slug() const { return d["W"] / gravity_ftps2; }
  State rate(const State& s) const;
  double gravity_mps2(double) const;
  /// Along x at the reference speed, controls at rest, wings level: where angle of attack is zero.
  State reference() const;

  template <class S, class Visit>
  static void each_memory(S&, Visit&&) {}
  template <class S, class Visit>
  static void each_input(S& s, Visit&& visit) {
    visit(s.elevator_rad);
    visit(s.aileron_rad);
    visit(s.rudder_rad);
    visit(s.throttle);
  }

 private:
  Wrench<double> wrench(const State& s, double alpha_rate_radps) const;
};
static_assert(FlightModel<DerivativeModel>);

}  // namespace stallwright::published
