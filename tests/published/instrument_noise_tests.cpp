// The noise of the instruments against what theory says of it: Allan deviation of every random error that a grade
// states [IEEE-952]. All of it is read where a user reads it, from 50 readings a second. The grades have white
// noise on every reading, a random walk of the probe's zero, resolutions, and biases that stay as drawn: nothing of
// a first-order Markov kind, and so no floor of bias instability.
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <vector>

#include "tests/published/allan_deviation.hpp"
#include "tests/published/evidence.hpp"
#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::published;
using namespace stallwright::sensing_cases;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr int kSamples = 100000, kSorties = 5;  // 2,000 s each: one lucky or unlucky sortie does not decide
constexpr Published kAllan{"IEEE-952", "Allan deviation of white noise and of a random walk",
                           "from memory; worked by hand"};
constexpr const char* kThree = "three standard errors of the estimate, at most sqrt(3/(4 (n/m - 1))): 99.7 %";

using Reading = std::function<double(const Readings<double>&)>;

/// Samples of one signal, from one sortie each.
using Sorties = std::vector<std::vector<double>>;

/// Flights in steady conditions, as some of the instruments show them: one Sorties a reading.
std::vector<Sorties> record(const InstrumentGrade& grade, const std::vector<Reading>& readings) {
  const SensedTruth<double> truth = steady(40.0, 0.1);
  std::vector<Sorties> shown(readings.size(), Sorties(kSorties));
  for (std::uint32_t sortie = 0; sortie < kSorties; ++sortie) {
    Recorder recorder(grade, SystematicErrors<double>::none(), truth);
    for (std::uint64_t n = 0; n < kSamples; ++n) {
      const Readings<double> r = recorder.sample(truth, sensor_noise({1, sortie}, n));
      for (std::size_t i = 0; i < readings.size(); ++i) shown[i][sortie].push_back(readings[i](r));
    }
  }
  return shown;
}

/// Allan deviation over all the sorties, and three of its standard errors as a share of it.
struct Estimate {
  double deviation, three_errors;
};
Estimate pooled(const Sorties& sorties, std::size_t m) {
  double squares = 0.0, clusters = 0.0;
  for (const std::vector<double>& y : sorties) {
    squares += std::pow(allan_deviation(y, m), 2) / static_cast<double>(sorties.size());
    clusters += static_cast<double>(y.size()) / static_cast<double>(m) - 1.0;
  }
  return {std::sqrt(squares), 3.0 * std::sqrt(0.75 / clusters)};
}

struct Channel {
  const char* name;
  double InstrumentGrade::*noise;
  Reading reading;
};

double probe_pressure(const Readings<double>& r) { return r.probe_ratio * r.impact_pressure_pa; }

std::vector<Channel> channels() {
  using Grade = InstrumentGrade;
  // A pressure of the static line is read as a height: hydrostatic balance says how much a pascal is.
  const AtmosphereState<double> air = atmosphere(Day{}, 1000.0);
  const double metre_pa = air.density_kgpm3 * ussa1976::kGravity;
  return {
      {"impact pressure", &Grade::pressure_noise_pa, [](const auto& r) { return r.impact_pressure_pa; }},
      {"static pressure", &Grade::pressure_noise_pa,
       [=](const auto& r) { return -metre_pa * r.pressure_altitude_m; }},
      {"probe pressure", &Grade::pressure_noise_pa, probe_pressure},
      {"forward acceleration", &Grade::acceleration_noise_mps2, [](const auto& r) { return r.forward_mps2; }},
      {"right acceleration", &Grade::acceleration_noise_mps2, [](const auto& r) { return r.right_mps2; }},
      {"down acceleration", &Grade::acceleration_noise_mps2, [](const auto& r) { return r.down_mps2; }},
      {"roll rate", &Grade::rate_noise_radps, [](const auto& r) { return r.roll_rate_radps; }},
      {"pitch rate", &Grade::rate_noise_radps, [](const auto& r) { return r.pitch_rate_radps; }},
      {"yaw rate", &Grade::rate_noise_radps, [](const auto& r) { return r.yaw_rate_radps; }},
      {"bank", &Grade::attitude_noise_rad, [](const auto& r) { return r.bank_rad; }},
      {"pitch", &Grade::attitude_noise_rad, [](const auto& r) { return r.pitch_rad; }},
      {"heading", &Grade::attitude_noise_rad, [](const auto& r) { return r.heading_rad; }},
      {"outside air", &Grade::temperature_noise_K, [](const auto& r) { return r.outside_air_K; }},
      {"GPS speed", &Grade::gps_speed_noise_mps, [](const auto& r) { return r.gps_speed_mps; }},
      {"GPS altitude", &Grade::gps_altitude_noise_m, [](const auto& r) { return r.gps_altitude_m; }}};
}

