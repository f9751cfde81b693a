#include <boost/math/distributions/chi_squared.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::sensing_cases;

namespace {
const random::Key kKey{99, 7};
const SystematicErrors<double> kNone;
}  // namespace

TEST_CASE("ideal instruments in steady flight read the static response to the last bit, with any noise drawn",
          "[sensing][invariant]") {
  for (const double alpha : {-0.02, 0.1, 0.3}) {
    const SensedTruth<double> truth = steady(33.0, alpha);
    const StaticReadings<double> expected = static_readings(installation(), truth.flow);
    Recorder recorder(ideal_instruments(), kNone, truth);
    for (std::uint64_t n = 0; n < 60; ++n) {
      const Readings<double> r = recorder.sample(truth, sensor_noise(kKey, n));
      CHECK(r.probe_ratio == expected.probe_ratio);
      CHECK(r.indicated_airspeed_mps == expected.indicated_airspeed_mps);
      CHECK(r.impact_pressure_pa == expected.impact_pressure_pa);
      CHECK(r.pressure_altitude_m == expected.pressure_altitude_m);
      CHECK(r.vertical_speed_mps == 0.0);
    }
  }
}

TEST_CASE("ideal instruments show attitude, motion, GPS and controls as they are", "[sensing][invariant]") {
  const SensedTruth<double> truth = steady(33.0, 0.1);
  Recorder recorder(ideal_instruments(), kNone, truth);
  const Readings<double> r = recorder.sample(truth);
  CHECK(r.bank_rad == 0.05);
  CHECK(r.pitch_rad == 0.08);
  CHECK(r.heading_rad == Approx(4.0).epsilon(1e-15));
  CHECK(r.roll_rate_radps == 0.01);
  CHECK(r.pitch_rate_radps == -0.02);
  CHECK(r.yaw_rate_radps == 0.03);
  CHECK(r.forward_mps2 == 0.3);
  CHECK(r.right_mps2 == 0.1);
  CHECK(r.down_mps2 == -9.7);
  CHECK(r.gps_speed_mps == 36.0);
  CHECK(r.gps_altitude_m == 1000.0);
  CHECK(r.outside_air_K == truth.temperature_K);
  CHECK(r.propeller_radps == 230.0);
  CHECK(r.flap_rad == 0.2);
  CHECK(r.stick_aft == 0.1);
  CHECK(r.stick_right == -0.05);
  CHECK(r.pedal_right == 0.02);
  CHECK(r.throttle == 0.6);
  CHECK(r.indicated_altitude_m == Approx(r.pressure_altitude_m - pressure_altitude(100800.0)));
}

TEST_CASE("with lags alone steady readings still equal the static response to the last bit",
          "[sensing][invariant]") {
  InstrumentGrade lags = ideal_instruments();
  lags.tube_lag = true;
  lags.probe_lag_s = 0.06;
  const SensedTruth<double> truth = steady(28.0, 0.22);
  Recorder recorder(lags, kNone, truth);
  Readings<double> r;
  for (int n = 0; n < 100; ++n) r = recorder.sample(truth);
  CHECK(r.probe_ratio == static_readings(installation(), truth.flow).probe_ratio);
}

TEST_CASE("while speed falls the tubes hold the impact pressure back by Poiseuille's time",
          "[sensing][closed-form]") {
  InstrumentGrade tubes = ideal_instruments();
  tubes.tube_lag = true;
  const SensedTruth<double> start = steady(35.0, 0.1);
  Recorder lagging(tubes, kNone, start), exact(ideal_instruments(), kNone, start);
  double slow = 0.0, previous = 0.0, now = 0.0;
  for (int n = 1; n <= 100; ++n) {
    const SensedTruth<double> truth = steady(35.0 - 0.5144 * 0.02 * n, 0.1);  // 1 kt/s
    slow = lagging.sample(truth).impact_pressure_pa;
    previous = now;
    now = exact.sample(truth).impact_pressure_pa;
  }
  const double tau =
      tube_lag(installation().pitot_static, start.temperature_K, start.flow.static_pressure_pa);
  const double rate = (now - previous) / kSample_s;
  CHECK(slow - now == Approx(-tau * rate).epsilon(2e-3));  // the rate itself moves by 1.5 % a second
}

