#pragma once
#include <filesystem>
#include <string>

#include "tests/bench/samples.hpp"

namespace stallwright::bench {

/// Constants of the aeroplane for the same model written elsewhere (numpy_flight.py): SI, radians, body axes.
std::string aeroplane_json(const Aircraft& aircraft);

/// The samples as raw doubles, one row each: flight (104 numbers in the order of FlightState), controls (5), air (16), and
/// the flight one step on.
void write_samples(const Samples& samples, const std::filesystem::path& file);

}  // namespace stallwright::bench
