#include "sim/motion/found_trims.hpp"

namespace stallwright {

Trim FoundTrims::level(const Aircraft& aircraft, double true_airspeed_mps, double altitude_m,
                       double density_kgpm3) {
  const Place place{true_airspeed_mps, altitude_m, density_kgpm3};
  {
    const std::lock_guard lock(mutex_);
    if (const auto known = found_.find(place); known != found_.end()) return known->second;
  }
  // Found outside the lock: two threads may both find one, and find the same.
  TrimCondition condition;
  condition.true_airspeed_mps = true_airspeed_mps;
  condition.altitude_m = altitude_m;
  condition.density_kgpm3 = density_kgpm3;
  const Trim trim = find_trim(aircraft, condition);
  const std::lock_guard lock(mutex_);
  if (found_.emplace(place, trim).second) order_.push_back(place);
  if (order_.size() > kKept) {
    found_.erase(order_.front());
    order_.pop_front();
  }
  return trim;
}

std::size_t FoundTrims::size() const {
  const std::lock_guard lock(mutex_);
  return found_.size();
}

}  // namespace stallwright
