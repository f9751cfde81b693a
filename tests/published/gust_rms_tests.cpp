// Standard deviations of both models: closed form, quadrature of the printed spectra, simulation, and independence of the
// step. [MIL-F-8785C 3.7]
#include <gsl/gsl_integration.h>

#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <string>
#include <unsupported/Eigen/MatrixFunctions>

#include "tests/published/evidence.hpp"
#include "tests/published/gust_series.hpp"
#include "tests/published/printed_spectra.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

const evidence::Published kSpectra{"MIL-F-8785C", "3.7, spectra", "read in a copy"};
const evidence::Published kExample{"MIL-F-8785C", "3.7, spectra of p, q, r, integrated", "worked by hand"};

/// The worked example: 500 ft of scale length, 1 ft/s, 36 ft of span, 150 ft/s.
constexpr double kSpan_m = 36.0 * kFoot, kAirspeed_mps = 150.0 * kFoot;
TurbulenceScales<double> example() {
  const double s = 1.0 * kFoot, l = 500.0 * kFoot;
  return {s, s, s, l, l, l};
}

std::array<double, 6> sigmas(TurbulenceModel model, const TurbulenceScales<double>& s) {
  return model == TurbulenceModel::kDryden ? six(stationary_sigma(DrydenParams<double>{s, kSpan_m}))
                                           : six(stationary_sigma(VonKarmanParams<double>{s, kSpan_m}));
}

double integral_from_zero(const std::function<double(double)>& f) {
  gsl_integration_workspace* room = gsl_integration_workspace_alloc(2000);
  gsl_function g{[](double x, void* p) { return (*static_cast<const std::function<double(double)>*>(p))(x); },
                 const_cast<std::function<double(double)>*>(&f)};
  double value = 0.0, error = 0.0;
  gsl_integration_qagiu(&g, 0.0, 1e-14, 1e-9, 2000, room, &value, &error);
  gsl_integration_workspace_free(room);
  return value;
}

/// Mean squares over independent flights of a few steps, over the squares of the standard deviations.
std::array<double, 6> mean_squares(TurbulenceModel model, double step_s, std::size_t steps,
                                   std::uint32_t flights) {
  const auto expected = sigmas(model, example());
  std::array<double, 6> sums{};
  for (std::uint32_t flight = 0; flight < flights; ++flight) {
    const auto x = gust_series(model, example(), kSpan_m, kAirspeed_mps, step_s, steps, {77, flight});
    for (std::size_t q = 0; q < 6; ++q) sums[q] += std::pow(x[q].back() / expected[q], 2) / flights;
  }
  return sums;
}

}  // namespace

TEST_CASE("rms gust rates of the worked example come out in closed form and by quadrature",
          "[air][published]") {
  const double published[] = {0.0110274, 0.0076338, 0.0089388};
  const auto closed = sigmas(TurbulenceModel::kDryden, example());
  const PrintedSpectra printed{TurbulenceModel::kDryden, example(), kSpan_m, kAirspeed_mps};
  for (int q = 3; q < 6; ++q) {
    const std::string rms =
        std::string("rms ") + kGustNames[q] + ", Dryden, h 500 ft, b 36 ft, sigma 1 ft/s: ";
    evidence::hold(kExample, rms + "closed form of our filters", closed[static_cast<std::size_t>(q)],
                   published[q - 3], 1e-6, "rad/s", "printed digits");
    evidence::hold(kExample, rms + "quadrature of the printed spectrum",
                   std::sqrt(integral_from_zero([&](double w) { return printed.at(q, w); })),
                   published[q - 3], 1e-6, "rad/s", "printed digits");
  }
  constexpr std::uint32_t kFlights = 20000;
  const auto simulated = mean_squares(TurbulenceModel::kDryden, 0.02, 5, kFlights);
  for (std::size_t q = 3; q < 6; ++q)
    evidence::hold(
        kExample,
        std::string("rms ") + kGustNames[q] + ", Dryden, h 500 ft, b 36 ft, sigma 1 ft/s: simulated",
        std::sqrt(simulated[q]) * closed[q], published[q - 3], 4.0 * closed[q] / std::sqrt(2.0 * kFlights),
        "rad/s", "four times the spread of 20000 free flights");
  evidence::show({"MIL-F-8785C", "3.7, rule 1.9 sigma_w/sqrt(L_w b)", "from memory"},
                 "rms p of the worked example", closed[3], 1.9 * kFoot / std::sqrt(500.0 * kFoot * kSpan_m),
                 "rad/s", "the rule is an older and simpler one, the spectrum of p gives less");
}

