#include "render/outside/shell.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stallwright::outside {
namespace {

using Eigen::Vector3f;
using Shell = std::vector<ShellVertex>;

// Quiet paint: cream, a matt dark panel before the pilot against glare, brick red at the tips; dark warm grey inside.
const Vector3f kCream(0.700f, 0.672f, 0.605f), kMatt(0.300f, 0.290f, 0.265f), kBrick(0.58f, 0.30f, 0.23f);
const Vector3f kStrut(0.50f, 0.48f, 0.43f);
const Vector3f kSeam(0.42f, 0.40f, 0.36f), kTrim(0.150f, 0.138f, 0.126f), kLip(0.235f, 0.218f, 0.200f);
constexpr float kGlareAhead_m = 0.60f, kCabinHalf_m = 0.60f;

Vector3f point(double x, double y, double z) {
  return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)};
}

/// Two triangles around a, b, c, d; the colour and the normal are one.
void add_quad(Shell& shell, const std::array<Vector3f, 4>& p, const Vector3f& colour,
              const std::array<float, 4>& across = {}) {
  Vector3f normal = (p[2] - p[0]).cross(p[3] - p[1]).normalized();
  if (normal.dot(p[0] + p[2]) > 0.0f) normal = -normal;  // whatever is seen faces the eye
  for (const std::size_t i : {0u, 1u, 2u, 0u, 2u, 3u}) shell.push_back({p[i], normal, colour, across[i]});
}

/// A bar seen from the eye: a strip that faces it.
void add_bar(Shell& shell, const Vector3f& from, const Vector3f& to, float width_m, const Vector3f& colour) {
  const Vector3f side = (to - from).cross(from + to).normalized() * (0.5f * width_m);
  add_quad(shell, {from - side, from + side, to + side, to - side}, colour, {-1.0f, 1.0f, 1.0f, -1.0f});
}

/// Angle below straight ahead at which the glareshield's edge lies: under the nose, but within a usual picture.
double glare_angle(const ShellShape& shape) {
  const double nose = std::atan2(shape.cowling_drop_m, shape.eye_to_nose_m);
  return std::max(nose + 0.16, 21.5 * std::numbers::pi / 180.0);
}

double glare_drop_m(const ShellShape& shape) { return kGlareAhead_m * std::tan(glare_angle(shape)); }

struct CowlingSpot {
  Vector3f place, normal;
};

/// t: 0 at the windscreen .. 1 at the nose; around: -1 .. 1 from the left side over the top to the right.
Vector3f cowling_place(const ShellShape& s, double t, double around) {
  const double x = 0.72 + t * (s.eye_to_nose_m - 0.72);
  const double angle = around * 0.5 * std::numbers::pi;
  const double narrow = 1.0 - 0.13 * t * t - 0.08 * std::pow(t, 12.0);
  const double half = 0.5 * s.cowling_width_m * narrow;
  // Flatter over the top than a circle, and rounded down just before the nose.
  const double y = half * std::copysign(std::pow(std::abs(std::sin(angle)), 0.72), angle);
  const double deep = 0.42 * (1.0 - std::pow(std::cos(angle), 0.58));
  return point(x, y, s.cowling_drop_m + deep + 0.05 * std::pow(t, 40.0));
}

CowlingSpot cowling_spot(const ShellShape& s, double t, double around) {
  constexpr double kStep = 0.004;
  const Vector3f along = cowling_place(s, t + kStep, around) - cowling_place(s, t - kStep, around);
  const Vector3f over = cowling_place(s, t, around + kStep) - cowling_place(s, t, around - kStep);
  Vector3f normal = along.cross(over).normalized();
  if (normal.z() > 0.0f) normal = -normal;
  return {cowling_place(s, t, around), normal};
}

void add_cowling(Shell& shell, const ShellShape& shape) {
  constexpr int kAlong = 14, kAround = 28;
  for (int i = 0; i < kAlong; ++i)
    for (int j = 0; j < kAround; ++j) {
      const auto t = [](int k) { return 1.0 - std::pow(1.0 - 0.995 * k / kAlong, 1.5); };
      const auto a = [](int k) { return 0.98 * (2.0 * k / kAround - 1.0); };
      const std::array<CowlingSpot, 4> c = {
          cowling_spot(shape, t(i), a(j)), cowling_spot(shape, t(i + 1), a(j)),
          cowling_spot(shape, t(i + 1), a(j + 1)), cowling_spot(shape, t(i), a(j + 1))};
      const double middle = std::abs(0.5 * (a(j) + a(j + 1)));
      const Vector3f colour = middle < 0.40 ? kMatt : kCream;
      for (const std::size_t k : {0u, 1u, 2u, 0u, 2u, 3u})
        shell.push_back({c[k].place, c[k].normal, colour, 0.0f});
    }
}

void add_glareshield(Shell& shell, const ShellShape& shape) {
  constexpr int kPieces = 16;
  const auto rim = [&](int k, double below) {
    const double u = 2.0 * k / kPieces - 1.0;
    return point(kGlareAhead_m - 0.10 * u * u, kCabinHalf_m * u,
                 glare_drop_m(shape) + 0.05 * std::pow(u, 4.0) + below);
  };
  for (int k = 0; k < kPieces; ++k) {
    const Vector3f down(-0.06f, 0.0f, 0.9f);
    add_quad(shell, {rim(k, 0.011), rim(k + 1, 0.011), rim(k + 1, 0.011) + down, rim(k, 0.011) + down},
             kTrim);
    add_quad(shell, {rim(k, 0.0), rim(k + 1, 0.0), rim(k + 1, 0.012), rim(k, 0.012)}, kLip,
             {1.0f, 1.0f, 0.0f, 0.0f});
  }
}

