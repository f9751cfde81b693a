#include "sim/air/air_library.hpp"

#include <algorithm>
#include <charconv>
#include <system_error>
#include <vector>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {
std::filesystem::path find_air_file(const std::string& name_or_path) {
  const std::filesystem::path path(name_or_path);
  if (name_or_path.find('/') != std::string::npos || path.extension() == ".toml") return path;
  const std::filesystem::path folder = std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets" / "air";
  std::vector<std::string> known;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(folder, error))
    if (entry.path().extension() == ".toml") known.push_back(entry.path().stem().string());
  std::sort(known.begin(), known.end());
  if (std::find(known.begin(), known.end(), name_or_path) != known.end())
    return folder / (name_or_path + ".toml");
  const std::string nearest = nearest_word(name_or_path, known);
  throw InputError("air: expected one of " + joined_words(known) + " or a path to a .toml file, found \"" +
                   name_or_path + "\"" + (nearest.empty() ? "" : "; perhaps " + nearest));
}

NamedAir find_air(const std::string& option) {
  NamedAir air;
  const std::size_t minutes = option.rfind(':');
  const std::size_t hours = minutes == std::string::npos ? minutes : option.rfind(':', minutes - 1);
  std::string name = option;
  if (minutes != std::string::npos && minutes > 0 && hours != std::string::npos) {
    const auto number = [&](const std::string& digits, int most) {
      int value = -1;
      const char* end = digits.data() + digits.size();
      const auto result = std::from_chars(digits.data(), end, value);
      if (digits.size() != 2 || result.ec != std::errc() || result.ptr != end || value < 0 || value > most)
        throw InputError("--air: expected NAME:HH:MM, found \"" + option + "\"");
      return value;
    };
    const std::string time = option.substr(hours + 1);
    air.hour = number(option.substr(hours + 1, minutes - hours - 1), 23) +
               number(option.substr(minutes + 1), 59) / 60.0;
    name = option.substr(0, hours);
    air.label = " " + time;
  }
  air.file = find_air_file(name);
  air.label = air.file.stem().string() + air.label;
  air.preset = read_air_preset(air.file, air.hour);
  return air;
}

}  // namespace stallwright
