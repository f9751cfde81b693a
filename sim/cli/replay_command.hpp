#pragma once
#include <CLI/CLI.hpp>

namespace stallwright {

/// `stallwright replay DIR`: flies a sortie folder again from its own files, by the hands that are kept in it or by its
/// simulated pilot, and says whether log and truth come out the same to the last byte. Exit status 0 if they do, 1 if not.
void add_replay_command(CLI::App& app, int& exit_code);

}  // namespace stallwright
