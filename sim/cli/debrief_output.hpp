#pragma once
#include <filesystem>

#include "sim/report/sortie_folder.hpp"

namespace stallwright::cli {

/// Prints what came of a sortie: the table and where the page is, or the text of judgement.json with one more
/// key, `folder`. Gives the exit status: yes for keep; no otherwise, and for a card that was not finished;
/// failure where the numbers broke down in flight.
int print_debrief(const Debrief& debrief, const std::filesystem::path& folder, bool json);

}  // namespace stallwright::cli
