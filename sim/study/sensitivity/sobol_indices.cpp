#include "sim/study/sensitivity/sobol_indices.hpp"

#include <cmath>

#include "sim/study/bootstrap.hpp"

namespace stallwright {
namespace {

/// Outputs of one base point: of A, of B, and of A with one column of B.
struct Triple {
  double a, b, mixed;
  bool whole() const { return std::isfinite(a) && std::isfinite(b) && std::isfinite(mixed); }
};

struct Shares {
  double first = kNone, total = kNone;
};

template <class At>
Shares shares_of(std::size_t count, const At& at) {
  const auto n = static_cast<double>(count);
  double sum = 0.0, squares = 0.0;
  for (std::size_t j = 0; j < count; ++j) sum += at(j).a + at(j).b;
  const double mean = sum / (2.0 * n);
  double first = 0.0, total = 0.0;
  for (std::size_t j = 0; j < count; ++j) {
    const Triple& t = at(j);
    squares += (t.a - mean) * (t.a - mean) + (t.b - mean) * (t.b - mean);
    first += (t.b - mean) * (t.mixed - t.a);           // [SALTELLI-2010 table 2 (b)]
    total += 0.5 * (t.a - t.mixed) * (t.a - t.mixed);  // [JANSEN-1999]
  }
  const double variance = squares / (2.0 * n);
  if (!(variance > 0.0)) return {};
  return {first / n / variance, total / n / variance};
}

SobolIndex index_of(const std::vector<Triple>& triples, const random::Stream& stream) {
  SobolIndex out;
  out.used = static_cast<int>(triples.size());
  if (out.used < 2) return out;
  const Shares shares = shares_of(triples.size(), [&](std::size_t j) -> const Triple& { return triples[j]; });
  out.first = shares.first;
  out.total = shares.total;
  if (!std::isfinite(out.first)) return out;
  // What is drawn with replacement are base points, by number.
  std::vector<double> numbers;
  for (std::size_t j = 0; j < triples.size(); ++j) numbers.push_back(static_cast<double>(j));
  const auto resampled = [&](std::vector<double>& drawn) {
    const Shares s = shares_of(drawn.size(), [&](std::size_t j) -> const Triple& {
      return triples[static_cast<std::size_t>(drawn[j])];
    });
    // A resample of one point alone has no variance; it says nothing.
    return std::isfinite(s.first) ? s : shares;
  };
  const std::vector<Interval> intervals =
      bootstrap_intervals(numbers,
                          {[&](std::vector<double>& drawn) { return resampled(drawn).first; },
                           [&](std::vector<double>& drawn) { return resampled(drawn).total; }},
                          stream);
  out.first_interval = intervals[0];
  out.total_interval = intervals[1];
  return out;
}

}  // namespace

std::vector<SobolIndex> sobol_indices(std::span<const double> outputs, int inputs,
                                      const random::Stream& stream) {
  const auto columns = static_cast<std::size_t>(inputs) + 2;
  std::vector<SobolIndex> indices;
  for (std::size_t i = 0; i + 2 < columns; ++i) {
    std::vector<Triple> triples;
    for (std::size_t begin = 0; begin + columns <= outputs.size(); begin += columns) {
      const Triple triple{outputs[begin], outputs[begin + 1], outputs[begin + 2 + i]};
      if (triple.whole()) triples.push_back(triple);
    }
    indices.push_back(
        index_of(triples, {stream.seed, stream.sortie + static_cast<std::uint32_t>(i), stream.channel}));
  }
  return indices;
}

}  // namespace stallwright
