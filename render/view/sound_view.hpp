#pragma once

namespace stallwright::view {

/// What can be heard, as of now. All loudness follows from these.
struct SoundView {
  double rpm = 0.0;
  int blades = 2;
  double power_share = 0.0;   ///< of full power
  double airspeed_mps = 0.0;  ///< true
  double slip_balls = 0.0;    ///< wind sounds rougher out of trim
  double buffet_g = 0.0;      ///< rms at the seat
  bool horn = false;          ///< the aeroplane's own stall warning
  bool tone = false;          ///< a taught unit's tone: must never be mistaken for the horn
  unsigned breaks = 0;        ///< counts up at each break: a thud
  unsigned records = 0;       ///< counts up as each record begins: two dry ticks
  bool silent = false;        ///< paused, or no flight
  double volume = 0.7;        ///< 0 .. 1, of everything
};

}  // namespace stallwright::view
