#include "sim/study/sensitivity/sensitivity_inputs.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "sim/crew/pilot_grade.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright {
namespace {

constexpr double kSlowest_ktps = 0.5, kFastest_ktps = 2.0;  // half and twice what the cards ask for
constexpr double kLeastShare = 0.25;                        // the shortest window of the map

double at(const std::vector<double>& point, SensitivityInput input) {
  return point.at(static_cast<std::size_t>(input));
}

constexpr double InstrumentGrade::*kErrors[] = {&InstrumentGrade::position_error_share,
                                                &InstrumentGrade::probe_offset_ratio,
                                                &InstrumentGrade::probe_scale,
                                                &InstrumentGrade::probe_mount_rad,
                                                &InstrumentGrade::acceleration_bias_mps2,
                                                &InstrumentGrade::mass_share,
                                                &InstrumentGrade::attitude_bias_rad,
                                                &InstrumentGrade::rate_bias_radps,
                                                &InstrumentGrade::gps_altitude_bias_m,
                                                &InstrumentGrade::temperature_bias_K,
                                                &InstrumentGrade::pressure_noise_pa,
                                                &InstrumentGrade::acceleration_noise_mps2,
                                                &InstrumentGrade::rate_noise_radps,
                                                &InstrumentGrade::attitude_noise_rad,
                                                &InstrumentGrade::gps_speed_noise_mps,
                                                &InstrumentGrade::gps_altitude_noise_m,
                                                &InstrumentGrade::temperature_noise_K,
                                                &InstrumentGrade::probe_drift_pa_per_sqrt_s,
                                                &InstrumentGrade::pressure_step_pa,
                                                &InstrumentGrade::acceleration_step_mps2,
                                                &InstrumentGrade::rate_step_radps,
                                                &InstrumentGrade::attitude_step_rad,
                                                &InstrumentGrade::temperature_step_K,
                                                &InstrumentGrade::probe_lag_s,
                                                &InstrumentGrade::attitude_lag_s,
                                                &InstrumentGrade::gps_lag_s,
                                                &InstrumentGrade::acceleration_lag_s};
// An error that is not in the list would stay whole. The last eight bytes hold tube_lag.
static_assert(sizeof(InstrumentGrade) == sizeof(std::string) + sizeof(double) * (std::size(kErrors) + 1));

}  // namespace

InstrumentGrade scaled_errors(const InstrumentGrade& grade, double scale) {
  InstrumentGrade scaled = grade;
  for (double InstrumentGrade::*error : kErrors) scaled.*error *= scale;
  return scaled;
}

std::size_t loading_at(const std::vector<double>& point, std::size_t loadings) {
  const double place = at(point, SensitivityInput::mass) * static_cast<double>(loadings);
  return std::min(static_cast<std::size_t>(place), loadings - 1);
}

std::uint64_t seed_at(const std::vector<double>& point, std::uint64_t first_seed) {
  return first_seed + static_cast<std::uint64_t>(std::floor(at(point, SensitivityInput::seed) * 0x1p32));
}

double record_share_at(const std::vector<double>& point) {
  return kLeastShare + (1.0 - kLeastShare) * at(point, SensitivityInput::record_length);
}

SortieConfig sensitivity_sortie(const SortieConfig& base, const SensitivityRanges& ranges,
                                const std::vector<double>& point) {
  SortieConfig config = base;
  config.air = AirPreset{};
  config.air.name = "varied";
  config.air.severity.reset();
  config.air.sigma_mps = ranges.roughest_mps * at(point, SensitivityInput::air);
  config.pilot = pilot_grade_at(2.0 * at(point, SensitivityInput::hands));
  const double rate_ktps =
      kSlowest_ktps + (kFastest_ktps - kSlowest_ktps) * at(point, SensitivityInput::entry_rate);
  for (TestPoint& p : config.card.points)
    if (p.is_stall()) p.entry_rate_ktps = rate_ktps;
  config.loading = ranges.loadings.at(loading_at(point, ranges.loadings.size()));
  config.instruments = scaled_errors(standard_instruments(), at(point, SensitivityInput::sensors));
  config.seed = seed_at(point, ranges.first_seed);
  return config;
}

std::vector<std::size_t> flying_order(const SaltelliSample& sample, std::size_t loadings) {
  std::vector<std::size_t> order(sample.points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return loading_at(sample.points[a], loadings) < loading_at(sample.points[b], loadings);
  });
  return order;
}

std::vector<InputWords> input_words(const SensitivityRanges& ranges) {
  std::string loadings;
  for (std::size_t i = 0; i + 1 < ranges.loading_names.size(); ++i)
    loadings += (i > 0 ? ", " : "") + ranges.loading_names[i];
  return {{"air", "calm", fixed(ranges.roughest_mps, 2) + " m/s"},
          {"hands", "sharp", "rusty"},
          {"entry rate", shortest(kSlowest_ktps), shortest(kFastest_ktps) + " kt/s"},
          {"mass", loadings, ranges.loading_names.empty() ? "" : ranges.loading_names.back()},
          {"sensors", "perfect", "standard"},
          {"record length", shortest(kLeastShare), "1 of the record"},
          {"seed", "chance", "everything else"}};
}

}  // namespace stallwright
