#pragma once

namespace stallwright::input {

/// Where the pointer puts the stick: the middle of the window is the trim, away from it the deflection grows, up is forward.
struct MouseStick {
  double aft = 0.0, right = 0.0;  ///< -1 .. 1
};

/// Pure.
///   x, y            pointer, px from the top left;  width, height  of the window, px (0: no deflection)
/// Full deflection at four fifths of the way to the window's upper or lower edge, the same distance sideways.
MouseStick mouse_stick(double x, double y, double width, double height);

}  // namespace stallwright::input
