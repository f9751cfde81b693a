#pragma once
#include <cstdint>
#include <optional>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/mass_properties.hpp"
#include "sim/air/air_preset.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sensing/instrument_grade.hpp"
#include "sim/sensing/warning_unit.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Everything that decides how a sortie goes. Same configuration, same bits.
struct SortieConfig {
  AircraftType type;
  Loading loading;
  std::uint64_t airframe_seed = 1;  ///< the airframe's own small differences: truth does not move with `seed`
  TestCard card;
  AirPreset air;
  PilotGrade pilot;
  InstrumentGrade instruments;
  WarningUnit unit;  ///< taught set points, to be verified; none: nothing sounds
  std::uint64_t seed = 1;
  /// Draws what belongs to the aeroplane's own instruments, so that several sorties can share them; none: `seed` does.
  std::optional<std::uint64_t> instrument_seed;
  bool by_hand = false;      ///< a person flies; `pilot` is then by_hand_grade() and flies nothing
  std::uint32_t sortie = 0;  ///< number within a study
  bool smooth_twin =
      true;  ///< fly the twin that tells the air's part of an error; nothing else changes without it
  double longest_s = 7200.0;  ///< the sortie is ended here whatever the card says
};

}  // namespace stallwright
