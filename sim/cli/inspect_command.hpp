#pragma once
#include <CLI/CLI.hpp>
#include <iosfwd>
#include <string>

namespace stallwright {

struct InspectOptions {
  std::string aircraft = "marram";  ///< a name of the library or a type file
  bool json = false;
};

/// Flies an aeroplane for its figures, writes them to `out` beside the bands of its type file, and returns
/// the exit status: 0 all inside, 1 some outside. Throws InputError (exit status 2, nothing written) for an
/// unknown name, a type file with a mistake, a band for an unknown quantity.
int inspect(const InspectOptions& options, std::ostream& out);

/// Adds the command to the program; when it has run, exit_code holds its exit status.
void add_inspect_command(CLI::App& app, int& exit_code);

}  // namespace stallwright
