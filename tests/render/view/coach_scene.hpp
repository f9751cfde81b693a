#pragma once
#include <catch2/catch.hpp>
#include <string>

#include "aircraft/math/units.hpp"
#include "aircraft/type_file.hpp"
#include "render/view/coach_view.hpp"
#include "sim/motion/flight.hpp"
#include "sim/sortie/test_card_file.hpp"

/// A flight made up for the coach: where the card stands, and readings that are exactly as asked until a test spoils one.
namespace stallwright::coach_test {

struct Coached {
  AircraftType type = load_aircraft_type(find_aircraft_file("marram"));
  TestCard card;
  std::vector<PointSpeeds> speeds;
  Snapshot now;
  view::CoachView view;

  explicit Coached(const std::string& name) : card(load_test_card(find_card_file(name))) {
    for (const TestPoint& point : card.points)
      speeds.push_back(point_speeds(point, type, type.mass.reference_kg));
  }
  const TestPoint& point() const { return card.points[static_cast<std::size_t>(now.marks.point - 1)]; }
  const PointSpeeds& speed() const { return speeds[static_cast<std::size_t>(now.marks.point - 1)]; }

  /// Point from 1; on its speed, height and rate of descent, wings level, its flaps down.
  void at(int number, Phase phase) {
    now = {};
    now.marks.point = number;
    now.marks.repeat = now.marks.attempt = 1;
    now.marks.phase = phase;
    now.marks.recording = phase == Phase::record || phase == Phase::slow;
    fly_kt(speed().set_up_kt());
    now.readings.indicated_altitude_m = (card.terrain_ft + card.working_height_ft) * kFoot;
    if (point().power == PowerRule::descent)
      now.readings.vertical_speed_mps = -point().descent_fpm * kFootPerMinute;
    now.readings.throttle = point().power == PowerRule::idle ? 0.0 : 0.5;
    now.readings.flap_rad = type.flaps[point().flap_setting].deflection_rad;
    now.asked.speed_mps = speed().set_up_kt() * kKnot;
  }
  void fly_kt(double kt) { now.readings.indicated_airspeed_mps = kt * kKnot; }
  void bank_deg(double deg) { now.readings.bank_rad = deg * math::kDegree; }

  const view::CoachView& look(view::Coached how = {true, true}) {
    view::coach_view(now, card, type, speeds, {}, how, view);
    return view;
  }
  const view::BandBar* bar(const std::string& name) const {
    for (const view::BandBar& b : view.bars)
      if (name == b.name) return &b;
    return nullptr;
  }
};

inline bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace stallwright::coach_test
