#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "render/view/pixel_columns.hpp"

using namespace stallwright::view;

namespace {

struct Curve {
  std::vector<double> x, y;
};

Curve ramp(int n) {
  Curve c;
  for (int i = 0; i < n; ++i) {
    c.x.push_back(0.02 * i);
    c.y.push_back(std::sin(0.01 * i));
  }
  return c;
}

}  // namespace

TEST_CASE("a spike of one sample survives the cut to pixels", "[view][pixel_columns]") {
  Curve c = ramp(100000);
  c.y[54321] = 7.0;
  c.y[54400] = -7.0;
  std::vector<CurvePoint> out;
  pixel_columns(c.x, c.y, c.x.front(), c.x.back(), 300, out);
  const auto [low, high] =
      std::minmax_element(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.y < b.y; });
  CHECK(high->y == 7.0);
  CHECK(high->x == c.x[54321]);
  CHECK(low->y == -7.0);
}

TEST_CASE("no more than two samples a pixel are drawn, in order of time", "[view][pixel_columns]") {
  const Curve c = ramp(100000);
  std::vector<CurvePoint> out;
  pixel_columns(c.x, c.y, c.x.front(), c.x.back(), 300, out);
  CHECK(out.size() <= 600);
  CHECK(out.size() > 500);
  CHECK(std::is_sorted(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.x < b.x; }));
}

TEST_CASE("fewer samples than pixels are all drawn, with one neighbour beyond each edge",
          "[view][pixel_columns]") {
  const Curve c = ramp(1000);
  std::vector<CurvePoint> out;
  pixel_columns(c.x, c.y, c.x[100], c.x[110], 500, out);
  REQUIRE(out.size() == 13);
  CHECK(out.front().x == c.x[99]);
  CHECK(out.back().x == c.x[111]);
}

TEST_CASE("a gap stays a gap, and takes one place however long it is", "[view][pixel_columns]") {
  Curve c = ramp(10000);
  for (std::size_t i = 4000; i < 4030; ++i) c.y[i] = std::numeric_limits<double>::quiet_NaN();
  std::vector<CurvePoint> out;
  pixel_columns(c.x, c.y, c.x.front(), c.x.back(), 100, out);
  const auto gaps = std::count_if(out.begin(), out.end(), [](const auto& p) { return std::isnan(p.y); });
  CHECK(gaps == 1);
}

TEST_CASE("an empty range or curve draws nothing", "[view][pixel_columns]") {
  const Curve c = ramp(100);
  std::vector<CurvePoint> out{{1.0, 1.0}};
  pixel_columns(c.x, c.y, 1.0, 1.0, 100, out);
  CHECK(out.empty());
  pixel_columns({}, {}, 0.0, 1.0, 100, out);
  CHECK(out.empty());
}
