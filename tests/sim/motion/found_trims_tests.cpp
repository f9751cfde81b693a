#include <bit>
#include <catch2/catch.hpp>
#include <cstdint>

#include "sim/motion/found_trims.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using namespace stallwright::testing;

namespace {

bool same_bits(const Trim& a, const Trim& b) {
  using State = AsArray<std::uint64_t, FlightState<double>>;
  using Hands = AsArray<std::uint64_t, Controls<double>>;
  return std::bit_cast<State>(a.state) == std::bit_cast<State>(b.state) &&
         std::bit_cast<Hands>(a.controls) == std::bit_cast<Hands>(b.controls) && a.alpha_rad == b.alpha_rad;
}

}  // namespace

TEST_CASE("a level flight found again is the one that the search finds, to the last bit", "[motion]") {
  const Aircraft a = marram(3);
  FoundTrims trims;
  for (int time = 0; time < 2; ++time)
    for (const double speed : {32.0, 45.0})
      for (const double altitude : {900.0, 1200.0})
        for (const double density : {1.05, 1.12}) {
          TrimCondition c;
          c.true_airspeed_mps = speed;
          c.altitude_m = altitude;
          c.density_kgpm3 = density;
          const Trim kept = trims.level(a, speed, altitude, density);
          CHECK(kept.converged);
          CHECK(same_bits(kept, find_trim(a, c)));
        }
  CHECK(trims.size() == 8);
}

TEST_CASE("no more level flights are kept than the limit says, and those forgotten are found again",
          "[motion]") {
  const Aircraft a = marram();
  FoundTrims trims;
  const Trim first = trims.level(a, 40.0, 1000.0, 1.1);
  for (std::size_t i = 1; i <= FoundTrims::kKept; ++i)
    trims.level(a, 40.0 + 1e-3 * static_cast<double>(i), 1000.0, 1.1);
  CHECK(trims.size() == FoundTrims::kKept);
  CHECK(same_bits(first, trims.level(a, 40.0, 1000.0, 1.1)));
  CHECK(trims.size() == FoundTrims::kKept);
}
