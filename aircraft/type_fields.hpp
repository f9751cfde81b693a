#pragma once
#include <array>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/toml_reader.hpp"

/// The numbers of an aeroplane's type file: key, unit and range there, member here. aircraft/types/README.md
/// says what each means; a test holds the two together.
namespace stallwright::type_fields {

inline constexpr std::array kPointFields{
    Field<Station3>{{"x_aft_m", unit::kMetre, -10, 20}, &Station3::x_aft_m},
    Field<Station3>{{"y_right_m", unit::kMetre, -10, 10}, &Station3::y_right_m},
    Field<Station3>{{"z_up_m", unit::kMetre, -5, 5}, &Station3::z_up_m},
};

inline constexpr std::array kSectionFields{
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
    Field<SectionType>{{"tau2_chords", unit::kChord, 0.1, 20}, &SectionType::tau2_chords},
};

inline constexpr std::array kStationFields{
    Field<SurfaceStation>{{"span_m", unit::kMetre, 0, 30}, &SurfaceStation::span_m},
    Field<SurfaceStation>{{"x_quarter_aft_m", unit::kMetre, -10, 20}, &SurfaceStation::x_quarter_aft_m},
    Field<SurfaceStation>{{"rise_m", unit::kMetre, -5, 5}, &SurfaceStation::rise_m},
    Field<SurfaceStation>{{"chord_m", unit::kMetre, 0.05, 10}, &SurfaceStation::chord_m},
    Field<SurfaceStation>{{"twist_deg", unit::kDegree, -15, 15}, &SurfaceStation::twist_rad},
};

inline constexpr std::array kControlFields{
    Field<ControlSurface>{{"inboard_m", unit::kMetre, 0, 30}, &ControlSurface::inboard_m},
    Field<ControlSurface>{{"outboard_m", unit::kMetre, 0, 30}, &ControlSurface::outboard_m},
    Field<ControlSurface>{{"effectiveness", unit::kNone, 0.05, 1}, &ControlSurface::effectiveness},
    Field<ControlSurface>{{"stall_shift", unit::kNone, 0, 1}, &ControlSurface::stall_shift},
    Field<ControlSurface>{{"drag_per_rad2", unit::kNone, 0, 2}, &ControlSurface::drag_per_rad2},
    Field<ControlSurface>{{"max_positive_deg", unit::kDegree, 1, 60}, &ControlSurface::max_positive_rad},
    Field<ControlSurface>{{"max_negative_deg", unit::kDegree, 1, 60}, &ControlSurface::max_negative_rad},
    Field<ControlSurface>{{"rate_limit_degps", unit::kDegreePerSecond, 5, 500},
                          &ControlSurface::rate_limit_radps},
};

inline constexpr std::array kFlapFields{
    Field<FlapSetting>{{"deflection_deg", unit::kDegree, 0, 60}, &FlapSetting::deflection_rad},
    Field<FlapSetting>{{"zero_lift_shift_deg", unit::kDegree, -20, 0}, &FlapSetting::zero_lift_shift_rad},
    Field<FlapSetting>{{"stall_shift_deg", unit::kDegree, -15, 5}, &FlapSetting::stall_shift_rad},
    Field<FlapSetting>{{"profile_drag", unit::kNone, 0, 0.3}, &FlapSetting::profile_drag},
    Field<FlapSetting>{{"moment", unit::kNone, -0.5, 0.1}, &FlapSetting::moment},
    Field<FlapSetting>{{"limit_speed_kt", unit::kKnot, 30, 400}, &FlapSetting::limit_speed_mps},
};

inline constexpr std::array kBodyFields{
    Field<BodyType>{{"drag_area_m2", unit::kSquareMetre, 0, 5}, &BodyType::drag_area_m2},
    Field<BodyType>{{"side_force_area_m2", unit::kSquareMetre, 0, 20}, &BodyType::side_force_area_m2},
    Field<BodyType>{{"crossflow_area_up_m2", unit::kSquareMetre, 0, 30}, &BodyType::crossflow_area_up_m2},
    Field<BodyType>{{"crossflow_area_side_m2", unit::kSquareMetre, 0, 30}, &BodyType::crossflow_area_side_m2},
    Field<BodyType>{{"munk_volume_m3", unit::kCubicMetre, 0, 50}, &BodyType::munk_volume_m3},
    Field<BodyType>{{"radius_at_wing_m", unit::kMetre, 0, 3}, &BodyType::radius_at_wing_m},
};

inline constexpr std::array kPropellerFields{
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

inline constexpr std::array kEngineFields{
    Field<EngineType>{{"rated_power_kw", unit::kKilowatt, 10, 500}, &EngineType::rated_power_w},
    Field<EngineType>{{"rated_speed_rpm", unit::kRpm, 1000, 4000}, &EngineType::rated_speed_radps},
    Field<EngineType>{{"idle_speed_rpm", unit::kRpm, 300, 1500}, &EngineType::idle_speed_radps},
    Field<EngineType>{{"friction_torque_nm", unit::kNewtonMetre, 1, 300}, &EngineType::friction_torque_nm},
    Field<EngineType>{{"throttle_lag_s", unit::kSecond, 0.05, 5}, &EngineType::throttle_lag_s},
    Field<EngineType>{{"fuel_flow_kgph", unit::kKilogramPerHour, 1, 200}, &EngineType::fuel_flow_kgps},
};

inline constexpr std::array kMassFields{
    Field<MassType>{{"empty_kg", unit::kKilogram, 100, 5000}, &MassType::empty_kg},
    Field<MassType>{{"empty_ixx_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_ixx_kgm2},
    Field<MassType>{{"empty_iyy_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_iyy_kgm2},
    Field<MassType>{{"empty_izz_kgm2", unit::kKilogramSquareMetre, 50, 50000}, &MassType::empty_izz_kgm2},
    Field<MassType>{{"empty_ixz_kgm2", unit::kKilogramSquareMetre, -5000, 5000}, &MassType::empty_ixz_kgm2},
    Field<MassType>{{"max_kg", unit::kKilogram, 150, 6000}, &MassType::max_kg},
    Field<MassType>{{"reference_kg", unit::kKilogram, 150, 6000}, &MassType::reference_kg},
};
inline constexpr NumberField kEnvelopeMass{"envelope_mass_kg", unit::kKilogram, 100, 6000};
inline constexpr NumberField kEnvelopeForward{"envelope_forward_m", unit::kMetre, -10, 20};
inline constexpr NumberField kEnvelopeAft{"envelope_aft_m", unit::kMetre, -10, 20};

inline constexpr std::array kLoadFields{
    Field<LoadStation>{{"max_kg", unit::kKilogram, 0, 1000}, &LoadStation::max_kg},
    Field<LoadStation>{{"default_kg", unit::kKilogram, 0, 1000}, &LoadStation::default_kg},
};

inline constexpr std::array kProbeFields{
    Field<ProbeType>{{"port_angle_deg", unit::kDegree, 10, 80}, &ProbeType::port_angle_rad},
    Field<ProbeType>{{"mount_deg", unit::kDegree, -30, 45}, &ProbeType::mount_rad},
};

inline constexpr std::array kPitotStaticFields{
    Field<PitotStaticType>{{"error_at_zero_alpha", unit::kNone, -0.2, 0.2},
                           &PitotStaticType::error_at_zero_alpha},
    Field<PitotStaticType>{{"error_per_rad", unit::kPerRad, -1, 1}, &PitotStaticType::error_per_rad},
    Field<PitotStaticType>{{"tube_length_m", unit::kMetre, 0.1, 20}, &PitotStaticType::tube_length_m},
    Field<PitotStaticType>{{"tube_diameter_mm", unit::kMillimetre, 1, 20}, &PitotStaticType::tube_diameter_m},
    Field<PitotStaticType>{{"volume_cm3", unit::kCubicCentimetre, 1, 5000}, &PitotStaticType::volume_m3},
};

inline constexpr std::array kLimitFields{
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

inline constexpr std::array kAsymmetryFields{
    Field<AsymmetryType>{{"stall_sd_deg", unit::kDegree, 0, 3}, &AsymmetryType::stall_sd_rad},
    Field<AsymmetryType>{{"twist_sd_deg", unit::kDegree, 0, 2}, &AsymmetryType::twist_sd_rad},
};

inline constexpr std::array kStallFields{
    Field<AircraftType>{{"horn_alpha_deg", unit::kDegree, 0, 30}, &AircraftType::horn_alpha_rad},
    Field<AircraftType>{{"buffet_strength", unit::kNone, 0, 1}, &AircraftType::buffet_strength},
};

inline constexpr std::array kBandFields{
    Field<CredibleBand>{{"low", unit::kNone, -10000, 10000}, &CredibleBand::low},
    Field<CredibleBand>{{"high", unit::kNone, -10000, 10000}, &CredibleBand::high},
};

}  // namespace stallwright::type_fields
