#include <bit>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>
#include <type_traits>
#include <vector>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/bisected_table.hpp"
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/table.hpp"
#include "aircraft/math/vec3.hpp"

using namespace stallwright;

namespace {

/// Largest relative error of f against a long double reference over an evenly spaced set of places.
template <class F, class R>
double worst(F f, R reference, double from, double to, int count = 100001) {
  double largest = 0.0;
  for (int i = 0; i < count; ++i) {
    const double x = from + (to - from) * i / (count - 1);
    const long double expected = reference(static_cast<long double>(x));
    const long double error = std::fabs(f(x) - expected) / (expected == 0.0L ? 1.0L : std::fabs(expected));
    largest = std::fmax(largest, static_cast<double>(error));
  }
  return largest;
}

const double kInfinity = std::numeric_limits<double>::infinity();
const double kNan = std::numeric_limits<double>::quiet_NaN();

}  // namespace

TEST_CASE("exp and log stay within their stated error over their whole range", "[math]") {
  const auto exp = [](double x) { return math::exp(x); };
  const auto log = [](double x) { return math::log(x); };
  const auto expl = [](long double x) { return std::exp(x); };
  const auto logl = [](long double x) { return std::log(x); };
  CHECK(worst(exp, expl, -1.0, 1.0) < 4e-16);
  CHECK(worst(exp, expl, -708.0, 709.0) < 4e-16);
  CHECK(worst(log, logl, 0.9, 1.1) < 4e-16);
  CHECK(worst(log, logl, 1e-3, 4.0) < 4e-16);
  CHECK(worst(log, logl, 1.0, 1e12) < 4e-16);
  CHECK(worst(log, logl, 3e-308, 1e-300) < 4e-16);
}

TEST_CASE("exp and log give their limits outside their range", "[math]") {
  CHECK(math::exp(0.0) == 1.0);
  CHECK(math::exp(-709.0) == 0.0);
  CHECK(math::exp(-kInfinity) == 0.0);
  CHECK(math::exp(kInfinity) == kInfinity);
  CHECK(std::isnan(math::exp(kNan)));
  CHECK(math::log(1.0) == 0.0);
  CHECK(math::log(0.0) == -kInfinity);
  CHECK(math::log(kInfinity) == kInfinity);
  CHECK(std::isnan(math::log(-1.0)));
  CHECK(std::isnan(math::log(kNan)));
}

TEST_CASE("sine, cosine and tangent stay within their stated error up to 1e5 rad", "[math]") {
  const auto sin = [](double x) { return math::sin(x); };
  const auto cos = [](double x) { return math::cos(x); };
  const auto tan = [](double x) { return math::tan(x); };
  const auto sinl = [](long double x) { return std::sin(x); };
  const auto cosl = [](long double x) { return std::cos(x); };
  const auto tanl = [](long double x) { return std::tan(x); };
  for (const double reach : {1e-9, 1.0, 10.0, 1e3, 1e5}) {
    CAPTURE(reach);
    CHECK(worst(sin, sinl, -reach, reach) < 4e-16);
    CHECK(worst(cos, cosl, -reach, reach) < 4e-16);
    CHECK(worst(tan, tanl, -reach, reach) < 8e-16);
  }
  // The hardest places: the doubles nearest to multiples of pi/2, where everything but the error cancels.
  for (int k = 1; k <= 63000; k += 7) {
    const double x = k * (math::kPi / 2.0);
    const long double s = std::sin(static_cast<long double>(x)), c = std::cos(static_cast<long double>(x));
    const long double small = k % 2 ? c : s;
    const double ours = k % 2 ? math::cos(x) : math::sin(x);
    if (std::fabs(ours - small) > 4e-16L * std::fabs(small)) FAIL("at multiple " << k << " of pi/2");
  }
  CHECK(std::isnan(math::sin(kInfinity)));
  CHECK(math::sin(0.0) == 0.0);
  CHECK(math::cos(0.0) == 1.0);
}

TEST_CASE("the arc functions stay within their stated error in every quadrant", "[math]") {
  CHECK(worst([](double x) { return math::atan(x); }, [](long double x) { return std::atan(x); }, -1.0, 1.0) <
        5e-16);
  CHECK(worst([](double x) { return math::atan(x); }, [](long double x) { return std::atan(x); }, -50, 50) <
        5e-16);
  CHECK(worst([](double x) { return math::asin(x); }, [](long double x) { return std::asin(x); }, -1.0, 1.0) <
        6e-16);
  CHECK(worst([](double x) { return math::acos(x); }, [](long double x) { return std::acos(x); }, -1.0,
              0.999) < 6e-16);
  double largest = 0.0;
  for (int i = 0; i < 100000; ++i) {
    const double angle = -3.14159 + 6.28318 * i / 99999.0;
    const double x = 3.0 * std::cos(angle), y = 3.0 * std::sin(angle);
    const long double expected = std::atan2(static_cast<long double>(y), static_cast<long double>(x));
    largest = std::fmax(largest, static_cast<double>(std::fabs((math::atan2(y, x) - expected) / expected)));
  }
  CHECK(largest < 5e-16);
}

TEST_CASE("the arc functions give their limits on the axes", "[math]") {
  CHECK(math::atan2(0.0, 0.0) == 0.0);
  CHECK(math::atan2(0.0, 2.0) == 0.0);
  CHECK(math::atan2(0.0, -2.0) == math::kPi);
  CHECK(math::atan2(2.0, 0.0) == math::kPi / 2.0);
  CHECK(math::atan2(-2.0, 0.0) == -math::kPi / 2.0);
  CHECK(math::atan(kInfinity) == math::kPi / 2.0);
  CHECK(math::asin(1.0) == math::kPi / 2.0);
  CHECK(math::acos(1.0) == 0.0);
  CHECK(std::isnan(math::asin(1.0000001)));
  CHECK(std::isnan(math::atan2(kNan, 1.0)));
}

