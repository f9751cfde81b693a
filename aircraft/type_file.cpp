#include "aircraft/type_file.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "aircraft/mass_properties.hpp"
#include "aircraft/type_fields.hpp"

namespace stallwright {
namespace {

using namespace type_fields;

constexpr const char* kTopLevel[] = {"format",       "name",      "summary",   "wing",   "tail",
                                     "fin",          "aileron",   "elevator",  "rudder", "flap",
                                     "body",         "propeller", "engine",    "mass",   "probe",
                                     "pitot_static", "limits",    "asymmetry", "stall",  "band"};

/// A value as found, for messages: six figures hide the round-off of unit conversion.
std::string shown(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.6g", value);
  return text;
}

Station3 read_point(const TomlTable& parent, const char* key) {
  return read_fields(parent.table(key), kPointFields);
}

LiftingSurfaceType read_surface(const TomlTable& table) {
  LiftingSurfaceType out;
  const TomlTable section = table.table("section");
  out.section.name = section.text("name", 60);
  out.section = read_fields(section, kSectionFields, out.section);
  for (const auto& row : table.tables("station", 2, 12)) {
    const SurfaceStation station = read_fields(row, kStationFields);
    if (out.stations.empty() && station.span_m != 0) {
      row.reject("span_m", "0 m (the first station is the root)", shown(station.span_m));
    }
    if (!out.stations.empty() && station.span_m <= out.stations.back().span_m) {
      row.reject("span_m", "a number above " + shown(out.stations.back().span_m) + " m (stations must rise)",
                 shown(station.span_m));
    }
    out.stations.push_back(station);
  }
  return out;
}

// A flap or control must lie on its surface: the strips take their shares from these two numbers.
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

ControlSurface read_control(const TomlTable& root, const char* key, const LiftingSurfaceType& surface) {
  const TomlTable table = root.table(key);
  const ControlSurface out = read_fields(table, kControlFields);
  check_extent(table, out.inboard_m, out.outboard_m, surface);
  return out;
}

void read_flaps(const TomlTable& root, AircraftType& out) {
  constexpr NumberField kInboard{"inboard_m", unit::kMetre, 0, 30},
      kOutboard{"outboard_m", unit::kMetre, 0, 30};
  constexpr NumberField kRate{"rate_degps", unit::kDegreePerSecond, 1, 60};
  const TomlTable table = root.table("flap");
  out.flap_inboard_m = table.number(kInboard);
  out.flap_outboard_m = table.number(kOutboard);
  out.flap_rate_radps = table.number(kRate);
  check_extent(table, out.flap_inboard_m, out.flap_outboard_m, out.wing);
  for (const auto& row : table.tables("setting", 1, 6)) {
    const FlapSetting setting = read_fields(row, kFlapFields);
    const auto degrees = [](double rad) { return shown(rad / unit::kDegree.si); };
    if (out.flaps.empty() && setting.deflection_rad != 0) {
      row.reject("deflection_deg", "0 deg (the first setting is flaps up)", degrees(setting.deflection_rad));
    }
    if (!out.flaps.empty() && setting.deflection_rad <= out.flaps.back().deflection_rad) {
      row.reject("deflection_deg",
                 "a number above " + degrees(out.flaps.back().deflection_rad) + " deg (settings must rise)",
                 degrees(setting.deflection_rad));
    }
    out.flaps.push_back(setting);
  }
}

PropellerType read_propeller(const TomlTable& table) {
  constexpr NumberField kJ{"advance_ratio", unit::kNone, 0, 5},
      kThrust{"thrust_coefficient", unit::kNone, -2, 1}, kPower{"power_coefficient", unit::kNone, -2, 1};
  PropellerType out = read_fields(table, kPropellerFields);
  out.hub = read_point(table, "hub");
  out.advance_ratio = table.numbers(kJ, {.least = 4, .most = 60, .rising = true});
  const std::size_t n = out.advance_ratio.size();
  out.thrust_coefficient = table.numbers(kThrust, {.least = n, .most = n});
  out.power_coefficient = table.numbers(kPower, {.least = n, .most = n});
  if (out.thrust_coefficient.front() <= 0 || out.power_coefficient.front() <= 0) {
    table.reject(out.thrust_coefficient.front() <= 0 ? "thrust_coefficient" : "power_coefficient",
                 "a list that begins above 0 (standing still the propeller pulls and takes power)",
                 shown(std::min(out.thrust_coefficient.front(), out.power_coefficient.front())));
  }
  if (out.advance_ratio.front() != 0) {
    table.reject("advance_ratio", "a list that begins at 0 (standing still)",
                 shown(out.advance_ratio.front()));
  }
  return out;
}

// Three moments of inertia belong to a real body only if none exceeds the sum of the other two.
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

MassType read_mass(const TomlTable& table) {
  MassType out = read_fields(table, kMassFields);
  out.empty_cg = read_point(table, "empty_cg");
  out.envelope_mass_kg = table.numbers(kEnvelopeMass, {.least = 2, .most = 12, .rising = true});
  const std::size_t n = out.envelope_mass_kg.size();
  out.envelope_forward_m = table.numbers(kEnvelopeForward, {.least = n, .most = n});
  out.envelope_aft_m = table.numbers(kEnvelopeAft, {.least = n, .most = n});
  for (const auto& row : table.tables("station", 1, 12)) {
    LoadStation station;
    station.name = row.text("name", 40);
    station = read_fields(row, kLoadFields, station);
    station.at = read_point(row, "at");
    if (station.default_kg > station.max_kg) {
      row.reject("default_kg", "at most max_kg, " + shown(station.max_kg) + " kg", shown(station.default_kg));
    }
    out.stations.push_back(station);
  }
  check_inertia(table, out);
  check_envelope_lists(table, out);
  return out;
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

// Speeds of a flight manual stand in one order; a swap is a slip of the pen that later reads as bad physics.
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

std::vector<CredibleBand> read_bands(const TomlTable& root) {
  std::vector<CredibleBand> out;
  for (const auto& row : root.tables("band", 0, 60)) {
    CredibleBand band;
    band.quantity = row.text("quantity", 60);
    band = read_fields(row, kBandFields, band);
    band.unit = row.text("unit", 20);
    band.reason = row.text("reason", 400);
    if (band.high <= band.low) {
      row.reject("high", "a number above low, " + shown(band.low), shown(band.high));
    }
    out.push_back(band);
  }
  return out;
}

}  // namespace

AircraftType load_aircraft_type(const std::filesystem::path& file, std::vector<KnownField>& known) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  AircraftType out;
  out.key = file.stem().string();
  for (const char* key : kTopLevel) root.announce(key);
  root.choice("format", {"stallwright-aircraft-1"});
  out.name = root.text("name", 60);
  out.summary = root.text("summary", 400);
  out.wing = read_surface(root.table("wing"));
  out.tail = read_surface(root.table("tail"));
  out.fin = read_surface(root.table("fin"));
  out.aileron = read_control(root, "aileron", out.wing);
  out.elevator = read_control(root, "elevator", out.tail);
  out.rudder = read_control(root, "rudder", out.fin);
  read_flaps(root, out);
  const TomlTable body = root.table("body");
  out.body = read_fields(body, kBodyFields);
  out.body.centre = read_point(body, "centre");
  out.propeller = read_propeller(root.table("propeller"));
  const TomlTable engine = root.table("engine");
  out.engine = read_fields(engine, kEngineFields);
  if (out.engine.idle_speed_radps >= out.engine.rated_speed_radps) {
    engine.reject(
        "idle_speed_rpm",
        "a speed below rated_speed_rpm, " + shown(out.engine.rated_speed_radps / unit::kRpm.si) + " rpm",
        shown(out.engine.idle_speed_radps / unit::kRpm.si));
  }
  const TomlTable mass = root.table("mass");
  out.mass = read_mass(mass);
  check_default_loading(mass, out);
  const TomlTable probe = root.table("probe");
  out.probe = read_fields(probe, kProbeFields);
  out.probe.at = read_point(probe, "at");
  out.pitot_static = read_fields(root.table("pitot_static"), kPitotStaticFields);
  const TomlTable limits = root.table("limits");
  out.limits = read_fields(limits, kLimitFields);
  out.limits.stalls_permitted = limits.flag("stalls_permitted");
  check_limits(limits, out);
  out.asymmetry = read_fields(root.table("asymmetry"), kAsymmetryFields);
  out = read_fields(root.table("stall"), kStallFields, out);
  out.bands = read_bands(root);
  document.reject_unknown_keys();
  known = document.known_fields();
  return out;
}

AircraftType load_aircraft_type(const std::filesystem::path& file) {
  std::vector<KnownField> known;
  return load_aircraft_type(file, known);
}

}  // namespace stallwright
