#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {

/// Reads an aeroplane from a TOML file (format "stallwright-aircraft-1"; aircraft/types/README.md documents
/// every field with unit and range). Degrees, knots, rpm, kilowatts in the file become SI here and nowhere
/// else. Checks each value's range, that no key is unknown, and that the values fit together (stations and
/// flap settings rise, flap and controls lie on their surface, default loading within mass and
/// centre-of-gravity limits). Throws InputError with one line `FILE:LINE: field: expected ..., found ...`.
AircraftType load_aircraft_type(const std::filesystem::path& file);

/// As above, and tells which fields the loader knows (for the check against the page that documents them).
AircraftType load_aircraft_type(const std::filesystem::path& file, std::vector<KnownField>& known);

/// Names of the aeroplanes that come with the program, sorted (`aircraft/types/NAME.toml`).
std::vector<std::string> list_aircraft_types();

/// A name of the list, or a path to a type file (it has a slash or ends in .toml). An unknown name throws
/// InputError listing the known ones; a path is returned as it is, and loading it reports what is wrong with
/// it.
std::filesystem::path find_aircraft_file(const std::string& name_or_path);

}  // namespace stallwright