void add_cabin(Shell& shell, const ShellShape& shape) {
  const double rim = glare_drop_m(shape) + 0.05;
  for (const double side : {-1.0, 1.0}) {
    const double y = side * kCabinHalf_m;
    const Vector3f foot = point(kGlareAhead_m - 0.10, y, rim + 0.02), head = point(0.24, 0.88 * y, -0.52);
    add_bar(shell, foot, head, 0.036f, kTrim);
    add_bar(shell, point(-0.50, y, 0.34), point(-0.42, 0.88 * y, -0.52), 0.046f, kTrim);
    const Vector3f sill = point(-1.0, y, 0.34), down(0.0f, 0.0f, 1.2f);
    add_quad(shell, {foot, sill, sill + down, foot + down}, kTrim);
    add_bar(shell, foot, sill, 0.022f, kLip);
    if (shape.high_wing) add_bar(shell, head, point(-1.0, 0.88 * y, -0.52), 0.05f, kTrim);
  }
  if (!shape.high_wing) add_bar(shell, point(0.24, -0.53, -0.52), point(0.24, 0.53, -0.52), 0.05f, kTrim);
}

/// A wing's section: share of the chord from the leading edge, height over the chord line in chords. Over the top, then back
/// beneath; a narrow pair marks the hinge line.
struct SectionPoint {
  double along, up;
};
constexpr std::array<SectionPoint, 15> kSection = {{{0.0, 0.0},
                                                    {0.02, 0.028},
                                                    {0.10, 0.062},
                                                    {0.28, 0.085},
                                                    {0.55, 0.066},
                                                    {0.740, 0.038},
                                                    {0.752, 0.036},
                                                    {1.0, 0.0},
                                                    {0.752, -0.018},
                                                    {0.740, -0.019},
                                                    {0.55, -0.030},
                                                    {0.28, -0.040},
                                                    {0.10, -0.034},
                                                    {0.02, -0.018},
                                                    {0.0, 0.0}}};

Vector3f wing_place(const ShellShape& s, double side, double share, const SectionPoint& at) {
  const double y = 0.5 + share * (s.half_span_m - 0.5);
  const double ahead = s.high_wing ? 0.30 * s.wing_chord_m : 0.48 * s.wing_chord_m;
  const double level = s.high_wing ? -0.44 - 0.026 * y : 0.66 - 0.075 * y;
  const double chord = s.wing_chord_m * (1.0 - 0.18 * std::max(0.0, share - 0.35));
  const double ground = ahead - 0.12 * s.wing_chord_m * std::max(0.0, share - 0.35);
  return point(ground - at.along * chord, side * y, level - at.up * chord);
}

void add_wing(Shell& shell, const ShellShape& shape, double side) {
  constexpr int kSpans = 10;
  for (int k = 0; k < kSpans; ++k)
    for (std::size_t i = 0; i + 1 < kSection.size(); ++i) {
      const double in = static_cast<double>(k) / kSpans, out = static_cast<double>(k + 1) / kSpans;
      const bool hinge = i == 5 || i == 8;
      const Vector3f colour = hinge && k >= 1 ? kSeam : k == kSpans - 1 ? kBrick : kCream;
      const SectionPoint &a = kSection[i], &b = kSection[i + 1];
      const std::array<Vector3f, 4> p = {wing_place(shape, side, in, a), wing_place(shape, side, out, a),
                                         wing_place(shape, side, out, b), wing_place(shape, side, in, b)};
      Vector3f normal = (p[2] - p[0]).cross(p[3] - p[1]).normalized();
      const bool upper = i < 7;
      if ((normal.z() > 0.0f) == upper) normal = -normal;
      for (const std::size_t c : {0u, 1u, 2u, 0u, 2u, 3u}) shell.push_back({p[c], normal, colour, 0.0f});
    }
  if (!shape.high_wing) return;
  const Vector3f foot = point(-0.05 * shape.wing_chord_m, side * 0.58, 0.72);
  add_bar(shell, foot, wing_place(shape, side, 0.52, {0.33, -0.03}), 0.070f, kStrut);
}

}  // namespace

ShellShape shell_shape(const view::OutsideView& view) {
  return {view.eye_to_nose_m, view.cowling_drop_m, view.cowling_width_m,
          view.high_wing,     view.half_span_m,    view.wing_chord_m};
}

std::vector<ShellVertex> make_shell(const ShellShape& shape) {
  Shell shell;
  for (const double side : {-1.0, 1.0}) add_wing(shell, shape, side);
  add_cowling(shell, shape);
  add_cabin(shell, shape);
  add_glareshield(shell, shape);
  return shell;
}

PropellerDisc propeller_disc(const ShellShape& shape) {
  return {point(shape.eye_to_nose_m + 0.07, 0.0, shape.cowling_drop_m + 0.22), 0.93f};
}

}  // namespace stallwright::outside
