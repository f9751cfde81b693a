// The air is written once for any number type: a pack of two numbers must give, lane by lane, the bits of
// double.
#include <array>
#include <catch2/catch.hpp>

#include "sim/air/airspeed.hpp"
#include "sim/air/discrete_gust.hpp"
#include "sim/air/von_karman.hpp"
#include "sim/air/wind.hpp"

namespace two_lanes {

struct Mask {
  std::array<bool, 2> at{};
  friend Mask operator&(Mask a, Mask b) { return {{a.at[0] && b.at[0], a.at[1] && b.at[1]}}; }
  friend Mask operator|(Mask a, Mask b) { return {{a.at[0] || b.at[0], a.at[1] || b.at[1]}}; }
  friend Mask operator!(Mask a) { return {{!a.at[0], !a.at[1]}}; }
};

struct Pack {
  std::array<double, 2> at{};
  Pack() = default;
  explicit Pack(double x) : at{x, x} {}
  Pack(double a, double b) : at{a, b} {}
};

template <class F>
Pack each(F f) {
  return {f(0), f(1)};
}
template <class F>
Mask each_truth(F f) {
  return {{f(0), f(1)}};
}

Pack operator+(const Pack& a, const Pack& b) {
  return each([&](int i) { return a.at[i] + b.at[i]; });
}
Pack operator-(const Pack& a, const Pack& b) {
  return each([&](int i) { return a.at[i] - b.at[i]; });
}
Pack operator*(const Pack& a, const Pack& b) {
  return each([&](int i) { return a.at[i] * b.at[i]; });
}
Pack operator/(const Pack& a, const Pack& b) {
  return each([&](int i) { return a.at[i] / b.at[i]; });
}
Pack operator-(const Pack& a) {
  return each([&](int i) { return -a.at[i]; });
}
Mask operator<(const Pack& a, const Pack& b) {
  return each_truth([&](int i) { return a.at[i] < b.at[i]; });
}
Mask operator>(const Pack& a, const Pack& b) { return b < a; }
Mask operator>=(const Pack& a, const Pack& b) {
  return each_truth([&](int i) { return a.at[i] >= b.at[i]; });
}
Mask operator==(const Pack& a, const Pack& b) {
  return each_truth([&](int i) { return a.at[i] == b.at[i]; });
}

// The five primitives that lane_primitives.hpp asks of a number type.
Pack select(const Mask& m, const Pack& a, const Pack& b) {
  return each([&](int i) { return m.at[i] ? a.at[i] : b.at[i]; });
}
Pack square_root(const Pack& a) {
  return each([&](int i) { return stallwright::math::square_root(a.at[i]); });
}
Pack round_to_integer(const Pack& a) {
  return each([&](int i) { return stallwright::math::round_to_integer(a.at[i]); });
}
Pack scale_by_power_of_two(const Pack& a, const Pack& k) {
  return each([&](int i) { return stallwright::math::scale_by_power_of_two(a.at[i], k.at[i]); });
}
stallwright::math::SplitNumber<Pack> split_exponent(const Pack& a) {
  using stallwright::math::split_exponent;
  return {each([&](int i) { return split_exponent(a.at[i]).mantissa; }),
          each([&](int i) { return split_exponent(a.at[i]).exponent; })};
}

}  // namespace two_lanes

using namespace stallwright;
using two_lanes::Pack;

TEST_CASE("atmosphere, airspeed and wind give each lane the bits of the scalar", "[air][lanes]") {
  const AirColumn column(Day{9.0, 100200.0});
  const MeanWind wind{7.0, 1.0, 10.0, ShearLaw::kPower, 0.2, 0.0};
  const double height[] = {400.0, 12500.0};
  const auto both = column.at(Pack(height[0], height[1]));
  for (int i = 0; i < 2; ++i) {
    const auto one = column.at(height[i]);
    CHECK(both.pressure_Pa.at[i] == one.pressure_Pa);
    CHECK(both.density_kgpm3.at[i] == one.density_kgpm3);
    CHECK(cas_of_tas(Pack(45.0), both).at[i] == cas_of_tas(45.0, one));
    CHECK(pressure_altitude(both.pressure_Pa).at[i] == pressure_altitude(one.pressure_Pa));
    CHECK(wind_velocity_E(wind, Pack(height[0], height[1])).x.at[i] == wind_velocity_E(wind, height[i]).x);
  }
}

