#pragma once
#include <CLI/CLI.hpp>

namespace stallwright {

/// Adds `place` to the command `study`; when it has run, exit_code holds its exit status.
void add_study_place_command(CLI::App& study, int& exit_code);

}  // namespace stallwright