/// Holds an Allan deviation to its closed form at averaging times of 1, 10, 100 and 1,000 samples.
void hold_allan(const std::string& name, const Sorties& shown, double sample_s,
                const std::function<double(double)>& closed_form) {
  WorstRow worst;
  for (const std::size_t m : {1u, 10u, 100u, 1000u}) {
    const double tau = static_cast<double>(m) * sample_s;
    const Estimate estimate = pooled(shown, m);
    worst.row("averaged over " + std::to_string(tau).substr(0, 4) + " s",
              estimate.deviation / closed_form(tau), 1.0, estimate.three_errors);
  }
  worst.hold(kAllan, name + ", Allan deviation over the closed form", "1", kThree);
}

}  // namespace

TEST_CASE("the Allan deviation of white, Markov and walking noise made here is the closed form's",
          "[sensing][published]") {
  // The estimator by itself, on noise of known kinds: what it says of the instruments rests on this.
  Sorties white(kSorties), walk(kSorties), markov(kSorties);
  const double step = 0.02, corner_s = 1.0, kept = std::exp(-step / corner_s);
  for (std::uint32_t sortie = 0; sortie < kSorties; ++sortie) {
    double walked = 0.0, kept_back = 0.0;
    for (std::uint64_t n = 0; n < kSamples; ++n) {
      const double e = random::normal({2, sortie, random::Channel::kSensorIas}, n);
      white[sortie].push_back(e);
      walk[sortie].push_back(walked += std::sqrt(step) * e);
      markov[sortie].push_back(kept_back = n == 0 ? e : kept * kept_back + std::sqrt(1.0 - kept * kept) * e);
    }
  }
  hold_allan("white noise made here", white, step, [&](double tau) { return std::sqrt(step / tau); });
  hold_allan("random walk made here", walk, step, [&](double tau) { return walk_deviation(1.0, tau, step); });
  // A first-order Markov noise peaks at 0.617 of its deviation, averaged over 1.89 time constants.
  const Estimate peak = pooled(markov, 95);
  evidence::hold(
      {"IEEE-952", "Allan deviation of first-order Markov noise, its peak", "from memory; worked by hand"},
      "Markov noise made here, peak over its standard deviation", peak.deviation, 0.617,
      0.617 * peak.three_errors, "1", kThree);
}

TEST_CASE("every reading of the instruments has white noise of the size that its grade states",
          "[sensing][published]") {
  InstrumentGrade grade = ideal_instruments();
  std::vector<Reading> readings;
  const std::vector<Channel> all = channels();
  for (const Channel& channel : all) {
    grade.*channel.noise = standard_instruments().*channel.noise;
    readings.push_back(channel.reading);
  }
  const std::vector<Sorties> shown = record(grade, readings);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::string name = all[i].name;
    // GPS: a fix every tenth sample, held in between.
    const std::size_t every = name.starts_with("GPS") ? kGpsSamples : 1;
    Sorties fresh(kSorties);
    for (std::size_t sortie = 0; sortie < kSorties; ++sortie)
      for (std::size_t n = 0; n < kSamples; n += every) fresh[sortie].push_back(shown[i][sortie][n]);
    const double sample_s = kSample_s * static_cast<double>(every), sd = grade.*all[i].noise;
    hold_allan(name + ", noise", fresh, sample_s, [&](double tau) { return sd * std::sqrt(sample_s / tau); });
  }
}

TEST_CASE("the probe's zero walks as its grade states, alone and under all that standard instruments do",
          "[sensing][published]") {
  InstrumentGrade drifting = ideal_instruments();
  const InstrumentGrade standard = standard_instruments();
  const double walk = drifting.probe_drift_pa_per_sqrt_s = standard.probe_drift_pa_per_sqrt_s;
  const auto walked = [&](double tau) { return walk_deviation(walk, tau, kSample_s); };
  hold_allan("probe pressure, drift alone", record(drifting, {probe_pressure})[0], kSample_s, walked);
  // White noise, and the resolution's q/sqrt(12), white too under noise of almost three steps; then the walk.
  const double white2 =
      std::pow(standard.pressure_noise_pa, 2) + std::pow(standard.pressure_step_pa, 2) / 12.0;
  hold_allan("probe pressure, standard instruments", record(standard, {probe_pressure})[0], kSample_s,
             [&](double tau) { return std::hypot(std::sqrt(white2 * kSample_s / tau), walked(tau)); });
}