TEST_CASE("standard deviations of both models are the integrals of the printed spectra", "[air][published]") {
  const auto model = GENERATE(TurbulenceModel::kDryden, TurbulenceModel::kVonKarman);
  const bool dryden = model == TurbulenceModel::kDryden;
  const auto closed = sigmas(model, example());
  const PrintedSpectra printed{model, example(), kSpan_m, kAirspeed_mps};
  for (int q = 0; q < 6; ++q) {
    const double whole = std::sqrt(integral_from_zero([&](double w) { return printed.at(q, w); }));
    const double share = dryden || q == 3 ? 1e-6 : q < 3 ? 1e-5 : 0.01;
    evidence::hold(kSpectra,
                   std::string(word(model)) + ": rms " + kGustNames[q] + " of the filters, closed form",
                   closed[static_cast<std::size_t>(q)], whole, share * whole, q < 3 ? "m/s" : "rad/s",
                   dryden || q == 3 ? "quadrature"
                   : q < 3          ? "the printed constant 1.339 is rounded"
                                    : "1 %: the fit, and its tail beyond L w/V = 1000");
  }
}

TEST_CASE("simulated variances of both models do not depend on the step", "[air][published]") {
  const auto model = GENERATE(TurbulenceModel::kDryden, TurbulenceModel::kVonKarman);
  constexpr std::uint32_t kFlights = 20000;
  for (const auto& [step, steps] : {std::pair{0.002, 4u}, std::pair{0.01, 4u}, std::pair{0.2, 3u}}) {
    const auto got = mean_squares(model, step, steps, kFlights);
    for (std::size_t q = 0; q < 6; ++q)
      evidence::hold(kSpectra,
                     std::string(word(model)) + ": variance of " + kGustNames[q] +
                         " over its integral, step " + std::to_string(std::lround(1000.0 * step)) + " ms",
                     got[q], 1.0, 4.0 * std::sqrt(2.0 / kFlights), "1",
                     "four times the spread of 20000 free squares");
  }
}

TEST_CASE("one step of the filters is exact however long, and keeps the variance", "[air][published]") {
  // The equations of transverse_filter.hpp as a matrix exponential; the covariance from its own equation.
  double most_phi = 0.0, most_kept = 0.0;
  for (const double a : {1e-3, 0.05, 0.9, 1.0, 1.1, 7.0, 60.0})
    for (const double h : {1e-4, 0.01, 0.3, 1.0, 3.0, 40.0}) {
      Eigen::Matrix3d rate;
      rate << -1, 0, 0, 1, -1, 0, a * kSqrt3, a * (1 - kSqrt3), -a;
      const Eigen::Matrix3d exact = (rate * h).exp();
      const auto s = transverse_step(h, a);
      Eigen::Matrix3d phi, root, stationary;
      phi << s.phi_x, 0, 0, s.phi_21, s.phi_x, 0, s.phi_31, s.phi_32, s.phi_y;
      root << s.noise.a11, 0, 0, s.noise.a21, s.noise.a22, 0, s.noise.a31, s.noise.a32, s.noise.a33;
      const auto p = stationary_covariance(a);
      stationary << p.a11, p.a21, p.a31, p.a21, p.a22, p.a32, p.a31, p.a32, p.a33;
      most_phi = std::max(most_phi, (phi - exact).cwiseAbs().maxCoeff());
      const Eigen::Matrix3d kept = phi * stationary * phi.transpose() + root * root.transpose();
      most_kept = std::max(most_kept, (kept - stationary).cwiseAbs().maxCoeff());
      const Eigen::Matrix3d still = rate * stationary + stationary * rate.transpose() +
                                    Eigen::Vector3d(1, 0, 0) * Eigen::RowVector3d(1, 0, 0);
      most_kept = std::max(most_kept, still.cwiseAbs().maxCoeff() / (1.0 + a));
    }
  evidence::hold(kSpectra,
                 "filter of a transverse gust: largest error of a step from 1/10000 to 40 scale lengths",
                 most_phi, 0.0, 1e-11, "1", "series error stated in the header");
  evidence::hold(kSpectra, "filter of a transverse gust: largest change of its covariance over such a step",
                 most_kept, 0.0, 1e-11, "1", "rounding");
}
