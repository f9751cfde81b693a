// Long simulated series against the spectra, variances and signs that the header promises.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fft_complex.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <vector>

#include "aircraft/math/units.hpp"
#include "sim/air/dryden.hpp"

using namespace stallwright;

namespace {

DrydenParams<double> params() {
  const double l = 500.0 * kFoot;
  return {{1.0, 1.2, 0.8, l, l, l}, 36.0 * kFoot};
}

using Field = std::function<double(const Gust<double>&)>;
const Field kFields[] = {[](const Gust<double>& g) { return g.v_B_mps.x; },
                         [](const Gust<double>& g) { return g.v_B_mps.y; },
                         [](const Gust<double>& g) { return g.v_B_mps.z; },
                         [](const Gust<double>& g) { return g.omega_B_radps.x; },
                         [](const Gust<double>& g) { return g.omega_B_radps.y; },
                         [](const Gust<double>& g) { return g.omega_B_radps.z; }};

std::vector<Gust<double>> series(int count, double dt, const std::function<double(int)>& airspeed,
                                 std::uint32_t sortie) {
  const auto d = params();
  const random::Key key{20240229, sortie};
  std::vector<Gust<double>> out;
  auto x = stationary_start(d, dryden_noise(key, 0, true));
  for (int i = 0; i < count; ++i) {
    out.push_back(gust(d, x));
    x = advance(d, x, airspeed(i), dt, dryden_noise(key, i));
  }
  return out;
}

/// Mean square of one field over many short independent flights, in units of the expected variance, and its
/// interval.
void check_variance(double dt, const std::function<double(int)>& airspeed, int steps) {
  // Independent flights, last sample of each: the squares are then independent, and n of them follow
  // chi-square with n degrees of freedom. 1e-5 in each tail, for the six fields and the few calls of this
  // file.
  constexpr int kFlights = 4000;
  const auto d = params();
  double sums[6] = {};
  for (std::uint32_t flight = 0; flight < kFlights; ++flight) {
    const auto last = series(steps, dt, airspeed, flight).back();
    for (int f = 0; f < 6; ++f) sums[f] += std::pow(kFields[f](last) / kFields[f](stationary_sigma(d)), 2);
  }
  for (int f = 0; f < 6; ++f) {
    CAPTURE(dt, f);
    CHECK(sums[f] > gsl_cdf_chisq_Pinv(1e-5, kFlights));
    CHECK(sums[f] < gsl_cdf_chisq_Qinv(1e-5, kFlights));
  }
}

/// One-sided spectrum per rad/s by Welch's method: Hann windows, no overlap, mean of the periodograms.
std::vector<double> welch(const std::vector<double>& x, int length, double dt) {
  std::vector<double> spectrum(length / 2, 0.0), window(length);
  double power = 0.0;
  for (int i = 0; i < length; ++i) {
    window[i] = 0.5 - 0.5 * std::cos(2.0 * M_PI * i / length);
    power += window[i] * window[i];
  }
  const int segments = static_cast<int>(x.size()) / length;
  for (int s = 0; s < segments; ++s) {
    std::vector<double> packed(2 * length, 0.0);
    for (int i = 0; i < length; ++i) packed[2 * i] = x[s * length + i] * window[i];
    gsl_fft_complex_radix2_forward(packed.data(), 1, length);
    for (int k = 0; k < length / 2; ++k)
      spectrum[k] += (packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1]) * dt /
                     (M_PI * power * segments);
  }
  return spectrum;
}

/// The printed one-sided spectra [MIL-F-8785C 3.7], in the order of kFields.
double printed_spectrum(int field, double w, double v) {
  const auto d = params();
  const auto& s = d.scales;
  const double b = d.span_m, l = s.length_w_m, x = l * w / v, pi = M_PI;
  const double transverse = l / (pi * v) * (1 + 3 * x * x) / std::pow(1 + x * x, 2);
  switch (field) {
    case 0:
      return 2 * s.sigma_u_mps * s.sigma_u_mps * l / (pi * v) / (1 + x * x);
    case 1:
      return s.sigma_v_mps * s.sigma_v_mps * transverse;
    case 2:
      return s.sigma_w_mps * s.sigma_w_mps * transverse;
    case 3:
      return s.sigma_w_mps * s.sigma_w_mps / (v * l) * 0.8 * std::cbrt(pi * l / (4 * b)) /
             (1 + std::pow(4 * b * w / (pi * v), 2));
    case 4:
      return std::pow(w / v, 2) / (1 + std::pow(4 * b * w / (pi * v), 2)) * printed_spectrum(2, w, v);
    default:
      return std::pow(w / v, 2) / (1 + std::pow(3 * b * w / (pi * v), 2)) * printed_spectrum(1, w, v);
  }
}

}  // namespace

