#pragma once
#include <string>
#include <vector>

#include "aircraft/mass_properties.hpp"

namespace stallwright {

/// The type's usual loading with what is named instead, each as STATION=KG ("front seat=80"). Throws InputError for a
/// station that the aeroplane lacks, a mass that is none or more than the station takes, a loading outside the envelope.
///   where  the option or the place in a file, at the beginning of the message
Loading named_loading(const AircraftType& type, const std::vector<std::string>& loads,
                      const std::string& where);

}  // namespace stallwright
