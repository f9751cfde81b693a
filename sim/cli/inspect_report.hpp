#pragma once
#include <string>
#include <vector>

#include "sim/motion/performance.hpp"

namespace stallwright::cli {

/// A band of the type file and the model's figure beside it. A figure that could not be found is NaN and
/// outside.
struct BandVerdict {
  CredibleBand band;
  double value = kUnset;
  bool inside() const { return value >= band.low && value <= band.high; }
};

/// All that `inspect` tells of an aeroplane: sea level, standard day, maximum mass, forward centre of
/// gravity.
struct Inspection {
  Aircraft aircraft;
  Performance performance;
  std::vector<BandVerdict> verdicts;

  int outside() const;
};

/// Flies the aeroplane for its figures and holds them against its bands. Throws InputError naming the file
/// and the band if a band is for a quantity that is not known, or in another unit than the figure.
///   file  what to name in messages
Inspection inspect_aircraft(const AircraftType& type, const std::string& file);

std::string inspection_text(const Inspection& inspection);
std::string inspection_json(const Inspection& inspection);

}  // namespace stallwright::cli
