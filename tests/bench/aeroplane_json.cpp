#include "tests/bench/aeroplane_json.hpp"

#include <bit>
#include <fstream>
#include <nlohmann/json.hpp>

#include "sim/motion/flight.hpp"

namespace stallwright::bench {
namespace {

using Json = nlohmann::ordered_json;

Json json(const Vec3<double>& v) { return {v.x, v.y, v.z}; }

Json json(const SectionType& s) {
  return {{"lift_slope", s.lift_slope_per_rad},
          {"zero_lift", s.zero_lift_rad},
          {"stall", s.stall_rad},
          {"negative_stall", s.negative_stall_rad},
          {"stall_width", s.stall_width_rad},
          {"profile_drag", s.profile_drag},
          {"cl_min_drag", s.cl_min_drag},
          {"drag_rise", s.drag_rise},
          {"moment", s.moment},
          {"flat_plate", s.flat_plate_normal_force},
          {"tau1_chords", s.tau1_chords},
          {"tau2_chords", s.tau2_chords}};
}

Json json(const ControlSurface& c) {
  return {{"effectiveness", c.effectiveness}, {"stall_shift", c.stall_shift},   {"drag", c.drag_per_rad2},
          {"positive", c.max_positive_rad},   {"negative", c.max_negative_rad}, {"rate", c.rate_limit_radps}};
}

Json json(const Strip& s) {
  return {{"r", json(s.r_B)},
          {"chord_axis", json(s.chord_B)},
          {"normal", json(s.normal_B)},
          {"span", json(s.span_B)},
          {"chord", s.chord_m},
          {"area", s.area_m2},
          {"flap_share", s.flap_share},
          {"control_share", s.control_share},
          {"washed", s.slipstream_share},
          {"wash_growth", s.slipstream_growth},
          {"stall_offset", s.stall_offset_rad},
          {"body_crossflow", s.body_crossflow},
          {"wake_arm", s.wake_arm_m},
          {"wake_rise", s.wake_rise_m}};
}

Json json(const BodyType& b) {
  return {{"drag", b.drag_area_m2},
          {"side", b.side_force_area_m2},
          {"cross_up", b.crossflow_area_up_m2},
          {"cross_side", b.crossflow_area_side_m2},
          {"munk", b.munk_volume_m3}};
}

Json json(const PropellerType& p) {
  return {{"diameter", p.diameter_m},
          {"inertia", p.inertia_kgm2},
          {"normal_force", p.normal_force_slope},
          {"asymmetric", p.asymmetric_moment},
          {"swirl", p.swirl_recovery},
          {"advance", p.advance_ratio},
          {"thrust", p.thrust_coefficient},
          {"power", p.power_coefficient}};
}

Json json(const EngineType& e) {
  return {{"power", e.rated_power_w},
          {"speed", e.rated_speed_radps},
          {"idle_speed", e.idle_speed_radps},
          {"friction", e.friction_torque_nm},
          {"throttle_lag", e.throttle_lag_s}};
}

Json json(const FlapSetting& f) {
  return {f.deflection_rad, f.zero_lift_shift_rad, f.stall_shift_rad, f.profile_drag, f.moment};
}

template <class List>
Json list(const List& items) {
  Json all = Json::array();
  for (const auto& item : items) all.push_back(json(item));
  return all;
}

template <class Part>
void put(std::ofstream& out, const Part& part) {
  const auto bytes = std::bit_cast<std::array<char, sizeof(Part)>>(part);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

}  // namespace

std::string aeroplane_json(const Aircraft& a) {
  const AircraftType& type = a.type;
  return Json{{"sections", {json(type.wing.section), json(type.tail.section), json(type.fin.section)}},
              {"controls", {json(type.aileron), json(type.elevator), json(type.rudder)}},
              {"strips", list(a.strips)},
              {"flaps", list(type.flaps)},
              {"flap_rate", type.flap_rate_radps},
              {"body", json(type.body)},
              {"propeller", json(type.propeller)},
              {"engine", json(type.engine)},
              {"idle_throttle", a.idle_throttle},
              {"buffet", type.buffet_strength},
              {"hub", json(a.hub_B)},
              {"shaft", json(a.shaft_B)},
              {"body_centre", json(a.body_centre_B)},
              {"disc_area", a.disc_area_m2},
              {"mean_chord", a.mean_chord_m},
              {"wake_travel", a.wake_travel_m},
              {"mass", a.mass.mass_kg},
              {"inertia", a.mass.inertia.m},
              {"wing_influence", a.wing_influence},
              {"tail_influence", a.tail_influence},
              {"fin_influence", a.fin_influence},
              {"tail_by_wing", a.tail_by_wing},
              {"fin_by_wing", a.fin_by_wing},
              {"separation_spread", a.separation_spread}}
      .dump();
}

void write_samples(const Samples& samples, const std::filesystem::path& file) {
  std::ofstream out(file, std::ios::binary);
  for (const LaneGroup<double>& lane : samples.aeroplanes) {
    put(out, lane.flight);
    put(out, lane.controls);
    put(out, lane.air);
    put(out, flight_step(samples.known->aircraft, lane.flight, lane.controls, lane.air));
  }
}

}  // namespace stallwright::bench
