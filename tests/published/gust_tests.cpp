// A one-minus-cosine gust of 25 chords met by each aeroplane, stick fixed: against the closed form of its own
// linear model, and against the regulation's formula for the load it adds [CFR14-23] [STEVENS_LEWIS].
#include <Eigen/Dense>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <unsupported/Eigen/MatrixFunctions>

#include "sim/air/discrete_gust.hpp"
#include "sim/motion/linearise.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/stall_manners.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

constexpr double kGravity = kStandardGravity_mps2;

Trim level(const Aircraft& a, double speed_mps) {
  TrimCondition c;
  c.true_airspeed_mps = speed_mps;
  return find_trim(a, c);
}

/// Up-gust at a moment, m/s, of the regulation's shape flown through at a steady speed.
struct Gust25 {
  double peak_mps, length_s;
  double at(double t) const {
    return peak_mps * gust_share(GustShape::kOneMinusCosine, t / length_s, 1.0).share;
  }
};

AirSample<double> air_of(double up_mps) {
  AirSample<double> air;
  air.gust_B_mps.z = -up_mps;
  return air;
}

double load_factor(const Aircraft& a, const FlightState<double>& s, const Controls<double>& hands,
                   double up_mps) {
  return -flight_derivative(a, s, hands, air_of(up_mps)).specific_force_B_mps2.z / kGravity;
}

/// Load factor added by the gust, step by step (air held over each step at its middle).
std::vector<double> flown(const Aircraft& a, const Trim& trim, const Gust25& gust, double time_s,
                          double step_s) {
  FlightState<double> s = trim.state;
  const double before = load_factor(a, s, trim.controls, 0.0);
  std::vector<double> out;
  for (double t = 0.0; t < time_s; t += step_s) {
    out.push_back(load_factor(a, s, trim.controls, gust.at(t)) - before);
    s = flight_step(a, s, trim.controls, air_of(gust.at(t + 0.5 * step_s)), step_s);
  }
  return out;
}

/// The same of the linear model, exactly: matrix exponential of the model with the gust's own oscillator added,
///   x' = A x + b g,  g = U/2 (1 - c),  c' = -w s,  s' = w c;   behind the gust it runs on free.
std::vector<double> closed_form(const Aircraft& a, const Trim& trim, const Gust25& gust, double time_s,
                                double step_s, bool pitching = true) {
  LinearModel model = linearise(a, trim.state, AirSample<double>{});
  const Eigen::Index n = model.a.rows();
  const double h = 1e-3, w = 2.0 * M_PI / gust.length_s;
  Eigen::VectorXd b =
      (linear_state_rate(a, trim.state, air_of(h)) - linear_state_rate(a, trim.state, air_of(-h))) /
      (2.0 * h);
  if (!pitching) {
    model.a.row(kQ).setZero();
    model.a.row(kTheta).setZero();
    b(kQ) = b(kTheta) = 0.0;
  }
  Eigen::MatrixXd whole = Eigen::MatrixXd::Zero(n + 3, n + 3);  // x, 1, c, s
  whole.topLeftCorner(n, n) = model.a;
  whole.block(0, n, n, 1) = 0.5 * gust.peak_mps * b;
  whole.block(0, n + 1, n, 1) = -0.5 * gust.peak_mps * b;
  whole(n + 1, n + 2) = -w;
  whole(n + 2, n + 1) = w;
  const Eigen::MatrixXd step = (whole * step_s).exp();
  // Load factor by the same small motions.
  const auto load = [&](const Eigen::VectorXd& x, double up) {
    return load_factor(a, flight_state(trim.state, x), trim.controls, up);
  };
  const Eigen::VectorXd about = linear_state(trim.state);
  Eigen::VectorXd by_state(n);
  for (Eigen::Index k = 0; k < n; ++k) {
    const Eigen::VectorXd d = Eigen::VectorXd::Unit(n, k) * 1e-5;
    by_state(k) = (load(about + d, 0.0) - load(about - d, 0.0)) / 2e-5;
  }
  const double by_gust = (load(about, h) - load(about, -h)) / (2.0 * h);
  Eigen::VectorXd x = Eigen::VectorXd::Zero(n + 3);
  x(n) = x(n + 1) = 1.0;
  std::vector<double> out;
  for (double t = 0.0; t < time_s; t += step_s) {
    if (t > gust.length_s) x(n) = x(n + 1) = x(n + 2) = 0.0;
    out.push_back(by_state.dot(x.head(n)) + by_gust * gust.at(t));
    x = step * x;
  }
  return out;
}

