#pragma once

namespace stallwright::input {

/// A stick or pedal moved by two keys: it leaves its place slowly and gains speed as the key stays down, so that taps make
/// small corrections and a held key reaches the stop; let go, it springs back.
struct KeyAxisFeel {
  double slow_ps, fast_ps;  ///< rate at first, and after grow_s; share of the travel per second
  double grow_s;
  double spring_s;  ///< time constant of the way back
};

inline constexpr KeyAxisFeel kPitchKeys{0.25, 1.5, 1.0, 0.20};
inline constexpr KeyAxisFeel kRollKeys{0.5, 2.5, 0.7, 0.12};
inline constexpr KeyAxisFeel kPedalKeys{0.5, 2.0, 0.7, 0.20};

struct KeyAxis {
  double deflection = 0.0;  ///< -1 .. 1
  double held_s = 0.0;
  int direction = 0;
};

/// dt_s later, with the keys asking for `direction` -1, 0 or 1. A key against the deflection first takes that back quickly.
KeyAxis advance(KeyAxis axis, int direction, double dt_s, const KeyAxisFeel& feel);

/// A lever or wheel moved by two keys: stays where it is left. Each press moves it by one fine step; held, it runs, faster
/// and faster.
struct KeyLeverFeel {
  double step;
  double slow_ps, fast_ps, grow_s;
  double low, high;
};

inline constexpr KeyLeverFeel kPowerKeys{0.01, 0.10, 0.60, 1.2, 0.0, 1.0};
inline constexpr KeyLeverFeel kTrimKeys{0.004, 0.03, 0.25, 1.2, -1.0, 1.0};
inline constexpr double kKeyRuns_s = 0.25;  ///< a shorter press is one step

struct KeyLever {
  double value = 0.0;
  double held_s = 0.0;
  int direction = 0;
};

KeyLever advance(KeyLever lever, int direction, double dt_s, const KeyLeverFeel& feel);

}  // namespace stallwright::input
