#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>

#include "aircraft/lifting_surface.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr Published kSeries{"LIFTING-LINE", "Fourier series, 200 odd terms", "worked by hand"};
constexpr Published kRectangular{"GLAUERT", "factors of rectangular wings, converged", "recomputed"};
constexpr Published kElliptical{"GLAUERT", "elliptical wing, closed form", "worked by hand"};
constexpr Published kBiotSavart{"GLAUERT", "law of Biot and Savart, closed form", "worked by hand"};

std::string wing_name(double aspect_ratio, double taper) {
  char text[64];
  std::snprintf(text, sizeof text, "aspect ratio %g, taper %g", aspect_ratio, taper);
  return text;
}

constexpr double kTwoPi = 2.0 * M_PI;

LiftingSurfaceType tapered_wing(double aspect_ratio, double taper) {
  // Unit area: span^2 = A, mean chord 1/span.
  const double span = std::sqrt(aspect_ratio);
  const double root = 2.0 / (span * (1.0 + taper));
  LiftingSurfaceType wing;
  wing.stations = {{0.0, 0.0, 0.0, root, 0.0}, {0.5 * span, 0.0, 0.0, root * taper, 0.0}};
  return wing;
}

struct Solution {
  double lift_slope, induced_factor;  ///< CLa per rad; pi A CDi/CL^2 = 1 + delta
  std::vector<double> downwash;       ///< per unit angle of attack, as a share of the speed
};

/// Steady lifting line at unit speed and unit alpha: Gamma_k = c_k a0 (1 - sum_j D_kj Gamma_j)/2, the state
/// in which the airframe's inflow lag comes to rest. Unit area: CL = 2 sum Gamma dy, CDi = 2 sum Gamma w dy.
Solution solve(const std::vector<Strip>& strips, double section_slope) {
  const auto n = static_cast<Eigen::Index>(strips.size());
  const auto influence = self_influence(strips);
  Eigen::MatrixXd m = Eigen::MatrixXd::Identity(n, n);
  Eigen::VectorXd right(n);
  double area = 0.0, span = 0.0;
  for (Eigen::Index k = 0; k < n; ++k) {
    const Strip& s = strips[static_cast<std::size_t>(k)];
    for (Eigen::Index j = 0; j < n; ++j)
      m(k, j) += 0.5 * s.chord_m * section_slope *
                 influence[static_cast<std::size_t>(k)][static_cast<std::size_t>(j)];
    right(k) = 0.5 * s.chord_m * section_slope;
    area += s.area_m2;
    span += s.width_m;
  }
  const Eigen::VectorXd gamma = m.partialPivLu().solve(right);
  Solution out{0.0, 0.0, {}};
  double drag = 0.0;
  for (Eigen::Index k = 0; k < n; ++k) {
    const double width = strips[static_cast<std::size_t>(k)].width_m;
    double w = 0.0;
    for (Eigen::Index j = 0; j < n; ++j)
      w += influence[static_cast<std::size_t>(k)][static_cast<std::size_t>(j)] * gamma(j);
    out.lift_slope += 2.0 * gamma(k) * width / area;
    drag += 2.0 * gamma(k) * w * width / area;
    out.downwash.push_back(w);
  }
  out.induced_factor = M_PI * (span * span / area) * drag / (out.lift_slope * out.lift_slope);
  return out;
}

Solution solve_wing(double aspect_ratio, double taper, std::size_t count) {
  return solve(
      make_strips(tapered_wing(aspect_ratio, taper), SurfaceKind::symmetric_pair, count, {0.0, 0.0, 0.0}),
      kTwoPi);
}

/// Strips of equal width under an elliptical chord, the mean chord of each strip's own stretch.
std::vector<Strip> elliptical_strips(double aspect_ratio, std::size_t count) {
  std::vector<Strip> strips =
      make_strips(tapered_wing(aspect_ratio, 1.0), SurfaceKind::symmetric_pair, count, {0.0, 0.0, 0.0});
  const double half_span = 0.5 * std::sqrt(aspect_ratio);
  const auto swept = [](double t) { return 0.5 * (t * std::sqrt(1.0 - t * t) + std::asin(t)); };
  for (Strip& s : strips) {
    const double low = std::max((s.span_position_m - 0.5 * s.width_m) / half_span, -1.0);
    const double high = std::min((s.span_position_m + 0.5 * s.width_m) / half_span, 1.0);
    const double root = 4.0 / (M_PI * 2.0 * half_span);
    s.area_m2 = root * half_span * (swept(high) - swept(low));
    s.chord_m = s.area_m2 / s.width_m;
  }
  return strips;
}

}  // namespace

