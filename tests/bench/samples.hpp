#pragma once
#include <memory>
#include <string>
#include <vector>

#include "sim/lanes/lane_group.hpp"
#include "sim/sortie/sortie.hpp"

namespace stallwright::bench {

/// Marram with its usual loading, a current pilot, standard instruments, light air.
///   card  name or path
SortieConfig usual_sortie(const std::string& card);

/// Aeroplanes under way: all that a lane holds, taken every second out of sorties of the short card, the stall included.
struct Samples {
  std::shared_ptr<const KnownAircraft> known;
  SortieAir air;
  std::vector<LaneGroup<double>> aeroplanes;

  LaneScene scene(bool makes_air) const { return {&known->aircraft, &air, makes_air}; }
};
Samples samples(std::size_t count);

}  // namespace stallwright::bench
