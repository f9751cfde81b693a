#include "render/input/settings_file.hpp"

#include "aircraft/toml_reader.hpp"
#include "sim/report/whole_file.hpp"

namespace stallwright::input {
namespace {

constexpr const char* kFormat = "stallwright-hands-1";
constexpr NumberField kRaw_low{"low", unit::kNone, -32768, 32767},
    kRaw_centre{"centre", unit::kNone, -32768, 32767}, kRaw_high{"high", unit::kNone, -32768, 32767};
constexpr NumberField kAxisNumber{"axis", unit::kNone, 0, 63}, kDeadZone{"dead_zone", unit::kNone, 0, 0.5},
    kCurve{"curve", unit::kNone, 0, 1}, kButton{"button", unit::kNone, 0, 199};
constexpr NumberField kVolume{"volume", unit::kNone, 0, 1}, kUiScale{"ui_scale", unit::kNone, 0.8, 2};

int whole(const TomlTable& table, const NumberField& field, int fallback) {
  const double value = table.number_or(field, fallback);
  if (value != static_cast<int>(value)) table.reject(field.key, "a whole number", number_text(value));
  return static_cast<int>(value);
}

bool is_guid(const std::string& text) {
  return text.size() == 32 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

std::string guid(const TomlTable& table) {
  std::string text = table.text("device", 40);
  if (!is_guid(text)) table.reject("device", "32 hexadecimal digits", '"' + text + '"');
  return text;
}

AxisSetting read_axis(const TomlTable& table) {
  AxisSetting out;
  out.device = table.text("device", 40);
  if (out.device != kAutomatic && out.device != kKeyboard && !is_guid(out.device))
    table.reject("device", "automatic, keyboard or 32 hexadecimal digits", '"' + out.device + '"');
  out.device_name = table.text_or("device_name", 200, "");
  out.axis = whole(table, kAxisNumber, out.axis);
  out.shape.inverted = table.flag_or("inverted", false);
  out.shape.dead_zone = table.number_or(kDeadZone, out.shape.dead_zone);
  out.shape.curve = table.number_or(kCurve, out.shape.curve);
  out.shape.low = whole(table, kRaw_low, out.shape.low);
  out.shape.centre = whole(table, kRaw_centre, out.shape.centre);
  out.shape.high = whole(table, kRaw_high, out.shape.high);
  if (out.shape.high <= out.shape.low)
    table.reject("high", "a number above low (" + std::to_string(out.shape.low) + ")",
                 std::to_string(out.shape.high));
  return out;
}

Action read_action(const TomlTable& table) {
  std::vector<std::string> names;
  for (const Action action : all_actions()) names.push_back(action_name(action));
  const std::string name = table.choice("action", names);
  for (const Action action : all_actions())
    if (action_name(action) == name) return action;
  return Action::record;  // not reached: choice() lets only these names through
}

KeyChord read_key(const TomlTable& table, const char* key) {
  const std::string name = table.text_or(key, 60, "none");
  const auto chord = key_of_name(name);
  if (!chord)
    table.reject(key, "the name of a key, such as \"R\", \"Shift+R\" or \"none\"", '"' + name + '"');
  return *chord;
}

/// Actions that the file names have its keys; then the defaults of the others give way where they clash.
void read_keys(const TomlTable& root, KeyBindings& keys) {
  if (!root.has("key")) return;
  KeyBindings given;
  std::array<bool, kActions> named{};
  for (const TomlTable& table : root.tables("key", 0, 2 * kActions)) {
    const Action action = read_action(table);
    if (named[place_of(action)])
      table.reject("action", "each action once", '"' + action_name(action) + "\" again");
    named[place_of(action)] = true;
    given.keys[place_of(action)] = {read_key(table, "first"), read_key(table, "second")};
    if (conflict(given))
      table.reject("first", "a key that no other action has", '"' + keys_text(given, action) + '"');
  }
  for (const Action action : all_actions())
    if (!named[place_of(action)])
      for (std::size_t k = 0; k < kKeysEach; ++k)
        if (!holder_of(given, keys.of(action)[k])) given.keys[place_of(action)][k] = keys.of(action)[k];
  keys = given;
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
  }
  return out + '"';
}

std::string line(const char* key, const std::string& value) {
  return std::string(key) + " = " + value + "\n";
}
std::string flag(bool on) { return on ? "true" : "false"; }

std::string axis_text(Axis axis, const AxisSetting& a) {
  std::string out =
      "\n[" + std::string(kAxisNames[place_of(axis)]) + "]\n" + line("device", quoted(a.device));
  if (!a.device_name.empty()) out += line("device_name", quoted(a.device_name));
  return out + line("axis", std::to_string(a.axis)) + line("inverted", flag(a.shape.inverted)) +
         line("dead_zone", number_text(a.shape.dead_zone)) + line("curve", number_text(a.shape.curve)) +
         line("low", std::to_string(a.shape.low)) + line("centre", std::to_string(a.shape.centre)) +
         line("high", std::to_string(a.shape.high));
}

}  // namespace

Settings read_settings(const std::filesystem::path& file) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  Settings out;
  root.choice("format", {kFormat});
  out.volume = root.number_or(kVolume, out.volume);
  out.mute = root.flag_or("mute", out.mute);
  out.rumble = root.flag_or("rumble", out.rumble);
  out.feet_assist = root.flag_or("feet_assist", out.feet_assist);
  out.mouse_stick = root.flag_or("mouse_stick", out.mouse_stick);
  out.ui_scale = root.number_or(kUiScale, out.ui_scale);
  for (std::size_t k = 0; k < kAxes; ++k) {
    root.announce(kAxisNames[k]);
    if (root.has(kAxisNames[k])) out.axes[k] = read_axis(root.table(kAxisNames[k]));
  }
  root.announce("key");
  root.announce("button");
  read_keys(root, out.keys);
  if (root.has("button"))
    for (const TomlTable& table : root.tables("button", 0, 500))
      out.buttons.push_back({guid(table), whole(table, kButton, 0), read_action(table)});
  document.reject_unknown_keys();
  return out;
}

