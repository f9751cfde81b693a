#pragma once
#include <limits>
#include <string>
#include <vector>

namespace stallwright {

/// A number with no value yet: a forgotten field shows up as NaN instead of as a plausible zero.
inline constexpr double kUnset = std::numeric_limits<double>::quiet_NaN();

/// A point in structural axes: x aft of the datum, y to the right, z up, all in metres.
struct Station3 {
  double x_aft_m = kUnset;
  double y_right_m = kUnset;
  double z_up_m = kUnset;
};

/// Aerofoil section: what one strip does in two-dimensional flow (see aircraft/section.hpp for the equations).
struct SectionType {
  std::string name;
  double lift_slope_per_rad = kUnset;       ///< a0
  double zero_lift_rad = kUnset;            ///< angle of attack of zero lift, flaps up
  double stall_rad = kUnset;                ///< alpha*: x0 = 1/2 here, measured from the chord, rising alpha
  double negative_stall_rad = kUnset;       ///< the same on the inverted side, a negative angle
  double stall_width_rad = kUnset;          ///< x0 = 1/(1 + exp((alpha - alpha*)/width)); small = abrupt
  double profile_drag = kUnset;             ///< cd at cl_min_drag, attached flow
  double cl_min_drag = kUnset;              ///< cl of least profile drag
  double drag_rise = kUnset;                ///< k in cd = cd0 + k (cl - cl_min_drag)^2
  double moment = kUnset;                   ///< c_m about the quarter chord, attached
  double flat_plate_normal_force = kUnset;  ///< normal-force coefficient at 90 deg
  double tau1_chords = kUnset;              ///< relaxation of separation, in chords travelled
  double tau2_chords = kUnset;              ///< delay of the start of separation, in chords travelled
};

/// One straight-line section of a lifting surface is spanned between two of these.
struct SurfaceStation {
  double span_m = kUnset;  ///< distance from the root along the span: y for wing and tail, height for a fin
  double x_quarter_aft_m = kUnset;  ///< quarter-chord point, aft of the datum
  double rise_m = kUnset;           ///< z up for wing and tail (dihedral); y for a fin (0)
  double chord_m = kUnset;
  double twist_rad = kUnset;  ///< chord against the body x axis, nose up positive
};

/// A trailing-edge control: elevator, rudder, or the pair of ailerons.
struct ControlSurface {
  double inboard_m = kUnset;  ///< spanwise extent
  double outboard_m = kUnset;
  double effectiveness = kUnset;     ///< shift of zero-lift angle per angle of deflection, 0..1
  double stall_shift = kUnset;       ///< loss of stall angle per trailing-edge-down deflection, rad/rad
  double drag_per_rad2 = kUnset;     ///< profile drag added, times deflection squared
  double max_positive_rad = kUnset;  ///< trailing edge down (left for the rudder)
  double max_negative_rad = kUnset;  ///< trailing edge up (right for the rudder), given positive
  double rate_limit_radps = kUnset;  ///< fastest the hands and the linkage move it
};

/// What a flap setting does to the sections that carry the flap.
struct FlapSetting {
  double deflection_rad = kUnset;
  double zero_lift_shift_rad = kUnset;  ///< negative: more lift at the same angle
  double stall_shift_rad = kUnset;      ///< usually negative
  double profile_drag = kUnset;         ///< added to cd
  double moment = kUnset;               ///< added to c_m (nose down is negative)
  double limit_speed_mps = kUnset;      ///< V_FE for this setting, CAS (no limit at zero: V_NE)
};

struct LiftingSurfaceType {
  std::vector<SurfaceStation> stations;
  SectionType section;
};

struct BodyType {
  double drag_area_m2 = kUnset;            ///< parasite drag area, fuselage, gear and all that is not a strip
  double side_force_area_m2 = kUnset;      ///< dY/d(beta) / qbar of the body alone, m2/rad
  double crossflow_area_up_m2 = kUnset;    ///< drag area to flow along body z (angle 90 deg)
  double crossflow_area_side_m2 = kUnset;  ///< drag area to flow along body y
  double munk_volume_m3 = kUnset;          ///< (k2 - k1) x volume: destabilising moment 2 qbar vol sin cos
  double radius_at_wing_m = kUnset;        ///< of the round body with the same cross-section at the wing
  Station3 centre;                         ///< where body forces act
};

/// Fixed-pitch propeller: coefficients against advance ratio J = V/(n D).
struct PropellerType {
  double diameter_m = kUnset;
  Station3 hub;
  double thrust_line_up_rad = kUnset;     ///< shaft against body x, nose up positive
  double thrust_line_right_rad = kUnset;  ///< shaft to the right positive
  double inertia_kgm2 = kUnset;           ///< propeller and crankshaft about the shaft
  double normal_force_slope = kUnset;     ///< disc normal force per rad of inflow: N = slope q A alpha_disc
  double asymmetric_moment = kUnset;      ///< yawing moment of the disc at an angle: M = slope T D alpha_disc
  double swirl_recovery = kUnset;         ///< share of the slipstream's swirl that reaches fin and tail, 0..1
  std::vector<double> advance_ratio;
  std::vector<double> thrust_coefficient;  ///< C_T = T/(rho n^2 D^4)
  std::vector<double> power_coefficient;   ///< C_P = P/(rho n^3 D^5), negative where it windmills
};

struct EngineType {
  double rated_power_w = kUnset;  ///< at rated speed, sea level
  double rated_speed_radps = kUnset;
  double idle_speed_radps = kUnset;    ///< on the ground, propeller turning in still air
  double friction_torque_nm = kUnset;  ///< motoring torque at rated speed
  double throttle_lag_s = kUnset;
  double fuel_flow_kgps = kUnset;  ///< at rated power (for the record; mass is held in a sortie)
};

struct LoadStation {
  std::string name;
  Station3 at;
  double max_kg = kUnset;
  double default_kg = kUnset;
};

struct MassType {
  double empty_kg = kUnset;
  Station3 empty_cg;
  double empty_ixx_kgm2 = kUnset, empty_iyy_kgm2 = kUnset, empty_izz_kgm2 = kUnset, empty_ixz_kgm2 = kUnset;
  std::vector<LoadStation> stations;  ///< crew, bags, fuel
  double max_kg = kUnset;
  double reference_kg = kUnset;          ///< the mass card speeds are given for
  std::vector<double> envelope_mass_kg;  ///< rising; the two lists below go with it
  std::vector<double> envelope_forward_m;
  std::vector<double> envelope_aft_m;
};

/// Where the angle-of-attack probe sits and how it is built (see sim/sensing/aoa_probe.hpp).
struct ProbeType {
  Station3 at;
  double port_angle_rad = kUnset;  ///< each port off the probe axis
  double mount_rad = kUnset;       ///< probe axis below the body x axis, so that it looks into the flow
};

/// Pitot-static system: static-pressure error as a share of impact pressure, and tube dimensions for the lag.
struct PitotStaticType {
  double error_at_zero_alpha = kUnset;  ///< (p_indicated - p)/q_c at alpha = 0
  double error_per_rad = kUnset;        ///< change of it with alpha
  double tube_length_m = kUnset, tube_diameter_m = kUnset, volume_m3 = kUnset;
};

struct LimitsType {
  double v_ne_mps = kUnset, v_no_mps = kUnset, v_a_mps = kUnset, v_fe_mps = kUnset;
  double book_v_s1_mps = kUnset,
         book_v_s0_mps = kUnset;       ///< CAS, maximum mass, idle: as a flight manual would print
  double approach_speed_mps = kUnset;  ///< the book's, CAS, maximum mass
  double max_load_factor = kUnset, min_load_factor = kUnset;
  bool stalls_permitted = false;
};

/// Fixed small differences between strips, drawn once per airframe from its own seed.
struct AsymmetryType {
  double stall_sd_rad = kUnset;
  double twist_sd_rad = kUnset;
};

/// A figure that the class of aeroplane makes credible, written down before the model was run.
struct CredibleBand {
  std::string quantity;  ///< key that `inspect` knows
  double low = kUnset, high = kUnset;
  std::string unit, reason;
};

/// All that a type file says. Plain data; the geometry of strips is made from it in aircraft.hpp.
struct AircraftType {
  std::string key;  ///< file name without ending
  std::string name, summary;
  LiftingSurfaceType wing, tail, fin;
  ControlSurface aileron, elevator, rudder;
  double flap_inboard_m = kUnset, flap_outboard_m = kUnset;
  double flap_rate_radps = kUnset;
  std::vector<FlapSetting> flaps;  ///< rising deflection, the first is zero
  BodyType body;
  PropellerType propeller;
  EngineType engine;
  MassType mass;
  ProbeType probe;
  PitotStaticType pitot_static;
  LimitsType limits;
  AsymmetryType asymmetry;
  double horn_alpha_rad =
      kUnset;  ///< the aeroplane's own stall warning sounds above this (flaps up, body axis)
  double buffet_strength = kUnset;  ///< rms of the unsteady normal-force coefficient of a separated strip
  std::vector<CredibleBand> bands;
};

}  // namespace stallwright