TEST_CASE("in a steady climb the vertical speed indicator shows the climb, having got there with its 2 s lag",
          "[sensing][closed-form]") {
  Recorder recorder(ideal_instruments(), kNone, steady(30.0, 0.1, 1000.0));
  const auto at = [](int n) { return steady(30.0, 0.1, 1000.0 + 3.0 * 0.02 * n); };
  Readings<double> r;
  double previous = 0.0;
  for (int n = 1; n <= 1000; ++n) {
    previous = r.pressure_altitude_m;
    r = recorder.sample(at(n));
    const double climb = (r.pressure_altitude_m - previous) / 0.02;
    if (n == 100) CHECK(r.vertical_speed_mps == Approx(climb * (1.0 - std::exp(-1.0))).epsilon(2e-4));
    if (n == 1000) CHECK(r.vertical_speed_mps == Approx(climb).epsilon(2e-4));
  }
}

TEST_CASE("a GPS fix comes at 5 Hz and is held in between", "[sensing][limits]") {
  Recorder recorder(ideal_instruments(), kNone, steady(30.0, 0.1));
  for (int n = 0; n < 35; ++n) {
    SensedTruth<double> truth = steady(30.0, 0.1);
    truth.ground_speed_mps = 100.0 + n;
    CHECK(recorder.sample(truth).gps_speed_mps == 100.0 + n / 10 * 10);
  }
}

TEST_CASE("each systematic error moves its reading by its own amount", "[sensing][invariant]") {
  const SensedTruth<double> truth = steady(30.0, 0.2);
  const auto read = [&](const SystematicErrors<double>& errors) {
    return Recorder(ideal_instruments(), errors, truth).sample(truth);
  };
  const Readings<double> exact = read(kNone);
  const double q_c = impact_pressure(30.0, truth.flow.density_kgpm3, truth.flow.static_pressure_pa);
  SystematicErrors<double> e;
  e.position_error_share = 0.01;
  CHECK(read(e).impact_pressure_pa == Approx(exact.impact_pressure_pa - 0.01 * q_c).epsilon(1e-12));
  CHECK(read(e).pressure_altitude_m < exact.pressure_altitude_m);
  e = {};
  e.probe_offset_pa = 5.0;
  CHECK(read(e).probe_ratio - exact.probe_ratio == Approx(5.0 / exact.impact_pressure_pa).epsilon(1e-9));
  e = {};
  e.probe_scale = 0.02;
  CHECK(read(e).probe_ratio == Approx(1.02 * exact.probe_ratio).epsilon(1e-12));
  e = {};
  e.probe_mount_rad = 0.002;
  // Slope of 2.25 sin 2a with a = 1.1 alpha - mount, the probe's own q, cos^2 beta.
  const double q_probe = 0.5 * truth.flow.density_kgpm3 * 30.6 * 30.6 * std::pow(std::cos(0.03), 2);
  CHECK((read(e).probe_ratio - exact.probe_ratio) * exact.impact_pressure_pa ==
        Approx(-0.002 * 4.5 * std::cos(2.0 * (0.22 - 0.001 - 8.0 * kDeg)) * q_probe).epsilon(1e-5));
  e = {};
  e.acceleration_mps2 = {0.01, 0.02, 0.03};
  e.rate_radps = {0.001, 0.002, 0.003};
  e.attitude_rad = {0.004, 0.005, 0.006};
  e.gps_altitude_m = 4.0;
  e.temperature_K = 0.5;
  const Readings<double> r = read(e);
  CHECK(r.forward_mps2 - exact.forward_mps2 == Approx(0.01));
  CHECK(r.right_mps2 - exact.right_mps2 == Approx(0.02));
  CHECK(r.down_mps2 - exact.down_mps2 == Approx(0.03));
  CHECK(r.roll_rate_radps - exact.roll_rate_radps == Approx(0.001));
  CHECK(r.pitch_rate_radps - exact.pitch_rate_radps == Approx(0.002));
  CHECK(r.yaw_rate_radps - exact.yaw_rate_radps == Approx(0.003));
  CHECK(r.bank_rad - exact.bank_rad == Approx(0.004));
  CHECK(r.pitch_rad - exact.pitch_rad == Approx(0.005));
  CHECK(r.heading_rad - exact.heading_rad == Approx(0.006));
  CHECK(r.gps_altitude_m - exact.gps_altitude_m == Approx(4.0));
  CHECK(r.outside_air_K - exact.outside_air_K == Approx(0.5));
}

