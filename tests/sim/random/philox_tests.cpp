#include <Random123/philox.h>

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "sim/random/philox.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright::random;
using stallwright::evidence::hold;

namespace {
const Stream kStream{0x123456789ABCDEFull, 7, Channel::kGustU};
}

TEST_CASE("our Philox block equals the reference implementation for many counters and keys",
          "[random][published]") {
  r123::Philox4x32 reference;
  std::uint32_t x = 1;
  const auto next = [&x] { return x = x * 1664525u + 1013904223u; };
  int differ = 0;
  for (int i = 0; i < 20000; ++i) {
    const std::array<std::uint32_t, 4> c{next(), next(), next(), next()};
    const std::array<std::uint32_t, 2> k{next(), next()};
    const auto expected = reference(r123::Philox4x32::ctr_type{{c[0], c[1], c[2], c[3]}}, {{k[0], k[1]}});
    const auto ours = philox4x32_10(c, k);
    for (int j = 0; j < 4; ++j) differ += ours[j] != expected[j] ? 1 : 0;
  }
  hold({"SALMON-2011", "the authors' Random123, run beside ours", "run"},
       "words of 20,000 blocks that differ from the reference implementation", differ, 0.0, 0.0, "words",
       "the numbers are the same or they are not");
}

TEST_CASE("blocks of zeros, of ones and of the digits of pi give the published words",
          "[random][published]") {
  // Known-answer vectors distributed with the reference implementation [SALMON-2011].
  using Block = std::array<std::uint32_t, 4>;
  struct Known {
    const char* name;
    Block counter;
    std::array<std::uint32_t, 2> key;
    Block words;
  };
  for (const Known& known :
       {Known{"zeros", {0, 0, 0, 0}, {0, 0}, {0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u}},
        Known{"ones", {~0u, ~0u, ~0u, ~0u}, {~0u, ~0u}, {0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu}},
        Known{"digits of pi",
              {0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u},
              {0xa4093822u, 0x299f31d0u},
              {0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u}}}) {
    const Block ours = philox4x32_10(known.counter, known.key);
    int differ = 0;
    for (int j = 0; j < 4; ++j) differ += ours[j] != known.words[j] ? 1 : 0;
    hold({"SALMON-2011", "known-answer vectors of Philox 4x32-10", "from memory; confirmed by Random123"},
         std::string("words of the block of ") + known.name + " that differ", differ, 0.0, 0.0, "words",
         "the numbers are the same or they are not");
  }
}

TEST_CASE("a change of seed, sortie, channel, tick or index changes the number", "[random][invariant]") {
  std::set<double> seen{uniform(kStream, 5)};
  for (const double other :
       {uniform({kStream.seed ^ 1, 7, kStream.channel}, 5),
        uniform({kStream.seed ^ (1ull << 63), 7, kStream.channel}, 5),
        uniform({kStream.seed, 8, kStream.channel}, 5), uniform({kStream.seed, 7, Channel::kGustV}, 5),
        uniform(kStream, 6), uniform(kStream, 5 + (1ull << 32)), uniform(kStream, 5, 1),
        uniform(kStream, 5, 65535)})
    CHECK(seen.insert(other).second);
}

TEST_CASE("a number does not depend on what was drawn before it", "[random][invariant]") {
  std::vector<double> forward, backward;
  for (int t = 0; t < 100; ++t) forward.push_back(normal(kStream, t));
  for (int t = 99; t >= 0; --t) backward.push_back(normal(kStream, t));
  for (int t = 0; t < 100; ++t) CHECK(forward[t] == backward[99 - t]);
}

TEST_CASE("uniform numbers stay inside the open unit interval even for extreme words", "[random][limits]") {
  CHECK(open_unit(0, 0) > 0.0);
  CHECK(open_unit(~0u, ~0u) < 1.0);
  CHECK(open_unit(0x80000000u, 0) == 0.5 + 0x1p-53);
}

TEST_CASE("uniform and normal numbers have their moments within four standard errors",
          "[random][statistics]") {
  constexpr int kCount = 400000;
  double u1 = 0, u2 = 0, n1 = 0, n2 = 0, n3 = 0, n4 = 0, lag = 0, previous = 0;
  for (int t = 0; t < kCount; ++t) {
    const double u = uniform(kStream, t) - 0.5, n = normal({9, 1, Channel::kGustW}, t);
    u1 += u, u2 += u * u, n1 += n, n2 += n * n, n3 += n * n * n, n4 += n * n * n * n;
    lag += n * previous;
    previous = n;
  }
  const double error = 4.0 / std::sqrt(kCount);
  CHECK(std::fabs(u1 / kCount) < error * std::sqrt(1.0 / 12.0));
  CHECK(std::fabs(u2 / kCount - 1.0 / 12.0) < error * std::sqrt(1.0 / 180.0));
  CHECK(std::fabs(n1 / kCount) < error);
  CHECK(std::fabs(n2 / kCount - 1.0) < error * std::sqrt(2.0));
  CHECK(std::fabs(n3 / kCount) < error * std::sqrt(15.0));
  CHECK(std::fabs(n4 / kCount - 3.0) < error * std::sqrt(96.0));
  CHECK(std::fabs(lag / kCount) < error);
}

TEST_CASE("uniform and normal numbers fill equally likely cells evenly by a chi-square test",
          "[random][statistics]") {
  constexpr int kCells = 100, kCount = 200000;
  std::array<int, kCells> flat{}, bell{};
  for (int t = 0; t < kCount; ++t) {
    const double phi = 0.5 * std::erfc(-normal({77, 3, Channel::kPilotRemnant}, t) / std::sqrt(2.0));
    ++flat[static_cast<int>(uniform({77, 3, Channel::kPilotScan}, t) * kCells)];
    ++bell[static_cast<int>(phi * kCells)];
  }
  const auto chi_square = [](const std::array<int, kCells>& cells) {
    double sum = 0.0;
    for (const int c : cells)
      sum += (c - kCount / kCells) * (c - kCount / kCells) / (double(kCount) / kCells);
    return sum;
  };
  // 99 degrees of freedom: 0.1 % of true samples lie below 61.1, 0.1 % above 148.2.
  CHECK(chi_square(flat) == Approx(104.7).margin(43.6).epsilon(0));
  CHECK(chi_square(bell) == Approx(104.7).margin(43.6).epsilon(0));
}

TEST_CASE("the two numbers of a normal pair are each normal and not correlated", "[random][statistics]") {
  constexpr int kCount = 200000;
  double squares = 0, product = 0, products_of_squares = 0;
  for (int t = 0; t < kCount; ++t) {
    const auto [a, b] = normal_pair({5, 0, Channel::kGustV}, t);
    squares += b * b, product += a * b, products_of_squares += (a * a - 1.0) * (b * b - 1.0);
  }
  const double error = 4.0 / std::sqrt(kCount);
  CHECK(std::fabs(squares / kCount - 1.0) < error * std::sqrt(2.0));
  CHECK(std::fabs(product / kCount) < error);
  CHECK(std::fabs(products_of_squares / kCount) < error * 2.0);
}
