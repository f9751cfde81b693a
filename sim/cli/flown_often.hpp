#pragma once
#include <CLI/CLI.hpp>
#include <string>

#include "sim/cli/cli_common.hpp"
#include "sim/sortie/sortie_config.hpp"

namespace stallwright::cli {

/// What any study is told of the sorties that it flies.
struct FlownOften {
  FlightOptions flight;
  std::string sensors = "standard", seed = "1", airframe_seed = "1";
  int threads = 0;

  std::uint64_t first_seed() const { return seed_from("--seed", seed); }
};

/// Adds --aircraft, --card, the loading, --sensors, --seed, --airframe-seed and --threads.
///   each  what has a first sortie, in words: "cell"
void add_flown_often(CLI::App& command, FlownOften& options, const std::string& each);

/// The sortie they describe, with the files it was read from. Throws InputError for a card that the aeroplane cannot fly, or
/// one that verifies.
struct OftenFlight {
  Flight files;
  SortieConfig base;
};
OftenFlight often_flight(const FlownOften& options);

}  // namespace stallwright::cli
