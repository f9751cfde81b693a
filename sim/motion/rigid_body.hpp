#pragma once
#include "aircraft/math/vec3.hpp"

namespace stallwright {

using math::Mat3;
using math::Vec3;

/// Unit quaternion, scalar first: turns body axes into earth axes, v_E = R_EB(q) v_B.
template <class T>
struct Quaternion {
  T w{1}, x{}, y{}, z{};
  friend bool operator==(const Quaternion&, const Quaternion&) = default;
};

/// Position, attitude and their rates. Earth axes north-east-down, flat; body axes forward-right-down.
template <class T>
struct RigidState {
  Vec3<T> position_E_m;  ///< of the centre of gravity; z down, so altitude is -z
  Quaternion<T> attitude_EB;
  Vec3<T> velocity_B_mps;  ///< over the ground, in body axes
  Vec3<T> rate_B_radps;    ///< of the body against the earth

  friend bool operator==(const RigidState&, const RigidState&) = default;
};

/// Rotation matrix body to earth of a unit quaternion.
template <class T>
Mat3<T> rotation_EB(const Quaternion<T>& q) {
  const T xx = q.x * q.x, yy = q.y * q.y, zz = q.z * q.z;
  const T xy = q.x * q.y, xz = q.x * q.z, yz = q.y * q.z;
  const T wx = q.w * q.x, wy = q.w * q.y, wz = q.w * q.z;
  return {{T(1) - T(2) * (yy + zz), T(2) * (xy - wz), T(2) * (xz + wy),  //
           T(2) * (xy + wz), T(1) - T(2) * (xx + zz), T(2) * (yz - wx),  //
           T(2) * (xz - wy), T(2) * (yz + wx), T(1) - T(2) * (xx + yy)}};
}

/// Yaw, pitch, roll (z-y-x) of an attitude, rad; pitch within +-pi/2.
template <class T>
struct EulerAngles {
  T yaw_rad{}, pitch_rad{}, roll_rad{};
};

template <class T>
EulerAngles<T> euler_angles(const Quaternion<T>& q) {
  const Mat3<T> r = rotation_EB(q);
  const T sine = math::clamp(-r(2, 0), T(-1), T(1));
  return {math::atan2(r(1, 0), r(0, 0)), math::asin(sine), math::atan2(r(2, 1), r(2, 2))};
}

template <class T>
Quaternion<T> quaternion(const EulerAngles<T>& e) {
  T sy, cy, sp, cp, sr, cr;
  math::sincos(T(e.yaw_rad * T(0.5)), sy, cy);
  math::sincos(T(e.pitch_rad * T(0.5)), sp, cp);
  math::sincos(T(e.roll_rad * T(0.5)), sr, cr);
  return {cr * cp * cy + sr * sp * sy, sr * cp * cy - cr * sp * sy, cr * sp * cy + sr * cp * sy,
          cr * cp * sy - sr * sp * cy};
}

/// Back to unit length; RK4 lets it drift by about 1e-12 a step at the rates of an upset.
template <class T>
Quaternion<T> normalised(const Quaternion<T>& q) {
  const T scale = T(1) / math::sqrt(q.w * q.w + q.x * q.x + q.y * q.y + q.z * q.z);
  return {q.w * scale, q.x * scale, q.y * scale, q.z * scale};
}

/// What acts on a body, about its centre of gravity, in body axes.
template <class T>
struct Wrench {
  Vec3<T> force_B_n, moment_B_nm;
  Vec3<T> spin_B_nms;  ///< angular momentum of turning parts fixed in the body (propeller); zero if none
};

/// Inertia of a rigid body about its centre of gravity.
template <class T>
struct Inertia {
  T mass_kg{};
  Mat3<T> tensor_kgm2, inverse;
};

/// Newton and Euler in body axes, quaternion kinematics:
///   dr_E/dt = R_EB v,  dv/dt = F/m + R_BE g - w x v,  dq/dt = q (0, w)/2,
///   I dw/dt = M - w x (I w + h)
///   F, M  force and moment without weight;  g  gravity down, m/s2;  h  angular momentum of turning parts
/// [STEVENS_LEWIS eqs. 1.7-18, flat earth].
template <class T>
RigidState<T> rigid_rates(const RigidState<T>& s, const Inertia<T>& body, const Wrench<T>& on,
                          T gravity_mps2) {
  const Mat3<T> r = rotation_EB(s.attitude_EB);
  const Vec3<T>& w = s.rate_B_radps;
  const Quaternion<T>& q = s.attitude_EB;
  RigidState<T> d;
  d.position_E_m = r * s.velocity_B_mps;
  d.velocity_B_mps =
      on.force_B_n * (T(1) / body.mass_kg) + r.row(2) * gravity_mps2 - cross(w, s.velocity_B_mps);
  d.attitude_EB = {T(0.5) * (-q.x * w.x - q.y * w.y - q.z * w.z),
                   T(0.5) * (q.w * w.x + q.y * w.z - q.z * w.y), T(0.5) * (q.w * w.y + q.z * w.x - q.x * w.z),
                   T(0.5) * (q.w * w.z + q.x * w.y - q.y * w.x)};
  d.rate_B_radps = body.inverse * (on.moment_B_nm - cross(w, body.tensor_kgm2 * w + on.spin_B_nms));
  return d;
}

}  // namespace stallwright
