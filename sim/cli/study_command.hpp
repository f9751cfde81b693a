#pragma once
#include <CLI/CLI.hpp>

namespace stallwright {

/// Adds the command to the program, with its subcommands; when it has run, exit_code holds its exit status.
void add_study_command(CLI::App& app, int& exit_code);

}  // namespace stallwright
