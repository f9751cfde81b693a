#pragma once

namespace stallwright::input {

/// From what a device reports to what a hand means. Raw values are SDL's, -32768 .. 32767.
struct AxisShape {
  int low = -32768, centre = 0, high = 32767;  ///< calibration: ends of travel, and where it rests
  bool inverted = false;
  double dead_zone = 0.03;  ///< share of the travel from the centre that counts as centre, 0 .. 0.5
  double curve = 0.2;       ///< 0: straight; 1: cubic, fine about the centre

  friend bool operator==(const AxisShape&, const AxisShape&) = default;
};

/// -1 .. 1, straight from each end to the centre, the inversion applied; 0 where the calibration has no width on that side.
double calibrated(int raw, const AxisShape& shape);

/// 0 inside the dead zone, from there straight to 1 at the end: no step at its edge.
double with_dead_zone(double value, double dead_zone);

/// (1 - curve) x + curve x^3: the ends stay, the middle softens.
double curved(double value, double curve);

/// All three: what a stick or pedal axis asks for, -1 .. 1.
double shaped(int raw, const AxisShape& shape);

/// The same for a lever: 0 .. 1 from one end to the other (the centre plays no part); the dead zone lies at both ends, so
/// that idle and full are surely reached.
double lever(int raw, const AxisShape& shape);

/// Where the stick stands when it is deflected about the trimmed place: 0 the trim, -1 and 1 the stops.
double about_trim(double trim, double deflection);

}  // namespace stallwright::input
