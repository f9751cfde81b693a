// What a pilot's hands, seat and ears are told near the stall. The figures are the design's own goals; the order of
// warning, buffet and break is what 14 CFR 23.207 and common practice expect of a light aeroplane.
#include <algorithm>
#include <catch2/catch.hpp>

#include "aircraft/type_file.hpp"
#include "render/flight/seat.hpp"
#include "render/flight/stall_horn.hpp"
#include "sim/motion/trim.hpp"
#include "sim/truth/judge.hpp"
#include "tests/sim/sortie/by_hand.hpp"

using namespace stallwright;

namespace {

struct Moments {
  double horn_s = -1.0, buffet_s = -1.0, break_s = -1.0, wing_drop_s = -1.0;
  double loudest_before_g = 0.0, quiet_g = 0.0;
};

/// Stick and feet of somebody who leaves a fifth of the pedal in, which lets the ball slip out by a little, and keeps the stick
/// coming back.
class Careless {
 public:
  Hands spoil(Hands hands, const Sortie& sortie, double below_mps) {
    const Phase phase = sortie.director().marks().phase;
    if (phase != Phase::slow && phase != Phase::broken) return hands;
    if (sortie.seen().readings.indicated_airspeed_mps < below_mps && !held_) {
      held_ = true;
      kept_ = hands;
      kept_.pedal_right += 0.2;
    }
    if (!held_) return hands;
    kept_.stick_aft = std::min(1.0, kept_.stick_aft + 0.0012);
    return as_recorded(kept_);
  }

 private:
  bool held_ = false;
  Hands kept_;
};

/// The first stall of a sortie by hand, in calm air: when each sign came.
///   careless  the ball slips out and the stick is kept back for two seconds past the break
Moments stall_signs(const std::string& type, bool careless = false) {
  SortieConfig config = by_hand_test::config(type);
  config.card.points = {config.card.points.back()};
  config.card.clearing_turns = false;
  if (careless) config.pilot.break_reaction_s = 2.0;
  const double frozen_below =
      1.1 * book_stall_kt(config.type, 0, mass_properties(config.type, config.loading).mass_kg) * kKnot;
  Sortie sortie(config);
  by_hand_test::Person person(config.type);
  Careless feet;
  MemorySink rows;
  SeatFeel seat;
  StallHorn horn;
  Moments m;
  double break_bank = 0.0;
  const auto next = [&] {
    const Hands hands = person.next(sortie);
    return careless ? feet.spoil(hands, sortie, frozen_below) : hands;
  };
  while (sortie.time_s() < 200.0 && sortie.tick(rows, next())) {
    const TickSeen& seen = sortie.seen();
    const double t = sortie.time_s();
    seat = advance(seat,
                   acceleration_at(seen.specific_force_B_mps2, sortie.state().rigid.rate_B_radps,
                                   seen.angular_acceleration_B_radps2, {0.2, 0.0, -0.6}),
                   kTick_s);
    horn = advance(horn, config.type, seen.alpha_rad, 0.0, seen.true_airspeed_mps, kTick_s);
    if (sortie.director().marks().phase == Phase::settle && t > 3.0)
      m.quiet_g = std::max(m.quiet_g, seat.buffet_g());
    if (horn.sounds && m.horn_s < 0.0) m.horn_s = t;
    if (seat.buffet_g() > 0.015 && m.buffet_s < 0.0) m.buffet_s = t;
    for (const Event& e : sortie.director().events())
      if ((e.kind == "break" || e.kind == "wing drop") && m.break_s < 0.0) {
        m.break_s = t;
        break_bank = seen.readings.bank_rad;
      }
    if (m.break_s < 0.0) m.loudest_before_g = std::max(m.loudest_before_g, seat.buffet_g());
    if (m.break_s > 0.0 && m.wing_drop_s < 0.0 &&
        std::abs(seen.readings.bank_rad - break_bank) > 10.0 * math::kDegree)
      m.wing_drop_s = t;
    if (m.break_s > 0.0 && t > m.break_s + 4.0) break;
  }
  return m;
}

/// Bank gained in the first second after half the stick's travel, per unit of stick, rad: roll performance is stated so,
/// as bank in a given time [MIL-F-8785C 3.3.4].
double roll_response(const Aircraft& aircraft, double speed_mps, double density) {
  TrimCondition c;
  c.true_airspeed_mps = speed_mps;
  c.altitude_m = 914.0;
  c.power = TrimCondition::Power::throttle;  // idle, as stalls are flown
  c.density_kgpm3 = density;
  const Trim trim = find_trim(aircraft, c);
  REQUIRE(trim.converged);
  const auto bank_after = [&](double stick) {
    FlightState<double> state = trim.state;
    Controls<double> controls = trim.controls;
    controls.stick_right += stick;
    for (int k = 0; k < 100; ++k) state = flight_step(aircraft, state, controls, trim_air(c));
    return euler_angles(state.rigid.attitude_EB).roll_rad;
  };
  return bank_after(0.5) - bank_after(-0.5);
}

}  // namespace

