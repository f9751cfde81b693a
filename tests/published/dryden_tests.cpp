// Scale lengths, intensities and closed forms of the specification's turbulence.
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <string>

#include "aircraft/math/units.hpp"
#include "sim/air/dryden.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/printed_spectra.hpp"

using namespace stallwright;

namespace {

const evidence::Published kScales{"MIL-F-8785C", "3.7, low altitude", "worked by hand"};
const evidence::Published kFigure{"MIL-F-8785C", "figure 7", "read in a copy"};
constexpr double kHeight_ft[] = {500,   1750,  3750,  7500,  15000, 25000,
                                 35000, 45000, 55000, 65000, 75000, 80000};

std::string power_of_ten(double probability) {
  const std::string sign =
      probability == 0.2 ? "2e-1" : "1e-" + std::to_string(std::lround(-std::log10(probability)));
  return "exceeded with probability " + sign;
}
}  // namespace

TEST_CASE("low-altitude scale lengths and intensities agree with the worked table", "[air][published]") {
  // For W20 = 30 kt: a unit of the last printed digit, from 10 to 1000 ft.
  const auto rows = published::csv_rows("low_altitude_examples.csv");
  REQUIRE(rows.size() == 9);
  const auto intensity = turbulence_intensity(Severity::kModerate);
  for (const auto& row : rows) {
    const auto s = turbulence_scales(intensity, row[0] * kFoot);
    const std::string at = " at " + std::to_string(std::lround(row[0])) + " ft, W20 30 kt";
    evidence::hold(kScales, "L_u" + at, s.length_u_m / kFoot, row[1], 1e-3, "ft", "printed digits");
    evidence::hold(kScales, "L_w" + at, s.length_w_m / kFoot, row[2], 1e-12 * row[2], "ft", "exact");
    evidence::hold(kScales, "sigma_w" + at, s.sigma_w_mps / kFoot, row[3], 1e-4, "ft/s", "printed digits");
    evidence::hold(kScales, "sigma_u" + at, s.sigma_u_mps / kFoot, row[4], 1e-4, "ft/s", "printed digits");
    CHECK(s.length_v_m == s.length_u_m);
    CHECK(s.sigma_v_mps == s.sigma_u_mps);
  }
}

TEST_CASE("intensities by height and probability are those of the figure, every row", "[air][published]") {
  const auto rows = published::csv_rows("intensity_exceedance.csv");
  REQUIRE(rows.size() == 7);
  for (const auto& row : rows) {
    double most = 0.0;
    for (std::size_t i = 0; i < 12; ++i)
      most =
          std::max(most, std::abs(exceedance_sigma_mps(row[0], kHeight_ft[i] * kFoot) / kFoot - row[i + 1]));
    const std::string of = power_of_ten(row[0]);
    evidence::hold(kFigure, "rms gust at 3750 ft, " + of,
                   exceedance_sigma_mps(row[0], 3750.0 * kFoot) / kFoot, row[3], 1e-9, "ft/s",
                   "the table itself");
    evidence::hold(kFigure, "largest difference over twelve heights, " + of, most, 0.0, 1e-9, "ft/s",
                   "the table itself");
  }
  // Half way between two heights, and between two probabilities in their logarithm.
  CHECK(exceedance_sigma_mps(1e-3, 5625.0 * kFoot) / kFoot == Approx((10.6 + 10.1) / 2.0));
  CHECK(exceedance_sigma_mps(std::pow(10.0, -3.5), 7500.0 * kFoot) / kFoot == Approx((10.1 + 15.1) / 2.0));
  CHECK_THROWS_AS(exceedance_sigma_mps(0.3, 1000.0), std::invalid_argument);
  CHECK_THROWS_AS(exceedance_sigma_mps(std::numeric_limits<double>::quiet_NaN(), 1000.0),
                  std::invalid_argument);
}

TEST_CASE("above 2000 ft the named severities follow their exceedance curves", "[air][published]") {
  for (const auto& row : published::csv_rows("intensity_exceedance.csv"))
    for (const auto& [severity, probability] :
         {std::pair{Severity::kLight, 1e-1}, std::pair{Severity::kModerate, 1e-3},
          std::pair{Severity::kSevere, 1e-5}}) {
      if (row[0] != probability) continue;
      double most = 0.0;
      for (std::size_t i = 2; i < 12; ++i) {
        CAPTURE(probability, kHeight_ft[i]);
        const auto s = turbulence_scales(turbulence_intensity(severity), kHeight_ft[i] * kFoot);
        most = std::max(most, std::abs(s.sigma_w_mps / kFoot - row[i + 1]));
        CHECK(s.sigma_u_mps == s.sigma_w_mps);
        CHECK(s.length_w_m / kFoot == Approx(1750.0));
      }
      const std::string named = severity_name(severity);
      evidence::hold(kFigure, named + ": largest difference from its curve, 3750 to 80000 ft", most, 0.0,
                     1e-9, "ft/s", "the table itself");
      const double at_2000 = row[2] + (row[3] - row[2]) * 250.0 / 2000.0;
      evidence::hold(kFigure, named + ": rms gust at 2000 ft",
                     severity_sigma_kt(severity, 2000.0 * kFoot) * kKnot / kFoot, at_2000, 1e-9 * at_2000,
                     "ft/s", "a straight line in the table");
    }
}

