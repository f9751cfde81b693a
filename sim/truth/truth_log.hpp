#pragma once
#include <filesystem>
#include <vector>

#include "sim/sortie/log_row.hpp"

namespace stallwright {

/// Reads truth.csv back; the rows equal those that were flown, but for the hashes, which are not read. Throws InputError
/// with one line (file, line, expected, found) for anything that is not such a file.
std::vector<TruthRow> read_truth_log(const std::filesystem::path& file);

}  // namespace stallwright
