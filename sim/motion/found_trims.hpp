#pragma once
#include <array>
#include <deque>
#include <map>
#include <mutex>

#include "sim/motion/trim.hpp"

namespace stallwright {

/// Steady level flights of one aeroplane, found once and kept: sorties of one seed begin alike in every cell of a map.
/// Keeps the last kKept, so that a study of any length needs no more memory. Threads may share it.
class FoundTrims {
 public:
  static constexpr std::size_t kKept = 2000;

  /// What find_trim gives with flaps up, to the last bit.
  ///   aircraft  the same at every call
  Trim level(const Aircraft& aircraft, double true_airspeed_mps, double altitude_m, double density_kgpm3);
  std::size_t size() const;

 private:
  using Place = std::array<double, 3>;  ///< speed, altitude, density
  mutable std::mutex mutex_;
  std::map<Place, Trim> found_;
  std::deque<Place> order_;  ///< oldest first
};

}  // namespace stallwright