TEST_CASE("sixteen strips give the lifting-line slope of tapered and rectangular wings within 1 %",
          "[aircraft][published]") {
  // [LIFTING-LINE] converged Fourier solutions. Taper 0 is left out: the strips' mid-points give a pointed
  // tip half a strip's chord, and no such wing is flown.
  WorstRow worst;
  for (const auto& row : published::csv_rows("lifting_line.csv")) {
    if (row[1] == 0.0) continue;
    worst.row_relative(wing_name(row[0], row[1]), solve_wing(row[0], row[1], 16).lift_slope, row[2], 0.01);
  }
  worst.hold(kSeries, "lift slope by sixteen strips", "1/rad", "1 %: sixteen strips");
}

TEST_CASE("the induced drag of sixteen strips is within 2 % of the lifting line's", "[aircraft][published]") {
  // [LIFTING-LINE] 1 + delta. Drag comes from the product of circulation and downwash, both worst at the tips
  // where a strip is coarse, so it is held looser than the slope: 2 % of induced drag is 1 % of drag at best
  // glide.
  WorstRow worst;
  for (const auto& row : published::csv_rows("lifting_line.csv")) {
    if (row[1] == 0.0) continue;
    worst.row_relative(wing_name(row[0], row[1]), solve_wing(row[0], row[1], 16).induced_factor, 1.0 + row[3],
                       0.02);
  }
  worst.hold(kSeries, "induced drag factor by sixteen strips", "1",
             "2 %: both its factors are worst at the tips");
}

TEST_CASE("more strips come closer to the lifting line", "[aircraft][published]") {
  // [LIFTING-LINE] aspect ratio 8, taper 1 and 0.6.
  const auto error = [](double taper, double exact, std::size_t count) {
    return std::abs(solve_wing(8.0, taper, count).lift_slope / exact - 1.0);
  };
  for (const auto& [taper, exact] : {std::pair{1.0, 4.83770}, std::pair{0.6, 4.94260}}) {
    CAPTURE(taper, error(taper, exact, 16), error(taper, exact, 64), error(taper, exact, 256));
    CHECK(error(taper, exact, 64) < 0.5 * error(taper, exact, 16));
    CHECK(error(taper, exact, 256) < 0.5 * error(taper, exact, 64));
    hold(kSeries, "lift slope by 256 strips, " + wing_name(8.0, taper),
         solve_wing(8.0, taper, 256).lift_slope, exact, 2e-3 * exact, "1/rad",
         "0.2 %: what is left halves with four times the strips");
  }
}

TEST_CASE("a rectangular wing has Glauert's factors tau and delta", "[aircraft][published]") {
  // [GLAUERT] rectangular wings by A/a0. The tolerances are those above carried over: 1 % of slope is
  // 0.01 pi A/CLa in tau (1.2 % granted to the shortest wing, A = pi), 2 % of drag 0.02 (1 + delta) in delta.
  WorstRow taus, deltas;
  for (const auto& row : published::csv_rows("glauert_rectangular.csv")) {
    const double aspect_ratio = kTwoPi * row[0];
    const Solution s = solve_wing(aspect_ratio, 1.0, 16);
    const double tau = (kTwoPi / s.lift_slope - 1.0) * M_PI * aspect_ratio / kTwoPi - 1.0;
    const std::string name = wing_name(aspect_ratio, 1.0);
    taus.row(name, tau, row[3], 0.012 * M_PI * aspect_ratio / s.lift_slope);
    deltas.row(name, s.induced_factor - 1.0, row[4], 0.02 * (1.0 + row[4]));
  }
  taus.hold(kRectangular, "rectangular wing, tau by sixteen strips", "1", "1.2 % of slope");
  deltas.hold(kRectangular, "rectangular wing, delta by sixteen strips", "1", "2 % of induced drag");
}

