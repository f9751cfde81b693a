#include <array>
#include <cmath>
#include <cstdio>
#include <sstream>

#include "aircraft/math/units.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/inspect_report.hpp"

namespace stallwright::cli {
namespace {

/// printf into a string; a line of this page is shorter than the buffer.
template <class... Values>
std::string line(const char* format, Values... values) {
  std::array<char, 700> buffer{};
  std::snprintf(buffer.data(), buffer.size(), format, values...);
  return buffer.data();
}

const char* ending(StallFigure::Limit limit) {
  switch (limit) {
    case StallFigure::Limit::lift:
      return "maximum lift";
    case StallFigure::Limit::elevator:
      return "stick at its aft stop";
    case StallFigure::Limit::none:
      break;
  }
  return "no steady flight found";
}

std::string geometry(const Aircraft& a) {
  const Vec3<double> inertia{a.mass.inertia(0, 0), a.mass.inertia(1, 1), a.mass.inertia(2, 2)};
  const auto [forward, aft] = envelope_range(a.type, a.mass.mass_kg);
  return line(
             "Geometry  span %.2f m, wing area %.2f m2, aspect ratio %.2f, mean chord %.3f m, tail arm %.2f "
             "m\n",
             a.span_m, a.wing_area_m2, a.span_m * a.span_m / a.wing_area_m2, a.mean_chord_m, a.tail_arm_m) +
         line(
             "Mass      %.0f kg, wing loading %.0f N/m2, centre of gravity %.3f m aft of the datum (limits "
             "%.3f to "
             "%.3f)\n",
             a.mass.mass_kg, a.mass.mass_kg * kStandardGravity_mps2 / a.wing_area_m2, a.mass.cg.x_aft_m,
             forward, aft) +
         line(
             "          moments of inertia %.0f, %.0f, %.0f kg m2 (roll, pitch, yaw), product xz %.0f kg "
             "m2\n",
             inertia.x, inertia.y, inertia.z, -a.mass.inertia(0, 2)) +
         line("Engine    %.0f kW at %.0f rpm, %.1f kg/kW\n", a.type.engine.rated_power_w / 1000.0,
              a.type.engine.rated_speed_radps * 30.0 / math::kPi,
              a.mass.mass_kg / (a.type.engine.rated_power_w / 1000.0));
}

std::string stalls(const Performance& p) {
  std::string text =
      "\nStall, idle, propeller windmilling, 1 g\n  flap deg   CAS kt   C_L max   alpha deg   stick aft"
      "   sink ft/min   ends at\n";
  for (const StallFigure& s : p.stalls)
    text += line("  %8.0f   %6.1f   %7.3f   %9.1f   %9.2f   %11.0f   %s\n", s.flap_rad / math::kDegree,
                 s.speed_mps / kKnot, s.cl_max, s.alpha_rad / math::kDegree, s.stick_aft,
                 s.sink_mps / kFootPerMinute, ending(s.limit));
  return text;
}

std::string flight(const Performance& p) {
  return "\nFlaps up\n" +
         line(
             "  best glide        %.1f at %.0f kt with the propeller taken off; %.1f at %.0f kt windmilling "
             "at idle\n",
             p.glide_airframe.value, p.glide_airframe.speed_mps / kKnot, p.glide_idle.value,
             p.glide_idle.speed_mps / kKnot) +
         line("  best climb        %.0f ft/min at %.0f kt, full throttle\n", p.climb.value / kFootPerMinute,
              p.climb.speed_mps / kKnot) +
         line(
             "  cruise            %.0f kt with 75 %% of rated power at the shaft, throttle %.0f %%, %.0f "
             "rpm\n",
             p.cruise.speed_mps / kKnot, 100.0 * p.cruise.throttle,
             p.cruise.propeller_radps * 30.0 / math::kPi) +
         line("  roll per aileron  %.2f deg/s a degree at 1.05 V_s, %.2f at 1.5 V_s (idle, after 1 s)\n",
              p.roll_response_slow_ps, p.roll_response_fast_ps);
}

std::string modes(const Performance& p) {
  std::string text =
      line("\nModes, level at %.1f kt (1.5 times the book's clean stall speed), controls held\n",
           p.mode_speed_mps / kKnot);
  if (p.modes.empty()) return text + "  no level flight found at this speed\n";
  text +=
      "  mode           eigenvalue 1/s       natural period s   damping   time constant s   share of "
      "motion\n";
  for (const Mode& m : p.modes) {
    const bool pair = std::isfinite(m.natural_period_s);
    text += line("  %-12s  %8.4f", m.name.c_str(), m.eigenvalue.real());
    text += m.eigenvalue.imag() != 0.0 ? line(" +- %6.4fi  ", m.eigenvalue.imag())
            : pair                     ? line(", %8.4f  ", m.partner.real())
                                       : std::string(13, ' ');
    text +=
        pair ? line("  %14.2f   %7.3f", m.natural_period_s, m.damping_ratio) : line("  %14s   %7s", "", "");
    text += line("   %15.3f   %13.0f %%\n", m.time_constant_s, 100.0 * m.participation);
  }
  return text;
}

/// Words set into lines of at most 100 columns, each indented.
std::string wrapped(const std::string& text, std::size_t indent) {
  std::istringstream words(text);
  std::string page, row;
  for (std::string word; words >> word;) {
    if (!row.empty() && indent + row.size() + 1 + word.size() > 100) {
      page += std::string(indent, ' ') + row + "\n";
      row.clear();
    }
    row += (row.empty() ? "" : " ") + word;
  }
  return page + std::string(indent, ' ') + row + "\n";
}

std::string verdicts(const Inspection& inspection) {
  std::string text = "\nAgainst what the class of aeroplane makes credible\n";
  for (const BandVerdict& v : inspection.verdicts)
    text += line("  %-22s %8.4g %-7s %-8s band %.4g to %.4g\n", v.band.quantity.c_str(), v.value,
                 v.band.unit.c_str(), v.inside() ? "inside" : "OUTSIDE", v.band.low, v.band.high) +
            wrapped(one_line(v.band.reason), 6);
  const int outside = inspection.outside(), all = static_cast<int>(inspection.verdicts.size());
  text += line("Inside their bands: %d of %d figures", all - outside, all);
  return text + (outside == 0 ? ".\n" : line(", %d OUTSIDE.\n", outside));
}

}  // namespace

std::string inspection_text(const Inspection& inspection) {
  const AircraftType& type = inspection.aircraft.type;
  return one_line(type.name) + ": " + one_line(type.summary) +
         "\nSea level, standard day, maximum mass, forward centre of gravity, perfectly even airframe.\n\n" +
         geometry(inspection.aircraft) + stalls(inspection.performance) + flight(inspection.performance) +
         modes(inspection.performance) + verdicts(inspection);
}

}  // namespace stallwright::cli
