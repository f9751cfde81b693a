#include <nlohmann/json.hpp>

#include "aircraft/math/units.hpp"
#include "sim/cli/inspect_report.hpp"

namespace stallwright::cli {
namespace {

using Json = nlohmann::ordered_json;  // a NaN is written as null

Json mode_json(const Mode& m) {
  return {{"name", m.name},
          {"eigenvalue_ps", {m.eigenvalue.real(), m.eigenvalue.imag()}},
          {"partner_ps", {m.partner.real(), m.partner.imag()}},
          {"natural_period_s", m.natural_period_s},
          {"damping_ratio", m.damping_ratio},
          {"time_constant_s", m.time_constant_s},
          {"participation", m.participation}};
}

Json stall_json(const StallFigure& s) {
  const char* limits[] = {"lift", "elevator", "none"};
  return {{"flap_deg", s.flap_rad / math::kDegree},
          {"speed_kt", s.speed_mps / kKnot},
          {"cl_max", s.cl_max},
          {"alpha_deg", s.alpha_rad / math::kDegree},
          {"stick_aft", s.stick_aft},
          {"sink_fpm", s.sink_mps / kFootPerMinute},
          {"limit", limits[static_cast<int>(s.limit)]}};
}

Json best_json(const BestFigure& best, const char* name, double unit) {
  return {{name, best.value / unit}, {"speed_kt", best.speed_mps / kKnot}};
}

Json verdict_json(const BandVerdict& v) {
  return {{"quantity", v.band.quantity}, {"value", v.value},    {"low", v.band.low},
          {"high", v.band.high},         {"unit", v.band.unit}, {"inside", v.inside()},
          {"reason", v.band.reason}};
}

template <class Range, class Convert>
Json list(const Range& range, Convert convert) {
  Json all = Json::array();
  for (const auto& item : range) all.push_back(convert(item));
  return all;
}

}  // namespace

std::string inspection_json(const Inspection& inspection) {
  const Aircraft& a = inspection.aircraft;
  const Performance& p = inspection.performance;
  const Json page = {
      {"format", "stallwright-inspection-1"},
      {"aircraft", a.type.name},
      {"condition", "sea level, standard day, maximum mass, forward centre of gravity, even airframe"},
      {"geometry",
       {{"span_m", a.span_m},
        {"wing_area_m2", a.wing_area_m2},
        {"aspect_ratio", a.span_m * a.span_m / a.wing_area_m2},
        {"mean_chord_m", a.mean_chord_m},
        {"tail_arm_m", a.tail_arm_m}}},
      {"mass",
       {{"mass_kg", a.mass.mass_kg},
        {"cg_aft_m", a.mass.cg.x_aft_m},
        {"ixx_kgm2", a.mass.inertia(0, 0)},
        {"iyy_kgm2", a.mass.inertia(1, 1)},
        {"izz_kgm2", a.mass.inertia(2, 2)},
        {"ixz_kgm2", -a.mass.inertia(0, 2)}}},
      {"stalls", list(p.stalls, stall_json)},
      {"glide_propeller_off", best_json(p.glide_airframe, "lift_to_drag", 1.0)},
      {"glide_windmilling", best_json(p.glide_idle, "lift_to_drag", 1.0)},
      {"climb", best_json(p.climb, "rate_fpm", kFootPerMinute)},
      {"cruise",
       {{"speed_kt", p.cruise.speed_mps / kKnot},
        {"throttle", p.cruise.throttle},
        {"propeller_rpm", p.cruise.propeller_radps * 30.0 / math::kPi}}},
      {"roll_per_aileron_ps",
       {{"at_1.05_vs", p.roll_response_slow_ps}, {"at_1.5_vs", p.roll_response_fast_ps}}},
      {"mode_speed_kt", p.mode_speed_mps / kKnot},
      {"modes", list(p.modes, mode_json)},
      {"bands", list(inspection.verdicts, verdict_json)},
      {"outside", inspection.outside()}};
  return page.dump(2) + "\n";
}

}  // namespace stallwright::cli
