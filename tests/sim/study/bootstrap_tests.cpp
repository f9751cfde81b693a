#include <catch2/catch.hpp>
#include <cmath>

#include "sim/study/bootstrap.hpp"

namespace stallwright {
namespace {

constexpr random::Stream kStream{1, 3, random::Channel::kBootstrap};

double mean_of(std::vector<double>& sample) {
  double sum = 0.0;
  for (const double v : sample) sum += v;
  return sum / static_cast<double>(sample.size());
}

std::vector<double> normals(int n) {
  std::vector<double> values;
  for (int i = 0; i < n; ++i)
    values.push_back(random::normal({7, 0, random::Channel::kStudy}, static_cast<std::uint64_t>(i)));
  return values;
}

}  // namespace

TEST_CASE("a quantile lies between its two neighbours as Hyndman and Fan's type 7 puts it", "[study]") {
  const std::vector<double> ten{1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
  // h = (10 - 1) 0.25 = 2.25: a quarter of the way from the third to the fourth.
  CHECK(quantile(ten, 0.25) == 3.25);
  CHECK(quantile(ten, 0.0) == 1.0);
  CHECK(quantile(ten, 1.0) == 10.0);
  CHECK_THAT(quantile(ten, 0.95), Catch::WithinRel(9.55, 1e-14));
  CHECK(quantile(std::vector<double>{4.0}, 0.95) == 4.0);
}

TEST_CASE("the bootstrap interval of a mean is that of its standard error", "[study]") {
  const std::vector<double> values = normals(400);
  std::vector<double> copy = values;
  const double mean = mean_of(copy);
  double squares = 0.0;
  for (const double v : values) squares += (v - mean) * (v - mean);
  const double standard_error = std::sqrt(squares / 399.0 / 400.0);
  const Interval interval = bootstrap_intervals(values, {mean_of}, kStream).at(0);
  // The quantiles of 1,000 resamples scatter by about 4 % of the half-width; 12 % is three of that.
  CHECK_THAT(interval.half_width(), Catch::WithinRel(1.96 * standard_error, 0.12));
  CHECK(interval.contains(mean));
}

TEST_CASE("a bootstrap interval depends on values and stream and on nothing else", "[study]") {
  const std::vector<double> values = normals(60);
  const auto lower = [&](const random::Stream& stream) {
    return bootstrap_intervals(values, {mean_of}, stream).at(0).lower;
  };
  CHECK(lower(kStream) == lower(kStream));
  CHECK(lower(kStream) != lower({1, 4, random::Channel::kBootstrap}));
  CHECK(lower(kStream) != lower({2, 3, random::Channel::kBootstrap}));
  // More statistics from the same samples leave the first as it was.
  const auto both =
      bootstrap_intervals(values, {mean_of, [](auto& v) { return root_mean_square(v); }}, kStream);
  CHECK(both.at(0).lower == lower(kStream));
}

TEST_CASE("every value is drawn about as often as the others", "[study]") {
  std::vector<double> seen(7, 0.0), values{0, 1, 2, 3, 4, 5, 6};
  const auto count = [&](std::vector<double>& sample) {
    for (const double v : sample) seen[static_cast<std::size_t>(v)] += 1.0;
    return 0.0;
  };
  bootstrap_intervals(values, {count}, kStream);
  // 1,000 draws expected for each, standard deviation 29.
  for (const double n : seen) CHECK(std::abs(n - 1000.0) < 120.0);
}

TEST_CASE("without values there is no interval", "[study]") {
  CHECK(std::isnan(bootstrap_intervals({}, {mean_of}, kStream).at(0).lower));
}

}  // namespace stallwright
