#pragma once
#include <filesystem>
#include <string>

#include "render/input/settings.hpp"

namespace stallwright::input {

/// The settings of a file. What the file leaves out is as by default.
/// Throws InputError, `FILE:LINE: key: expected ..., found ...`, on anything wrong; nothing is half taken over.
Settings read_settings(const std::filesystem::path& file);

struct LoadedSettings {
  Settings settings;
  std::string notice;  ///< why the file does not apply; empty: it does, or there is none
};

/// The same without a throw: no file, defaults; a bad one, defaults and a notice.
LoadedSettings load_settings(const std::filesystem::path& file);

/// Writes the file whole, its folder too. A file that cannot be read as settings is left as it is: its owner may want to
/// mend it. Returns what went wrong in one line (a read-only disk, a bad file in the way), empty if nothing.
std::string save_settings(const std::filesystem::path& file, const Settings& settings);

/// What the file says of these settings.
std::string settings_text(const Settings& settings);

}  // namespace stallwright::input
