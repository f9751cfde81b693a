#pragma once
#include <memory>
#include <string>

#include "render/flight/flight.hpp"

namespace stallwright {

/// The two newest snapshots and how far the present lies from one to the other, 0 .. 1: what is drawn is between them.
struct Seen {
  Snapshot before, now;
  double share = 1.0;
  double achieved_rate = 1.0, wanted_rate = 1.0;  ///< simulated seconds a second
  double given_up_s = 0.0;                        ///< time that the machine was too slow to fly
  bool paused = false, over = false;
  std::string trouble;
};

/// What flies a Flight: beside the frames in real time, or in step with them.
class Drive {
 public:
  virtual ~Drive() = default;
  /// Where the hands are now; presses are kept until a tick has had them.
  virtual void hands(const Hands& hands) = 0;
  virtual void rate(double simulated_per_real) = 0;
  virtual void pause(bool paused) = 0;
  /// A frame of so long has passed.
  virtual void frame(double dt_s) = 0;
  /// Into a Seen that is used again, so that nothing is allocated in steady flight.
  virtual void look(Seen& seen) = 0;
  /// Ends the flight, if it has not ended. Then flight() may be used.
  virtual void finish() = 0;
  virtual Flight& flight() = 0;
};

/// In step with the frames, within frame(): the same frames give the same flight.
std::unique_ptr<Drive> stepped_drive(std::unique_ptr<Flight> flight);
/// On a thread of its own, at 100 steps a second whatever the screen does.
std::unique_ptr<Drive> threaded_drive(std::unique_ptr<Flight> flight);

/// What was pressed in either.
Presses both(const Presses& a, const Presses& b);

}  // namespace stallwright
