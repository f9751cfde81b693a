#include "sim/air/standard_atmosphere.hpp"

#include <stdexcept>

namespace stallwright {

AirColumn::AirColumn(const Day& day) : day_(day) {
  // Written so that a NaN fails too.
  if (!(day.qnh_Pa >= 80000.0 && day.qnh_Pa <= 110000.0))
    throw std::invalid_argument("qnh_Pa: expected 80000 to 110000");
  if (!(day.temperature_offset_K >= -60.0 && day.temperature_offset_K <= 60.0))
    throw std::invalid_argument("temperature_offset_K: expected -60 to 60");
  using namespace ussa1976;
  foot_m_ = pressure_altitude(day.qnh_Pa);
  foot_temperature_K_ = kTemperature + day.temperature_offset_K - kLapse * foot_m_;
  top_temperature_K_ = kTropopauseTemperature + day.temperature_offset_K;
}

}  // namespace stallwright
