#pragma once
#include "aircraft/mass_properties.hpp"
#include "aircraft/math/vec3.hpp"

namespace stallwright {

using math::Vec3;

/// What shakes the pilot: the acceleration at the seat without what changes slowly, through an airframe that is elastic.
///   a_seat = a_cg + dw/dt x r + w x (w x r)                     rigid-body kinematics
///   r  from the centre of gravity to the pilot's head, body axes, m
/// A second-order high-pass at 3 Hz leaves the shake (buffet lies at 2 to 15 Hz, sim/air/wake_shake.hpp). The flight is that of
/// a rigid aeroplane; between wing and seat stands one elastic mode, the first bending of the wing, as the
/// response of an oscillator to its forcing (vibration textbooks):
///   x'' + 2 zeta w1 x' + w1^2 x = w1^2 a   in the shake itself;  w1 = 2 pi 8 Hz,  zeta = 0.06
/// Light aeroplanes have 6 to 12 Hz and 0.03 to 0.08 there (from memory). It feeds the pilot's senses alone; instruments
/// and recorder do not see it. The vertical part squared and averaged over half a second is the buffet in g rms.
struct SeatFeel {
  struct Axis {
    double low = 0.0, lower = 0.0;       ///< the two low-passes of the high-pass
    double mode = 0.0, mode_rate = 0.0;  ///< the elastic mode
  };
  Axis forward, right, down;
  Vec3<double> shake_mps2;
  double mean_square = 0.0;
  bool started = false;
  double buffet_g() const;
};

/// How much of the shake is buffet, 0 .. 1, where the rest is bumps of the air: the shake alone does not tell, and a pilot who
/// is told "buffet" in rough air learns the wrong thing.
///   separated  mean share of the wing's flow that has let go. Tuned: over the short card in calm and in moderate air it stays
///              below 0.01 short of the stall and passes 0.05 where the buffet begins, in each of our aeroplanes
double buffet_share(double separated);

/// From the centre of gravity to the eyes of whoever sits at the first station, body axes, m.
Vec3<double> head_place(const AircraftType& type, const Loading& loading);

/// Acceleration at r: see above.
Vec3<double> acceleration_at(const Vec3<double>& cg_mps2, const Vec3<double>& rate_radps,
                             const Vec3<double>& angular_mps2, const Vec3<double>& arm_m);

/// One sample later; pure. Stable for dt_s up to 0.02.
SeatFeel advance(const SeatFeel& before, const Vec3<double>& at_seat_mps2, double dt_s);

}  // namespace stallwright