TEST_CASE(
    "noise of impact pressure has the grade's standard deviation with resolution added, from sample to "
    "sample "
    "independent",
    "[sensing][statistics]") {
  const SensedTruth<double> truth = steady(30.0, 0.2);
  const InstrumentGrade grade = standard_instruments();
  Recorder recorder(grade, kNone, truth);
  const double exact = static_readings(installation(), truth.flow).impact_pressure_pa;
  constexpr int kCount = 10000;
  const double variance = grade.pressure_noise_pa * grade.pressure_noise_pa +
                          grade.pressure_step_pa * grade.pressure_step_pa / 12.0;
  double squares = 0.0, products = 0.0, last = 0.0;
  for (int n = 0; n < kCount; ++n) {
    const double error = recorder.sample(truth, sensor_noise(kKey, n)).impact_pressure_pa - exact;
    squares += error * error / variance;
    products += error * last / variance;
    last = error;
  }
  const boost::math::chi_squared chi(kCount);
  CHECK(squares > quantile(chi, 5e-4));
  CHECK(squares < quantile(complement(chi, 5e-4)));
  CHECK(products / kCount == Approx(0.0).margin(3.3 / std::sqrt(kCount)));
}

TEST_CASE("each noise number moves its own reading by the grade's standard deviation and no other",
          "[sensing][invariant]") {
  InstrumentGrade g = ideal_instruments();
  g.pressure_noise_pa = 0.7;
  g.acceleration_noise_mps2 = 0.03;
  g.rate_noise_radps = 0.002;
  g.attitude_noise_rad = 0.001;
  g.gps_speed_noise_mps = 0.1;
  g.gps_altitude_noise_m = 1.5;
  g.temperature_noise_K = 0.05;
  const SensedTruth<double> truth = steady(30.0, 0.2);
  const auto read = [&](const SensorNoise<double>& noise) {
    const Readings<double> r = Recorder(g, kNone, truth).sample(truth, noise);
    // Static pressure by its height, probe pressure by its ratio: both undone here.
    return std::vector<double>{
        r.impact_pressure_pa, r.pressure_altitude_m, r.probe_ratio * r.impact_pressure_pa,
        r.forward_mps2,       r.right_mps2,          r.down_mps2,
        r.roll_rate_radps,    r.pitch_rate_radps,    r.yaw_rate_radps,
        r.bank_rad,           r.pitch_rad,           r.heading_rad,
        r.gps_speed_mps,      r.gps_altitude_m,      r.outside_air_K};
  };
  const double metres = -0.7 / (truth.flow.density_kgpm3 * 9.80665);
  const std::vector<double> sd{0.7,   metres, 0.7,   0.03,  0.03, 0.03, 0.002, 0.002,
                               0.002, 0.001,  0.001, 0.001, 0.1,  1.5,  0.05};
  const std::vector<double> exact = read(SensorNoise<double>::none());
  for (std::size_t i = 0; i < sd.size(); ++i) {
    SensorNoise<double> n;
    double* const numbers[] = {&n.impact,         &n.static_pressure, &n.probe,      &n.acceleration.x,
                               &n.acceleration.y, &n.acceleration.z,  &n.rate.x,     &n.rate.y,
                               &n.rate.z,         &n.attitude.x,      &n.attitude.y, &n.attitude.z,
                               &n.gps_speed,      &n.gps_altitude,    &n.temperature};
    *numbers[i] = 1.0;
    const std::vector<double> shown = read(n);
    for (std::size_t j = 0; j < sd.size(); ++j) {
      CAPTURE(i, j);
      CHECK(shown[j] - exact[j] == Approx(i == j ? sd[j] : 0.0).epsilon(2e-4).margin(1e-9));
    }
  }
}

