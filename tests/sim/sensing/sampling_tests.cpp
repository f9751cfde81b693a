#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "sim/sensing/sampling.hpp"

using namespace stallwright;

TEST_CASE("after a straight change over one sample a lag goes on as the exponential of its time constant",
          "[sensing][closed-form]") {
  for (const double tau : {0.005, 0.06, 0.5}) {
    constexpr double dt = 0.02;
    const LagStep<double> step = lag_step(tau, dt);
    Lag<double> lag = settled_lag(2.0);
    lag = followed(lag, 5.0, step);  // u rises by 3 in a straight line over dt
    const double left = 3.0 * (tau / dt) * (1.0 - std::exp(-dt / tau));  // 5 - y at dt, closed form
    CHECK(5.0 - lag.output == Approx(left).epsilon(1e-12));
    for (int n = 1; n <= 20; ++n) {
      lag = followed(lag, 5.0, step);
      CAPTURE(tau, n);
      CHECK(5.0 - lag.output == Approx(left * std::exp(-n * dt / tau)).epsilon(1e-9).margin(1e-14));
    }
  }
}

TEST_CASE("on a ramp a lag trails by its time constant times the rate, whatever the sample interval",
          "[sensing][closed-form]") {
  for (const double tau : {0.01, 0.06, 2.0})
    for (const double dt : {0.005, 0.02, 0.1}) {
      const LagStep<double> step = lag_step(tau, dt);
      Lag<double> lag = settled_lag(0.0);
      const int samples = static_cast<int>(40.0 * tau / dt) + 2;
      double u = 0.0;
      for (int n = 1; n <= samples; ++n) lag = followed(lag, u = 7.0 * dt * n, step);
      CAPTURE(tau, dt);
      CHECK(u - lag.output == Approx(7.0 * tau).epsilon(1e-9));
    }
}

TEST_CASE("a lag that has settled equals its input to the last bit, and one of zero always does",
          "[sensing][invariant]") {
  Lag<double> lag = settled_lag(1.0 / 3.0);
  for (int n = 0; n < 100; ++n) lag = followed(lag, 1.0 / 3.0, lag_step(0.06, 0.02));
  CHECK(lag.output == 1.0 / 3.0);
  Lag<double> none = settled_lag(0.0);
  for (const double u : {0.1, -7.3, 1e5}) {
    none = followed(none, u, lag_step(0.0, 0.02));
    CHECK(none.output == u);
  }
}

TEST_CASE("the lag of a heading turns through north the short way", "[sensing][limits]") {
  const LagStep<double> step = lag_step(0.5, 0.02);
  Lag<double> lag = settled_lag(6.25);
  for (int n = 0; n < 200; ++n) {
    lag = followed_angle(lag, 0.05, step);
    const double shown = as_heading(lag.output);
    CHECK((shown > 6.2 || shown < 0.051));
  }
  CHECK(as_heading(lag.output) == Approx(0.05).margin(1e-3));
}

TEST_CASE("headings lie from zero to below a full turn", "[sensing][limits]") {
  CHECK(as_heading(-0.1) == Approx(2.0 * math::kPi - 0.1));
  CHECK(as_heading(7.0) == Approx(7.0 - 2.0 * math::kPi));
  CHECK(as_heading(-1e-18) == 0.0);
  CHECK(as_heading(0.0) == 0.0);
}

TEST_CASE("resolution adds an error of standard deviation step over root 12 to a moving signal",
          "[sensing][closed-form]") {
  constexpr double kStepSize = 0.25;
  constexpr int kCount = 20000;
  double sum = 0.0, squares = 0.0, largest = 0.0;
  for (int n = 0; n < kCount; ++n) {
    const double x = 0.25 * 0.6180339887498949 * n;  // golden-ratio steps fill the interval evenly
    const double error = quantised(x, kStepSize) - x;
    sum += error;
    squares += error * error;
    largest = std::max(largest, std::fabs(error));
  }
  CHECK(std::sqrt(squares / kCount) == Approx(kStepSize / std::sqrt(12.0)).epsilon(1e-3));
  CHECK(sum / kCount == Approx(0.0).margin(1e-4));
  CHECK(largest <= kStepSize / 2.0 + 1e-9);
  CHECK(quantised(1.0 / 3.0, 0.0) == 1.0 / 3.0);
}
