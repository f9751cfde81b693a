#pragma once
#include "sim/motion/flight.hpp"

namespace stallwright {

/// The same handling in air without gusts: what makes the air's part of an error visible on one flight.
///
/// While a point is recorded, a second aeroplane flies beside the real one. It begins with the same state, and with the
/// same speed through the air around it; from then on it is given the real one's attitude, rates, height and controls at
/// every step, while its speed through the air, and all that its airframe remembers, go their own way without gusts.
/// The wind and the shaking of the wake stay. So a gust that the aeroplane rides slowly is no difference (air that moves
/// as one is no gust), a bump is one, and what the pilot's hands make of the air stays in.
/// Without gusts it is the real aeroplane, to the last bit.
class SmoothTwin {
 public:
  /// Begins beside an aeroplane that flies in this air.
  void begin(const FlightState<double>& real, const AirSample<double>& air);
  void end() { flying_ = false; }
  bool flying() const { return flying_; }

  const FlightState<double>& state() const { return state_; }

  /// The air that it flies in: `air` without its gusts.
  static AirSample<double> without_gusts(AirSample<double> air);

  /// One step; `real_after` is where the real aeroplane has come to with the same controls.
  void step(const Aircraft& aircraft, const Controls<double>& controls, const AirSample<double>& air,
            const FlightState<double>& real_after);

 private:
  FlightState<double> state_;
  bool flying_ = false;
};

}  // namespace stallwright
