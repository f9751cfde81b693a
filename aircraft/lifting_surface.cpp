#include "aircraft/lifting_surface.hpp"

#include <algorithm>
#include <cstddef>

#include "aircraft/math/elementary.hpp"
#include "aircraft/section.hpp"

namespace stallwright {
namespace {

using Vector = Vec3<double>;

Vector unit(const Vector& v) { return v * (1.0 / math::sqrt(dot(v, v))); }

/// A surface station interpolated at a distance from the root.
SurfaceStation station_at(const std::vector<SurfaceStation>& stations, double span_m) {
  std::size_t i = 0;
  while (i + 2 < stations.size() && span_m > stations[i + 1].span_m) ++i;
  const SurfaceStation& a = stations[i];
  const SurfaceStation& b = stations[i + 1];
  const double t = (span_m - a.span_m) / (b.span_m - a.span_m);
  const auto mix = [t](double p, double q) { return p + t * (q - p); };
  return {span_m, mix(a.x_quarter_aft_m, b.x_quarter_aft_m), mix(a.rise_m, b.rise_m),
          mix(a.chord_m, b.chord_m), mix(a.twist_rad, b.twist_rad)};
}

/// Slope of the surface's rise against span at a distance from the root: tan(dihedral).
double rise_slope(const std::vector<SurfaceStation>& stations, double span_m) {
  std::size_t i = 0;
  while (i + 2 < stations.size() && span_m > stations[i + 1].span_m) ++i;
  return (stations[i + 1].rise_m - stations[i].rise_m) / (stations[i + 1].span_m - stations[i].span_m);
}

/// Bound vortex of a strip: half a width to each side along the span.
Vector left_end(const Strip& s) { return s.r_B - s.span_B * (0.5 * s.width_m); }
Vector right_end(const Strip& s) { return s.r_B + s.span_B * (0.5 * s.width_m); }

/// Semi-infinite vortex from `end` straight aft (-x), unit circulation, direction aft.
Vector leg_velocity(const Vector& point, const Vector& end, double core_m) {
  const Vector d = point - end;
  const double r2 = d.y * d.y + d.z * d.z + core_m * core_m;
  // Angle term of Biot-Savart for a half-infinite line: (1 + cos), cos measured from the aft direction.
  const double length = math::sqrt(d.x * d.x + r2);
  const double factor = (1.0 - d.x / length) / (4.0 * math::kPi * r2);
  return Vector{0.0, d.z, -d.y} * factor;  // (-x) cross d
}

Vector bound_velocity(const Vector& point, const Vector& a, const Vector& b, double core_m) {
  const Vector r1 = point - a, r2 = point - b, r0 = b - a;
  const Vector c = cross(r1, r2);
  const double n1 = math::sqrt(dot(r1, r1)), n2 = math::sqrt(dot(r2, r2));
  const double denominator = dot(c, c) + core_m * core_m * dot(r0, r0);
  if (denominator <= 0.0 || n1 <= 0.0 || n2 <= 0.0) return {0.0, 0.0, 0.0};
  return c * (dot(r0, r1 * (1.0 / n1) - r2 * (1.0 / n2)) / (4.0 * math::kPi * denominator));
}

}  // namespace

void keep_pace(Strip& strip, const SectionType& section) {
  strip.separation_per_m = 1.0 / (section.tau1_chords * strip.chord_m);
  strip.delay_per_m = 1.0 / (section.tau2_chords * strip.chord_m);
  strip.inflow_per_m = 1.0 / (kInflowChords * strip.chord_m);
  strip.per_stall_width = 1.0 / section.stall_width_rad;
  strip.separation_gap = separation_gap(section);
}

std::vector<Strip> make_strips(const LiftingSurfaceType& surface, SurfaceKind kind, std::size_t count,
                               const Station3& cg) {
  const std::vector<SurfaceStation>& stations = surface.stations;
  const double reach = stations.back().span_m;
  const bool pair = kind == SurfaceKind::symmetric_pair;
  const double width = (pair ? 2.0 : 1.0) * reach / static_cast<double>(count);
  std::vector<Strip> strips(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double along = (static_cast<double>(i) + 0.5) * width - (pair ? reach : 0.0);
    const double from_root = math::abs(along);
    const SurfaceStation at = station_at(stations, from_root);
    const double side = along < 0.0 ? -1.0 : 1.0;
    const double slope = rise_slope(stations, from_root);
    Strip& s = strips[i];
    s.span_position_m = along;
    if (pair) {
      s.r_B = {cg.x_aft_m - at.x_quarter_aft_m, along - cg.y_right_m, cg.z_up_m - at.rise_m};
      s.span_B = unit({0.0, 1.0, -side * slope});
      s.chord_B = {math::cos(at.twist_rad), 0.0, -math::sin(at.twist_rad)};
    } else {
      s.r_B = {cg.x_aft_m - at.x_quarter_aft_m, at.rise_m - cg.y_right_m, cg.z_up_m - along};
      s.span_B = {0.0, 0.0, -1.0};
      s.chord_B = {math::cos(at.twist_rad), -math::sin(at.twist_rad), 0.0};
    }
    s.normal_B = unit(cross(s.chord_B, s.span_B));
    s.span_B = cross(s.normal_B, s.chord_B);
    s.chord_m = at.chord_m;
    s.width_m = width * math::sqrt(1.0 + (pair ? slope * slope : 0.0));
    s.area_m2 = s.chord_m * s.width_m;
    keep_pace(s, surface.section);
  }
  return strips;
}

double overlap_share(const Strip& strip, double inboard_m, double outboard_m) {
  const double centre = math::abs(strip.span_position_m);
  const double low = std::max(centre - 0.5 * strip.width_m, inboard_m);
  const double high = std::min(centre + 0.5 * strip.width_m, outboard_m);
  return std::clamp((high - low) / strip.width_m, 0.0, 1.0);
}

Vec3<double> horseshoe_velocity(const Vec3<double>& point_B, const Vec3<double>& left_B,
                                const Vec3<double>& right_B, double core_m, bool with_bound) {
  // Lift up needs circulation from the left end aft to the right: the bound vortex runs left to right seen as
  // +y rotation vector (nose-up swirl), fed by the left leg coming forward and drained by the right leg going aft.
  Vector v = leg_velocity(point_B, right_B, core_m) - leg_velocity(point_B, left_B, core_m);
  if (with_bound) v = v + bound_velocity(point_B, left_B, right_B, core_m);
  return v;
}

std::vector<std::vector<double>> self_influence(const std::vector<Strip>& strips) {
  const std::size_t n = strips.size();
  std::vector<double> left(n), right(n);
  for (std::size_t j = 0; j < n; ++j) {
    // Prandtl's planar line: only distances along the span count, sweep and dihedral are neglected here.
    const double half = 0.5 * strips[j].width_m;
    left[j] = strips[j].span_position_m - (j == 0 ? 0.5 * half : half);
    right[j] = strips[j].span_position_m + (j + 1 == n ? 0.5 * half : half);
  }
  std::vector<std::vector<double>> d(n, std::vector<double>(n, 0.0));
  for (std::size_t k = 0; k < n; ++k) {
    const double y = 0.5 * (left[k] + right[k]);
    for (std::size_t j = 0; j < n; ++j)
      d[k][j] = (1.0 / (y - left[j]) - 1.0 / (y - right[j])) / (4.0 * math::kPi);
  }
  return d;
}

std::vector<std::vector<double>> cross_influence(const std::vector<Strip>& vortices,
                                                 const std::vector<Strip>& points, bool with_bound) {
  std::vector<std::vector<double>> e;
  for (const Strip& p : points) {
    std::vector<double> row;
    for (const Strip& s : vortices)
      row.push_back(
          dot(horseshoe_velocity(p.r_B, left_end(s), right_end(s), 0.5 * s.width_m, with_bound), p.normal_B));
    e.push_back(row);
  }
  return e;
}

std::vector<Vec3<double>> point_influence(const std::vector<Strip>& vortices, const Vec3<double>& point_B) {
  std::vector<Vec3<double>> v;
  for (const Strip& s : vortices)
    v.push_back(horseshoe_velocity(point_B, left_end(s), right_end(s), 0.25 * s.width_m, true));
  return v;
}

}  // namespace stallwright
