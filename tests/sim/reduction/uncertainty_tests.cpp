#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <vector>

#include "sim/reduction/pooled_mean.hpp"
#include "sim/reduction/uncertainty.hpp"

using namespace stallwright;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {
std::vector<Component> budget() {
  Component scatter{"scatter", Evaluation::kTypeA, 3.0, 8.0, 1.0, ""};
  Component mass{"mass", Evaluation::kTypeB, 2.0};
  mass.sensitivity = -2.0;
  return {scatter, mass};
}
}  // namespace

TEST_CASE("components add in quadrature through their sensitivities", "[reduction]") {
  const CombinedUncertainty all = combine(budget());
  CHECK_THAT(all.standard_uncertainty, WithinRel(5.0, 1e-15));
  // 5^4/(3^4/8): the mass is known, so its degrees of freedom are infinite.
  CHECK_THAT(all.effective_dof, WithinRel(625.0 * 8.0 / 81.0, 1e-14));
  CHECK_THAT(combine_kind(budget(), Evaluation::kTypeA).standard_uncertainty, WithinRel(3.0, 1e-15));
  CHECK_THAT(combine_kind(budget(), Evaluation::kTypeA).effective_dof, WithinRel(8.0, 1e-14));
  CHECK(std::isinf(combine_kind(budget(), Evaluation::kTypeB).effective_dof));
}

TEST_CASE("shares of variance sum to one and name the dominant component", "[reduction]") {
  const std::vector<double> shares = variance_shares(budget());
  CHECK_THAT(shares[0], WithinRel(0.36, 1e-14));
  CHECK_THAT(shares[1], WithinRel(0.64, 1e-14));
  const std::vector<Component> components = budget();
  CHECK(&dominant_component(components) == &components[1]);
}

TEST_CASE("a budget of nothing is zero and certain", "[reduction]") {
  const CombinedUncertainty nothing = combine({});
  CHECK(nothing.standard_uncertainty == 0.0);
  CHECK(std::isinf(nothing.effective_dof));
  CHECK_THROWS_AS(dominant_component({}), std::invalid_argument);
}

TEST_CASE("effective degrees of freedom do not depend on the unit", "[reduction]") {
  std::vector<Component> tiny = budget();
  for (Component& c : tiny) c.standard_uncertainty *= 1e-100;
  CHECK_THAT(combine(tiny).effective_dof, WithinRel(combine(budget()).effective_dof, 1e-12));
}

TEST_CASE("the expanded interval is symmetric and wide by the coverage factor", "[reduction]") {
  const Expanded expanded = expand(10.0, {2.0, std::numeric_limits<double>::infinity()}, 0.95);
  CHECK_THAT(expanded.coverage_factor, WithinAbs(1.959963984540054, 1e-12));
  CHECK_THAT(expanded.interval.lower, WithinRel(10.0 - expanded.expanded_uncertainty, 1e-15));
  CHECK_THAT(expanded.interval.upper, WithinRel(10.0 + 2.0 * expanded.coverage_factor, 1e-15));
}

TEST_CASE("Student's t with one degree of freedom is the tangent of a half angle", "[reduction]") {
  for (const double p : {0.5, 0.9, 0.95, 0.999})
    CHECK_THAT(coverage_factor(p, 1.0), WithinRel(std::tan(0.5 * std::acos(-1.0) * p), 1e-11));
  // Two degrees: t = p sqrt(2/(1 - p^2)); not whole: between its neighbours.
  CHECK_THAT(coverage_factor(0.95, 2.0), WithinRel(0.95 * std::sqrt(2.0 / (1.0 - 0.9025)), 1e-12));
  CHECK(coverage_factor(0.95, 2.5) < coverage_factor(0.95, 2.0));
  CHECK(coverage_factor(0.95, 2.5) > coverage_factor(0.95, 3.0));
  CHECK_THAT(coverage_factor(0.95, 1e9), WithinRel(1.959963984540054, 1e-8));
}

