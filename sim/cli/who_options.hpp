#pragma once
#include <CLI/CLI.hpp>

#include "sim/report/who.hpp"

namespace stallwright::cli {

/// Adds --who and --date, for the page to keep. What they hold is checked with check_who before anything is
/// written.
void add_who_options(CLI::App& command, Who& who);

}  // namespace stallwright::cli