TEST_CASE("variance does not depend on the step", "[air][statistics]") {
  const auto steady = [](int) { return 40.0; };
  check_variance(0.01, steady, 40);
  check_variance(0.04, steady, 10);
}

TEST_CASE("variance does not depend on a change of speed on the way", "[air][statistics]") {
  check_variance(
      0.04, [](int i) { return i % 2 ? 15.0 : 60.0; }, 20);
}

TEST_CASE("simulated spectra agree with the printed ones in nearly every bin", "[air][statistics]") {
  constexpr int kLength = 1024, kSegments = 96;
  constexpr double kStep = 0.05, kAirspeed = 40.0;
  const auto flight = series(
      kLength * kSegments, kStep, [](int) { return kAirspeed; }, 1);
  const double low = gsl_cdf_chisq_Pinv(0.025, 2 * kSegments) / (2 * kSegments);
  const double high = gsl_cdf_chisq_Qinv(0.025, 2 * kSegments) / (2 * kSegments);
  for (int f = 0; f < 6; ++f) {
    CAPTURE(f);
    std::vector<double> x;
    for (const auto& g : flight) x.push_back(kFields[f](g));
    const auto spectrum = welch(x, kLength, kStep);
    int inside = 0, bins = 0;
    // From the fourth bin, past the window's leak, to a tenth of Nyquist, below which aliasing adds under 2
    // %.
    for (int k = 4; k < kLength / 20; ++k, ++bins) {
      const double w = 2.0 * M_PI * k / (kLength * kStep);
      const double ratio = spectrum[k] / printed_spectrum(f, w, kAirspeed);
      inside += ratio > low && ratio < high;
    }
    // A 95 % interval, neighbouring bins correlated by the window: at least 85 % must lie inside.
    CHECK(inside >= 0.85 * bins);
  }
}

TEST_CASE("the gust rates point the way the gust changes along the path", "[air][statistics]") {
  // Frozen field: what is now x ahead of the wing arrives after x/V. Linear prediction at the nose: v + r x,
  // w - q x.
  constexpr double kStep = 0.01, kAirspeed = 40.0;
  const auto flight = series(
      60000, kStep, [](int) { return kAirspeed; }, 2);
  const int ahead = 10;
  const double x = ahead * kStep * kAirspeed;
  double vr = 0, wq = 0, v_change = 0, w_change = 0, r_part = 0, q_part = 0;
  for (std::size_t i = ahead; i + ahead < flight.size(); ++i) {
    const double dv = (flight[i + ahead].v_B_mps.y - flight[i - ahead].v_B_mps.y) / 2.0;
    const double dw = (flight[i + ahead].v_B_mps.z - flight[i - ahead].v_B_mps.z) / 2.0;
    const auto at_nose = math::cross(flight[i].omega_B_radps, {x, 0.0, 0.0});
    vr += dv * at_nose.y, wq += dw * at_nose.z;
    v_change += dv * dv, w_change += dw * dw, r_part += at_nose.y * at_nose.y,
        q_part += at_nose.z * at_nose.z;
  }
  // The lag of the span blurs the prediction; a wrong sign would give the negative of these numbers.
  CHECK(vr / std::sqrt(v_change * r_part) > 0.4);
  CHECK(wq / std::sqrt(w_change * q_part) > 0.4);
}

TEST_CASE("calm air gives exactly no gust, and a sortie's gusts repeat", "[air]") {
  auto d = params();
  const random::Key key{1, 2};
  const auto x = stationary_start(d, dryden_noise(key, 0, true));
  CHECK(advance(d, x, 30.0, 0.01, dryden_noise(key, 5)) == advance(d, x, 30.0, 0.01, dryden_noise(key, 5)));
  CHECK_FALSE(dryden_noise(key, 5).u == dryden_noise({1, 3}, 5).u);
  d.scales = turbulence_scales(turbulence_intensity(Severity::kCalm), 500.0);
  CHECK(math::norm(gust(d, x).v_B_mps) == 0.0);
  CHECK(math::norm(gust(d, x).omega_B_radps) == 0.0);
}

TEST_CASE("severities are ordered at every height a light aeroplane flies", "[air]") {
  for (double h = 0.0; h < 3000.0; h += 50.0) {
    CHECK(severity_sigma_kt(Severity::kCalm, h) == 0.0);
    CHECK(severity_sigma_kt(Severity::kLight, h) < severity_sigma_kt(Severity::kModerate, h));
    CHECK(severity_sigma_kt(Severity::kModerate, h) < severity_sigma_kt(Severity::kSevere, h));
  }
  CHECK(severity_sigma_kt(Severity::kLight, 100.0) == Approx(1.5));
}
