#pragma once
#include "aircraft/aircraft_type.hpp"
#include "aircraft/math/vec3.hpp"

/// Pressure-type angle-of-attack probe: a round nose with two ports, one above and one below its axis.
///
///   Cp = 1 - (9/4) sin^2 psi                              on a sphere, psi from the stagnation point
///   [SPHERE-FLOW] p_lower - p_upper = qbar (9/4) sin(2 theta) sin(2 alpha_P) cos^2(beta_P)
///                     = (rho/2) (9/4) 2 sin(2 theta) v_x v_z        the same, in components along the
///                     probe's axes
///     theta    each port off the axis, in the probe's vertical plane, rad;  qbar = rho V^2/2, Pa;  rho,
///     kg/m3 alpha_P  atan2(v_z, v_x), beta_P = asin(v_y/V): angles of the flow to the probe axis, rad v
///     velocity of the probe through the air there, m/s (wing upwash and rotation included by the caller)
///
/// Mounting: the probe axis is body x turned nose down by mount_rad, so it points below body x and looks into
/// air that comes from below: alpha_P = alpha_local - mount. With 8 deg the probe reads zero in the middle of
/// the useful range, less in fast flight and more near the stall. More angle of attack always gives more
/// pressure, up to alpha_P = 45 deg, where sin(2 alpha_P) turns.
///
/// Valid while both ports lie ahead of the separation line of the nose (about 80 deg from the stagnation
/// point, so |alpha_P| to about 35 deg with ports at 45 deg); past it the formula goes on, bounded. Flow from
/// behind gives the wrong sign. Compressibility (M^2/4, 0.8 % at 60 m/s) is left out: as large as a good
/// probe's scale error. Over a light aeroplane's speeds the difference over qbar depends on neither density
/// nor speed, and on sideslip only through the common factor cos^2(beta_P).
namespace stallwright {

using math::Vec3;

/// Pressure coefficient of a sphere at an angle from its stagnation point, potential flow.
template <class T>
T sphere_pressure_coefficient(const T& psi_rad) {
  const T s = math::sin(psi_rad);
  return T(1.0) - T(2.25) * s * s;
}

/// Body components in the probe's axes: x along its axis, y right, z down.
template <class T>
Vec3<T> probe_axes(const Vec3<T>& v_B, const T& mount_rad) {
  const T s = math::sin(mount_rad), c = math::cos(mount_rad);
  return {c * v_B.x + s * v_B.z, v_B.y, c * v_B.z - s * v_B.x};
}

/// Lower less upper port, Pa, from the velocity along the probe's axes, m/s.
template <class T>
T port_pressure_difference(const Vec3<T>& v_P, double port_angle_rad, const T& density_kgpm3) {
  const double factor = 2.25 * math::sin(2.0 * port_angle_rad);  // (1/2) (9/4) 2 sin(2 theta)
  return density_kgpm3 * T(factor) * (v_P.x * v_P.z);
}

/// Static response of the installed probe, Pa: no lag, no offset.
///   velocity_B_mps  of the probe through the air (probe_velocity of aircraft/airframe.hpp);
///   mount_error_rad how much further below body x the axis points than the type file says
template <class T>
T static_probe_pressure(const ProbeType& probe, const Vec3<T>& velocity_B_mps, const T& density_kgpm3,
                        const T& mount_error_rad) {
  return port_pressure_difference(probe_axes(velocity_B_mps, T(T(probe.mount_rad) + mount_error_rad)),
                                  probe.port_angle_rad, density_kgpm3);
}

template <class T>
T static_probe_pressure(const ProbeType& probe, const Vec3<T>& velocity_B_mps, const T& density_kgpm3) {
  return static_probe_pressure(probe, velocity_B_mps, density_kgpm3, T(0.0));
}

}  // namespace stallwright
