#pragma once
#include <string>

#include "sim/report/sortie_folder.hpp"

namespace stallwright {

/// Puts the unit aboard that a verifying card listens to: its set points from a set-points file, or from a sortie folder,
/// whose card says, too, with which power the warning was taught. Fills flown.taught, flown.config.unit and sources.taught.
/// Throws InputError, one line, where the card verifies and none are given, where they are given and it does not, where they
/// hold no warning, or are those of another aeroplane.
void load_unit(const std::string& set_points, FlownSortie& flown, SourceFiles& sources);

}  // namespace stallwright
