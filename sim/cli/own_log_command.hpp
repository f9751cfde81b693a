#pragma once
#include <CLI/CLI.hpp>
#include <string>

namespace stallwright::cli {

/// Options of `reduce` for the log of a real flight.
struct OwnLogOptions {
  std::string columns, windows;
  bool accept = false;
};

/// Adds --columns, --windows and --accept.
void add_own_log_options(CLI::App& command, OwnLogOptions& options);

/// What `reduce` was asked beside.
struct OwnLogRequest {
  std::string log, card, sensors, out;
  bool json = false;
};

/// Reads the log through the map, takes or finds its records, and reduces them. Windows that the program found itself are
/// shown and not used unless --accept says so: exit status 1 and a line that says how to go on.
int reduce_own_log_command(const OwnLogOptions& options, const OwnLogRequest& request);

/// --windows or --accept without --columns.
void refuse_without_columns(const OwnLogOptions& options);

}  // namespace stallwright::cli
