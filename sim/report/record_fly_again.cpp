// The page to keep: the line that flies the same sortie again from its own folder.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/record_parts.hpp"

namespace stallwright::record {
namespace {

/// The digits that give back the very number.
std::string exact(double value) {
  std::array<char, 64> buffer;
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), result.ptr};
}

/// A word for a POSIX shell, whatever stands in it.
std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

/// An hour that can be typed: whole minutes, before midnight.
bool can_be_typed(double hours) {
  const double minutes = 60.0 * hours;
  return minutes < 24 * 60 && std::abs(minutes - std::round(minutes)) < 1e-9;
}

/// Each option stays whole where it can: a line that ends after a hyphen is copied wrong.
std::string unbroken(const std::string& command) {
  std::string out;
  for (std::size_t from = 0; from < command.size();) {
    const std::size_t next = std::min(command.find(" --", from + 1), command.size());
    out += "<span class=\"option\">" + escaped(command.substr(from, next - from)) + "</span>";
    from = next;
    if (from < command.size()) {
      out += ' ';
      ++from;
    }
  }
  return out;
}

}  // namespace

std::string clock_text(double hours) {
  const long minutes = std::lround(hours * 60.0);
  const auto two = [](long value) { return (value < 10 ? "0" : "") + std::to_string(value); };
  return two(minutes / 60) + ":" + two(minutes % 60);
}

std::string fly_again_command(const FlownSortie& flown) {
  const SortieConfig& config = flown.config;
  if (config.by_hand) return "stallwright replay .";
  std::string air = "air.toml";
  // Any other hour came from the file and stands there.
  if (config.air.convection && can_be_typed(config.air.convection->hour))
    air += ":" + clock_text(config.air.convection->hour);
  std::string command = "stallwright rehearse --aircraft aircraft.toml --card card.toml --air " + air +
                        " --pilot " + config.pilot.name + " --sensors " + config.instruments.name +
                        " --seed " + std::to_string(config.seed) + " --airframe-seed " +
                        std::to_string(config.airframe_seed);
  if (config.instrument_seed) command += " --instrument-seed " + std::to_string(*config.instrument_seed);
  for (std::size_t i = 0; i < config.loading.kg.size(); ++i)
    command += " --load " + quoted(config.type.mass.stations[i].name + "=" + exact(config.loading.kg[i]));
  return command + " --out ../again";
}

std::string fly_it_again(const FlownSortie& flown) {
  return html::text_element("p",
                            "In the sortie folder, with the same version of the program:", "class=\"note\"") +
         html::element("pre", unbroken(fly_again_command(flown)));
}

}  // namespace stallwright::record
