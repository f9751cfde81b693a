#pragma once
#include <filesystem>
#include <string>
#include <string_view>

#include "sim/sortie/sortie.hpp"
#include "sim/truth/verification.hpp"

namespace stallwright {

/// What was flown, and how it ended.
struct FlownSortie {
  SortieConfig config;
  std::string air;      ///< short: "calm", "light", or the name of the weather file without its ending
  std::string version;  ///< of the program that flew it
  bool ended = false;   ///< false while in the air, and for good when the program was killed there
  SortieOutcome outcome;
  std::optional<Taught> taught;  ///< set points that the unit on board was taught, for a verifying card
};

/// The file sortie.json. It holds nothing that was measured, and no error that was drawn.
///
///   format "stallwright-sortie-1"; version; aircraft, card: key, name, file; air: name, preset, file,
///   sigma_kt (rms of the gusts along the flight path at the working height), temperature_offset_K, qnh_hPa,
///   wind_from_deg, wind_kt; pilot; sensors; seed; airframe_seed; instrument_seed (null: seed); sortie; loading[]: station, kg mass:
///   true_kg, stated_kg (what the pilot entered), reference_kg (card speeds are given for), cg_aft_m (of the
///   datum), cg_forward_limit_m, cg_aft_limit_m
///   taught: null, or for a verifying card: file (of the set points), power (that the warnings were taught with)
///   ended: null in the air, else finished, failure (why not), time_s
///   events[]: time_s, point (index in the card), kind, text
///   points[]: name, flap_deg, recorded, forced, flagged, given_up, timeouts, unintended_stalls, knocked_off,
///   no_break
inline constexpr std::string_view kSortieFormat = "stallwright-sortie-1";

std::string sortie_to_json(const FlownSortie& flown);

/// Reads back what was flown from a sortie folder: sortie.json and the three files that it names, as they
/// were copied there. What the instruments' errors were is drawn again. Throws InputError, one line, for
/// anything that is missing or is not what it should be.
FlownSortie read_sortie(const std::filesystem::path& folder);

/// Rms of the gusts along the flight path at the working height, kt.
double gust_sigma_kt(const SortieConfig& config);

}  // namespace stallwright
