#pragma once
#include <array>
#include <string>
#include <vector>

#include "render/flight/snapshot.hpp"
#include "sim/sortie/card_speeds.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::view {

/// One band of the present point as a bar: what is allowed about the target, and where the value stands in it.
struct BandBar {
  const char* name = "";         ///< "speed", "height", "climb", "bank", "ball"
  double off = 0.0;              ///< value less target, in `unit`
  double low = 0.0, high = 0.0;  ///< allowed, about the target
  const char* unit = "";
  bool within = true;
};

/// What the coach strip says: the point, what to hold, how it goes.
struct CoachView {
  std::string point;  ///< "2 of 4: approach, flaps up"
  std::string phase;  ///< what is asked for now, in the fewest words: "Hold 53 kt, 3000 ft"
  std::string
      now;  ///< how it goes: "on condition: press record", "4 kt slow", "settling 3 s", "BREAK: stick forward"
  std::string guide;    ///< for the first flight: what hands do now; empty: guide off
  bool urgent = false;  ///< knock it off, or recover
  std::vector<BandBar> bars;
  double settled_share = 0.0, record_share = 0.0;
  bool recording = false, forced = false;
  bool may_record = false, may_clear = false,
       may_knock_off = false;  ///< what a press would do something with
  bool watched = false;        ///< the simulated pilot flies
  std::string refusal;
};

/// For whom the strip speaks.
struct Coached {
  bool by_hand = true;  ///< false: a demonstration is watched
  bool guide = false;   ///< write what hands do now, too
};

/// Keys as the guide names them, so that the view needs no input.
struct KeyNames {
  std::string record = "R", area_clear = "C", flaps_down = "F", flaps_up = "Shift+F", nose_up = "Down arrow",
              nose_down = "Up arrow", bank_left = "Left arrow", bank_right = "Right arrow",
              more_power = "Page Up", less_power = "Page Down", full_power = "Shift+I", no_power = "I",
              look_left = "1", look_right = "3", trim = "T", help = "H";
};

/// Into a view that is used again from frame to frame.
void coach_view(const Snapshot& snapshot, const TestCard& card, const AircraftType& type,
                const std::vector<PointSpeeds>& speeds, const KeyNames& keys, Coached coached,
                CoachView& view);

}  // namespace stallwright::view