TEST_CASE("turbulence gives each lane the bits of the scalar", "[air][lanes]") {
  const auto intensity = turbulence_intensity(Severity::kModerate);
  const double height[] = {90.0, 520.0}, airspeed[] = {28.0, 44.0};
  const DrydenParams<Pack> d{turbulence_scales(intensity, Pack(height[0], height[1])), Pack(9.5)};
  DrydenState<Pack> x{};
  DrydenState<double> lane[2];
  for (std::uint64_t t = 0; t < 50; ++t) {
    const auto n0 = dryden_noise({3, 0}, t), n1 = dryden_noise({3, 1}, t);
    DrydenNoise<Pack> n{Pack(n0.u, n1.u), Pack(n0.p, n1.p), {}, {}};
    for (int k = 0; k < 3; ++k) n.v[k] = Pack(n0.v[k], n1.v[k]), n.w[k] = Pack(n0.w[k], n1.w[k]);
    x = advance(d, x, Pack(airspeed[0], airspeed[1]), Pack(0.01), n);
    const auto both = gust(d, x);
    for (int i = 0; i < 2; ++i) {
      const DrydenParams<double> one{turbulence_scales(intensity, height[i]), 9.5};
      lane[i] = advance(one, lane[i], airspeed[i], 0.01, i == 0 ? n0 : n1);
      const auto alone = gust(one, lane[i]);
      REQUIRE(both.v_B_mps.z.at[i] == alone.v_B_mps.z);
      REQUIRE(both.omega_B_radps.x.at[i] == alone.omega_B_radps.x);
      REQUIRE(both.omega_B_radps.y.at[i] == alone.omega_B_radps.y);
      REQUIRE(both.omega_B_radps.z.at[i] == alone.omega_B_radps.z);
    }
  }
}

TEST_CASE("von Karman turbulence and a discrete gust give each lane the bits of the scalar", "[air][lanes]") {
  const auto intensity = turbulence_intensity(Severity::kModerate);
  const double height[] = {90.0, 520.0}, airspeed[] = {28.0, 44.0};
  const VonKarmanParams<Pack> d{turbulence_scales(intensity, Pack(height[0], height[1])), Pack(9.5)};
  VonKarmanState<Pack> x{};
  VonKarmanState<double> lane[2];
  DiscreteGust g;
  g.length_m = 20.0;
  g.peak_mps = {1.0, 2.0, 3.0};
  DiscreteGustState<Pack> met{};
  DiscreteGustState<double> met_alone[2];
  for (std::uint64_t t = 0; t < 80; ++t) {
    const VonKarmanNoise<double> noise[] = {von_karman_noise({3, 0}, t), von_karman_noise({3, 1}, t)};
    VonKarmanNoise<Pack> n{{}, Pack(noise[0].p, noise[1].p), {}, {}};
    for (std::size_t i = 0; i < kVonKarmanFields; ++i) {
      n.u[i] = Pack(noise[0].u[i], noise[1].u[i]);
      for (std::size_t k = 0; k < 3; ++k) {
        n.v[i][k] = Pack(noise[0].v[i][k], noise[1].v[i][k]);
        n.w[i][k] = Pack(noise[0].w[i][k], noise[1].w[i][k]);
      }
    }
    const Pack speed(airspeed[0], airspeed[1]), step(0.01), now(0.01 * static_cast<double>(t)), zero(0.0);
    x = advance(d, x, speed, step, n);
    met = advance(g, met, now, {Pack(0.8), Pack(0.6), zero}, speed, step);
    const auto both = gust(d, x), both_met = gust(g, met, math::Mat3<Pack>::identity());
    for (std::size_t i = 0; i < 2; ++i) {
      const VonKarmanParams<double> one{turbulence_scales(intensity, height[i]), 9.5};
      lane[i] = advance(one, lane[i], airspeed[i], 0.01, noise[i]);
      met_alone[i] = advance(g, met_alone[i], now.at[i], {0.8, 0.6, 0.0}, airspeed[i], 0.01);
      const auto alone = gust(one, lane[i]),
                 alone_met = gust(g, met_alone[i], math::Mat3<double>::identity());
      REQUIRE(both.v_B_mps.x.at[i] == alone.v_B_mps.x);
      REQUIRE(both.v_B_mps.z.at[i] == alone.v_B_mps.z);
      REQUIRE(both.omega_B_radps.y.at[i] == alone.omega_B_radps.y);
      REQUIRE(both.omega_B_radps.z.at[i] == alone.omega_B_radps.z);
      REQUIRE(both_met.v_B_mps.x.at[i] == alone_met.v_B_mps.x);
      REQUIRE(both_met.omega_B_radps.y.at[i] == alone_met.omega_B_radps.y);
    }
  }
}

TEST_CASE("the arc and circular functions give each lane the bits of the scalar", "[math][lanes]") {
  const Pack a(-0.8, 0.35);
  for (int i = 0; i < 2; ++i) {
    CHECK(math::asin(a).at[i] == math::asin(a.at[i]));
    CHECK(math::atan2(a, Pack(-0.2, 3.0)).at[i] == math::atan2(a.at[i], i ? 3.0 : -0.2));
    CHECK(math::tan(a * Pack(40.0)).at[i] == math::tan(a.at[i] * 40.0));
    CHECK(math::floor(a).at[i] == math::floor(a.at[i]));
  }
}
