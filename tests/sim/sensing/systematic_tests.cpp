#include <boost/math/distributions/chi_squared.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"
#include "sim/sensing/systematic.hpp"

using namespace stallwright;

namespace {

struct Effect {
  std::string name;
  double sd;
  std::function<double(const SystematicErrors<double>&)> of;
};

std::vector<Effect> effects(const InstrumentGrade& g) {
  using E = const SystematicErrors<double>&;
  return {{"position error", g.position_error_share, [](E e) { return e.position_error_share; }},
          // The grade states a ratio at 40 m/s: 980 Pa at sea level.
          {"probe offset", g.probe_offset_ratio * 980.0, [](E e) { return e.probe_offset_pa; }},
          {"probe scale", g.probe_scale, [](E e) { return e.probe_scale; }},
          {"probe mounting", g.probe_mount_rad, [](E e) { return e.probe_mount_rad; }},
          {"acceleration x", g.acceleration_bias_mps2, [](E e) { return e.acceleration_mps2.x; }},
          {"acceleration y", g.acceleration_bias_mps2, [](E e) { return e.acceleration_mps2.y; }},
          {"acceleration z", g.acceleration_bias_mps2, [](E e) { return e.acceleration_mps2.z; }},
          {"rate x", g.rate_bias_radps, [](E e) { return e.rate_radps.x; }},
          {"attitude y", g.attitude_bias_rad, [](E e) { return e.attitude_rad.y; }},
          {"GPS altitude", g.gps_altitude_bias_m, [](E e) { return e.gps_altitude_m; }},
          {"temperature", g.temperature_bias_K, [](E e) { return e.temperature_K; }},
          {"mass", g.mass_share, [](E e) { return e.mass_share; }}};
}

constexpr int kSorties = 4000;

}  // namespace

TEST_CASE("drawn errors have zero mean and the stated standard deviations", "[sensing][statistics]") {
  const InstrumentGrade grade = standard_instruments();
  const boost::math::chi_squared chi(kSorties);
  // One false alarm in 10,000 for each effect; the seed is fixed, so the test does not flicker.
  const double low = quantile(chi, 5e-5), high = quantile(complement(chi, 5e-5));
  for (const Effect& effect : effects(grade)) {
    CAPTURE(effect.name);
    REQUIRE(effect.sd > 0.0);
    double sum = 0.0, squares = 0.0;
    for (std::uint32_t sortie = 0; sortie < kSorties; ++sortie) {
      const double z = effect.of(draw_systematic_errors(grade, {2024, sortie})) / effect.sd;
      sum += z;
      squares += z * z;
    }
    CHECK(squares > low);
    CHECK(squares < high);
    CHECK(sum / kSorties == Approx(0.0).margin(3.9 / std::sqrt(kSorties)));
  }
}

TEST_CASE("drawn errors are uncorrelated with each other", "[sensing][statistics]") {
  const InstrumentGrade grade = standard_instruments();
  const std::vector<Effect> all = effects(grade);
  std::vector<SystematicErrors<double>> draws;
  for (std::uint32_t sortie = 0; sortie < kSorties; ++sortie)
    draws.push_back(draw_systematic_errors(grade, {5, sortie}));
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      double product = 0.0;
      for (const auto& d : draws) product += all[i].of(d) * all[j].of(d) / (all[i].sd * all[j].sd);
      CAPTURE(all[i].name, all[j].name);
      CHECK(product / kSorties == Approx(0.0).margin(4.5 / std::sqrt(kSorties)));
    }
}

TEST_CASE("a drawn error does not depend on what else is drawn, nor on when", "[sensing][invariant]") {
  const InstrumentGrade grade = standard_instruments();
  const SystematicErrors<double> before = draw_systematic_errors(grade, {11, 3});
  draw_systematic_errors(grade, {11, 4});
  CHECK(draw_systematic_errors(grade, {11, 3}) == before);
  CHECK_FALSE(draw_systematic_errors(grade, {12, 3}) == before);
  // Switching one effect off leaves every other as it was.
  InstrumentGrade without = grade;
  without.probe_offset_ratio = 0.0;
  SystematicErrors<double> expected = before;
  expected.probe_offset_pa = 0.0;
  CHECK(draw_systematic_errors(without, {11, 3}) == expected);
}

TEST_CASE("ideal instruments draw no errors, and the pilot then enters the true mass", "[sensing][limits]") {
  const SystematicErrors<double> errors = draw_systematic_errors(ideal_instruments(), {1, 2});
  CHECK(errors == SystematicErrors<double>::none());
  CHECK(entered_mass(580.0, errors) == 580.0);
  SystematicErrors<double> heavy;
  heavy.mass_share = 0.01;
  CHECK(entered_mass(600.0, heavy) == Approx(606.0));
}

TEST_CASE("a grade is known by name, and an unknown one names both", "[sensing][input]") {
  CHECK(instrument_grade("ideal").pressure_noise_pa == 0.0);
  CHECK(instrument_grade("standard").pressure_noise_pa > 0.0);
  CHECK(instrument_grade("standard").name == "standard");
  CHECK_THROWS_AS(instrument_grade("perfect"), InputError);
  CHECK_THROWS_WITH(instrument_grade("perfect"),
                    Catch::Contains("ideal") && Catch::Contains("standard") && Catch::Contains("perfect"));
}
