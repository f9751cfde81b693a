#pragma once
#include <toml++/toml.h>

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "aircraft/toml_reader.hpp"

/// Inside of the TOML reader: not for use elsewhere (it brings the parser's header with it).
namespace stallwright {

struct TomlState {
  std::string file;
  toml::table root;
  std::vector<KnownField> known;
  std::map<std::string, std::vector<std::string>>
      known_keys;  ///< table path without positions -> keys asked there

  /// Throws `FILE:LINE: message` on one line.
  [[noreturn]] void fail(const toml::source_region& where, const std::string& message) const;
};

namespace toml_text {

/// Whatever would break the line, or ring the terminal's bell, becomes a question mark.
std::string one_line(std::string text);

/// What stands there, for the end of a message: `"abc"`, `nan`, `a list of 3`.
std::string describe(const toml::node& node);

/// `wing.station[2]` -> `wing.station[]`
std::string without_positions(const std::string& path);

std::string join(const std::vector<std::string>& words);

}  // namespace toml_text

}  // namespace stallwright
