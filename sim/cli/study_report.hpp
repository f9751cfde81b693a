#pragma once
#include <string>

#include "sim/study/coverage.hpp"

namespace stallwright::cli {

/// The study as a page for the terminal: a table for each air with the criteria beside it, what makes an
/// interval wide, every sortie that failed by its seed, and the criteria one by one. At most 120 columns,
/// UTF-8 with nothing wider than a letter, no escape sequences.
std::string study_text(const Study& study);

/// The same as JSON, with counts where the page has shares.
std::string study_json(const Study& study);

}  // namespace stallwright::cli