TEST_CASE("the probe's zero walks with a variance that grows as time", "[sensing][statistics]") {
  InstrumentGrade grade = ideal_instruments();
  grade.probe_drift_pa_per_sqrt_s = 0.03;
  const SensedTruth<double> truth = steady(30.0, 0.2);
  constexpr int kWalks = 400;
  double squares = 0.0;
  for (std::uint32_t sortie = 0; sortie < kWalks; ++sortie) {
    Recorder recorder(grade, kNone, truth);
    for (std::uint64_t n = 0; n < 100; ++n) recorder.sample(truth, sensor_noise({4, sortie}, n));  // 2 s
    squares += std::pow(recorder.state().probe_drift_pa, 2) / (0.03 * 0.03 * 2.0);
  }
  const boost::math::chi_squared chi(kWalks);
  CHECK(squares > quantile(chi, 5e-4));
  CHECK(squares < quantile(complement(chi, 5e-4)));
}

TEST_CASE("the noise of a sample is the same whatever was read before it", "[sensing][invariant]") {
  std::vector<SensorNoise<double>> forward;
  for (std::uint64_t n = 0; n < 30; ++n) forward.push_back(sensor_noise(kKey, n));
  for (std::uint64_t n = 30; n-- > 0;) CHECK(sensor_noise(kKey, n) == forward[n]);
  CHECK_FALSE(sensor_noise({99, 8}, 3) == forward[3]);
  CHECK_FALSE(forward[2] == forward[3]);
  // All the numbers of one sample differ: no channel is read twice.
  const SensorNoise<double>& s = forward[0];
  const std::vector<double> all{s.impact,      s.static_pressure, s.probe,          s.probe_drift,
                                s.temperature, s.acceleration.x,  s.acceleration.y, s.acceleration.z,
                                s.rate.x,      s.rate.y,          s.rate.z,         s.attitude.x,
                                s.attitude.y,  s.attitude.z,      s.gps_speed,      s.gps_altitude};
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) CHECK(all[i] != all[j]);
}

TEST_CASE("readings land on the grade's steps", "[sensing][limits]") {
  const InstrumentGrade grade = standard_instruments();
  const SensedTruth<double> truth = steady(30.0, 0.2);
  Recorder recorder(grade, draw_systematic_errors(grade, kKey), truth);
  for (std::uint64_t n = 0; n < 50; ++n) {
    const Readings<double> r = recorder.sample(truth, sensor_noise(kKey, n));
    const auto off = [](double value, double step) {
      return std::fabs(value / step - std::round(value / step));
    };
    CHECK(off(r.impact_pressure_pa, grade.pressure_step_pa) < 1e-9);
    CHECK(off(r.down_mps2, grade.acceleration_step_mps2) < 1e-9);
    CHECK(off(r.pitch_rate_radps, grade.rate_step_radps) < 1e-9);
    CHECK(off(r.pitch_rad, grade.attitude_step_rad) < 1e-9);
    CHECK(off(r.outside_air_K, grade.temperature_step_K) < 1e-9);
  }
}
