// A lane's number is a double: every operation of the state path gives the same bits.
#include <array>
#include <bit>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "aircraft/math/lanes.hpp"
#include "sim/random/philox_lanes.hpp"

using namespace stallwright;

namespace {

std::uint64_t bits(double x) { return std::bit_cast<std::uint64_t>(x); }

/// Numbers that functions trip over, and many ordinary ones.
std::vector<double> numbers() {
  std::vector<double> all{0.0,
                          -0.0,
                          1.0,
                          -1.0,
                          0.5,
                          2.5,
                          -2.5,
                          3.5,
                          1e-300,
                          -1e-310,
                          1e15,
                          -4.5e8,
                          708.25,
                          709.75,
                          -708.5,
                          -745.25,
                          0.25,
                          0.785398,
                          1.5708,
                          -3.14159,
                          6.3,
                          1e5,
                          std::numeric_limits<double>::infinity(),
                          -std::numeric_limits<double>::infinity(),
                          std::nan("")};
  for (std::uint64_t k = 0; k < 2000; ++k)
    all.push_back(10.0 * random::normal({7, 0, random::Channel::kStudy}, k));
  return all;
}

/// Applies the same template to packs of W numbers and to each number alone.
template <int W, class F>
void same_bits(F f) {
  using L = math::Lanes<W>;
  const std::vector<double> x = numbers();
  for (std::size_t k = 0; k + W <= x.size(); ++k) {
    L a, b;
    for (int i = 0; i < W; ++i) {
      a.v[i] = x[k + static_cast<std::size_t>(i)];
      b.v[i] = x[(7 * k + 3 + static_cast<std::size_t>(i)) % x.size()];
    }
    const L together = f(a, b);
    for (int i = 0; i < W; ++i) {
      const double alone = f(double(a.v[i]), double(b.v[i]));
      INFO("of " << a.v[i] << ", " << b.v[i] << ": " << together.v[i] << ", alone " << alone);
      // Whose nothing-at-all it is may differ between a vector and a scalar instruction.
      REQUIRE((std::isnan(alone) ? std::isnan(double(together.v[i])) : bits(together.v[i]) == bits(alone)));
    }
  }
}

template <class F>
void same_bits_everywhere(F f) {
  same_bits<2>(f);
  same_bits<4>(f);
  same_bits<8>(f);
}

}  // namespace

TEST_CASE("a lane adds, compares and chooses as a double does", "[lanes]") {
  same_bits_everywhere([](const auto& a, const auto& b) { return a + b; });
  same_bits_everywhere([](const auto& a, const auto& b) { return a - b; });
  same_bits_everywhere([](const auto& a, const auto& b) { return a * b; });
  same_bits_everywhere([](const auto& a, const auto& b) { return a / b; });
  same_bits_everywhere([](const auto& a, const auto&) { return -a; });
  same_bits_everywhere([](const auto& a, const auto& b) { return math::min(a, b); });
  same_bits_everywhere([](const auto& a, const auto& b) { return math::max(a, b); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::abs(a); });
  same_bits_everywhere([](const auto& a, const auto& b) {
    using T = std::decay_t<decltype(a)>;
    return math::clamp(a, T(-1.5), math::max(b, T(-1.5)));
  });
  same_bits_everywhere([](const auto& a, const auto& b) { return math::where((a >= b) | !(a <= a), a, b); });
  same_bits_everywhere([](const auto& a, const auto& b) {
    using T = std::decay_t<decltype(a)>;
    return math::where((a == b) & (b > T(0.0)), T(-0.0), T(1.0));
  });
}

TEST_CASE("of two zeros, and beside a NaN, the smaller and the larger are the first in lanes as alone",
          "[lanes]") {
  using L = math::Lanes<2>;
  const double nan = std::nan("");
  for (const auto& [a, b] : {std::pair{0.0, -0.0}, {-0.0, 0.0}, {nan, 1.0}, {1.0, nan}}) {
    for (const double chosen : {math::min(a, b), math::max(a, b), double(math::min(L(a), L(b)).v[1]),
                                double(math::max(L(a), L(b)).v[0])})
      CHECK((std::isnan(a) ? std::isnan(chosen) : bits(chosen) == bits(a)));
    CHECK(
        (std::isnan(a) ? std::isnan(math::clamp(a, -1.0, 1.0)) : bits(math::clamp(a, -1.0, 1.0)) == bits(a)));
    CHECK(bits(math::abs(a == a ? a : -0.0)) == bits(math::abs(L(a == a ? a : -0.0)).v[0]));
  }
}

TEST_CASE("elementary functions of a lane have the bits of a double's", "[lanes]") {
  same_bits_everywhere([](const auto& a, const auto&) { return math::sqrt(a); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::exp(a); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::log(a); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::floor(a); });
  same_bits_everywhere([](const auto& a, const auto& b) { return math::atan2(a, b); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::sin(a); });
  same_bits_everywhere([](const auto& a, const auto&) { return math::cos(a); });
}

TEST_CASE("noise of a lane is the noise of its own sortie", "[lanes]") {
  using L = math::Lanes<4>;
  random::NoiseKey<L> keys;
  std::array<random::Key, 4> alone;
  for (int i = 0; i < 4; ++i) {
    const std::uint64_t seed = 3 + 0x1234567890ull * static_cast<std::uint64_t>(i);
    alone[static_cast<std::size_t>(i)] = {seed, static_cast<std::uint32_t>(40 * i)};
    const auto key = random::noise_key(alone[static_cast<std::size_t>(i)]);
    keys.seed_low.v[i] = key.seed_low;
    keys.seed_high.v[i] = key.seed_high;
    keys.sortie.v[i] = key.sortie;
  }
  for (int tick = 0; tick < 500; ++tick) {
    L ticks;
    for (int i = 0; i < 4; ++i) ticks.v[i] = 1000.0 * i + tick;
    const auto pair = random::normal_pair(keys, random::Channel::kBuffet, ticks, 3);
    for (int i = 0; i < 4; ++i) {
      const auto expected =
          random::normal_pair(alone[static_cast<std::size_t>(i)].stream(random::Channel::kBuffet),
                              static_cast<std::uint64_t>(ticks.v[i]), 3);
      REQUIRE(bits(pair[0].v[i]) == bits(expected[0]));
      REQUIRE(bits(pair[1].v[i]) == bits(expected[1]));
    }
  }
}
