#include <catch2/catch.hpp>

#include "sim/air/wind.hpp"

using namespace stallwright;

TEST_CASE("a wind from the west blows the air to the east", "[air]") {
  const MeanWind wind{10.0, 270.0 * math::kDegree, 10.0, ShearLaw::kUniform, 0.0, 0.0};
  const auto v_E = wind_velocity_E(wind, 100.0);
  CHECK(v_E.x == Approx(0.0).margin(1e-14));
  CHECK(v_E.y == Approx(10.0));
  CHECK(v_E.z == 0.0);
}

TEST_CASE("power-law wind has its stated speed at the reference height and doubles as the law says",
          "[air]") {
  const MeanWind wind{8.0, 0.0, 10.0, ShearLaw::kPower, 0.25, 0.0};
  CHECK(wind_speed(wind, 10.0) == Approx(8.0));
  CHECK(wind_speed(wind, 160.0) == Approx(16.0));
  CHECK(wind_speed(wind, 5000.0) == wind_speed(wind, 600.0));
  CHECK(wind_speed(wind, 0.0) == wind_speed(wind, 2.0));
}

TEST_CASE("linear wind follows its gradient, stops at calm and is held at its top", "[air]") {
  const MeanWind wind{5.0, 0.0, 10.0, ShearLaw::kLinear, 0.0, -0.05};
  CHECK(wind_speed(wind, 60.0) == Approx(2.5));
  CHECK(wind_speed(wind, 200.0) == 0.0);
  const MeanWind rising{5.0, 0.0, 10.0, ShearLaw::kLinear, 0.0, 0.05};
  CHECK(wind_speed(rising, 2000.0) == Approx(5.0 + 0.05 * 590.0));
}
