#include "sim/study/sensitivity/saltelli_sample.hpp"

#include <boost/random/sobol.hpp>

#include "sim/random/philox.hpp"

namespace stallwright {
namespace {

std::vector<std::uint64_t> scrambling_words(std::size_t dimensions, std::uint64_t seed) {
  const random::Stream stream{seed, 0, random::Channel::kSensitivity};
  std::vector<std::uint64_t> words;
  for (std::size_t i = 0; i < dimensions; ++i) {
    const auto block = random::block(stream, i);
    words.push_back((static_cast<std::uint64_t>(block[0]) << 32) | block[1]);
  }
  return words;
}

}  // namespace

SaltelliSample saltelli_sample(int inputs, int base, std::uint64_t seed) {
  SaltelliSample sample{base, inputs, {}};
  if (inputs < 1 || base < 1) return sample;
  const auto d = static_cast<std::size_t>(inputs);
  const std::vector<std::uint64_t> words = scrambling_words(2 * d, seed);
  boost::random::sobol_engine<std::uint64_t, 64> sequence(2 * d);
  for (int j = 0; j < base; ++j) {
    std::vector<double> a(d), b(d);
    for (std::size_t i = 0; i < 2 * d; ++i) {
      // Boost leaves out the first point of the sequence, zero; without it the points fill no net.
      const std::uint64_t word = (j == 0 ? 0 : sequence()) ^ words[i];
      (i < d ? a[i] : b[i - d]) =
          random::open_unit(static_cast<std::uint32_t>(word >> 32), static_cast<std::uint32_t>(word));
    }
    sample.points.push_back(a);
    sample.points.push_back(b);
    for (std::size_t i = 0; i < d; ++i) {
      std::vector<double> mixed = a;
      mixed[i] = b[i];
      sample.points.push_back(mixed);
    }
  }
  return sample;
}

}  // namespace stallwright
