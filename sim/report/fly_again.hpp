#pragma once
#include <filesystem>
#include <optional>

#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// What came of flying a sortie folder again from its own files.
struct FlownAgain {
  double flown_s = 0.0;  ///< how far it went
  std::optional<double> log_differs_s,
      truth_differs_s;  ///< the first moment whose line is not the same byte for byte
  bool cut_short =
      false;  ///< the folder's flight was never ended (the program was killed): compared as far as it goes
  bool same() const { return !log_differs_s && !truth_differs_s; }
};

/// Flies the folder's sortie again, by hands.csv where a person flew it, else by its simulated pilot, and holds each line
/// against the folder's log.csv and truth.csv. Rows go to `sink` too, where there is one. Throws InputError as read_sortie
/// and read_hands do.
FlownAgain fly_again(const std::filesystem::path& folder, SortieSink* sink = nullptr);

}  // namespace stallwright
