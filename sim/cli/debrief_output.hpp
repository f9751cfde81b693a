#pragma once
#include <filesystem>

#include "sim/report/sortie_folder.hpp"
#include "sim/report/verification_report.hpp"

namespace stallwright::cli {

/// Prints what came of a sortie: the table and where the page is, or the text of judgement.json with one more
/// key, `folder`. Gives the exit status: yes for keep; no otherwise, and for a card that was not finished;
/// failure where the numbers broke down in flight.
int print_debrief(const Debrief& debrief, const std::filesystem::path& folder, bool json);

/// The same for a verifying sortie: verification.json's text with `folder`, or the table. Yes for a pass.
int print_verification(const VerificationDebrief& debrief, const std::filesystem::path& folder, bool json);

inline constexpr const char* kNoRecord =
    "--who, --date: expected a sortie that teaches, found one that verifies (it makes no record to sign)";

/// Makes the pages of a folder, whichever kind of card was flown, and prints.
///   who  for record.html; a verifying sortie has none
int debrief_and_print(const std::filesystem::path& folder, bool json, const Who& who);

}  // namespace stallwright::cli
