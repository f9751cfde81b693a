#include "render/view/start_choice.hpp"

#include <cmath>

#include "aircraft/toml_reader.hpp"
#include "sim/report/whole_file.hpp"

namespace stallwright::view {
namespace {

constexpr std::size_t kLongest = 500;
constexpr FileUnit kHours{"h", 1.0};

/// A TOML basic string.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) out += c;
  }
  return out + "\"";
}

/// A seed may need more digits than a number of a TOML file keeps, so it stands as text.
std::uint64_t seed_of(const TomlTable& table) {
  const std::string text = table.text_or("seed", 20, "1");
  std::uint64_t seed = 0;
  for (const char c : text) {
    const auto digit = static_cast<std::uint64_t>(c - '0');
    if (c < '0' || c > '9' || seed > (UINT64_MAX - digit) / 10)
      table.reject("seed", "a whole number from 0 to 18446744073709551615, in quotes", "\"" + text + "\"");
    seed = 10 * seed + digit;
  }
  return seed;
}

void read_loads(const TomlTable& root, StartChoice& choice) {
  if (!root.has("load")) return;
  constexpr NumberField kKg{"kg", unit::kKilogram, 0, 2000};
  for (const TomlTable& load : root.tables("load", 0, 40))
    choice.load_kg[load.text("station", kLongest)] = load.number(kKg);
}

}  // namespace

StartChoice read_start_choice(const std::filesystem::path& file) {
  StartChoice choice;
  std::error_code error;
  if (!std::filesystem::exists(file, error)) return choice;
  const TomlDocument document(file);
  const TomlTable root = document.root();
  root.choice("format", {"stallwright-start-1"});
  choice.aircraft = root.text_or("aircraft", kLongest, choice.aircraft);
  choice.card = root.text_or("card", kLongest, choice.card);
  choice.own_card = root.text_or("own_card", kLongest, "");
  choice.set_points = root.text_or("set_points", kLongest, "");
  choice.air = root.text_or("air", kLongest, choice.air);
  choice.hour = root.number_or({"hour", kHours, kEarliest_h, kLatest_h}, choice.hour);
  choice.seed = seed_of(root);
  if (root.has("sensors")) choice.sensors = root.choice("sensors", {"ideal", "standard"});
  if (root.has("flown_by")) choice.flown_by = root.choice("flown_by", {"me", "sharp", "current", "rusty"});
  choice.pilot = root.text_or("pilot", kLongest, "");
  choice.guide = root.flag_or("guide", choice.guide);
  read_loads(root, choice);
  document.reject_unknown_keys();
  return choice;
}

std::string start_choice_toml(const StartChoice& choice) {
  std::string out = "# What was chosen last on the start page.\nformat = \"stallwright-start-1\"\n";
  const auto put = [&](const char* key, const std::string& text) {
    // A text of a file has at least one character; one that is empty is left out.
    if (!text.empty()) out += std::string(key) + " = " + quoted(text) + "\n";
  };
  put("aircraft", choice.aircraft);
  put("card", choice.card);
  put("own_card", choice.own_card);
  put("set_points", choice.set_points);
  put("air", choice.air);
  out += "hour = " + number_text(choice.hour) + "\n";
  put("seed", std::to_string(choice.seed));
  put("sensors", choice.sensors);
  put("flown_by", choice.flown_by);
  put("pilot", choice.pilot);
  out += std::string("guide = ") + (choice.guide ? "true" : "false") + "\n";
  for (const auto& [station, kg] : choice.load_kg)
    out += "\n[[load]]\nstation = " + quoted(station) + "\nkg = " + number_text(kg) + "\n";
  return out;
}

void write_start_choice(const std::filesystem::path& file, const StartChoice& choice) {
  std::error_code error;
  if (file.has_parent_path()) std::filesystem::create_directories(file.parent_path(), error);
  write_whole_file(file, start_choice_toml(choice));
}

}  // namespace stallwright::view