LoadedSettings load_settings(const std::filesystem::path& file) {
  std::error_code unseen;
  if (!std::filesystem::exists(file, unseen)) return {};
  try {
    return {read_settings(file), ""};
  } catch (const InputError& error) {
    return {{}, std::string(error.what()) + " (the usual settings apply, and the file is left as it is)"};
  }
}

std::string settings_text(const Settings& s) {
  std::string out =
      "# What was chosen about hands and ears. Written whole by the cockpit; may be edited by hand.\n" +
      line("format", quoted(kFormat)) + line("volume", number_text(s.volume)) + line("mute", flag(s.mute)) +
      line("rumble", flag(s.rumble)) + line("feet_assist", flag(s.feet_assist)) +
      line("mouse_stick", flag(s.mouse_stick)) + line("ui_scale", number_text(s.ui_scale));
  for (std::size_t k = 0; k < kAxes; ++k) out += axis_text(static_cast<Axis>(k), s.axes[k]);
  for (const Action action : all_actions()) {
    const auto& keys = s.keys.of(action);
    out += "\n[[key]]\n" + line("action", quoted(action_name(action))) +
           line("first", quoted(key_name(keys[0]))) + line("second", quoted(key_name(keys[1])));
  }
  for (const ButtonBinding& b : s.buttons)
    out += "\n[[button]]\n" + line("device", quoted(b.device)) + line("button", std::to_string(b.button)) +
           line("action", quoted(action_name(b.action)));
  return out;
}

std::string save_settings(const std::filesystem::path& file, const Settings& settings) {
  try {
    if (std::filesystem::exists(file)) read_settings(file);
    if (file.has_parent_path()) std::filesystem::create_directories(file.parent_path());
    write_whole_file(file, settings_text(settings));
    return {};
  } catch (const InputError& error) {
    return "the settings were not kept, because the file there has a mistake: " + std::string(error.what());
  } catch (const std::exception& error) {
    return "the settings were not kept: " + std::string(error.what());
  }
}

}  // namespace stallwright::input
