#pragma once
#include <utility>

#include "sim/motion/steady_flight.hpp"
#include "tests/published/f16_model.hpp"

namespace stallwright::published {

/// A steady flight of the F-16 in the units its sources print.
struct F16Trim {
  F16State state;
  double residual;
  double throttle, alpha_rad, beta_rad, elevator_deg, aileron_deg, rudder_deg, roll_rad, pitch_rad;
};

inline F16Trim trim_f16(const F16& model, const TrimCondition& condition) {
  using Search = SteadyFlight<F16>;
  const Search search{model, condition};
  Search::Vector x = Search::Vector::Zero();
  x[0] = 0.2;  // power over 100 percent
  x[Search::kMemory + kPath] = x[Search::kMemory + kPitch] = 0.1;
  x[Search::kMemory + kThrottleOrClimb] = 0.3;
  const double residual = search.search(x).cwiseAbs().maxCoeff();
  const double* m = x.data() + Search::kMemory;
  const F16State s = search.state(x);
  return {s,
          residual,
          s.throttle,
          m[kPath],
          m[kBeta],
          s.elevator_rad / kDegree,
          s.aileron_rad / kDegree,
          s.rudder_rad / kDegree,
          condition.bank_rad,
          m[kPitch]};
}

inline TrimCondition level_f16(double speed_ftps) {
  TrimCondition c;
  c.true_airspeed_mps = speed_ftps * kFoot_m;
  return c;
}

/// Level turn at a rate of heading, rad/s: the bank is searched, since a trim is asked by bank.
inline F16Trim turn_f16(const F16& model, double speed_ftps, double turn_radps) {
  TrimCondition c = level_f16(speed_ftps);
  F16Trim trim = trim_f16(model, c);
  const double pull = turn_radps * c.true_airspeed_mps / model.gravity_mps2(0.0);
  double bank = std::atan(pull), before = 0.0, before_rate = 0.0;
  for (int i = 0; i < 20; ++i) {
    c.bank_rad = bank;
    trim = trim_f16(model, c);
    const double rate = norm(trim.state.rigid.rate_B_radps);
    if (std::abs(rate - turn_radps) < 1e-12) break;
    const double slope =
        i == 0 ? turn_radps / (std::sin(bank) * std::cos(bank)) : (rate - before_rate) / (bank - before);
    before = std::exchange(bank, bank + (turn_radps - rate) / slope);
    before_rate = rate;
  }
  return trim;
}

}  // namespace stallwright::published
