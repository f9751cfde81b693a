#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "aircraft/toml_reader.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Reads a test card from a TOML file (format "stallwright-card-1"; assets/cards/README.md documents every
/// field with unit and range). Checks each value's range, that no key is unknown, and what needs no aeroplane
/// to be checked: one target a point, power and targets that go together, a floor with room above it, sets of
/// three to eight points of different names in order of falling speed. What needs one, card_check does
/// (sim/sortie/card_check.hpp). Throws InputError with one line `FILE:LINE: field: expected ..., found ...`.
TestCard load_test_card(const std::filesystem::path& file);

/// As above, and tells which fields the loader knows (for the check against the page that documents them).
TestCard load_test_card(const std::filesystem::path& file, std::vector<KnownField>& known);

/// Names of the cards that come with the program, sorted (`assets/cards/NAME.toml`).
std::vector<std::string> list_cards();

/// A name of the list, or a path to a card (it has a slash or ends in .toml). An unknown name throws
/// InputError listing the known ones; a path is returned as it is, and loading it reports what is wrong with
/// it.
std::filesystem::path find_card_file(const std::string& name_or_path);

}  // namespace stallwright
