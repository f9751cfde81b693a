#pragma once
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/sortie/sortie.hpp"
#include "tests/sim/study/study_setup.hpp"

/// A person for tests: hands moved by the simulated pilot's loops, but coming in from outside, and buttons pressed as by
/// somebody who reads the coach.
namespace stallwright::by_hand_test {

inline SortieConfig config(const std::string& type) {
  SortieConfig c = study_test::sortie(type, "sharp", "standard");
  c.pilot = by_hand_grade();
  c.by_hand = true;
  return c;
}

class Person {
 public:
  explicit Person(const AircraftType& type) : type_(type) {}

  /// Hands for the next tick, from what the last one showed.
  Hands next(const Sortie& sortie) {
    if (sortie.time_s() == 0.0) return sortie.first_hands();
    const TickSeen& seen = sortie.seen();
    CrewTask task = seen.asked;
    const Marks& marks = sortie.director().marks();
    const Standing now = sortie.director().standing(sortie.time_s(), seen.readings);
    if (marks.phase == Phase::clearing) {
      task.turning = true;
      task.bank_rad = (now.turned_out ? 25.0 : -25.0) * math::kDegree;
    }
    const Controls<double> c = sortie.pilot().step(state_, task, seen.readings, sortie.time_s());
    Hands hands{c.stick_aft, c.stick_right, c.pedal_right, c.throttle, notch(c.flap_rad), false, {}};
    const bool before = marks.phase == Phase::settle || marks.phase == Phase::transit;
    hands.presses.record = before && now.settled_share >= 1.0;
    return as_recorded(hands);
  }

 private:
  std::size_t notch(double flap_rad) const {
    std::size_t best = 0;
    const auto off = [&](std::size_t k) { return std::abs(type_.flaps[k].deflection_rad - flap_rad); };
    for (std::size_t k = 0; k < type_.flaps.size(); ++k)
      if (off(k) < off(best)) best = k;
    return best;
  }

  AircraftType type_;
  PilotState state_;
};

}  // namespace stallwright::by_hand_test
