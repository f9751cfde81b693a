#pragma once
#include <cmath>
#include <cstddef>

namespace stallwright {

/// What a person asked of the card since the tick before. True for one tick.
struct Presses {
  bool record = false;         ///< begin the record, if on condition
  bool record_anyway = false;  ///< begin it off condition: the record is flagged as forced
  bool area_clear = false;     ///< has looked around: ends the clearing turns
  bool knock_it_off = false;   ///< break the attempt off
  friend bool operator==(const Presses&, const Presses&) = default;
};

/// A person's hands and feet for one tick.
struct Hands {
  double stick_aft = 0.0, stick_right = 0.0, pedal_right = 0.0;  ///< -1 .. 1
  double throttle = 0.0;                                         ///< 0 .. 1
  std::size_t flap_setting = 0;                                  ///< index in the type's list
  bool feet_assisted = false;  ///< no pedals: the program keeps the ball in the middle
  Presses presses;
  friend bool operator==(const Hands&, const Hands&) = default;
};

/// The hands as the file of hands keeps them: within their stops, in steps of 1/10000 (a stick's converter has no more). The
/// flight is flown with these, so that the file flies it again to the last bit. What is not a number counts as 0.
inline Hands as_recorded(Hands hands) {
  const auto stepped = [](double value, double low) {
    if (!std::isfinite(value)) return 0.0;
    const double within = value < low ? low : value > 1.0 ? 1.0 : value;
    return std::round(within * 10000.0) / 10000.0 + 0.0;  // no negative zero
  };
  hands.stick_aft = stepped(hands.stick_aft, -1.0);
  hands.stick_right = stepped(hands.stick_right, -1.0);
  hands.pedal_right = stepped(hands.pedal_right, -1.0);
  hands.throttle = stepped(hands.throttle, 0.0);
  return hands;
}

}  // namespace stallwright