double most(const std::vector<double>& v) { return *std::max_element(v.begin(), v.end()); }

}  // namespace

TEST_CASE("a small one-minus-cosine gust adds the load of the linear model's closed form",
          "[motion][published]") {
  const std::string type = GENERATE("marram", "sarsen", "tarnfell");
  const AircraftType t = type_named(type);
  const Aircraft a = make_aircraft(t, default_loading(t), 0);
  const Trim trim = level(a, t.limits.v_no_mps);
  REQUIRE(trim.converged);
  const Gust25 gust{0.2, 25.0 * a.wing_area_m2 / a.span_m / trim.true_airspeed_mps};
  const auto model = flown(a, trim, gust, 2.0, 0.0025), exact = closed_form(a, trim, gust, 2.0, 0.0025);
  double worst = 0.0;
  for (std::size_t i = 0; i < model.size(); ++i) worst = std::max(worst, std::abs(model[i] - exact[i]));
  const evidence::Published linear{
      "STEVENS_LEWIS", "linear model, matrix exponential with the gust's oscillator", "worked by hand"};
  evidence::hold(linear, type + ": greatest load factor added by a gust of 0.2 m/s over 25 chords",
                 most(model), most(exact), 0.005 * most(exact), "1",
                 "0.5 %: air is held over a step, and the flight is not linear");
  evidence::hold(linear, type + ": largest difference over 2 s, as a share of the greatest",
                 worst / most(exact), 0.0, 0.01, "1", "as above");
}

TEST_CASE(
    "held from pitching, each aeroplane takes the gust load of Pratt's formula, and free, it takes a fifth "
    "less",
    "[motion][published]") {
  const std::string type = GENERATE("marram", "sarsen", "tarnfell");
  const AircraftType t = type_named(type);
  const Aircraft a = make_aircraft(t, default_loading(t), 0), tunnel = in_tunnel(type);
  const Trim trim = level(a, t.limits.v_no_mps);
  REQUIRE(trim.converged);
  const double chord = a.wing_area_m2 / a.span_m, speed = trim.true_airspeed_mps;
  const Gust25 gust{0.2, 25.0 * chord / speed};
  const auto lift = [&](double alpha) { return reading(tunnel, risen_to(tunnel, alpha), alpha).lift; };
  const double slope = (lift(trim.alpha_rad + 0.02) - lift(trim.alpha_rad - 0.02)) / 0.04;
  // n - 1 = Kg rho V U a/(2 W/S),  Kg = 0.88 mu/(5.3 + mu),  mu = 2 (W/S)/(rho c a g): heave alone, with unsteady lift.
  const double loading = a.mass.mass_kg * kGravity / a.wing_area_m2;
  const double mu = 2.0 * loading / (1.225 * chord * slope * kGravity);
  const double formula = 0.88 * mu / (5.3 + mu) * 1.225 * speed * gust.peak_mps * slope / (2.0 * loading);
  const evidence::Published pratt{"CFR14-23", "23.341, gust load factor", "from memory"};
  evidence::hold(
      pratt, type + ": gust load over the formula's, held from pitching",
      most(closed_form(a, trim, gust, 2.0, 0.0025, false)) / formula, 1.0, 0.12, "1",
      "12 %: the gust meets all of the aeroplane at once, and the two count unsteady lift differently");
  evidence::show(pratt, type + ": gust load over the formula's, free",
                 most(flown(a, trim, gust, 2.0, 0.0025)) / formula, 1.0, "1",
                 "the formula knows heave alone; a stable aeroplane turns its nose into the gust");
}
