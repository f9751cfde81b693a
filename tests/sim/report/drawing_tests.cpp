// Scales, thinning, numbers and the picture builder.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "sim/report/decimate.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/scale.hpp"
#include "sim/report/svg.hpp"

using namespace stallwright;
using Catch::Matchers::Contains;

namespace {
constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

std::vector<double> ramp(std::size_t n) {
  std::vector<double> x(n);
  for (std::size_t i = 0; i < n; ++i) x[i] = 0.02 * static_cast<double>(i);
  return x;
}
}  // namespace

TEST_CASE("thinning a curve keeps each extreme, however short", "[report][plot]") {
  const auto x = ramp(180000);
  std::vector<double> y(x.size());
  for (std::size_t i = 0; i < y.size(); ++i) y[i] = std::sin(x[i]);
  y[100001] = -25.0;
  y[100002] = 31.0;
  const auto chosen = samples_to_draw(x, y, x.front(), x.back(), 700);
  CHECK(chosen.size() <= 2800u);
  CHECK(chosen.size() > 1400u);
  CHECK(std::is_sorted(chosen.begin(), chosen.end()));
  CHECK(std::count(chosen.begin(), chosen.end(), 100001u) == 1);
  CHECK(std::count(chosen.begin(), chosen.end(), 100002u) == 1);
  CHECK(chosen.front() == 0);
  CHECK(chosen.back() == x.size() - 1);
}

TEST_CASE("a curve with fewer samples than pixels is drawn whole", "[report][plot]") {
  const auto x = ramp(50);
  CHECK(samples_to_draw(x, x, 0.0, 0.98, 700).size() == 50);
  CHECK(samples_to_draw(x, x, 0.2, 0.4, 700).size() == 11);
}

TEST_CASE("a gap in a curve survives the thinning", "[report][plot]") {
  const auto x = ramp(10000);
  std::vector<double> y(x.size(), 1.0);
  std::fill(y.begin() + 4000, y.begin() + 5000, kNaN);
  const auto chosen = samples_to_draw(x, y, x.front(), x.back(), 100);
  CHECK(std::any_of(chosen.begin(), chosen.end(), [&](std::size_t i) { return std::isnan(y[i]); }));
}

TEST_CASE("nothing is chosen from nothing", "[report][plot]") {
  CHECK(samples_to_draw({}, {}, 0.0, 1.0, 100).empty());
  const auto x = ramp(10);
  CHECK(samples_to_draw(x, x, 1.0, 1.0, 100).empty());
  CHECK(samples_to_draw(x, x, 0.0, 1.0, 0).empty());
}

TEST_CASE("ticks are round, inside the range and no more than asked for", "[report][plot]") {
  CHECK(nice_ticks(0.0, 10.0, 6).values == std::vector<double>{0, 2, 4, 6, 8, 10});
  CHECK(nice_ticks(38.3, 97.1, 7).values == std::vector<double>{40, 50, 60, 70, 80, 90});
  CHECK(nice_ticks(-0.3, 0.3, 4).values == std::vector<double>{-0.2, 0, 0.2});
  CHECK(nice_ticks(0.11, 0.13, 5).decimals == 3);
  for (const double low : {-1e6, -3.7, 0.0, 1e-5, 17.0})
    for (const double width : {1e-7, 0.013, 1.0, 777.0, 1e9})
      for (int most = 1; most < 12; ++most) {
        const Ticks ticks = nice_ticks(low, low + width, most);
        CHECK(static_cast<int>(ticks.values.size()) <= most);
        for (const double value : ticks.values) CHECK((value >= low && value <= low + width));
      }
}

TEST_CASE("an axis without a range has no ticks", "[report][plot]") {
  CHECK(nice_ticks(1.0, 1.0, 5).values.empty());
  CHECK(nice_ticks(kNaN, 1.0, 5).values.empty());
  CHECK(nice_ticks(0.0, kInfinity, 5).values.empty());
}

TEST_CASE("an extent passes over what is not finite and always has a width", "[report][plot]") {
  Extent extent;
  CHECK(extent.empty());
  CHECK(extent.widened(0.1, 2.0).high() - extent.widened(0.1, 2.0).low() == 2.0);
  for (const double value : {3.0, kNaN, kInfinity, -kInfinity, 5.0}) extent.add(value);
  CHECK(extent.low() == 3.0);
  CHECK(extent.high() == 5.0);
}

TEST_CASE("numbers that do not exist are a dash, and what rounds to zero has no sign", "[report][text]") {
  CHECK(fixed(kNaN, 2) == kNoNumber);
  CHECK(fixed(-kInfinity, 2) == kNoNumber);
  CHECK(fixed(1e300, 2) == kNoNumber);
  CHECK(fixed(-0.004, 2) == "0.00");
  CHECK(fixed(-0.006, 2) == "-0.01");
  CHECK(signed_fixed(0.25, 1) == "+0.2");
  CHECK(signed_fixed(0.004, 2) == "0.00");
  CHECK(signed_fixed(-1.5, 1) == "-1.5");
  CHECK(signed_fixed(kNaN, 1) == kNoNumber);
  CHECK(page_fixed(-1.5, 1) == "\u22121.5");
  CHECK(plus_minus(0.30123, 0.00456, 4) == "0.3012 \u00b1 0.0046");
  CHECK(plus_minus(kNaN, 0.1, 4) == kNoNumber);
}

TEST_CASE("text in pictures and pages is escaped", "[report][text]") {
  CHECK(escaped("<b a=\"1\" c='2'>&") == "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;");
  CHECK(escaped(std::string("a\0\x1b", 3)) == "a\uFFFD\uFFFD");
  CHECK(escaped("\u03c3 \u00b1") == "\u03c3 \u00b1");
  Svg svg(10, 10, "</title><script>");
  svg.text({1, 1}, "<script>");
  CHECK_THAT(svg.str(), !Contains("<script>") && Contains("&lt;script&gt;"));
}

TEST_CASE("a picture leaves out what has no place, and breaks a line there", "[report][plot]") {
  Svg svg(100, 100, "t");
  const std::string empty = svg.str();
  svg.line({kNaN, 0}, {1, 1}, {});
  svg.box({0, 0, kInfinity, 1}, "red");
  svg.mark(Mark::circle, {0, kNaN}, 3, "red");
  svg.text({kNaN, 0}, "x");
  CHECK(svg.str() == empty);
  svg.polyline(std::vector<Spot>{{0, 0}, {1, 1}, {kNaN, 2}, {3, 3}, {4, 4}}, {});
  CHECK_THAT(svg.str(), Contains("d=\"M0,0 1,1M3,3 4,4\""));
}

TEST_CASE("each meaning has its own mark", "[report][plot]") {
  std::vector<std::string> shapes;
  for (const Mark mark :
       {Mark::circle, Mark::diamond, Mark::square, Mark::triangle, Mark::inverted_triangle, Mark::cross}) {
    Svg svg(10, 10, "t");
    svg.mark(mark, {5, 5}, 3, "none");
    shapes.push_back(svg.str());
  }
  std::sort(shapes.begin(), shapes.end());
  CHECK(std::unique(shapes.begin(), shapes.end()) == shapes.end());
}
