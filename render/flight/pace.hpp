#pragma once

namespace stallwright {

/// Turns passing time into ticks at a chosen rate, and says honestly how fast simulated time goes. What a slow machine
/// cannot fly within a quarter of a second of being due is given up and shows as a lower rate: it is never lost silently.
class Pace {
 public:
  /// Ticks due after `elapsed_s` more of real time.
  ///   rate  simulated seconds a second, 0: paused
  int due(double elapsed_s, double rate);

  /// Ticks that were flown and the real time they took together; call once per look at the clock.
  void flown(int ticks, double elapsed_s);

  /// Simulated seconds a real one, over the last two seconds or so; a new rate is taken over at once.
  double achieved() const { return achieved_; }
  double given_up_s() const { return given_up_s_; }

 private:
  double owed_s_ = 0.0, given_up_s_ = 0.0, achieved_ = 1.0, rate_ = 1.0;
};

}  // namespace stallwright
