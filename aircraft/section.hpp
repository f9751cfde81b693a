#pragma once
#include "aircraft/aircraft_type.hpp"
#include "aircraft/math/elementary.hpp"

namespace stallwright {

/// What the deflected flap, aileron, elevator or rudder on a strip does to its section.
template <class T>
struct SectionShift {
  T zero_lift_rad{0};  ///< added to the angle of zero lift
  T stall_rad{0};      ///< added to the stall angle alpha*
  T drag{0};           ///< added to cd
  T moment{0};         ///< added to c_m
};

/// Two-dimensional force coefficients, lift and drag across and along the local flow, c_m about the quarter chord.
template <class T>
struct SectionCoefficients {
  T lift, drag, moment, normal;
};

/// e^((alpha-* - alpha*)/width), how far apart the two stalls of a section lie: a constant of the section.
inline double separation_gap(const SectionType& section) {
  return math::exp((section.negative_stall_rad - section.stall_rad) / section.stall_width_rad);
}

/// (alpha - alpha*)/width; the bound keeps its exponential and the square of it finite.
///   per_width  1/width
template <class T>
T separation_exponent(const SectionType& section, double per_width, T alpha, T stall_shift) {
  return math::clamp((alpha - section.stall_rad - stall_shift) * per_width, T(-300), T(300));
}

/// 1/(1 + e + gap/e) of e = e^((alpha - alpha*)/width), without a second exponential for the lower side.
template <class T>
T attached_share(T e, double gap) {
  return e / (e + e * e + gap);
}

/// Quasi-static separation point, share of the chord attached, 0 to 1.
///   x0 = 1/(1 + exp((alpha - alpha*)/width) + exp((alpha-* - alpha)/width)), alpha* and alpha-* the stall angles of the
///   upper and the lower side
///   alpha   angle of attack that the boundary layer has seen (lagged), rad, any
/// Its upper side is the hyperbolic tangent of Jategaonkar's stall model with a1 = 1/(2 width)   [JATEGAONKAR].
template <class T>
T static_separation(const SectionType& section, T alpha, T stall_shift) {
  const T exponent = separation_exponent(section, 1.0 / section.stall_width_rad, alpha, stall_shift);
  return attached_share(math::exp_within(exponent), separation_gap(section));
}

/// Share of flat-plate behaviour: 0 below 20 deg from zero lift, 1 beyond 45 deg and in reversed flow.
template <class T>
T flat_plate_share(T sine, T cosine) {
  constexpr double kSin2Begin = 0.116977778440511;  // sin^2 20 deg
  constexpr double kSin2End = 0.5;                  // sin^2 45 deg
  constexpr double kPerSin2 = 1.0 / (kSin2End - kSin2Begin);
  const T t = math::clamp((sine * sine - kSin2Begin) * kPerSin2, T(0), T(1));
  const T smooth = t * t * (T(3) - T(2) * t);
  return math::where(cosine > T(0), smooth, T(1));
}

/// Angle of attack from zero lift, a' = alpha - alpha0 fade, alpha0 fading out towards 90 deg.
template <class T>
struct SectionAngle {
  T sine, cosine;  ///< of a'
  T fade;
};
/// From the sine and cosine of alpha. alpha0 counts up to 45 deg either way, more than flap and control together bring.
template <class T>
SectionAngle<T> section_angle(T sine_alpha, T cosine_alpha, T zero_lift) {
  const T forward = T(1) - math::max(cosine_alpha, T(0));
  SectionAngle<T> out;
  out.fade = T(1) - forward * forward;
  T sine, cosine;
  math::sincos_within_45(math::clamp(zero_lift * out.fade, T(-0.25 * math::kPi), T(0.25 * math::kPi)), sine,
                         cosine);
  out.sine = sine_alpha * cosine - cosine_alpha * sine;
  out.cosine = cosine_alpha * cosine + sine_alpha * sine;
  return out;
}

/// sqrt x, of a separation point that integration may have taken a little past its ends.
template <class T>
T root_attached(T x) {
  return math::sqrt(math::clamp(x, T(0), T(1)));
}

template <class T>
SectionCoefficients<T> section_coefficients(const SectionType& section, const SectionAngle<T>& angle, T x,
                                            T root_x, const SectionShift<T>& shift);

/// Section coefficients at any angle of attack, -180 to 180 deg.
///   Kirchhoff flow:  c_l = a0 ((1 + sqrt x)/2)^2 sin a' cos a'            [GOMAN_KHRABROV]
///                    c_d = c_d0 + k (c_l - c_l0)^2 + a0 [((1 + sqrt x)/2)^2 - eta] sin^2 a'
///                    suction left on the leading edge, eta = x^(3/2) (3 - 2 sqrt x)
///                    arm of c_n behind the leading edge (5 + 5x - 6 sqrt x)/16   [GOMAN_KHRABROV]
///   flat plate:      c_n = c_n90 sin a',  c_l = c_n cos a',  c_d = c_n sin a'    [SAND80]
///   a' = alpha - alpha0,  alpha0 fading out towards 90 deg;  x separation point (a state), 0..1.
/// The pressure drag follows from the same flow: normal force c_n = a0 ((1 + sqrt x)/2)^2 sin a' less the
/// leading-edge suction a0 eta sin^2 a', so attached flow has none and separated flow that of a plate.
/// Free-streamline theory has eta = sqrt x. A real nose keeps that while separation is far back and loses it sooner than
/// that as separation comes near, where its suction peak bursts: eta leaves attached flow as sqrt x does (same slope
/// at x = 1) and was chosen by what the tunnel keeps of the NACA 0012, 0.87 to 0.91 at x = 0.83 just before the break and
/// 0.14 to 0.25 for x from 0.22 to 0.36 just past it [LADSON-1988]; the NACA 0015 is foretold with it [SAND80].
/// Between 20 and 45 deg the two are blended (flat_plate_share).
template <class T>
SectionCoefficients<T> section_coefficients(const SectionType& section, T alpha, T x,
                                            const SectionShift<T>& shift) {
  T sine, cosine;
  math::sincos(alpha, sine, cosine);
  return section_coefficients(section,
                              section_angle(sine, cosine, T(section.zero_lift_rad + shift.zero_lift_rad)), x,
                              root_attached(x), shift);
}

/// The same from the angle's sine and cosine, and from root_attached(x).
template <class T>
SectionCoefficients<T> section_coefficients(const SectionType& section, const SectionAngle<T>& angle, T x,
                                            T root_x, const SectionShift<T>& shift) {
  const T s = angle.sine, c = angle.cosine, fade = angle.fade;
  const T kirchhoff = (T(1) + root_x) * T(0.5);
  const T suction = root_x * root_x * root_x * (T(3) - T(2) * root_x);
  const T plate = flat_plate_share(s, c);
  const double a0 = section.lift_slope_per_rad;
  const double plate_force = section.flat_plate_normal_force;

  const T lift_factor = (T(1) - plate) * a0 * kirchhoff * kirchhoff + plate * plate_force;
  const T drag_factor = (T(1) - plate) * a0 * (kirchhoff * kirchhoff - suction) + plate * plate_force;
  const T arm_kirchhoff = (T(5) + T(5) * x - T(6) * root_x) / T(16);
  const T arm_plate = T(0.5) - T(0.25) * c;
  const T arm = (T(1) - plate) * arm_kirchhoff + plate * arm_plate;

  SectionCoefficients<T> out;
  out.lift = lift_factor * s * c;
  out.normal = lift_factor * s;
  const T off_design = math::clamp(out.lift - section.cl_min_drag, T(-2), T(2));
  out.drag =
      section.profile_drag + shift.drag + section.drag_rise * off_design * off_design + drag_factor * s * s;
  out.moment = (section.moment + shift.moment) * root_x * fade - out.normal * (arm - T(0.25));
  return out;
}

}  // namespace stallwright
