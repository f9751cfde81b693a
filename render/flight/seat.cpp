#include "render/flight/seat.hpp"

#include <algorithm>
#include <cmath>

#include "sim/motion/flight.hpp"

namespace stallwright {
namespace {

constexpr double kCorner_radps = 2.0 * math::kPi * 3.0;
constexpr double kMode_radps = 2.0 * math::kPi * 8.0, kDamping = 0.06;
constexpr double kEyesAboveSeat_m = 0.72;  ///< of a seated adult (from memory)
constexpr double kMean_s = 0.5;
constexpr int kParts = 10;  ///< of a sample, for the mode: its period is six samples only

/// The shake along one axis, one sample later.
double shaken(SeatFeel::Axis& axis, double a, double dt_s) {
  const double follow = 1.0 - std::exp(-kCorner_radps * dt_s);
  axis.low += follow * (a - axis.low);
  const double once = a - axis.low;
  axis.lower += follow * (once - axis.lower);
  const double base = once - axis.lower;
  // Semi-implicit Euler in small parts, the base held over the sample.
  for (int k = 0; k < kParts; ++k) {
    const double h = dt_s / kParts;
    axis.mode_rate +=
        h * (kMode_radps * kMode_radps * (base - axis.mode) - 2.0 * kDamping * kMode_radps * axis.mode_rate);
    axis.mode += h * axis.mode_rate;
  }
  return axis.mode;
}

}  // namespace

double SeatFeel::buffet_g() const { return std::sqrt(mean_square) / kStandardGravity_mps2; }

double buffet_share(double separated) {
  constexpr double kNone = 0.01, kAll = 0.05;
  return std::clamp((separated - kNone) / (kAll - kNone), 0.0, 1.0);
}

Vec3<double> head_place(const AircraftType& type, const Loading& loading) {
  const Station3 cg = mass_properties(type, loading).cg;
  const Station3& seat = type.mass.stations.front().at;
  return {cg.x_aft_m - seat.x_aft_m, seat.y_right_m - cg.y_right_m,
          cg.z_up_m - (seat.z_up_m + kEyesAboveSeat_m)};
}

Vec3<double> acceleration_at(const Vec3<double>& cg, const Vec3<double>& rate, const Vec3<double>& angular,
                             const Vec3<double>& arm) {
  return cg + cross(angular, arm) + cross(rate, cross(rate, arm));
}

SeatFeel advance(const SeatFeel& before, const Vec3<double>& at_seat, double dt_s) {
  SeatFeel next = before;
  if (!before.started) {
    next.forward.low = at_seat.x;
    next.right.low = at_seat.y;
    next.down.low = at_seat.z;
    next.started = true;
    return next;
  }
  next.shake_mps2 = {shaken(next.forward, at_seat.x, dt_s), shaken(next.right, at_seat.y, dt_s),
                     shaken(next.down, at_seat.z, dt_s)};
  const double mix = 1.0 - std::exp(-dt_s / kMean_s);
  next.mean_square += mix * (next.shake_mps2.z * next.shake_mps2.z - before.mean_square);
  return next;
}

}  // namespace stallwright
