#pragma once
#include <filesystem>
#include <optional>
#include <string>

#include "sim/air/air_preset.hpp"

namespace stallwright {

/// A name of those that come with the program (assets/air/NAME.toml), or a path to a weather file (it has a
/// slash or ends in .toml). Throws InputError naming the known ones.
std::filesystem::path find_air_file(const std::string& name_or_path);

/// The air that an option names: a name or a path, with a time of day after it where the weather has one (day:07:30).
struct NamedAir {
  std::filesystem::path file;
  std::optional<double> hour;
  std::string label;  ///< for tables and pages
  AirPreset preset;
};
/// Finds and reads it. Throws InputError, as find_air_file and read_air_preset do, and for a time that is none.
NamedAir find_air(const std::string& option);

}  // namespace stallwright