TEST_CASE("between 1000 and 2000 ft intensity and scale run in a straight line to each model's own length",
          "[air][published]") {
  const auto model = GENERATE(TurbulenceModel::kDryden, TurbulenceModel::kVonKarman);
  const double top_ft = model == TurbulenceModel::kDryden ? 1750.0 : 2500.0;
  auto intensity = turbulence_intensity(Severity::kModerate);
  intensity.high_length_m = high_length_m(model);
  const auto low = turbulence_scales(intensity, 1000.0 * kFoot),
             middle = turbulence_scales(intensity, 1500.0 * kFoot),
             high = turbulence_scales(intensity, 2000.0 * kFoot);
  CHECK(low.sigma_u_mps == Approx(low.sigma_w_mps));
  CHECK(middle.sigma_w_mps == Approx((low.sigma_w_mps + high.sigma_w_mps) / 2.0));
  const evidence::Published lengths{"MIL-F-8785C", "3.7, scale lengths", "read in a copy"};
  const std::string of = std::string(published::word(model)) + ": ";
  evidence::hold(lengths, of + "L at 1000 ft", low.length_u_m / kFoot, 1000.0, 1e-6, "ft", "exact");
  evidence::hold(lengths, of + "L at 1500 ft", middle.length_w_m / kFoot, (1000.0 + top_ft) / 2.0, 1e-6, "ft",
                 "a straight line, exact");
  evidence::hold(lengths, of + "L above 2000 ft", high.length_w_m / kFoot, top_ft, 1e-6, "ft", "exact");
}

TEST_CASE("the handbook's spectra with halved lengths are the specification's", "[air][published]") {
  // MIL-HDBK-1797 writes 2 L where MIL-F-8785C has L, with L half as long.
  const evidence::Published handbook{"MIL-HDBK-1797", "spectra of v and w", "read in a copy"};
  for (const auto model : {TurbulenceModel::kDryden, TurbulenceModel::kVonKarman}) {
    const published::PrintedSpectra ours{model, {1.0, 1.0, 1.0, 500.0, 500.0, 500.0}, 10.0, 40.0};
    const double half = 250.0, w = 0.7, x = half * w / 40.0, a = 2.0 * 1.339 * x;
    const double theirs =
        model == TurbulenceModel::kDryden
            ? 2.0 * half / (M_PI * 40.0) * (1.0 + 12.0 * x * x) / std::pow(1.0 + 4.0 * x * x, 2)
            : 2.0 * half / (M_PI * 40.0) * (1.0 + 8.0 / 3.0 * a * a) / std::pow(1.0 + a * a, 11.0 / 6.0);
    evidence::hold(handbook, std::string(published::word(model)) + ": Phi_w at 0.7 rad/s, 40 m/s, L 500 m",
                   ours.at(2, w), theirs, 1e-12, "m2/s", "an identity");
  }
}

TEST_CASE("the filter's autocorrelation is the closed form of the Dryden transverse gust",
          "[air][published]") {
  // exp(-x/L) (1 - x/(2L)), crossing zero at x = 2L: the transform of Phi_w of [MIL-F-8785C 3.7].
  const evidence::Published transform{"MIL-F-8785C", "3.7, transform of the Dryden spectrum of w",
                                      "worked by hand"};
  for (const double h : {0.0, 0.01, 0.05, 0.09, 0.5, 2.0, 5.0}) {
    const double a = 11.0;
    const auto p = stationary_covariance(a);
    const double c1 = kSqrt3, c2 = 1.0 - kSqrt3;
    const auto s = transverse_step(h, a);
    // C Phi P C^T with C = (c1, c2, 0).
    const double to_x1 = c1 * p.a11 + c2 * p.a21, to_x2 = c1 * p.a21 + c2 * p.a22;
    const double correlation = c1 * s.phi_x * to_x1 + c2 * (s.phi_21 * to_x1 + s.phi_x * to_x2);
    const double exact = std::exp(-h) * (1.0 - h / 2.0);
    evidence::hold(transform, "autocorrelation of w at x/L = " + std::to_string(h).substr(0, 4), correlation,
                   exact, 1e-13, "1", "rounding");
  }
}
