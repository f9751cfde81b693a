#include "aircraft/type_checks.hpp"

#include <cstdio>

#include "aircraft/mass_properties.hpp"

namespace stallwright::type_checks {

std::string shown(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.6g", value);
  return text;
}

void check_extent(const TomlTable& table, double inboard_m, double outboard_m,
                  const LiftingSurfaceType& surface) {
  const double root_m = surface.stations.front().span_m, tip_m = surface.stations.back().span_m;
  if (inboard_m < root_m || inboard_m >= tip_m) {
    table.reject("inboard_m",
                 "a number from " + shown(root_m) + " to below " + shown(tip_m) + " m (on the surface)",
                 shown(inboard_m));
  }
  if (outboard_m <= inboard_m || outboard_m > tip_m) {
    table.reject("outboard_m",
                 "a number above " + shown(inboard_m) + " and up to " + shown(tip_m) + " m (on the surface)",
                 shown(outboard_m));
  }
}

void check_inertia(const TomlTable& table, const MassType& mass) {
  const double x = mass.empty_ixx_kgm2, y = mass.empty_iyy_kgm2, z = mass.empty_izz_kgm2;
  const auto check = [&](const char* key, double own, double sum) {
    if (own > sum)
      table.reject(key, "at most the sum of the other two, " + shown(sum) + " kg m2", shown(own));
  };
  check("empty_ixx_kgm2", x, y + z);
  check("empty_iyy_kgm2", y, z + x);
  check("empty_izz_kgm2", z, x + y);
  if (mass.empty_ixz_kgm2 * mass.empty_ixz_kgm2 >= x * z) {
    table.reject("empty_ixz_kgm2", "a product below the root of ixx times izz", shown(mass.empty_ixz_kgm2));
  }
}

void check_envelope_lists(const TomlTable& table, const MassType& mass) {
  for (std::size_t i = 0; i < mass.envelope_mass_kg.size(); ++i) {
    if (mass.envelope_forward_m[i] >= mass.envelope_aft_m[i]) {
      table.reject(
          "envelope_aft_m",
          "numbers behind those of envelope_forward_m, above " + shown(mass.envelope_forward_m[i]) + " m",
          shown(mass.envelope_aft_m[i]));
    }
  }
  if (mass.envelope_mass_kg.back() != mass.max_kg) {
    table.reject("envelope_mass_kg", "a list that ends at max_kg, " + shown(mass.max_kg) + " kg",
                 shown(mass.envelope_mass_kg.back()));
  }
  if (mass.reference_kg > mass.max_kg || mass.reference_kg < mass.empty_kg) {
    table.reject(
        "reference_kg",
        "a number from empty_kg to max_kg, " + shown(mass.empty_kg) + " to " + shown(mass.max_kg) + " kg",
        shown(mass.reference_kg));
  }
}

void check_default_loading(const TomlTable& table, const AircraftType& type) {
  for (const auto& breach : check_envelope(type, default_loading(type))) {
    const bool mass = breach.limit == EnvelopeBreach::Limit::kMaximumMass;
    const bool forward = breach.limit == EnvelopeBreach::Limit::kForward;
    table.reject(mass      ? "max_kg"
                 : forward ? "envelope_forward_m"
                           : "envelope_aft_m",
                 "the default loading within the limits", breach.sentence);
  }
}

void check_limits(const TomlTable& table, const AircraftType& type) {
  const LimitsType& limits = type.limits;
  const auto below = [&](const char* key, double own, const char* other, double above) {
    if (own >= above) {
      table.reject(key, std::string("a speed below ") + other + ", " + shown(above / unit::kKnot.si) + " kt",
                   shown(own / unit::kKnot.si));
    }
  };
  below("v_no_kt", limits.v_no_mps, "v_ne_kt", limits.v_ne_mps);
  below("v_a_kt", limits.v_a_mps, "v_ne_kt", limits.v_ne_mps);
  below("v_fe_kt", limits.v_fe_mps, "v_ne_kt", limits.v_ne_mps);
  below("book_v_s1_kt", limits.book_v_s1_mps, "v_a_kt", limits.v_a_mps);
  below("approach_speed_kt", limits.approach_speed_mps, "v_no_kt", limits.v_no_mps);
  if (limits.book_v_s0_mps > limits.book_v_s1_mps) {
    table.reject("book_v_s0_kt",
                 "at most book_v_s1_kt, " + shown(limits.book_v_s1_mps / unit::kKnot.si) + " kt",
                 shown(limits.book_v_s0_mps / unit::kKnot.si));
  }
  if (limits.approach_speed_mps <= limits.book_v_s0_mps) {
    table.reject("approach_speed_kt",
                 "a speed above book_v_s0_kt, " + shown(limits.book_v_s0_mps / unit::kKnot.si) + " kt",
                 shown(limits.approach_speed_mps / unit::kKnot.si));
  }
  if (limits.v_fe_mps != type.flaps.back().limit_speed_mps) {
    table.reject("v_fe_kt",
                 "the limit speed of the last flap setting, " +
                     shown(type.flaps.back().limit_speed_mps / unit::kKnot.si) + " kt",
                 shown(limits.v_fe_mps / unit::kKnot.si));
  }
}

}  // namespace stallwright::type_checks
