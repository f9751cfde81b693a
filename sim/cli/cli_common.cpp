#include "sim/cli/cli_common.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include "aircraft/type_file.hpp"
#include "sim/sortie/named_loading.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::cli {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

/// Letters of a UTF-8 text.
std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

}  // namespace

void add_flight_options(CLI::App& command, FlightOptions& options) {
  command
      .add_option("--aircraft", options.aircraft,
                  "Aeroplane: a name (" + joined(list_aircraft_types()) + ") or a type file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command
      .add_option("--card", options.card, "Test card: a name (" + joined(list_cards()) + ") or a card file")
      ->type_name("NAME|FILE")
      ->capture_default_str();
  command
      .add_option("--load", options.loads,
                  "Kilograms at a load station, instead of the type's usual; repeatable")
      ->type_name("STATION=KG")
      ->allow_extra_args(false);
}

Flight read_flight(const FlightOptions& options) {
  Flight flight;
  flight.aircraft_file = find_aircraft_file(options.aircraft);
  flight.card_file = find_card_file(options.card);
  flight.type = load_aircraft_type(flight.aircraft_file);
  flight.card = load_test_card(flight.card_file);
  for (std::size_t i = 0; i < flight.card.points.size(); ++i)
    if (flight.card.points[i].flap_setting >= flight.type.flaps.size())
      throw InputError(flight.card_file.string() + ": point[" + std::to_string(i + 1) +
                       "].flap_setting: expected 0 to " + std::to_string(flight.type.flaps.size() - 1) +
                       " for " + flight.type.name + ", found " +
                       std::to_string(flight.card.points[i].flap_setting));
  flight.loading = named_loading(flight.type, options.loads, "--load");
  return flight;
}

std::string footer(const std::string& examples) { return "Examples:\n" + examples + "\n" + kExitText; }

std::string padded(const std::string& text, std::size_t width, bool right) {
  const std::string blanks(width - std::min(width, letters(text)), ' ');
  return right ? blanks + text : text + blanks;
}

std::string filled(const std::string& first, const std::string& text) {
  constexpr std::size_t kColumns = 100;
  const std::string indent(letters(first), ' ');
  std::string out, line = first;
  bool fresh = true;
  std::istringstream words(one_line(text));
  for (std::string word; words >> word; fresh = false) {
    if (!fresh && letters(line) + 1 + letters(word) > kColumns) {
      out += line + '\n';
      line = indent;
      fresh = true;
    }
    if (!fresh) line += ' ';
    line += word;
  }
  return out + line + '\n';
}

std::uint64_t seed_from(const std::string& option, const std::string& text) {
  std::uint64_t seed = 0;
  const char* end = text.data() + text.size();
  const auto result = std::from_chars(text.data(), end, seed);
  if (result.ec != std::errc() || result.ptr != end)
    throw InputError(option + ": expected a whole number from 0 to 18446744073709551615, found \"" + text +
                     "\"");
  return seed;
}

std::string one_line(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = ' ';
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

void require_writable_place(const std::string& option, const std::filesystem::path& file,
                            const std::vector<std::filesystem::path>& read) {
  namespace fs = std::filesystem;
  if (file.empty()) return;
  std::error_code error;
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  if (fs::is_directory(file, error) || !file.has_filename())
    throw InputError(option + ": expected a name for the file, found the folder " + file.string());
  if (!fs::is_directory(folder, error))
    throw InputError(option + ": expected a file in a folder that exists, found " + file.string());
  for (const fs::path& other : read)
    if (fs::equivalent(file, other, error) ||
        (!other.empty() && fs::weakly_canonical(file, error) == fs::weakly_canonical(other, error)))
      throw InputError(option + ": expected a file of its own, found " + file.string() +
                       ", which is read or written besides");
}

}  // namespace stallwright::cli
