#include "tests/published/derivative_model.hpp"

#include <cmath>

#include "tests/published/csv_rows.hpp"

namespace stallwright::published {
namespace {

constexpr double kFoot_m = 0.3048, kPound_n = 4.4482216152605;
constexpr double kSlug_kg = kPound_n / kFoot_m, kSlugFoot2_kgm2 = kSlug_kg * kFoot_m * kFoot_m;

/// About the centre of gravity, in the axes of the derivatives [NELSON-1998].
Inertia<double> inertia(const DerivativeModel& model) {
  const double xx = model.d["Ixx"], yy = model.d["Iyy"], zz = model.d["Izz"], xz = model.d["Ixz"];
  Inertia<double> body;
  body.mass_kg = model.mass_slug() * kSlug_kg;
  body.tensor_kgm2 = {{xx, 0.0, -xz, 0.0, yy, 0.0, -xz, 0.0, zz}};
  for (double& x : body.tensor_kgm2.m) x *= kSlugFoot2_kgm2;
  body.inverse = math::inverse(body.tensor_kgm2);
  return body;
}

}  // namespace

Derivatives::Derivatives(const std::string& file) {
  for (const auto& row : csv_cells(file)) values_[row.at(0)] = csv_number(row.at(1));
}

double Derivatives::operator[](const std::string& name) const {
  const auto found = values_.find(name);
  return found == values_.end() ? 0.0 : found->second;
}

double DerivativeModel::gravity_mps2(double) const { return gravity_ftps2 * kFoot_m; }

DerivativeState DerivativeModel::reference() const {
  State s;
  s.rigid.velocity_B_mps.x = reference_ftps * kFoot_m;
  return s;
}

Wrench<double> DerivativeModel::wrench(const State& s, double alpha_rate_radps) const {
  const Vec3<double> v = s.rigid.velocity_B_mps / kFoot_m;
  const double speed = norm(v), alpha = std::atan2(v.z, v.x), beta = std::asin(v.y / speed);
  const double scale = 0.5 * density_slugpft3 * speed * speed * d["S"];
  const double chords = d["c"] / (2.0 * speed), spans = d["b"] / (2.0 * speed);
  const double p = s.rigid.rate_B_radps.x * spans, q = s.rigid.rate_B_radps.y * chords,
               r = s.rigid.rate_B_radps.z * spans, adot = alpha_rate_radps * chords;
  const double de = s.elevator_rad, da = s.aileron_rad, dr = s.rudder_rad;
  const double lift = d["CL0"] + d["CLa"] * alpha + d["CLq"] * q + d["CLadot"] * adot + d["CLde"] * de;
  const double drag = d["CD0"] + d["CDa"] * alpha;
  const double thrust = s.throttle * reference_thrust_lbf * std::pow(speed / reference_ftps, thrust_power);
  const auto across = [&](const std::string& c) {
    return d[c + "b"] * beta + d[c + "p"] * p + d[c + "r"] * r + d[c + "da"] * da + d[c + "dr"] * dr;
  };
  const double pitch = d["Cm0"] + d["Cma"] * alpha + d["Cmq"] * q + d["Cmadot"] * adot + d["Cmde"] * de;
  const Vec3<double> force{scale * (lift * std::sin(alpha) - drag * std::cos(alpha)) + thrust,
                           scale * across("CY"), -scale * (lift * std::cos(alpha) + drag * std::sin(alpha))};
  const Vec3<double> moment{scale * d["b"] * across("Cl"), scale * d["c"] * pitch,
                            scale * d["b"] * across("Cn")};
  return {force * kPound_n, moment * (kPound_n * kFoot_m), {}};
}

DerivativeState DerivativeModel::rate(const State& s) const {
  const Inertia<double> body = inertia(*this);
  const Vec3<double>& v = s.rigid.velocity_B_mps;
  State out;
  // The force asks for the rate of the angle of attack, which asks for the force: a hundredth smaller every round.
  double alpha_rate = 0.0;
  for (int round = 0; round < 10; ++round) {
    out.rigid = rigid_rates(s.rigid, body, wrench(s, alpha_rate), gravity_mps2(0.0));
    const Vec3<double>& a = out.rigid.velocity_B_mps;
    alpha_rate = (v.x * a.z - v.z * a.x) / (v.x * v.x + v.z * v.z);
  }
  return out;
}

}  // namespace stallwright::published
