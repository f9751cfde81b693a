#pragma once
#include <array>
#include <vector>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/strip.hpp"

namespace stallwright {

/// Which way a surface extends from its root: both sides along y, or up along -z.
enum class SurfaceKind { symmetric_pair, vertical };

/// Cuts a surface into strips of equal width, left to right (or root to tip for a fin).
///   cg  centre of gravity in structural axes: strip positions are taken from it.
/// Chord, twist, quarter-chord line and rise are interpolated linearly between stations.
std::vector<Strip> make_strips(const LiftingSurfaceType& surface, SurfaceKind kind, std::size_t count,
                               const Station3& cg);

/// Share of a strip that lies between two spanwise limits given for one side.
double overlap_share(const Strip& strip, double inboard_m, double outboard_m);

/// Velocity induced at a point by a unit-strength horseshoe vortex (circulation 1 m2/s, lift up), m/s, body axes.
///   left_B, right_B  ends of the bound vortex; the trailing legs run straight aft along -x to infinity
///   core_m           radius inside which the singular velocity is rounded off (Rankine-like: r^2 -> r^2 + core^2)
///   with_bound       false: trailing legs alone (Prandtl's lifting line at its own control points)
/// Biot and Savart's law for straight segments [GLAUERT].
Vec3<double> horseshoe_velocity(const Vec3<double>& point_B, const Vec3<double>& left_B,
                                const Vec3<double>& right_B, double core_m, bool with_bound);

/// Row k, column j: downwash (along normal_B of strip k, upward flow negative) at the control point of strip k
/// per unit circulation of strip j, trailing legs only: w_k = sum_j D_kj Gamma_j, 1/m.
/// The tip legs are drawn in by a quarter of a strip's width and each control point lies midway between its strip's
/// legs, tip strips too: so the coarse sum meets Prandtl's integral (16 strips: slope within 1 %, induced drag 2 %).
std::vector<std::vector<double>> self_influence(const std::vector<Strip>& strips);

/// Downwash along the normals of `points` per unit circulation of each of the `vortices` strips, bound legs included or not.
std::vector<std::vector<double>> cross_influence(const std::vector<Strip>& vortices,
                                                 const std::vector<Strip>& points, bool with_bound);

/// Velocity (body axes) at one point per unit circulation of each strip, bound legs included.
std::vector<Vec3<double>> point_influence(const std::vector<Strip>& vortices, const Vec3<double>& point_B);

}  // namespace stallwright
