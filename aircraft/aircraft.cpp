#include "aircraft/aircraft.hpp"

#include <algorithm>
#include <cstdint>
#include <stdexcept>

#include "aircraft/lifting_surface.hpp"
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/table.hpp"
#include "aircraft/propulsion.hpp"

namespace stallwright {
namespace {

Vec3<double> body_point(const Station3& at, const Station3& cg) {
  return {cg.x_aft_m - at.x_aft_m, at.y_right_m - cg.y_right_m, cg.z_up_m - at.z_up_m};
}

template <std::size_t N, std::size_t M>
void copy_influence(const std::vector<std::vector<double>>& from, Influence<N, M>& to) {
  for (std::size_t k = 0; k < N; ++k)
    for (std::size_t j = 0; j < M; ++j) to[k][j] = from[k][j];
}

/// Approximately normal, deterministic, from a seed and an index: the sum of twelve uniforms less six, each from
/// one round of a 64-bit finaliser. Airframe building must not depend on the flight's random streams.
double seeded_normal(std::uint64_t seed, std::uint64_t index) {
  double sum = -6.0;
  for (std::uint64_t k = 0; k < 12; ++k) {
    std::uint64_t z =
        seed * 0x9E3779B97F4A7C15u + index * 0xBF58476D1CE4E5B9u + (k + 1) * 0x94D049BB133111EBu;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    z ^= z >> 31;
    sum += static_cast<double>(z >> 11) * 0x1p-53;
  }
  return sum;
}

void turn_nose_up(Strip& s, double angle_rad) {
  const double sine = math::sin(angle_rad), cosine = math::cos(angle_rad);
  const Vec3<double> chord = s.chord_B, normal = s.normal_B;
  s.chord_B = chord * cosine - normal * sine;
  s.normal_B = normal * cosine + chord * sine;
}

double reach(const LiftingSurfaceType& surface) { return surface.stations.back().span_m; }

/// Share of a strip's width that lies in a stream tube of the propeller's axis, by its distance from the axis.
double washed_share(const Strip& s, double radius_m, const Vec3<double>& hub_B) {
  const double dy = s.r_B.y - hub_B.y, dz = s.r_B.z - hub_B.z;
  const bool vertical = math::abs(s.span_B.z) > 0.7;
  const double across = vertical ? dy : dz;
  const double along = vertical ? dz : dy;
  if (math::abs(across) >= radius_m) return 0.0;
  const double half_chord = math::sqrt(radius_m * radius_m - across * across);
  const double low = std::max(along - 0.5 * s.width_m, -half_chord);
  const double high = std::min(along + 0.5 * s.width_m, half_chord);
  return std::clamp((high - low) / s.width_m, 0.0, 1.0);
}

/// Growth of the axial slipstream speed behind the disc, 1 at the disc to 2 far behind:
/// 1 + x/sqrt(x^2 + R^2)   [momentum theory with a vortex-cylinder wake, GLAUERT].
double slipstream_growth(const Strip& s, double radius_m, const Vec3<double>& hub_B) {
  const double behind = hub_B.x - s.r_B.x;
  return std::max(0.0, 1.0 + behind / math::sqrt(behind * behind + radius_m * radius_m));
}

void wash_strips(Aircraft& a) {
  const double radius = 0.5 * a.type.propeller.diameter_m;
  // A loaded stream tube draws in to about 0.9 of the disc's radius at climb thrust; taken as fixed.
  constexpr double kContraction = 0.9;
  for (Strip& s : a.strips) {
    s.slipstream_share = washed_share(s, kContraction * radius, a.hub_B);
    s.slipstream_growth = slipstream_growth(s, radius, a.hub_B);
  }
}

/// Inverse of the tridiagonal matrix of Aircraft::separation_spread, a column at a time by elimination (Thomas).
/// By hand, since the state path must have the same bits from every compiler.
void spread_separation(Aircraft& a) {
  constexpr std::size_t n = kWingStrips;
  std::array<double, n> s{}, upper{};
  for (std::size_t i = 0; i < n; ++i) {
    const double length = kSpreadChords * a.strips[i].chord_m / a.strips[i].width_m;
    s[i] = length * length;
  }
  for (std::size_t column = 0; column < n; ++column) {
    std::array<double, n> x{};
    for (std::size_t i = 0; i < n; ++i) {
      const double ends = (i == 0 ? 0.0 : s[i]) + (i + 1 == n ? 0.0 : s[i]);
      const double before = i == 0 ? 0.0 : s[i];
      const double pivot = 1.0 + ends + (i == 0 ? 0.0 : before * upper[i - 1]);
      upper[i] = i + 1 == n ? 0.0 : -s[i] / pivot;
      x[i] = ((i == column ? 1.0 : 0.0) + (i == 0 ? 0.0 : before * x[i - 1])) / pivot;
    }
    for (std::size_t i = n - 1; i-- > 0;) x[i] -= upper[i] * x[i + 1];
    for (std::size_t i = 0; i < n; ++i) a.separation_spread[i][column] = x[i];
  }
}

double total(const std::vector<std::vector<double>>& influence) {
  double sum = 0.0;
  for (const auto& row : influence)
    for (const double each : row) sum += each;
  return sum;
}

/// Where tail and fin stand against the wing root, whose wake they may meet.
void place_in_wake(Aircraft& a, const Vec3<double>& wing_root_B) {
  for (std::size_t i = kWingStrips; i < kStrips; ++i) {
    a.strips[i].wake_arm_m = wing_root_B.x - a.strips[i].r_B.x;
    a.strips[i].wake_rise_m = wing_root_B.z - a.strips[i].r_B.z;
  }
}

/// Flow of sideways speed U round a round body (potential U y (1 + R^2/r^2), slender-body theory): it has the vertical
/// speed -2 U R^2 y z/r^4 at a place y, z from the axis. Inside the body, which the strips run through, r is held at R.
void bend_round_body(Aircraft& a) {
  const double r2_body = a.type.body.radius_at_wing_m * a.type.body.radius_at_wing_m;
  if (r2_body <= 0.0) return;
  constexpr int kPlaces = 16;  // across a strip, over which the flow near the body changes much
  for (std::size_t i = 0; i < kWingStrips; ++i) {
    Strip& strip = a.strips[i];
    for (int k = 0; k < kPlaces; ++k) {
      const double along = ((k + 0.5) / kPlaces - 0.5) * strip.width_m;
      const Vec3<double> at = strip.r_B + strip.span_B * along - a.body_centre_B;
      const double r2 = std::max(at.y * at.y + at.z * at.z, r2_body);
      strip.body_crossflow += 2.0 * r2_body * at.y * at.z / (r2 * r2) / kPlaces;
    }
  }
}

void share_controls(Aircraft& a) {
  const AircraftType& t = a.type;
  for (std::size_t i = 0; i < kStrips; ++i) {
    Strip& s = a.strips[i];
    if (i < kWingStrips) {
      s.flap_share = overlap_share(s, t.flap_inboard_m, t.flap_outboard_m);
      s.control_share = overlap_share(s, t.aileron.inboard_m, t.aileron.outboard_m);
    } else if (i < kWingStrips + kTailStrips) {
      s.control_share = overlap_share(s, t.elevator.inboard_m, t.elevator.outboard_m);
    } else {
      s.control_share = overlap_share(s, t.rudder.inboard_m, t.rudder.outboard_m);
    }
  }
}

void make_uneven(Aircraft& a, std::uint64_t airframe_seed) {
  if (airframe_seed == 0) return;
  for (std::size_t i = 0; i < kWingStrips; ++i) {
    a.strips[i].stall_offset_rad = a.type.asymmetry.stall_sd_rad * seeded_normal(airframe_seed, 2 * i);
    turn_nose_up(a.strips[i], a.type.asymmetry.twist_sd_rad * seeded_normal(airframe_seed, 2 * i + 1));
  }
}

}  // namespace

Aircraft make_aircraft(const AircraftType& type, const Loading& loading, std::uint64_t airframe_seed) {
  return make_aircraft(type, mass_properties(type, loading), airframe_seed);
}

Aircraft make_aircraft(const AircraftType& type, const MassProperties& mass, std::uint64_t airframe_seed) {
  for (const LiftingSurfaceType* surface : {&type.wing, &type.tail, &type.fin})
    if (surface->stations.size() < 2)
      throw std::invalid_argument("a lifting surface needs at least two stations");
  if (type.flaps.empty()) throw std::invalid_argument("an aeroplane needs at least the flap setting zero");

  Aircraft a;
  a.type = type;
  a.mass = mass;
  a.inertia_inverse = inverse(a.mass.inertia);
  const Station3& cg = a.mass.cg;

  const auto wing = make_strips(type.wing, SurfaceKind::symmetric_pair, kWingStrips, cg);
  const auto tail = make_strips(type.tail, SurfaceKind::symmetric_pair, kTailStrips, cg);
  const auto fin = make_strips(type.fin, SurfaceKind::vertical, kFinStrips, cg);
  std::copy(wing.begin(), wing.end(), a.strips.begin());
  std::copy(tail.begin(), tail.end(), a.strips.begin() + kWingStrips);
  std::copy(fin.begin(), fin.end(), a.strips.begin() + kWingStrips + kTailStrips);

  copy_influence(self_influence(wing), a.wing_influence);
  copy_influence(self_influence(tail), a.tail_influence);
  copy_influence(self_influence(fin), a.fin_influence);
  copy_influence(cross_influence(wing, tail, true), a.tail_by_wing);
  copy_influence(cross_influence(wing, fin, true), a.fin_by_wing);

  a.span_m = 2.0 * reach(type.wing);
  double area = 0.0, chord_moment = 0.0;
  for (const Strip& s : wing) {
    area += s.chord_m * (a.span_m / kWingStrips);  // plan area, dihedral left out
    chord_moment += s.chord_m * s.chord_m * (a.span_m / kWingStrips);
  }
  a.wing_area_m2 = area;
  a.mean_chord_m = chord_moment / area;  // mean aerodynamic chord

  a.hub_B = body_point(type.propeller.hub, cg);
  const double up = type.propeller.thrust_line_up_rad, right = type.propeller.thrust_line_right_rad;
  a.shaft_B = {math::cos(up) * math::cos(right), math::cos(up) * math::sin(right), -math::sin(up)};
  a.disc_area_m2 = 0.25 * math::kPi * type.propeller.diameter_m * type.propeller.diameter_m;
  a.body_centre_B = body_point(type.body.centre, cg);
  a.probe_B = body_point(type.probe.at, cg);
  const auto at_probe = point_influence(wing, a.probe_B);
  std::copy(at_probe.begin(), at_probe.end(), a.probe_by_wing.begin());

  const SurfaceStation& wing_root = type.wing.stations.front();
  const SurfaceStation& tail_root = type.tail.stations.front();
  a.tail_arm_m = tail_root.x_quarter_aft_m - wing_root.x_quarter_aft_m;
  a.wake_travel_m =
      a.tail_arm_m * total(cross_influence(wing, tail, false)) / total(cross_influence(wing, tail, true));
  place_in_wake(a, body_point({wing_root.x_quarter_aft_m, 0.0, wing_root.rise_m}, cg));
  bend_round_body(a);

  // Idle: the share of full torque that turns the propeller at idle speed in still air at sea level.
  const EngineType& e = type.engine;
  const double n = e.idle_speed_radps / (2.0 * math::kPi);
  const double d = type.propeller.diameter_m;
  const double cp_static =
      math::interpolate(type.propeller.advance_ratio, type.propeller.power_coefficient, 0.0);
  const double drag_torque = 1.225 * n * n * d * d * d * d * d * cp_static / (2.0 * math::kPi);
  const double friction = friction_torque(e, e.idle_speed_radps);
  a.idle_throttle = (drag_torque + friction) / (e.rated_power_w / e.rated_speed_radps + e.friction_torque_nm);

  spread_separation(a);
  share_controls(a);
  wash_strips(a);
  make_uneven(a, airframe_seed);
  return a;
}

Aircraft mirrored(const Aircraft& aircraft) {
  Aircraft m = aircraft;
  const auto flip = [](Vec3<double> v) { return Vec3<double>{v.x, -v.y, v.z}; };
  const auto reflect_pair = [&](std::size_t first, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) {
      Strip s = aircraft.strips[first + count - 1 - k];
      s.r_B = flip(s.r_B);
      s.chord_B = flip(s.chord_B);
      s.normal_B = flip(s.normal_B);
      s.span_B = {-s.span_B.x, s.span_B.y, -s.span_B.z};  // still left to right
      s.span_position_m = -s.span_position_m;
      s.body_crossflow = -s.body_crossflow;
      m.strips[first + k] = s;
    }
  };
  reflect_pair(0, kWingStrips);
  reflect_pair(kWingStrips, kTailStrips);
  for (std::size_t k = kWingStrips + kTailStrips; k < kStrips; ++k) {
    Strip& s = m.strips[k];
    s.r_B = flip(s.r_B);
    s.chord_B = flip(s.chord_B);
    s.normal_B = cross(s.chord_B, s.span_B);  // still to the right
  }
  for (std::size_t k = 0; k < kWingStrips; ++k)
    for (std::size_t j = 0; j < kWingStrips; ++j) {
      m.wing_influence[k][j] = aircraft.wing_influence[kWingStrips - 1 - k][kWingStrips - 1 - j];
      m.separation_spread[k][j] = aircraft.separation_spread[kWingStrips - 1 - k][kWingStrips - 1 - j];
    }
  for (std::size_t k = 0; k < kTailStrips; ++k)
    for (std::size_t j = 0; j < kWingStrips; ++j)
      m.tail_by_wing[k][j] = aircraft.tail_by_wing[kTailStrips - 1 - k][kWingStrips - 1 - j];
  for (std::size_t k = 0; k < kFinStrips; ++k)
    for (std::size_t j = 0; j < kWingStrips; ++j)
      m.fin_by_wing[k][j] = -aircraft.fin_by_wing[k][kWingStrips - 1 - j];
  for (std::size_t j = 0; j < kWingStrips; ++j)
    m.probe_by_wing[j] = flip(aircraft.probe_by_wing[kWingStrips - 1 - j]);
  // What a load on one side moves: the centre of gravity and with it every place, and the products of inertia.
  m.mass.cg.y_right_m = -aircraft.mass.cg.y_right_m;
  for (Vec3<double>* place : {&m.hub_B, &m.shaft_B, &m.body_centre_B, &m.probe_B}) *place = flip(*place);
  for (const std::size_t k : {1u, 3u, 5u, 7u}) {  // those with one index on y
    m.mass.inertia.m[k] = -aircraft.mass.inertia.m[k];
    m.inertia_inverse.m[k] = -aircraft.inertia_inverse.m[k];
  }
  return m;
}

}  // namespace stallwright
