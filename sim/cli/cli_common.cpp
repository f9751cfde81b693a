#include "sim/cli/cli_common.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include "aircraft/type_file.hpp"
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

double kilograms(const std::string& text, const std::string& option) {
  double kg = kUnset;
  const char* end = text.data() + text.size();
  const auto result = std::from_chars(text.data(), end, kg);
  if (result.ec != std::errc() || result.ptr != end || !std::isfinite(kg))
    throw InputError("--load: expected STATION=KG with a number of kg, found \"" + option + "\"");
  return kg;
}

void put_load(const std::string& option, const AircraftType& type, Loading& loading) {
  const std::size_t equals = option.rfind('=');
  if (equals == std::string::npos) throw InputError("--load: expected STATION=KG, found \"" + option + "\"");
  const std::string name = option.substr(0, equals);
  const double kg = kilograms(option.substr(equals + 1), option);
  std::vector<std::string> names;
  for (const LoadStation& station : type.mass.stations) names.push_back(station.name);
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) {
    const std::string nearest = nearest_word(name, names);
    throw InputError("--load: expected one of " + joined(names) + ", found \"" + name + "\"" +
                     (nearest.empty() ? "" : "; perhaps " + nearest));
  }
  const auto index = static_cast<std::size_t>(found - names.begin());
  const double most = type.mass.stations[index].max_kg;
  if (kg < 0.0 || kg > most)
    throw InputError("--load: " + name + ": expected 0 to " + number_text(most) + " kg, found " +
                     number_text(kg));
  loading.kg[index] = kg;
}

Loading loading_from(const AircraftType& type, const std::vector<std::string>& loads) {
  Loading loading = default_loading(type);
  for (const std::string& option : loads) put_load(option, type, loading);
  std::vector<std::string> breaches;
  for (const EnvelopeBreach& breach : check_envelope(type, loading)) breaches.push_back(breach.sentence);
  if (!breaches.empty())
    throw InputError("--load: expected a loading within the envelope of " + type.name + ", found " +
                     joined(breaches));
  return loading;
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
  flight.loading = loading_from(flight.type, options.loads);
  return flight;
}

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
  throw InputError("air: expected one of " + joined(known) + " or a path to a .toml file, found \"" +
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
