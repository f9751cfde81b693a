#pragma once
#include "sim/motion/rigid_body.hpp"

/// The earth of the check cases [NESC-2015], for bodies that fall at the equator, seen from axes fixed at the place where
/// the fall starts: north, east, down there, turning with the earth. In such axes a body moves as over a flat earth, with
/// gravitation, centrifugal and Coriolis force among the forces that act on it.
namespace stallwright::published {

struct FallingEarth {
  double radius_m, mu_m3ps2, j2, spin_radps;
};

/// Constants that reproduce the cases 1, 6 and 7: WGS-84, second zonal harmonic, rotation.
inline constexpr FallingEarth kWgs84{6378137.0, 3.986004418e14, 1.08262982e-3, 7.292115e-5};
/// Case 4: a sphere that does not turn.
inline constexpr FallingEarth kRound{20902255.199 * 0.3048, 3.986004418e14, 0.0, 0.0};

/// From the centre of the earth; the origin lies at sea level.
inline Vec3<double> from_centre(const FallingEarth& earth, const Vec3<double>& position_E_m) {
  return position_E_m - Vec3<double>{0.0, 0.0, earth.radius_m};
}

/// Height above the equator, m; exact there, where the ellipsoid is a circle.
inline double height_m(const FallingEarth& earth, const Vec3<double>& position_E_m) {
  return norm(from_centre(earth, position_E_m)) - earth.radius_m;
}

/// Down and east at a place on the equator.
struct LocalAxes {
  Vec3<double> east, down;
};
inline LocalAxes local_axes(const FallingEarth& earth, const Vec3<double>& position_E_m) {
  const Vec3<double> r = from_centre(earth, position_E_m);
  const Vec3<double> down = r * (-1.0 / norm(r));
  return {cross(down, Vec3<double>{1.0, 0.0, 0.0}), down};
}

/// Gravitation in the plane of the equator: mu/r^2 (1 + 3/2 J2 (a/r)^2), m/s2.
inline double gravitation(const FallingEarth& earth, double from_centre_m) {
  const double ratio = earth.radius_m / from_centre_m;
  return earth.mu_m3ps2 / (from_centre_m * from_centre_m) * (1.0 + 1.5 * earth.j2 * ratio * ratio);
}

/// Acceleration by gravitation and by the turning of the axes, -w x (w x r) - 2 w x v, m/s2, in the axes.
inline Vec3<double> apparent_acceleration(const FallingEarth& earth, const Vec3<double>& position_E_m,
                                          const Vec3<double>& velocity_E_mps) {
  const Vec3<double> r = from_centre(earth, position_E_m), spin{earth.spin_radps, 0.0, 0.0};
  return local_axes(earth, position_E_m).down * gravitation(earth, norm(r)) - cross(spin, cross(spin, r)) -
         cross(spin, velocity_E_mps) * 2.0;
}

/// Attitude against local north-east-down after the local axes have turned about north by an angle, eastward.
inline Quaternion<double> turned_about_north(const Quaternion<double>& q, double angle_rad) {
  const double c = math::cos(0.5 * angle_rad), s = -math::sin(0.5 * angle_rad);
  return {c * q.w - s * q.x, c * q.x + s * q.w, c * q.y - s * q.z, c * q.z + s * q.y};
}

}  // namespace stallwright::published
