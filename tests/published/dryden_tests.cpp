#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "aircraft/math/units.hpp"
#include "sim/air/dryden.hpp"
#include "tests/published/csv_rows.hpp"

using namespace stallwright;

namespace {

/// 500 ft of scale length, 1 ft/s, 36 ft of span: the worked example.
DrydenParams<double> example() {
  const double s = 1.0 * kFoot, l = 500.0 * kFoot;
  return {{s, s, s, l, l, l}, 36.0 * kFoot};
}
}  // namespace

TEST_CASE("gust rates have the standard deviations of the integrated spectra", "[air][published]") {
  // Integrals of Phi_p, Phi_q, Phi_r of [MIL-F-8785C 3.7] by independent quadrature, printed to 1e-7 rad/s.
  const auto sigma = stationary_sigma(example());
  CHECK(sigma.omega_B_radps.x == Approx(0.0110274).margin(1e-6).epsilon(0));
  CHECK(sigma.omega_B_radps.y == Approx(0.0076338).margin(1e-6).epsilon(0));
  CHECK(sigma.omega_B_radps.z == Approx(0.0089388).margin(1e-6).epsilon(0));
}

TEST_CASE("low-altitude scale lengths and intensities agree with the worked table", "[air][published]") {
  // [MIL-F-8785C 3.7] for W20 = 30 kt: half a unit of the last printed digit, from 10 to 1000 ft.
  const auto rows = published::csv_rows("low_altitude_examples.csv");
  REQUIRE(rows.size() == 9);
  const auto intensity = turbulence_intensity(Severity::kModerate);
  for (const auto& row : rows) {
    CAPTURE(row[0]);
    const auto s = turbulence_scales(intensity, row[0] * kFoot);
    CHECK(s.length_u_m / kFoot == Approx(row[1]).margin(1e-3).epsilon(0));
    CHECK(s.length_v_m == s.length_u_m);
    CHECK(s.length_w_m / kFoot == Approx(row[2]).epsilon(1e-12));
    CHECK(s.sigma_w_mps / kFoot == Approx(row[3]).margin(1e-4).epsilon(0));
    CHECK(s.sigma_u_mps / kFoot == Approx(row[4]).margin(1e-4).epsilon(0));
    CHECK(s.sigma_v_mps == s.sigma_u_mps);
  }
}

TEST_CASE("above 2000 ft the named severities follow their exceedance curves", "[air][published]") {
  // [MIL-F-8785C fig. 7]: light 1e-1, moderate 1e-3, severe 1e-5; columns are heights from 500 to 80,000 ft.
  const double heights[] = {500, 1750, 3750, 7500, 15000, 25000, 35000, 45000, 55000, 65000, 75000, 80000};
  for (const auto& row : published::csv_rows("intensity_exceedance.csv"))
    for (const auto& [severity, probability] :
         {std::pair{Severity::kLight, 1e-1}, std::pair{Severity::kModerate, 1e-3},
          std::pair{Severity::kSevere, 1e-5}}) {
      if (row[0] != probability) continue;
      for (int i = 2; i < 12; ++i) {
        CAPTURE(probability, heights[i]);
        const auto s = turbulence_scales(turbulence_intensity(severity), heights[i] * kFoot);
        CHECK(s.sigma_w_mps / kFoot == Approx(row[i + 1]).margin(1e-9).epsilon(0));
        CHECK(s.sigma_u_mps == s.sigma_w_mps);
        CHECK(s.length_w_m / kFoot == Approx(1750.0));
      }
      const double at_2000 = row[2] + (row[3] - row[2]) * 250.0 / 2000.0;
      CHECK(severity_sigma_kt(severity, 2000.0 * kFoot) == Approx(at_2000 * kFoot / kKnot));
    }
}

TEST_CASE("between 1000 and 2000 ft intensity and scale run in a straight line", "[air][published]") {
  const auto intensity = turbulence_intensity(Severity::kModerate);
  const auto low = turbulence_scales(intensity, 1000.0 * kFoot),
             middle = turbulence_scales(intensity, 1500.0 * kFoot),
             high = turbulence_scales(intensity, 2000.0 * kFoot);
  CHECK(low.sigma_u_mps == Approx(low.sigma_w_mps));
  CHECK(middle.sigma_w_mps == Approx((low.sigma_w_mps + high.sigma_w_mps) / 2.0));
  CHECK(middle.length_w_m == Approx((1000.0 + 1750.0) / 2.0 * kFoot));
}

TEST_CASE("the filter's autocorrelation is the closed form of the Dryden transverse gust",
          "[air][published]") {
  // exp(-x/L) (1 - x/(2L)), crossing zero at x = 2L: the transform of Phi_w of [MIL-F-8785C 3.7].
  const auto p = stationary_covariance(11.0);
  const double c1 = kSqrt3, c2 = 1.0 - kSqrt3;
  for (const double h : {0.0, 0.01, 0.05, 0.09}) {
    const auto s = transverse_step(h, 11.0);
    // C Phi P C^T with C = (c1, c2, 0).
    const double to_x1 = c1 * p.a11 + c2 * p.a21, to_x2 = c1 * p.a21 + c2 * p.a22;
    const double correlation = c1 * s.phi_x * to_x1 + c2 * (s.phi_21 * to_x1 + s.phi_x * to_x2);
    CHECK(correlation == Approx(std::exp(-h) * (1.0 - h / 2.0)).epsilon(1e-13));
  }
}
