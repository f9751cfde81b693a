// Examples and tables of the Guide to the expression of uncertainty in measurement. source: JCGM-100
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <limits>
#include <string>
#include <vector>

#include "sim/reduction/csv.hpp"
#include "sim/reduction/least_squares.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;

namespace {
constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr const char* kPrinted = "half a unit of the last digit printed";

std::string number(double value) {
  char text[24];
  std::snprintf(text, sizeof text, "%g", value);
  return text;
}

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
  const Published h3{"JCGM-100", "annex H.3, calibration of a thermometer",
                     "data read in two copies; solved exactly"};
  const auto to_1e7 = [&](const char* quantity, double measured, double exact, const char* unit) {
    hold(h3, std::string("thermometer, ") + quantity, measured, exact, 1e-7, unit,
         "exact solution given to 8 decimals");
  };
  to_1e7("correction at 20 degrees, y1", fit.parameters(0), -0.17120379, "degC");
  to_1e7("slope, y2", fit.parameters(1), 0.00218270, "1");
  to_1e7("uncertainty of y1", fit.standard_uncertainty(0), 0.00287760, "degC");
  to_1e7("uncertainty of y2", fit.standard_uncertainty(1), 0.00066794, "1");
  to_1e7("correlation of y1 and y2", fit.correlation()(0, 1), -0.93042960, "1");
  to_1e7("residual deviation", fit.residual_sd, 0.00349756, "degC");
  CHECK(fit.dof == 9);
  const Estimate at_30 = fit.predict(Eigen::Vector2d(1.0, 10.0));
  to_1e7("predicted correction at 30 degrees", at_30.value, -0.14937681, "degC");
  to_1e7("uncertainty of the prediction at 30 degrees", at_30.standard_uncertainty, 0.00413860, "degC");
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
  evidence::WorstRow worst;
  for (const Entry& entry : table)
    worst.row(number(entry.probability) + " at " + number(entry.dof) + " degrees of freedom",
              coverage_factor(entry.probability, entry.dof), entry.t, entry.half_unit);
  worst.hold({"JCGM-100", "table G.2, Student's t", "from memory"}, "coverage factor", "1",
             "half a unit of the last digit printed");
}

// G.4.1: Z = b X1 X2 X3 with relative uncertainties of 0.25, 0.57 and 0.82 % from 10, 5 and 15 repeats.
// Printed: u_c 1.03 %, nu_eff 19.0, t95(19) = 2.09, U95 = 2.2 %. From memory, confirmed by hand.
TEST_CASE("effective degrees of freedom of the guide's product of three inputs are 19",
          "[reduction][published]") {
  const std::vector<Component> budget = {line("X1", 0.25, 9), line("X2", 0.57, 4), line("X3", 0.82, 14)};
  const CombinedUncertainty combined = combine(budget);
  const Published g41{"JCGM-100", "G.4.1, example", "from memory; worked by hand"};
  hold(g41, "product of three inputs, combined uncertainty", combined.standard_uncertainty, 1.03, 0.005, "%",
       kPrinted);
  hold(g41, "product of three inputs, effective degrees of freedom", combined.effective_dof, 19.0, 0.05, "1",
       kPrinted);
  hold(g41, "product of three inputs, expanded uncertainty", expand(0.0, combined).expanded_uncertainty, 2.2,
       0.05, "%", kPrinted);
  CHECK(dominant_component(budget).name == "X3");
}

// H.1, first-order budget of the end gauge, nm. Printed: u_c 32 nm, nu_eff 16.7 (cut to 16), U99 = 93 nm.
// From memory; nu_eff recomputed 16.8 from the printed contributions, whose last digits move it by 0.1.
TEST_CASE("the end-gauge budget of the guide combines to 32 nm with about 16.7 degrees of freedom",
          "[reduction][published]") {
  const std::vector<Component> budget = {line("standard", 25.0, 18), line("difference", 9.7, 25.6),
                                         line("expansion", 2.9, 50), line("temperature", 16.6, 2)};
  const CombinedUncertainty combined = combine(budget);
  const Published h1{"JCGM-100", "annex H.1, end gauge", "from memory; worked by hand"};
  hold(h1, "end gauge, combined uncertainty", combined.standard_uncertainty, 32.0, 0.5, "nm", kPrinted);
  hold(h1, "end gauge, effective degrees of freedom", combined.effective_dof, 16.7, 0.1, "1",
       "last digits of the printed contributions");
  hold(h1, "end gauge, expanded uncertainty of 32 nm at 99 %",
       coverage_factor(0.99, std::floor(combined.effective_dof)) * 32.0, 93.0, 0.5, "nm", kPrinted);
  CHECK(dominant_component(budget).name == "standard");
}

// E.4.3: a standard deviation of n = 10, 50 repeats is itself known to 24 %, 10 %; eq. G.3 gives the dof
// back. From memory; tolerance from the two digits printed.
TEST_CASE("a standard uncertainty known to a quarter has eight degrees of freedom",
          "[reduction][published]") {
  const Published g3{"JCGM-100", "eq. G.3 and table E.1", "from memory"};
  hold(g3, "degrees of freedom of an uncertainty known to 25 %", dof_of_relative_uncertainty(0.25), 8.0,
       8e-15, "1", "exact, but for rounding");
  hold(g3, "degrees of freedom of an uncertainty known to 10 %", dof_of_relative_uncertainty(0.10), 50.0,
       5e-13, "1", "exact, but for rounding");
}