TEST_CASE("an elliptical wing has slope a0 A/(A + 2), even downwash and the least induced drag",
          "[aircraft][published]") {
  // [GLAUERT] exact. Strips of finite width see the round tip badly: the outermost is left out of the
  // evenness.
  WorstRow slope, factor, downwash;
  for (const double aspect_ratio : {6.0, 7.0, 8.0}) {
    const std::string name = "aspect ratio " + std::to_string(static_cast<int>(aspect_ratio));
    const Solution s = solve(elliptical_strips(aspect_ratio, 64), kTwoPi);
    const double exact = kTwoPi * aspect_ratio / (aspect_ratio + 2.0);
    slope.row_relative(name, s.lift_slope, exact, 5e-3);
    factor.row(name, s.induced_factor, 1.0, 1e-2);
    for (std::size_t k = 6; k + 6 < s.downwash.size(); ++k)
      downwash.row_relative(name + ", strip " + std::to_string(k), s.downwash[k],
                            exact / (M_PI * aspect_ratio), 2e-2);
  }
  slope.hold(kElliptical, "elliptical wing, lift slope by 64 strips", "1/rad",
             "strips see the round tip badly");
  factor.hold(kElliptical, "elliptical wing, induced drag factor by 64 strips", "1",
              "strips see the round tip badly");
  downwash.hold(kElliptical, "elliptical wing, downwash by 64 strips, six at each tip left out", "1",
                "strips see the round tip badly");
}

TEST_CASE("a horseshoe's upwash ahead on the centre line has its closed form", "[aircraft][published]") {
  // [GLAUERT] Gamma s/(2 pi x D) - Gamma/(2 pi s) (1 - x/D), D = sqrt(x^2 + s^2); Gamma s/(4 pi x^2) far
  // ahead.
  const double s = 2.7;
  const Vec3<double> left{0.0, -s, 0.0}, right{0.0, s, 0.0};
  WorstRow worst;
  for (const double x : {0.1, 0.5, 1.0, 3.0, 10.0}) {
    const double d = std::sqrt(x * x + s * s);
    const double upwash = s / (kTwoPi * x * d) - (1.0 - x / d) / (kTwoPi * s);
    const Vec3<double> v = horseshoe_velocity({x, 0.0, 0.0}, left, right, 0.0, true);
    worst.difference_relative(std::to_string(x).substr(0, 4) + " m ahead", -v.z, upwash, 1e-12);
    CHECK(v.x == Approx(0.0).margin(1e-15));
    CHECK(v.y == Approx(0.0).margin(1e-15));
  }
  worst.hold(kBiotSavart, "upwash ahead of a horseshoe of 5.4 m", "m/s per m2/s", "exact, but for rounding");
  const double far = 400.0, upwash = s / (2.0 * kTwoPi * far * far);
  hold(kBiotSavart, "upwash 400 m ahead of a horseshoe of 5.4 m",
       -horseshoe_velocity({far, 0.0, 0.0}, left, right, 0.0, true).z, upwash, 1e-4 * upwash, "m/s per m2/s",
       "the next term of the far field");
}

TEST_CASE("far behind, a horseshoe is two endless vortices: downwash Gamma/(pi s) in the middle",
          "[aircraft][published]") {
  // [GLAUERT] two straight vortices of strength Gamma at +-s; at the bound vortex the legs alone give
  // half of it.
  const double s = 1.3;
  const Vec3<double> left{0.0, -s, 0.0}, right{0.0, s, 0.0};
  hold(kBiotSavart, "downwash 10 km behind a horseshoe of 2.6 m",
       horseshoe_velocity({-1e4, 0.0, 0.0}, left, right, 0.0, true).z, 1.0 / (M_PI * s), 1e-6 / (M_PI * s),
       "m/s per m2/s", "the distance is finite");
  hold(kBiotSavart, "downwash of the two legs at the bound vortex of a horseshoe of 2.6 m",
       horseshoe_velocity({0.0, 0.0, 0.0}, left, right, 0.0, false).z, 0.5 / (M_PI * s), 0.5e-12 / (M_PI * s),
       "m/s per m2/s", "exact, but for rounding");
}
