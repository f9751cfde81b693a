#pragma once
#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace stallwright::view {

/// What a pilot chose to fly, remembered from one time to the next. Names are those of the files that come with the program,
/// or paths.
struct StartChoice {
  std::string aircraft = "marram";
  std::map<std::string, double> load_kg;  ///< by station; a station that is not named has its usual load
  std::string card = "short";
  std::string own_card;    ///< path of an own card file; flown where `card` is "own"
  std::string set_points;  ///< sortie folder whose set points a verifying card listens to
  std::string air = "calm";
  double hour = 10.0;  ///< local solar time, 5 to 20: the sun, and how rough a fair-weather day is
  std::uint64_t seed = 1;
  std::string sensors = "standard";
  std::string flown_by = "me";  ///< or a grade of the simulated pilot: "sharp", "current", "rusty"
  std::string pilot;            ///< name for the logbook; may be empty
  bool guide = true;            ///< of the first flight
  friend bool operator==(const StartChoice&, const StartChoice&) = default;
};

inline constexpr double kEarliest_h = 5.0, kLatest_h = 20.0;

/// The file (TOML, format "stallwright-start-1"). Throws InputError, one line `FILE:LINE: field: expected ..., found ...`, for
/// anything that is not such a file; a name that no file has any more is told later, by start_check. A file that does not
/// exist gives the usual choice.
StartChoice read_start_choice(const std::filesystem::path& file);

/// Text of the file; reading it gives the choice back.
std::string start_choice_toml(const StartChoice& choice);

/// Writes it whole or not at all, making its folder. Throws std::runtime_error, one line.
void write_start_choice(const std::filesystem::path& file, const StartChoice& choice);

}  // namespace stallwright::view
