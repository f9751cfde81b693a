#pragma once
#include <CLI/CLI.hpp>
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "aircraft/mass_properties.hpp"
#include "sim/air/air_library.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::cli {

/// Exit status of the program.
inline constexpr int kYes = 0;       ///< done, and the answer is yes
inline constexpr int kNo = 1;        ///< done, and the answer is no
inline constexpr int kBadInput = 2;  ///< bad input or usage; nothing was written
inline constexpr int kFailure = 3;   ///< a failure of the program or of its numbers

inline constexpr const char* kExitText =
    "Exit status: 0 done, and the answer is yes; 1 done, and the answer is no; 2 bad input or a wrong "
    "option, one\n"
    "line on the standard error, nothing written; 3 a failure of the program or of its numbers.";

/// What is flown: the options that `rehearse` and `plan` share.
struct FlightOptions {
  std::string aircraft = "marram", card = "short";
  std::vector<std::string> loads;  ///< STATION=KG
};

/// Adds --aircraft, --card and --load.
void add_flight_options(CLI::App& command, FlightOptions& options);

/// An aeroplane as loaded and a card that fits it, with the files that they came from.
struct Flight {
  AircraftType type;
  Loading loading;
  TestCard card;
  std::filesystem::path aircraft_file, card_file;
};

/// Reads and checks them. Throws InputError: see load_aircraft_type, load_test_card; for a station that the
/// aeroplane lacks, a mass that is none, a loading outside the envelope.
Flight read_flight(const FlightOptions& options);

/// Help text below the options.
std::string footer(const std::string& examples);

/// Filled up with blanks to a width in letters, not in bytes.
std::string padded(const std::string& text, std::size_t width, bool right);

/// Words filled into lines of at most 100 letters after a first word or two; continued lines are set in below
/// them.
std::string filled(const std::string& first, const std::string& text);

/// A file that may be written: no folder, in a folder that exists, and none of the files that are read. Throws InputError
/// naming the option. An empty name passes.
void require_writable_place(const std::string& option, const std::filesystem::path& file,
                            const std::vector<std::filesystem::path>& read = {});

/// A seed: digits alone, 0 to 2^64 - 1. Throws InputError naming the option.
std::uint64_t seed_from(const std::string& option, const std::string& text);

/// A message on one line, whatever stood in it.
std::string one_line(std::string text);

}  // namespace stallwright::cli