TEST_CASE("half-widths turn into the deviations of their distributions", "[reduction]") {
  // Variance of the unit-half-width density by summation: rectangular 1/2, triangular 1 - |x|.
  double rectangular = 0.0, triangular = 0.0;
  constexpr int kSteps = 20000;
  for (int i = 0; i < kSteps; ++i) {
    const double x = -1.0 + (2.0 * i + 1.0) / kSteps;
    rectangular += x * x * 0.5 * 2.0 / kSteps;
    triangular += x * x * (1.0 - std::abs(x)) * 2.0 / kSteps;
  }
  CHECK_THAT(standard_uncertainty_rectangular(1.0), WithinRel(std::sqrt(rectangular), 1e-7));
  CHECK_THAT(standard_uncertainty_triangular(1.0), WithinRel(std::sqrt(triangular), 1e-7));
  CHECK_THAT(standard_uncertainty_resolution(2.0), WithinRel(standard_uncertainty_rectangular(1.0), 1e-15));
  CHECK_THAT(standard_uncertainty_normal(1.959963984540054, 0.95), WithinRel(1.0, 1e-12));
}

TEST_CASE("components and levels without meaning are refused", "[reduction]") {
  const std::vector<Component> forgotten = {{"forgotten"}};
  CHECK_THROWS_WITH(combine(forgotten), Catch::Contains("forgotten"));
  CHECK_THROWS_AS(combine(std::vector<Component>{{"x", Evaluation::kTypeA, 1.0, 0.0}}),
                  std::invalid_argument);
  CHECK_THROWS_AS(combine(std::vector<Component>{{"x", Evaluation::kTypeA, -1.0}}), std::invalid_argument);
  CHECK_THROWS_AS(coverage_factor(1.0, 5.0), std::invalid_argument);
  CHECK_THROWS_AS(coverage_factor(0.95, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(coverage_factor(0.95, NAN), std::invalid_argument);
  CHECK_THROWS_AS(standard_uncertainty_rectangular(-0.1), std::invalid_argument);
  CHECK_THROWS_AS(dof_of_relative_uncertainty(0.0), std::invalid_argument);
}

TEST_CASE("a pooled mean weighs by variance and believes excess scatter", "[reduction]") {
  const std::vector<double> x = {10.0, 13.0}, u = {1.0, 2.0};
  const PooledMean pooled = pooled_mean(x, u);
  CHECK_THAT(pooled.value, WithinRel((4.0 * 10.0 + 13.0) / 5.0, 1e-15));
  CHECK_THAT(pooled.u_internal, WithinRel(std::sqrt(0.8), 1e-15));
  CHECK_THAT(pooled.chi_squared,
             WithinRel(9.0 / 5.0, 1e-13));  // difference squared over the sum of variances
  CHECK_THAT(pooled.u_external, WithinRel(std::sqrt(0.8 * 1.8), 1e-13));
  CHECK(pooled.adopted_uncertainty == pooled.u_external);
  // One degree of freedom: P(chi2 > z^2) = erfc(z/sqrt(2)).
  CHECK_THAT(pooled.probability, WithinRel(std::erfc(std::sqrt(0.9)), 1e-12));
}

TEST_CASE("a pooled mean does not believe scatter that is small by luck", "[reduction]") {
  const std::vector<double> x = {10.0, 10.0, 10.1}, u = {1.0, 1.0, 1.0};
  const PooledMean pooled = pooled_mean(x, u);
  CHECK(pooled.birge_ratio < 0.1);
  CHECK_THAT(pooled.adopted_uncertainty, WithinRel(1.0 / std::sqrt(3.0), 1e-15));
  const PooledMean single = pooled_mean(std::vector<double>{4.0}, std::vector<double>{0.5});
  CHECK(single.value == 4.0);
  CHECK(single.adopted_uncertainty == 0.5);
  CHECK(std::isnan(single.birge_ratio));
  CHECK_THROWS_AS(pooled_mean({}, {}), std::invalid_argument);
  CHECK_THROWS_AS(pooled_mean(x, std::vector<double>{1.0, 0.0, 1.0}), std::invalid_argument);
}
