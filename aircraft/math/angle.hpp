#pragma once
#include <compare>

#include "aircraft/math/elementary.hpp"

/// Angles as types, so that degrees from a file cannot be taken for radians: the conversion must be written
/// out.
///   Rad(x) = Deg(x pi/180)
namespace stallwright {

class Deg;

/// An angle in radians.
class Rad {
 public:
  constexpr Rad() = default;
  constexpr explicit Rad(double value_rad) : value_(value_rad) {}
  constexpr explicit Rad(Deg angle);
  constexpr double value() const { return value_; }
  constexpr Rad operator-() const { return Rad(-value_); }
  friend constexpr Rad operator+(Rad a, Rad b) { return Rad(a.value_ + b.value_); }
  friend constexpr Rad operator-(Rad a, Rad b) { return Rad(a.value_ - b.value_); }
  friend constexpr Rad operator*(Rad a, double s) { return Rad(a.value_ * s); }
  friend constexpr auto operator<=>(Rad, Rad) = default;

 private:
  double value_ = 0.0;
};

/// An angle in degrees.
class Deg {
 public:
  constexpr Deg() = default;
  constexpr explicit Deg(double value_deg) : value_(value_deg) {}
  constexpr explicit Deg(Rad angle) : value_(angle.value() / math::kDegree) {}
  constexpr double value() const { return value_; }
  constexpr Deg operator-() const { return Deg(-value_); }
  friend constexpr Deg operator+(Deg a, Deg b) { return Deg(a.value_ + b.value_); }
  friend constexpr Deg operator-(Deg a, Deg b) { return Deg(a.value_ - b.value_); }
  friend constexpr Deg operator*(Deg a, double s) { return Deg(a.value_ * s); }
  friend constexpr auto operator<=>(Deg, Deg) = default;

 private:
  double value_ = 0.0;
};

constexpr Rad::Rad(Deg angle) : value_(angle.value() * math::kDegree) {}

}  // namespace stallwright
