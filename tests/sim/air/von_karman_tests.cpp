// What the header of von_karman.hpp promises beside its spectra, which tests/published holds.
#include <gsl/gsl_cdf.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/air/turbulence.hpp"
#include "sim/air/von_karman.hpp"

using namespace stallwright;

namespace {

VonKarmanParams<double> params(double height_m) {
  return {turbulence_scales(turbulence_intensity(Severity::kModerate), height_m), 10.0};
}

}  // namespace

TEST_CASE("von Karman's variance keeps through a climb from the ground at changing speed",
          "[air][statistics]") {
  // 1e-5 in each tail, for the six fields.
  constexpr std::uint32_t kFlights = 2000;
  double sums[6] = {};
  const auto height = [](int i) { return 1.0 + 4.0 * i; };
  constexpr int kSteps = 60;
  const auto sigma = stationary_sigma(params(height(kSteps)));
  for (std::uint32_t flight = 0; flight < kFlights; ++flight) {
    const random::Key key{9, flight};
    auto x = stationary_start(params(height(0)), von_karman_noise(key, 0, true));
    for (int i = 0; i < kSteps; ++i)
      x = advance(params(height(i)), x, i % 2 ? 15.0 : 60.0, 0.1, von_karman_noise(key, i));
    const auto g = gust(params(height(kSteps)), x);
    const double ratios[] = {g.v_B_mps.x / sigma.v_B_mps.x,
                             g.v_B_mps.y / sigma.v_B_mps.y,
                             g.v_B_mps.z / sigma.v_B_mps.z,
                             g.omega_B_radps.x / sigma.omega_B_radps.x,
                             g.omega_B_radps.y / sigma.omega_B_radps.y,
                             g.omega_B_radps.z / sigma.omega_B_radps.z};
    for (int f = 0; f < 4; ++f) sums[f] += ratios[f] * ratios[f];
  }
  // q and r lag behind a change of their own scale with height, as in dryden.hpp; the others may not.
  for (int f = 0; f < 4; ++f) {
    CAPTURE(f);
    CHECK(sums[f] > gsl_cdf_chisq_Pinv(1e-5, kFlights));
    CHECK(sums[f] < gsl_cdf_chisq_Qinv(1e-5, kFlights));
  }
}

TEST_CASE("at rest von Karman's gust stands still, in calm air there is none, and a sortie's gusts repeat",
          "[air]") {
  auto d = params(500.0);
  const random::Key key{1, 2};
  const auto x = stationary_start(d, von_karman_noise(key, 0, true));
  CHECK(advance(d, x, 0.0, 0.01, von_karman_noise(key, 5)) == x);
  CHECK(advance(d, x, -3.0, 0.01, von_karman_noise(key, 5)) == x);
  CHECK(advance(d, x, 30.0, 0.01, von_karman_noise(key, 5)) ==
        advance(d, x, 30.0, 0.01, von_karman_noise(key, 5)));
  CHECK_FALSE(von_karman_noise(key, 5).u == von_karman_noise({1, 3}, 5).u);
  CHECK_FALSE(von_karman_noise(key, 5).u == von_karman_noise(key, 0, true).u);
  d.scales = turbulence_scales(turbulence_intensity(Severity::kCalm), 500.0);
  CHECK(math::norm(gust(d, x).v_B_mps) == 0.0);
  CHECK(math::norm(gust(d, x).omega_B_radps) == 0.0);
}

TEST_CASE("the 36 numbers of a step are all different and none serves two filters", "[air]") {
  const auto n = von_karman_noise({5, 0}, 3);
  std::vector<double> all{n.p};
  for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
    all.push_back(n.u[i]);
    all.insert(all.end(), n.v[i].begin(), n.v[i].end());
    all.insert(all.end(), n.w[i].begin(), n.w[i].end());
  }
  CHECK(all.size() == 36);
  std::sort(all.begin(), all.end());
  CHECK(std::adjacent_find(all.begin(), all.end()) == all.end());
}

TEST_CASE("a sortie's turbulence is that of the model it was begun with, to the bit", "[air]") {
  const auto scales = params(400.0).scales;
  const random::Key key{4, 1};
  auto one = stationary_start(TurbulenceModel::kDryden, scales, 10.0, key);
  auto other = stationary_start(TurbulenceModel::kVonKarman, scales, 10.0, key);
  auto dryden = stationary_start(DrydenParams<double>{scales, 10.0}, dryden_noise(key, 0, true));
  auto karman = stationary_start(VonKarmanParams<double>{scales, 10.0}, von_karman_noise(key, 0, true));
  for (std::uint64_t t = 0; t < 20; ++t) {
    one = advance(one, scales, 10.0, 40.0, 0.01, key, t);
    other = advance(other, scales, 10.0, 40.0, 0.01, key, t);
    dryden = advance(DrydenParams<double>{scales, 10.0}, dryden, 40.0, 0.01, dryden_noise(key, t));
    karman = advance(VonKarmanParams<double>{scales, 10.0}, karman, 40.0, 0.01, von_karman_noise(key, t));
  }
  CHECK(gust(one, scales, 10.0) == gust(DrydenParams<double>{scales, 10.0}, dryden));
  CHECK(gust(other, scales, 10.0) == gust(VonKarmanParams<double>{scales, 10.0}, karman));
  CHECK_FALSE(gust(one, scales, 10.0) == gust(other, scales, 10.0));
}
