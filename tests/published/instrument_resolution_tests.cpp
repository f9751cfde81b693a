// The error that the resolution of each instrument adds to what it shows [BENNETT-1948].
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <string>

#include "tests/published/evidence.hpp"
#include "tests/sim/sensing/sensing_cases.hpp"

using namespace stallwright;
using namespace stallwright::sensing_cases;

namespace {
using Reading = std::function<double(const Readings<double>&)>;
}  // namespace

TEST_CASE("the resolution of each instrument adds an error of a step over the root of twelve",
          "[sensing][published]") {
  const InstrumentGrade standard = standard_instruments();
  const auto hold_resolution = [&](const char* name, double InstrumentGrade::*step, const char* unit,
                                   const std::function<double(SensedTruth<double>&, double)>& moved,
                                   const Reading& reading) {
    InstrumentGrade grade = ideal_instruments();
    const double q = grade.*step = standard.*step;
    SensedTruth<double> truth = steady(40.0, 0.1);
    Recorder recorder(grade, SystematicErrors<double>::none(), truth);
    double squares = 0.0;
    constexpr int kCount = 20000;
    for (int n = 0; n < kCount; ++n) {  // steps of the golden ratio fill a resolution evenly
      const double exact = moved(truth, q * std::fmod(0.6180339887498949 * n, 40.0));
      const double error = reading(recorder.sample(truth)) - exact;
      squares += error * error;
    }
    evidence::hold({"BENNETT-1948", "error of a rounded signal, q/sqrt(12)", "from memory"},
                   std::string(name) + ", error of its resolution", std::sqrt(squares / kCount),
                   q / std::sqrt(12.0), 1e-3 * q, unit, "20,000 readings fill a step evenly to 0.1 %");
  };
  hold_resolution(
      "pressures", &InstrumentGrade::pressure_step_pa, "Pa",
      [](auto& truth, double by) {
        truth.flow.probe_velocity_B_mps = {30.0, 0.0, 0.0};
        const double q_pa = 600.0 + by;  // impact pressure at sea level, incompressible part aside
        const double mach = mach_of_impact_pressure(q_pa, truth.flow.static_pressure_pa);
        truth.flow.velocity_B_mps = {
            mach * std::sqrt(1.4 * truth.flow.static_pressure_pa / truth.flow.density_kgpm3), 0.0, 0.0};
        return q_pa * 0.99;  // the installation's error at no angle, sensing_cases.hpp
      },
      [](const auto& r) { return r.impact_pressure_pa; });
  hold_resolution(
      "accelerations", &InstrumentGrade::acceleration_step_mps2, "m/s2",
      [](auto& truth, double by) { return truth.specific_force_B_mps2.x = 0.3 + by; },
      [](const auto& r) { return r.forward_mps2; });
  hold_resolution(
      "rates", &InstrumentGrade::rate_step_radps, "rad/s",
      [](auto& truth, double by) { return truth.rate_B_radps.y = by; },
      [](const auto& r) { return r.pitch_rate_radps; });
  hold_resolution(
      "attitude", &InstrumentGrade::attitude_step_rad, "rad",
      [](auto& truth, double by) { return truth.attitude_rad.y = by; },
      [](const auto& r) { return r.pitch_rad; });
  hold_resolution(
      "outside air", &InstrumentGrade::temperature_step_K, "K",
      [](auto& truth, double by) { return truth.temperature_K = 280.0 + by; },
      [](const auto& r) { return r.outside_air_K; });
}