TEST_CASE("a positive power is close to the true one and exact for a zero exponent", "[math]") {
  CHECK(math::pow_positive(2.0, 0.0) == 1.0);
  const auto ours = [](double x) { return math::pow_positive(x, 3.5); };
  CHECK(worst(
            ours, [](long double x) { return std::pow(x, 3.5L); }, 0.5, 2.0) < 1.5e-15);
  CHECK(worst(
            ours, [](long double x) { return std::pow(x, 3.5L); }, 1.0, 1e4) < 1.4e-14);
}

TEST_CASE("rounding and selection agree with the library where both are exact", "[math]") {
  for (const double x :
       {-3.7, -2.5, -1.0, -0.2, 0.0, 0.49999999999999994, 0.5, 1.5, 2.5, 1e9 + 0.5, -1e15 + 0.25}) {
    CAPTURE(x);
    CHECK(math::round(x) == std::nearbyint(x));
    CHECK(math::floor(x) == std::floor(x));
    CHECK(math::abs(x) == std::fabs(x));
  }
  CHECK_FALSE(std::signbit(math::abs(-0.0)));
  CHECK(math::clamp(5.0, -1.0, 2.0) == 2.0);
  CHECK(math::clamp(-5.0, -1.0, 2.0) == -1.0);
  CHECK(std::isnan(math::clamp(kNan, -1.0, 2.0)));
  CHECK(math::min(1.0, 2.0) == 1.0);
  CHECK(math::max(1.0, 2.0) == 2.0);
}

TEST_CASE("a matrix inverse undoes the matrix, and solve agrees with it", "[math]") {
  const math::Mat3<double> inertia{{1800.0, 0.0, -120.0, 0.0, 2500.0, 0.0, -120.0, 0.0, 3900.0}};
  const auto product = math::inverse(inertia) * inertia;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) CHECK(product(i, j) == Approx(i == j ? 1.0 : 0.0).margin(1e-15).epsilon(0));
  const math::Vec3<double> x{0.3, -0.2, 0.7};
  CHECK(math::norm(math::solve(inertia, inertia * x) - x) < 1e-15);
  const math::Mat3<double> turn{{0.0, -1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1.0}};
  CHECK(math::transpose(turn) * turn == math::Mat3<double>::identity());
  CHECK(turn * math::Vec3<double>{1.0, 0.0, 0.0} == math::Vec3<double>{0.0, 1.0, 0.0});
  CHECK(math::cross(math::Vec3<double>{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}) == math::Vec3<double>{0.0, 0.0, 1.0});
}

TEST_CASE("an angle keeps its meaning through a conversion written out", "[math]") {
  STATIC_REQUIRE_FALSE(std::is_convertible_v<Deg, Rad>);
  STATIC_REQUIRE_FALSE(std::is_convertible_v<double, Rad>);
  CHECK(Rad(Deg(180.0)).value() == math::kPi);
  CHECK(Deg(Rad(Deg(57.0))).value() == Approx(57.0).epsilon(1e-15));
  CHECK(Deg(-3.0) < Deg(2.0));
}

TEST_CASE("a table is exact on its points, straight between them and held past its ends", "[math]") {
  const std::vector<double> x{-2.0, 0.1, 0.7, 5.0}, y{0.3, -0.7, 1.1, 0.9};
  for (std::size_t i = 0; i < x.size(); ++i) CHECK(math::interpolate(x, y, x[i]) == y[i]);
  CHECK(math::interpolate(x, y, -1e9) == 0.3);
  CHECK(math::interpolate(x, y, 1e9) == 0.9);
  CHECK(math::interpolate(x, y, 0.4) == Approx(0.2).epsilon(1e-14));
  CHECK(std::isnan(math::interpolate(x, y, kNan)));
  CHECK(math::interpolate({1.0}, {4.0}, 3.0) == 4.0);
}

TEST_CASE("a table looked up by bisection gives the same bits as by visiting each interval", "[math]") {
  const std::vector<double> x{-2.0, 0.1, 0.7, 0.7000001, 5.0}, y{0.3, -0.7, 1.1, 0.9, 1e-9};
  const auto same = [](double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
  };
  std::vector<double> places{-1e9, 1e9, kNan};
  for (const double point : x)
    for (const double near : {std::nextafter(point, -9.0), point, std::nextafter(point, 9.0)})
      places.push_back(near);
  for (int k = -300; k < 600; ++k) places.push_back(0.01 * k);
  for (const double at : places) {
    INFO(at);
    CHECK(same(math::interpolate_bisected(x, y, at), math::interpolate(x, y, at)));
    CHECK(same(math::interpolate_bisected({1.0}, {4.0}, at), math::interpolate({1.0}, {4.0}, at)));
  }
}

TEST_CASE("a table with an axis that does not rise is refused by name", "[math]") {
  CHECK_NOTHROW(math::check_table("alpha", {0.0, 1.0}, {0.0, 0.0}));
  CHECK_THROWS_AS(math::check_table("alpha", {0.0, 0.0}, {0.0, 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(math::check_table("alpha", {0.0, kNan}, {0.0, 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(math::check_table("alpha", {}, {}), std::invalid_argument);
  CHECK_THROWS_WITH(math::check_table("alpha", {0.0, 1.0}, {0.0}), Catch::Contains("alpha"));
}
