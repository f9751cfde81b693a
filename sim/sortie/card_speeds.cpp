#include "sim/sortie/card_speeds.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <stdexcept>

#include "aircraft/toml_reader.hpp"

namespace stallwright {
namespace {

constexpr double kEntryAboveStall_kt = 10.0;  // 14 CFR 23.201(b), amendment 62
constexpr double kEntryMultiple = 1.3;        // common practice

double knots(double speed_mps) { return speed_mps / unit::kKnot.si; }

double steady_target_kt(const TestPoint& point, double stall_kt, double limit_kt) {
  switch (point.target) {
    case TargetKind::speed:
      return point.target_value;
    case TargetKind::stall_multiple:
      return point.target_value * stall_kt;
    case TargetKind::stall_margin:
      return stall_kt + point.target_value;
    case TargetKind::below_flap_limit:
      return limit_kt - point.target_value;
    case TargetKind::slow_to_break:
    case TargetKind::slow_through:
      break;
  }
  return kUnset;
}

// Cuts a speed to fit below the flap limit with its upper band.
double fitted_kt(double speed_kt, const TestPoint& point, PointSpeeds& out) {
  const double ceiling_kt = out.flap_limit_kt - kBelowFlapLimit_kt - point.bands.speed_high_kt;
  if (speed_kt <= ceiling_kt) return speed_kt;
  char text[200];
  std::snprintf(text, sizeof text,
                "%.1f kt instead of %.1f kt: the flap limit is %.0f kt and the band reaches %.1f kt above",
                ceiling_kt, speed_kt, out.flap_limit_kt, point.bands.speed_high_kt);
  out.note = text;
  return ceiling_kt;
}

}  // namespace

double book_stall_kt(const AircraftType& type, std::size_t flap_setting, double mass_kg) {
  if (!(mass_kg > 0) || !std::isfinite(mass_kg)) {
    throw std::invalid_argument("book_stall_kt: the mass must be a positive number of kg");
  }
  const double deflection = type.flaps.at(flap_setting).deflection_rad;
  const double full = type.flaps.back().deflection_rad;
  const double share =
      full > 0 ? deflection / full : 0.0;  // an aeroplane without flaps has one setting, zero
  const double at_max_mps =
      type.limits.book_v_s1_mps + (type.limits.book_v_s0_mps - type.limits.book_v_s1_mps) * share;
  return knots(at_max_mps) * std::sqrt(mass_kg / type.mass.max_kg);
}

double flap_limit_kt(const TestPoint& point, const AircraftType& type) {
  const FlapSetting& setting = type.flaps.at(point.flap_setting);
  if (setting.deflection_rad > 0) return knots(setting.limit_speed_mps);
  if (point.target == TargetKind::below_flap_limit) return knots(type.limits.v_fe_mps);
  return std::numeric_limits<double>::infinity();
}

PointSpeeds point_speeds(const TestPoint& point, const AircraftType& type, double mass_kg) {
  PointSpeeds out;
  out.stall_kt = book_stall_kt(type, point.flap_setting, mass_kg);
  out.flap_limit_kt = flap_limit_kt(point, type);
  const double reference_stall_kt = book_stall_kt(type, point.flap_setting, type.mass.reference_kg);
  const double scale = std::sqrt(mass_kg / type.mass.reference_kg);
  if (point.is_steady()) {
    out.target_reference_kt = steady_target_kt(point, reference_stall_kt, out.flap_limit_kt);
    out.target_kt = fitted_kt(out.target_reference_kt * scale, point, out);
  } else if (point.is_stall()) {
    const double entry_kt = std::max(out.stall_kt + kEntryAboveStall_kt, out.stall_kt * kEntryMultiple);
    out.entry_kt = fitted_kt(entry_kt, point, out);
  } else {
    out.entry_kt = fitted_kt((reference_stall_kt + point.from_above_stall_kt) * scale, point, out);
    out.stop_kt = (reference_stall_kt + point.to_above_stall_kt) * scale;
  }
  out.band_low_kt = out.set_up_kt() - point.bands.speed_low_kt;
  out.band_high_kt = out.set_up_kt() + point.bands.speed_high_kt;
  return out;
}

}  // namespace stallwright
