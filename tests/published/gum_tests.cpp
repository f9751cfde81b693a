// Examples and tables of the Guide to the expression of uncertainty in measurement. source: JCGM-100
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "sim/reduction/csv.hpp"
#include "sim/reduction/least_squares.hpp"
#include "sim/reduction/uncertainty.hpp"

using namespace stallwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {
constexpr double kInfinity = std::numeric_limits<double>::infinity();

// A budget line given as in the tables of the guide: contribution and degrees of freedom.
Component line(const char* name, double u, double dof) {
  Component c;
  c.name = name;
  c.standard_uncertainty = u;
  c.dof = dof;
  return c;
}
}  // namespace

// Annex H.3. Expected: exact rational solution of the printed data, to 8 decimals; agrees with the printed
// results to the digits printed. Tolerance 1e-7 deg C, ten units of the last digit given here.
TEST_CASE("the thermometer line of the guide has its parameters, uncertainties and prediction",
          "[reduction][published]") {
  CsvRequest request;
  request.skip_comments = true;
  const NumericTable table =
      read_csv(STALLWRIGHT_SOURCE_DIR "/tests/published/data/gum_h3_thermometer.csv", request);
  const auto n = static_cast<Eigen::Index>(table.rows);
  Eigen::MatrixXd X(n, 2);
  Eigen::VectorXd b(n);
  for (Eigen::Index k = 0; k < n; ++k) {
    X(k, 0) = 1.0;
    X(k, 1) = table.column("t_reading_C")[static_cast<std::size_t>(k)] - 20.0;
    b(k) = table.column("b_observed_correction_C")[static_cast<std::size_t>(k)];
  }
  const LeastSquaresFit fit = fit_linear(X, b);
  CHECK_THAT(fit.parameters(0), WithinAbs(-0.17120379, 1e-7));
  CHECK_THAT(fit.parameters(1), WithinAbs(0.00218270, 1e-7));
  CHECK_THAT(fit.standard_uncertainty(0), WithinAbs(0.00287760, 1e-7));
  CHECK_THAT(fit.standard_uncertainty(1), WithinAbs(0.00066794, 1e-7));
  CHECK_THAT(fit.correlation()(0, 1), WithinAbs(-0.93042960, 1e-7));
  CHECK_THAT(fit.residual_sd, WithinAbs(0.00349756, 1e-7));
  CHECK(fit.dof == 9);
  const Estimate at_30 = fit.predict(Eigen::Vector2d(1.0, 10.0));
  CHECK_THAT(at_30.value, WithinAbs(-0.14937681, 1e-7));
  CHECK_THAT(at_30.standard_uncertainty, WithinAbs(0.00413860, 1e-7));
}

// Table G.2, from memory; every entry is a quantile that other tables of Student's t give alike.
// Tolerance: half a unit of the last digit printed.
TEST_CASE("coverage factors are those of the guide's table of Student's t", "[reduction][published]") {
  struct Entry {
    double probability, dof, t, half_unit;
  };
  const std::vector<Entry> table = {
      {0.95, 1, 12.71, 0.005},    {0.95, 2, 4.30, 0.005},           {0.95, 3, 3.18, 0.005},
      {0.95, 4, 2.78, 0.005},     {0.95, 5, 2.57, 0.005},           {0.95, 6, 2.45, 0.005},
      {0.95, 8, 2.31, 0.005},     {0.95, 10, 2.23, 0.005},          {0.95, 16, 2.12, 0.005},
      {0.95, 19, 2.09, 0.005},    {0.95, 30, 2.04, 0.005},          {0.95, 50, 2.01, 0.005},
      {0.95, 100, 1.984, 0.0005}, {0.95, kInfinity, 1.960, 0.0005}, {0.99, 1, 63.66, 0.005},
      {0.99, 2, 9.92, 0.005},     {0.99, 5, 4.03, 0.005},           {0.99, 10, 3.17, 0.005},
      {0.99, 16, 2.92, 0.005},    {0.99, kInfinity, 2.576, 0.0005}, {0.6827, 1, 1.84, 0.005},
      {0.6827, 5, 1.11, 0.005},   {0.9545, 2, 4.53, 0.005},         {0.9545, 10, 2.28, 0.005},
      {0.9973, 1, 235.80, 0.05},  {0.9973, 10, 3.96, 0.005},        {0.9973, kInfinity, 3.000, 0.0005}};
  for (const Entry& entry : table) {
    INFO("p " << entry.probability << ", dof " << entry.dof);
    CHECK_THAT(coverage_factor(entry.probability, entry.dof), WithinAbs(entry.t, entry.half_unit));
  }
}

// G.4.1: Z = b X1 X2 X3 with relative uncertainties of 0.25, 0.57 and 0.82 % from 10, 5 and 15 repeats.
// Printed: u_c 1.03 %, nu_eff 19.0, t95(19) = 2.09, U95 = 2.2 %. From memory, confirmed by hand.
TEST_CASE("effective degrees of freedom of the guide's product of three inputs are 19",
          "[reduction][published]") {
  const std::vector<Component> budget = {line("X1", 0.25, 9), line("X2", 0.57, 4), line("X3", 0.82, 14)};
  const CombinedUncertainty combined = combine(budget);
  CHECK_THAT(combined.standard_uncertainty, WithinAbs(1.03, 0.005));
  CHECK_THAT(combined.effective_dof, WithinAbs(19.0, 0.05));
  CHECK_THAT(expand(0.0, combined).expanded_uncertainty, WithinAbs(2.2, 0.05));
  CHECK(dominant_component(budget).name == "X3");
}

// H.1, first-order budget of the end gauge, nm. Printed: u_c 32 nm, nu_eff 16.7 (cut to 16), U99 = 93 nm.
// From memory; nu_eff recomputed 16.8 from the printed contributions, whose last digits move it by 0.1.
TEST_CASE("the end-gauge budget of the guide combines to 32 nm with about 16.7 degrees of freedom",
          "[reduction][published]") {
  const std::vector<Component> budget = {line("standard", 25.0, 18), line("difference", 9.7, 25.6),
                                         line("expansion", 2.9, 50), line("temperature", 16.6, 2)};
  const CombinedUncertainty combined = combine(budget);
  CHECK_THAT(combined.standard_uncertainty, WithinAbs(32.0, 0.5));
  CHECK_THAT(combined.effective_dof, WithinAbs(16.7, 0.1));
  CHECK_THAT(coverage_factor(0.99, std::floor(combined.effective_dof)) * 32.0, WithinAbs(93.0, 0.5));
  CHECK(dominant_component(budget).name == "standard");
}

// E.4.3: a standard deviation of n = 10, 50 repeats is itself known to 24 %, 10 %; eq. G.3 gives the dof
// back. From memory; tolerance from the two digits printed.
TEST_CASE("a standard uncertainty known to a quarter has eight degrees of freedom",
          "[reduction][published]") {
  CHECK_THAT(dof_of_relative_uncertainty(0.25), WithinRel(8.0, 1e-15));
  CHECK_THAT(dof_of_relative_uncertainty(0.10), WithinRel(50.0, 1e-14));
}
