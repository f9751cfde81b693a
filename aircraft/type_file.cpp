#include "aircraft/type_file.hpp"

#include <algorithm>
#include <array>

namespace stallwright {

// See aircraft/types/README.md for what each field means. The order here is the order there.
namespace {

template <class T>
struct Field {
  NumberField in_file;
  double T::*member;
};

template <class T, std::size_t N>
T read_fields(const TomlTable& table, const std::array<Field<T>, N>& fields, T out = {}) {
  for (const auto& field : fields) out.*field.member = table.number(field.in_file);
  return out;
}

constexpr std::array kPointFields{
    Field<Station3>{{"x_aft_m", unit::kMetre, -10, 20}, &Station3::x_aft_m},
    Field<Station3>{{"y_right_m", unit::kMetre, -10, 10}, &Station3::y_right_m},
    Field<Station3>{{"z_up_m", unit::kMetre, -5, 5}, &Station3::z_up_m},
};

constexpr std::array kSectionFields{
    Field<SectionType>{{"lift_slope_per_rad", unit::kPerRad, 4, 7.5}, &SectionType::lift_slope_per_rad},
    Field<SectionType>{{"zero_lift_deg", unit::kDegree, -10, 5}, &SectionType::zero_lift_rad},
    Field<SectionType>{{"stall_deg", unit::kDegree, 5, 30}, &SectionType::stall_rad},
    Field<SectionType>{{"negative_stall_deg", unit::kDegree, -30, -3}, &SectionType::negative_stall_rad},
    Field<SectionType>{{"stall_width_deg", unit::kDegree, 0.2, 5}, &SectionType::stall_width_rad},
    Field<SectionType>{{"profile_drag", unit::kNone, 0.002, 0.05}, &SectionType::profile_drag},
    Field<SectionType>{{"cl_min_drag", unit::kNone, -1, 1}, &SectionType::cl_min_drag},
    Field<SectionType>{{"drag_rise", unit::kNone, 0, 0.1}, &SectionType::drag_rise},
    Field<SectionType>{{"moment", unit::kNone, -0.2, 0.1}, &SectionType::moment},
    Field<SectionType>{{"flat_plate_normal_force", unit::kNone, 1, 2.5},
                       &SectionType::flat_plate_normal_force},
    Field<SectionType>{{"tau1_chords", unit::kChord, 0.1, 20}, &SectionType::tau1_chords},
    Field<SectionType>{{"tau2_chords", unit::kChord, 0, 20}, &SectionType::tau2_chords},
};

constexpr std::array kStationFields{
    Field<SurfaceStation>{{"span_m", unit::kMetre, -2, 30}, &SurfaceStation::span_m},
    Field<SurfaceStation>{{"x_quarter_aft_m", unit::kMetre, -10, 20}, &SurfaceStation::x_quarter_aft_m},
    Field<SurfaceStation>{{"rise_m", unit::kMetre, -5, 5}, &SurfaceStation::rise_m},
    Field<SurfaceStation>{{"chord_m", unit::kMetre, 0.05, 10}, &SurfaceStation::chord_m},
    Field<SurfaceStation>{{"twist_deg", unit::kDegree, -15, 15}, &SurfaceStation::twist_rad},
};

constexpr std::array kControlFields{
    Field<ControlSurface>{{"inboard_m", unit::kMetre, -2, 30}, &ControlSurface::inboard_m},
    Field<ControlSurface>{{"outboard_m", unit::kMetre, -2, 30}, &ControlSurface::outboard_m},
    Field<ControlSurface>{{"effectiveness", unit::kNone, 0.05, 1}, &ControlSurface::effectiveness},
    Field<ControlSurface>{{"stall_shift", unit::kNone, 0, 1}, &ControlSurface::stall_shift},
    Field<ControlSurface>{{"drag_per_rad2", unit::kNone, 0, 2}, &ControlSurface::drag_per_rad2},
    Field<ControlSurface>{{"max_positive_deg", unit::kDegree, 1, 60}, &ControlSurface::max_positive_rad},
    Field<ControlSurface>{{"max_negative_deg", unit::kDegree, 1, 60}, &ControlSurface::max_negative_rad},
    Field<ControlSurface>{{"rate_limit_degps", unit::kDegreePerSecond, 5, 500},
                          &ControlSurface::rate_limit_radps},
};

constexpr std::array kFlapFields{
    Field<FlapSetting>{{"deflection_deg", unit::kDegree, 0, 60}, &FlapSetting::deflection_rad},
    Field<FlapSetting>{{"zero_lift_shift_deg", unit::kDegree, -20, 0}, &FlapSetting::zero_lift_shift_rad},
    Field<FlapSetting>{{"stall_shift_deg", unit::kDegree, -15, 5}, &FlapSetting::stall_shift_rad},
    Field<FlapSetting>{{"profile_drag", unit::kNone, 0, 0.3}, &FlapSetting::profile_drag},
    Field<FlapSetting>{{"moment", unit::kNone, -0.5, 0.1}, &FlapSetting::moment},
    Field<FlapSetting>{{"limit_speed_kt", unit::kKnot, 30, 400}, &FlapSetting::limit_speed_mps},
};

constexpr std::array kBodyFields{
    Field<BodyType>{{"drag_area_m2", unit::kSquareMetre, 0, 5}, &BodyType::drag_area_m2},
    Field<BodyType>{{"side_force_area_m2", unit::kSquareMetre, 0, 20}, &BodyType::side_force_area_m2},
    Field<BodyType>{{"crossflow_area_up_m2", unit::kSquareMetre, 0, 30}, &BodyType::crossflow_area_up_m2},
    Field<BodyType>{{"crossflow_area_side_m2", unit::kSquareMetre, 0, 30}, &BodyType::crossflow_area_side_m2},
    Field<BodyType>{{"munk_volume_m3", unit::kCubicMetre, 0, 50}, &BodyType::munk_volume_m3},
};

constexpr std::array kPropellerFields{
    Field<PropellerType>{{"diameter_m", unit::kMetre, 0.5, 4}, &PropellerType::diameter_m},
    Field<PropellerType>{{"thrust_line_up_deg", unit::kDegree, -10, 10}, &PropellerType::thrust_line_up_rad},
    Field<PropellerType>{{"thrust_line_right_deg", unit::kDegree, -10, 10},
                         &PropellerType::thrust_line_right_rad},
    Field<PropellerType>{{"inertia_kgm2", unit::kKilogramSquareMetre, 0.05, 20},
                         &PropellerType::inertia_kgm2},
    Field<PropellerType>{{"normal_force_slope", unit::kPerRad, 0, 1}, &PropellerType::normal_force_slope},
    Field<PropellerType>{{"asymmetric_moment", unit::kPerRad, 0, 1}, &PropellerType::asymmetric_moment},
    Field<PropellerType>{{"swirl_recovery", unit::kNone, 0, 1}, &PropellerType::swirl_recovery},
};

constexpr std::array kEngineFields{
    Field<EngineType>{{"rated_power_kw", unit::kKilowatt, 10, 500}, &EngineType::rated_power_w},
    Field<EngineType>{{"rated_speed_rpm", unit::kRpm, 1000, 4000}, &EngineType::rated_speed_radps},
    Field<EngineType>{{"idle_speed_rpm", unit::kRpm, 300, 1500}, &EngineType::idle_speed_radps},
    Field<EngineType>{{"friction_torque_nm", unit::kNewtonMetre, 1, 300}, &EngineType::friction_torque_nm},
    Field<EngineType>{{"throttle_lag_s", unit::kSecond, 0.05, 5}, &EngineType::throttle_lag_s},
    Field<EngineType>{{"fuel_flow_kgph", unit::kKilogramPerHour, 1, 200}, &EngineType::fuel_flow_kgps},
};

constexpr std::array kMassFields{
    Field<MassType>{{"empty_kg", unit::kKilogram, 100, 5000}, &MassType::empty_kg},
    Field<MassType>{{"empty_ixx_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_ixx_kgm2},
    Field<MassType>{{"empty_iyy_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_iyy_kgm2},
    Field<MassType>{{"empty_izz_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_izz_kgm2},
    Field<MassType>{{"empty_ixz_kgm2", unit::kKilogramSquareMetre, -5000, 5000}, &MassType::empty_ixz_kgm2},
    Field<MassType>{{"max_kg", unit::kKilogram, 150, 6000}, &MassType::max_kg},
    Field<MassType>{{"reference_kg", unit::kKilogram, 150, 6000}, &MassType::reference_kg},
};
constexpr NumberField kEnvelopeMass{"envelope_mass_kg", unit::kKilogram, 100, 6000};
constexpr NumberField kEnvelopeForward{"envelope_forward_m", unit::kMetre, -10, 20};
constexpr NumberField kEnvelopeAft{"envelope_aft_m", unit::kMetre, -10, 20};

constexpr std::array kLoadFields{
    Field<LoadStation>{{"max_kg", unit::kKilogram, 0, 1000}, &LoadStation::max_kg},
    Field<LoadStation>{{"default_kg", unit::kKilogram, 0, 1000}, &LoadStation::default_kg},
};

constexpr std::array kProbeFields{
    Field<ProbeType>{{"port_angle_deg", unit::kDegree, 10, 80}, &ProbeType::port_angle_rad},
    Field<ProbeType>{{"mount_deg", unit::kDegree, -30, 45}, &ProbeType::mount_rad},
};

constexpr std::array kPitotStaticFields{
    Field<PitotStaticType>{{"error_at_zero_alpha", unit::kNone, -0.2, 0.2},
                           &PitotStaticType::error_at_zero_alpha},
    Field<PitotStaticType>{{"error_per_rad", unit::kPerRad, -1, 1}, &PitotStaticType::error_per_rad},
    Field<PitotStaticType>{{"tube_length_m", unit::kMetre, 0.1, 20}, &PitotStaticType::tube_length_m},
    Field<PitotStaticType>{{"tube_diameter_mm", unit::kMillimetre, 1, 20}, &PitotStaticType::tube_diameter_m},
    Field<PitotStaticType>{{"volume_cm3", unit::kCubicCentimetre, 1, 5000}, &PitotStaticType::volume_m3},
};

constexpr std::array kLimitFields{
    Field<LimitsType>{{"v_ne_kt", unit::kKnot, 50, 400}, &LimitsType::v_ne_mps},
    Field<LimitsType>{{"v_no_kt", unit::kKnot, 50, 400}, &LimitsType::v_no_mps},
    Field<LimitsType>{{"v_a_kt", unit::kKnot, 40, 300}, &LimitsType::v_a_mps},
    Field<LimitsType>{{"v_fe_kt", unit::kKnot, 40, 300}, &LimitsType::v_fe_mps},
    Field<LimitsType>{{"book_v_s1_kt", unit::kKnot, 25, 120}, &LimitsType::book_v_s1_mps},
    Field<LimitsType>{{"book_v_s0_kt", unit::kKnot, 25, 120}, &LimitsType::book_v_s0_mps},
    Field<LimitsType>{{"approach_speed_kt", unit::kKnot, 30, 200}, &LimitsType::approach_speed_mps},
    Field<LimitsType>{{"max_load_factor", unit::kNone, 2, 12}, &LimitsType::max_load_factor},
    Field<LimitsType>{{"min_load_factor", unit::kNone, -12, 0}, &LimitsType::min_load_factor},
};

constexpr std::array kAsymmetryFields{
    Field<AsymmetryType>{{"stall_sd_deg", unit::kDegree, 0, 3}, &AsymmetryType::stall_sd_rad},
    Field<AsymmetryType>{{"twist_sd_deg", unit::kDegree, 0, 2}, &AsymmetryType::twist_sd_rad},
};

constexpr std::array kStallFields{
    Field<AircraftType>{{"horn_alpha_deg", unit::kDegree, 0, 30}, &AircraftType::horn_alpha_rad},
    Field<AircraftType>{{"buffet_strength", unit::kNone, 0, 1}, &AircraftType::buffet_strength},
};

constexpr std::array kBandFields{
    Field<CredibleBand>{{"low", unit::kNone, -1e5, 1e5}, &CredibleBand::low},
    Field<CredibleBand>{{"high", unit::kNone, -1e5, 1e5}, &CredibleBand::high},
};

Station3 read_point(const TomlTable& parent, const char* key) {
  return read_fields(parent.table(key), kPointFields);
}

LiftingSurfaceType read_surface(const TomlTable& table) {
  LiftingSurfaceType out;
  const TomlTable section = table.table("section");
  out.section.name = section.text("name", 60);
  out.section = read_fields(section, kSectionFields, out.section);
  for (const auto& row : table.tables("station", 2, 12)) {
    const double inner_m = out.stations.empty() ? -1e9 : out.stations.back().span_m;
    out.stations.push_back(read_fields(row, kStationFields));
    if (!(out.stations.back().span_m > inner_m)) {
      row.reject("span_m", "a number above " + number_text(inner_m) + " m (stations must rise)",
                 number_text(out.stations.back().span_m));
    }
  }
  return out;
}

// A flap or control must lie on its surface: the strips take their shares from these two numbers.
void check_extent(const TomlTable& table, double inboard_m, double outboard_m,
                  const LiftingSurfaceType& surface) {
  const double root_m = surface.stations.front().span_m, tip_m = surface.stations.back().span_m;
  if (inboard_m < root_m || inboard_m >= tip_m) {
    table.reject(
        "inboard_m",
        "a number from " + number_text(root_m) + " to below " + number_text(tip_m) + " m (on the surface)",
        number_text(inboard_m));
  }
  if (outboard_m <= inboard_m || outboard_m > tip_m) {
    table.reject("outboard_m",
                 "a number above " + number_text(inboard_m) + " and up to " + number_text(tip_m) +
                     " m (on the surface)",
                 number_text(outboard_m));
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
    const auto degrees = [](double rad) { return number_text(rad / unit::kDegree.si); };
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
  if (out.advance_ratio.front() != 0) {
    table.reject("advance_ratio", "a list that begins at 0 (standing still)",
                 number_text(out.advance_ratio.front()));
  }
  return out;
}

void check_loading(const TomlTable& table, const MassType& mass) {
  double total_kg = mass.empty_kg, moment_kgm = mass.empty_kg * mass.empty_cg.x_aft_m;
  for (const auto& station : mass.stations) {
    total_kg += station.default_kg;
    moment_kgm += station.default_kg * station.at.x_aft_m;
  }
  if (total_kg > mass.max_kg) {
    table.reject("max_kg", "at least empty mass plus default loads, " + number_text(total_kg) + " kg",
                 number_text(mass.max_kg));
  }
  if (mass.reference_kg > mass.max_kg || mass.reference_kg < mass.empty_kg) {
    table.reject("reference_kg",
                 "a number from empty_kg to max_kg, " + number_text(mass.empty_kg) + " to " +
                     number_text(mass.max_kg) + " kg",
                 number_text(mass.reference_kg));
  }
  (void)moment_kgm;
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
      row.reject("default_kg", "at most max_kg, " + number_text(station.max_kg) + " kg",
                 number_text(station.default_kg));
    }
    out.stations.push_back(station);
  }
  check_loading(table, out);
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
      row.reject("high", "a number above low, " + number_text(band.low), number_text(band.high));
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
  out.engine = read_fields(root.table("engine"), kEngineFields);
  out.mass = read_mass(root.table("mass"));
  const TomlTable probe = root.table("probe");
  out.probe = read_fields(probe, kProbeFields);
  out.probe.at = read_point(probe, "at");
  out.pitot_static = read_fields(root.table("pitot_static"), kPitotStaticFields);
  const TomlTable limits = root.table("limits");
  out.limits = read_fields(limits, kLimitFields);
  out.limits.stalls_permitted = limits.flag("stalls_permitted");
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

namespace {
std::filesystem::path types_folder() {
  return std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "aircraft" / "types";
}
}  // namespace

std::vector<std::string> list_aircraft_types() {
  std::vector<std::string> out;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(types_folder(), error)) {
    if (entry.path().extension() == ".toml") out.push_back(entry.path().stem().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::filesystem::path find_aircraft_file(const std::string& name_or_path) {
  const std::filesystem::path path(name_or_path);
  if (name_or_path.find('/') != std::string::npos || path.extension() == ".toml") return path;
  const auto known = list_aircraft_types();
  if (std::find(known.begin(), known.end(), name_or_path) != known.end()) {
    return types_folder() / (name_or_path + ".toml");
  }
  std::string names;
  for (const auto& name : known) names += (names.empty() ? "" : ", ") + name;
  throw InputError("aircraft: expected one of " + names + " or a path to a .toml file, found \"" +
                   name_or_path + "\"");
}

}  // namespace stallwright
