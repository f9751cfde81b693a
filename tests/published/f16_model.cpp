#include "tests/published/f16_model.hpp"

#include <cmath>

namespace stallwright::published {
namespace {

constexpr double kArea_ft2 = 300.0, kSpan_ft = 30.0, kChord_ft = 11.32, kTableXcg = 0.35;
constexpr double kEngine_slugft2ps = 160.0;

/// A body that follows these constants of the book in the axes named by the caller, per slug ft2.
Inertia<double> body(double mass_slug, const Mat3<double>& tensor_slugft2, const Mat3<double>& inverse) {
  Inertia<double> b{mass_slug * kSlug_kg, tensor_slugft2, inverse};
  for (double& x : b.tensor_kgm2.m) x *= kSlugFoot2_kgm2;
  for (double& x : b.inverse.m) x /= kSlugFoot2_kgm2;
  return b;
}

/// Angles in degrees and rates made non-dimensional, as the tables want them.
struct Flow {
  double speed_ftps, alpha, beta, p, q, r, elevator, aileron, rudder;
};

Flow flow_of(const F16State& s) {
  const Vec3<double>&v = s.rigid.velocity_B_mps, &w = s.rigid.rate_B_radps;
  const double speed_ftps = norm(v) / kFoot_m;
  const double by_span = kSpan_ft / (2.0 * speed_ftps), by_chord = kChord_ft / (2.0 * speed_ftps);
  return {speed_ftps,
          std::atan2(v.z, v.x) / kDegree,
          std::asin(v.y / norm(v)) / kDegree,
          w.x * by_span,
          w.y * by_chord,
          w.z * by_span,
          s.elevator_rad / kDegree,
          s.aileron_rad / kDegree,
          s.rudder_rad / kDegree};
}

/// Force and moment coefficients about the place the tables hold for, in body axes.
struct Coefficients {
  Vec3<double> force, moment;
};

Coefficients coefficients(const F16Tables& t, const Flow& f) {
  const double a = f.alpha, b = f.beta, side = b < 0.0 ? -1.0 : 1.0;
  const double aileron = f.aileron / 20.0, rudder = f.rudder / 30.0;
  Coefficients c;
  c.force.x = t.at("CX")(a, f.elevator) + t.at("CXq")(a) * f.q;
  c.force.y = -0.02 * b + 0.021 * aileron + 0.086 * rudder + t.at("CYr")(a) * f.r + t.at("CYp")(a) * f.p;
  c.force.z =
      t.at("CZ")(a) * (1.0 - (b / 57.3) * (b / 57.3)) - 0.19 * f.elevator / 25.0 + t.at("CZq")(a) * f.q;
  c.moment.x = side * t.at("Cl")(a, std::abs(b)) + t.at("dlda")(a, b) * aileron +
               t.at("dldr")(a, b) * rudder + t.at("Clr")(a) * f.r + t.at("Clp")(a) * f.p;
  c.moment.y = t.at("Cm")(a, f.elevator) + t.at("Cmq")(a) * f.q;
  c.moment.z = side * t.at("Cn")(a, std::abs(b)) + t.at("dnda")(a, b) * aileron +
               t.at("dndr")(a, b) * rudder + t.at("Cnr")(a) * f.r + t.at("Cnp")(a) * f.p;
  return c;
}

}  // namespace

F16Air book_air(double height_ft) {
  const double falling = 1.0 - 0.703e-5 * height_ft;
  return {2.377e-3 * std::pow(falling, 4.14), std::sqrt(1.4 * 1716.3 * 519.0 * falling)};
}

F16Air standard_air(double height_ft) {
  const AtmosphereState<double> at = atmosphere(Day{}, height_ft * kFoot_m);
  return {at.density_kgpm3 / (kSlug_kg / (kFoot_m * kFoot_m * kFoot_m)), at.speed_of_sound_mps / kFoot_m};
}

F16Inertia exact_inertia(double mass_slug) {
  const Mat3<double> tensor{{9496.0, 0.0, -982.0, 0.0, 55814.0, 0.0, -982.0, 0.0, 63100.0}};
  const Inertia<double> one = body(mass_slug, tensor, math::inverse(tensor));
  return {one, one};
}

F16Inertia book_inertia() {
  // p' = (c1 r + c2 p + c4 h) q + c3 L + c4 N     q' = (c5 p - c7 h) r - c6 (p^2 - r^2) + c7 M
  // r' = (c8 p - c2 r + c9 h) q + c4 L + c9 N     with h the engine's angular momentum [STEVENS_LEWIS]
  constexpr double c1 = -0.770, c2 = 0.02755, c3 = 1.055e-4, c4 = 1.642e-6, c5 = 0.9604, c6 = 1.759e-2,
                   c7 = 1.792e-5, c8 = -0.7336, c9 = 1.587e-5, mass_slug = 1.0 / 1.57e-3;
  const Mat3<double> inverse{{c3, 0.0, c4, 0.0, c7, 0.0, c4, 0.0, c9}};
  // In w x I w the roll and yaw rows hold Izz - Iyy with Ixz (times q r) and Iyy - Ixx with Izx (times p q), the
  // pitch row Izz - Ixx with Ixz: solved for what gives c1, c2, c8 and c5, c6. Iyy itself is free.
  constexpr double det = c3 * c9 - c4 * c4, iyy = 55814.0;
  const double zz_yy = -(c1 * c9 + c2 * c4) / det, xz = -(c1 * c4 + c2 * c3) / det;
  const double zx = (c8 * c4 - c2 * c9) / det, yy_xx = (c2 * c4 - c8 * c3) / det;
  const Mat3<double> roll_yaw{{iyy - yy_xx, 0.0, xz, 0.0, iyy, 0.0, zx, 0.0, iyy + zz_yy}};
  const Mat3<double> pitch{{iyy, 0.0, -c6 / c7, 0.0, iyy, 0.0, -c6 / c7, 0.0, iyy + c5 / c7}};
  return {body(mass_slug, roll_yaw, inverse), body(mass_slug, pitch, inverse)};
}

F16::Loads F16::loads(const State& s) const {
  const double height_ft = -s.rigid.position_E_m.z / kFoot_m;
  const F16Air here = air(height_ft);
  const Flow f = flow_of(s);
  Coefficients c = coefficients(tables, f);
  c.moment.y += c.force.z * (kTableXcg - xcg);
  c.moment.z -= c.force.y * (kTableXcg - xcg) * kChord_ft / kSpan_ft;
  const double scale_lbf = 0.5 * here.density_slugpft3 * f.speed_ftps * f.speed_ftps * kArea_ft2;
  return {c.force * scale_lbf,
          {scale_lbf * kSpan_ft * c.moment.x, scale_lbf * kChord_ft * c.moment.y,
           scale_lbf * kSpan_ft * c.moment.z},
          engine.thrust_lbf(s.power_pct, f.speed_ftps / here.sound_ftps, height_ft)};
}

F16State F16::rate(const State& s) const {
  const Loads l = loads(s);
  const Wrench<double> on{(l.force_lbf + Vec3<double>{l.thrust_lbf, 0.0, 0.0}) * kPound_n,
                          l.moment_ftlbf * (kPound_n * kFoot_m),
                          {kEngine_slugft2ps * kSlugFoot2_kgm2, 0.0, 0.0}};
  State d;
  d.rigid = rigid_rates(s.rigid, inertia.roll_yaw, on, gravity_ftps2 * kFoot_m);
  d.rigid.rate_B_radps.y = rigid_rates(s.rigid, inertia.pitch, on, gravity_ftps2 * kFoot_m).rate_B_radps.y;
  d.power_pct = F16Engine::power_rate_pctps(s.power_pct, F16Engine::commanded_pct(s.throttle));
  return d;
}

}  // namespace stallwright::published
