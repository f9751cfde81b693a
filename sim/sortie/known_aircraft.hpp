#pragma once
#include <memory>
#include <vector>

#include "aircraft/aircraft.hpp"
#include "sim/crew/experience.hpp"
#include "sim/motion/found_trims.hpp"
#include "sim/sortie/sortie_config.hpp"

namespace stallwright {

/// The aeroplane as loaded, and what somebody who knows it remembers of it on this day: the same for every sortie of an
/// aeroplane, loading, airframe, card and day, whoever flies and whatever the seed.
struct KnownAircraft {
  struct Memory {
    std::size_t flap_setting;
    PowerRule power;
    double descent_mps;
    SteadyCurve curve;
  };
  Aircraft aircraft;
  ControlFeel feel;
  std::vector<Memory> memories;  ///< one for each flap setting and power rule of the card
  double fastest_mps = 0.0;      ///< true airspeed, the end of the curves
  Loading loading;
  std::uint64_t airframe_seed = 0;
  double altitude_m = 0.0, density_kgpm3 = 0.0;  ///< where the memories were made
  std::unique_ptr<FoundTrims> starts =
      std::make_unique<FoundTrims>();  ///< level flights that sorties began from

  const SteadyCurve* remembered(std::size_t flap, PowerRule power, double descent_mps) const;
};
/// Throws std::runtime_error if there is no steady flight to remember.
std::shared_ptr<const KnownAircraft> known_aircraft(const SortieConfig& config);

/// Whether it is what known_aircraft(config) would make; types are told apart by name alone.
bool serves(const KnownAircraft& known, const SortieConfig& config);

}  // namespace stallwright
