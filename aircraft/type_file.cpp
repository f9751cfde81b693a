#include "aircraft/type_file.hpp"

#include <algorithm>
#include <array>

#include "aircraft/type_checks.hpp"
#include "aircraft/type_fields.hpp"

namespace stallwright {
namespace {

using namespace type_checks;
using namespace type_fields;

constexpr const char* kTopLevel[] = {"format",       "name",      "summary",   "wing",   "tail",
                                     "fin",          "aileron",   "elevator",  "rudder", "flap",
                                     "body",         "propeller", "engine",    "mass",   "probe",
                                     "pitot_static", "limits",    "asymmetry", "stall",  "band"};

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
