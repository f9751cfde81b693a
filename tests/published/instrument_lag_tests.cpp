// A step at the sensors, and how each instrument follows it: first-order, 1 - exp(-t/tau), with the tubes' tau by
// Poiseuille's flow [GRACEY-1980 ch. 10]. The instruments take their input straight from one sample to the next, so a step
// is a ramp of one sample about its middle: its response is the exponential from there times sinh(h)/h, h half a sample
// over tau, exactly.
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "tests/published/evidence.hpp"
#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::sensing_cases;
using evidence::Published;
using evidence::WorstRow;

namespace {

constexpr Published kLag{"GRACEY-1980", "ch. 10, first-order lag after a step",
                         "from memory; worked by hand"};

using Reading = std::function<double(const Readings<double>&)>;

/// Shares of a step shown at each of 25 samples after it, or at every so many, against the closed form.
void hold_step(const std::string& name, const InstrumentGrade& grade, const SensedTruth<double>& before,
               const SensedTruth<double>& after, double tau_s, const Reading& reading, int every = 1) {
  Recorder recorder(grade, SystematicErrors<double>::none(), before);
  Recorder at_once(ideal_instruments(), SystematicErrors<double>::none(), before);
  const double from = reading(at_once.sample(before));
  for (int n = 1; n < every; ++n) at_once.sample(after);
  const double to = reading(at_once.sample(after));
  recorder.sample(before);
  const double half = 0.5 * kSample_s / tau_s;
  WorstRow worst;
  for (int n = 1; n <= 25; ++n) {
    const double shown = (reading(recorder.sample(after)) - from) / (to - from);
    if (n % every != 0) continue;
    const double since_s = (n - 0.5) * kSample_s;
    worst.difference(std::to_string(n) + " samples on", shown,
                     1.0 - std::exp(-since_s / tau_s) * std::sinh(half) / half, 1e-9);
  }
  worst.hold(kLag, name + ", share of a step shown in half a second", "1",
             "exact, but for rounding and our exp");
}

}  // namespace

TEST_CASE("each instrument follows a step as one less the exponential of time over its lag",
          "[sensing][published]") {
  const InstrumentGrade standard = standard_instruments();
  const SensedTruth<double> before = steady(40.0, 0.1);
  InstrumentGrade lagging = ideal_instruments();
  lagging.probe_lag_s = standard.probe_lag_s;
  lagging.attitude_lag_s = standard.attitude_lag_s;
  lagging.acceleration_lag_s = standard.acceleration_lag_s;
  SensedTruth<double> after = before;
  after.flow.probe_velocity_B_mps = velocity(41.0, 0.16, 0.03);
  hold_step("probe pressure", lagging, before, after, standard.probe_lag_s,
            [](const auto& r) { return r.probe_ratio * r.impact_pressure_pa; });
  after = before;
  after.attitude_rad = {0.11, 0.12, 4.5};
  hold_step("heading", lagging, before, after, standard.attitude_lag_s,
            [](const auto& r) { return r.heading_rad; });
  hold_step("bank", lagging, before, after, standard.attitude_lag_s,
            [](const auto& r) { return r.bank_rad; });
  after = before;
  after.rate_B_radps.y = 0.2;
  after.specific_force_B_mps2.z = -12.0;
  hold_step("pitch rate", lagging, before, after, standard.acceleration_lag_s,
            [](const auto& r) { return r.pitch_rate_radps; });
  hold_step("down acceleration", lagging, before, after, standard.acceleration_lag_s,
            [](const auto& r) { return r.down_mps2; });
  after = before;
  after.altitude_m += 20.0;
  lagging.gps_lag_s = standard.gps_lag_s;
  hold_step(
      "GPS altitude at its fixes", lagging, before, after, standard.gps_lag_s,
      [](const auto& r) { return r.gps_altitude_m; }, kGpsSamples);
}

TEST_CASE("the pitot line follows a step with the lag that Poiseuille's flow gives its tube, low and high",
          "[sensing][published]") {
  // tau = 128 mu L C/(pi d^4 p), worked here from the installation's tube: 3.5 m, 4.5 mm, 250 ml. Speed alone steps, so
  // that pressure and temperature, and with them tau, stay.
  InstrumentGrade lagging = ideal_instruments();
  lagging.tube_lag = true;
  for (const double altitude_m : {0.0, 3000.0, 6000.0}) {
    const SensedTruth<double> before = steady(40.0, 0.1, altitude_m);
    SensedTruth<double> after = before;
    after.flow.velocity_B_mps = velocity(43.0, 0.1);
    const double t = before.temperature_K, viscosity = 1.458e-6 * std::pow(t, 1.5) / (t + 110.4);
    const double tau_s =
        128.0 * viscosity * 3.5 * 250e-6 / (M_PI * std::pow(4.5e-3, 4) * before.flow.static_pressure_pa);
    hold_step("pitot line at " + std::to_string(static_cast<int>(altitude_m)) + " m", lagging, before, after,
              tau_s, [](const auto& r) { return r.impact_pressure_pa; });
  }
}