TEST_CASE("buffet shakes the seat before the break, and the seat is still in calm flight", "[feel]") {
  const std::string type = GENERATE("marram", "tarnfell", "sarsen");
  const Moments m = stall_signs(type);
  INFO(type << ": horn " << m.horn_s << " buffet " << m.buffet_s << " break " << m.break_s << " wing "
            << m.wing_drop_s << " s; " << m.loudest_before_g << " g before, " << m.quiet_g
            << " g in the set-up");
  REQUIRE(m.break_s > 0.0);
  CHECK(m.loudest_before_g >= 0.03);
  CHECK(m.quiet_g < 0.01);
}

TEST_CASE("horn, buffet and break come in this order", "[feel]") {
  const std::string type = GENERATE("marram", "tarnfell", "sarsen");
  const Moments m = stall_signs(type);
  INFO(type << ": horn " << m.horn_s << " buffet " << m.buffet_s << " break " << m.break_s << " s");
  CHECK(m.horn_s > 0.0);
  CHECK(m.horn_s < m.buffet_s);
  CHECK(m.buffet_s < m.break_s);
}

TEST_CASE(
    "the brisk type, its ball a little out and its stick kept back: horn, buffet, break, and then a wing "
    "drops",
    "[feel]") {
  const Moments m = stall_signs("sarsen", true);
  INFO("horn " << m.horn_s << " buffet " << m.buffet_s << " break " << m.break_s << " wing " << m.wing_drop_s
               << " s");
  CHECK(m.horn_s < m.buffet_s);
  CHECK(m.buffet_s < m.break_s);
  CHECK(m.break_s < m.wing_drop_s);
  // Flown with care it only nods (common practice: the ball in the middle keeps the wings level).
  CHECK(stall_signs("sarsen").wing_drop_s < 0.0);
}

TEST_CASE("ailerons go mushy: at 1.05 of the stall speed they roll at most 0.6 of what they do at 1.5",
          "[feel]") {
  const std::string name = GENERATE("marram", "tarnfell", "sarsen");
  const AircraftType type = load_aircraft_type(find_aircraft_file(name));
  const Aircraft aircraft = make_aircraft(type, default_loading(type), 1);
  const SortieConfig config = by_hand_test::config(name);
  const StillAir air = working_air(config.card, config.air.day);
  const std::vector<TrueSet> truth = find_truth(aircraft, config.card, air);
  const double stall_mps = truth[0].points.back().at.true_airspeed_mps;
  const double slow = roll_response(aircraft, 1.05 * stall_mps, air.density_kgpm3);
  const double fast = roll_response(aircraft, 1.5 * stall_mps, air.density_kgpm3);
  INFO(name << ": " << slow << " rad in a second per stick at 1.05, " << fast << " at 1.5; ratio "
            << slow / fast);
  CHECK(slow / fast <= 0.6);
  CHECK(slow > 0.0);
}

TEST_CASE("the horn sounds at the type's own angle, moved with the flaps", "[feel]") {
  const AircraftType type = load_aircraft_type(find_aircraft_file("marram"));
  CHECK(horn_alpha_rad(type, 0.0) == Approx(type.horn_alpha_rad));
  CHECK(horn_alpha_rad(type, type.flaps.back().deflection_rad) ==
        Approx(type.horn_alpha_rad + type.flaps.back().stall_shift_rad));
  StallHorn horn;
  const auto run = [&](double alpha, int ticks) {
    for (int k = 0; k < ticks; ++k) horn = advance(horn, type, alpha, 0.0, 25.0, 0.02);
    return horn.sounds;
  };
  CHECK_FALSE(run(type.horn_alpha_rad - 0.001, 100));
  CHECK_FALSE(run(type.horn_alpha_rad + 0.001, 3));
  CHECK(run(type.horn_alpha_rad + 0.001, 3));
  CHECK(run(type.horn_alpha_rad - 0.4 * math::kDegree, 50));
  CHECK_FALSE(run(type.horn_alpha_rad - 0.6 * math::kDegree, 1));
}

TEST_CASE("the seat feels a shake at the wing's own frequency most, and a slow pull not at all", "[feel]") {
  const auto rms_of = [](double frequency_hz) {
    SeatFeel seat;
    for (int k = 0; k < 8000; ++k)
      seat = advance(seat, {0.0, 0.0, std::sin(2.0 * math::kPi * frequency_hz * 0.001 * k)}, 0.001);
    return seat.buffet_g() * kStandardGravity_mps2 * std::sqrt(2.0);
  };
  // Closed forms: two high-passes in a row pass w^2/(w^2 + wc^2); the oscillator 1/|1 - (f/f1)^2 + 2 i zeta f/f1|.
  const auto expected = [](double f) {
    const double r = f / 8.0;
    return f * f / (f * f + 9.0) / std::hypot(1.0 - r * r, 2.0 * 0.06 * r);
  };
  for (const double f : {4.0, 6.0, 8.0, 12.0}) {
    INFO(f << " Hz");
    CHECK(rms_of(f) == Approx(expected(f)).epsilon(0.04));
  }
  CHECK(rms_of(0.1) < 0.01);
}
