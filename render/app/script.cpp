#include "render/app/script.hpp"

#include <SDL_keyboard.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>

#include "aircraft/input_error.hpp"

namespace stallwright::app {
namespace {

constexpr double kLongestWait_s = 1200.0, kTap_s = 0.06;

struct Word {
  const char* name;
  ScriptLine::What what;
  bool text, seconds;
};
constexpr Word kWords[] = {
    {"key", ScriptLine::What::key, true, false},           {"hold", ScriptLine::What::hold, true, true},
    {"press", ScriptLine::What::press, true, false},       {"type", ScriptLine::What::type, true, false},
    {"wait for", ScriptLine::What::wait_for, true, false}, {"wait", ScriptLine::What::wait, false, true},
    {"picture", ScriptLine::What::picture, true, false},   {"end", ScriptLine::What::end, false, false}};

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t\r");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

[[noreturn]] void fail(const std::string& file, int line, const std::string& expected,
                       const std::string& found) {
  throw InputError(file + ":" + std::to_string(line) + ": expected " + expected + ", found \"" + found +
                   "\"");
}

double seconds_in(const std::string& text, const std::string& file, int line) {
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  if (text.empty() || *end != '\0' || !std::isfinite(value) || value < 0.0 || value > 1e5)
    fail(file, line, "seconds", text);
  return value;
}

/// The key and its modifiers: "Shift+R".
std::pair<SDL_Keycode, std::uint16_t> key_named(std::string name, const std::string& file, int line) {
  std::uint16_t modifiers = 0;
  for (const auto& [word, modifier] : {std::pair{"Shift+", KMOD_LSHIFT}, std::pair{"Ctrl+", KMOD_LCTRL}})
    if (name.rfind(word, 0) == 0) {
      modifiers = static_cast<std::uint16_t>(modifiers | modifier);
      name = name.substr(std::strlen(word));
    }
  const SDL_Keycode key = SDL_GetKeyFromName(name.c_str());
  if (key == SDLK_UNKNOWN) fail(file, line, "the name of a key", name);
  return {key, modifiers};
}

ScriptLine read_line(const std::string& text, const std::string& file, int number) {
  for (const Word& word : kWords) {
    const std::size_t length = std::strlen(word.name);
    if (text.compare(0, length, word.name) != 0) continue;
    if (text.size() > length && text[length] != ' ') continue;
    ScriptLine line{word.what, trimmed(text.substr(length)), 0.0, number};
    if (word.text && line.text.empty()) fail(file, number, std::string("something after ") + word.name, text);
    if (word.seconds && word.text) {
      const auto gap = line.text.find_last_of(' ');
      if (gap == std::string::npos) fail(file, number, "a key and seconds", line.text);
      line.seconds = seconds_in(trimmed(line.text.substr(gap)), file, number);
      line.text = trimmed(line.text.substr(0, gap));
    } else if (word.seconds) {
      line.seconds = seconds_in(line.text, file, number);
    } else if (!word.text && !line.text.empty()) {
      fail(file, number, std::string("nothing after ") + word.name, line.text);
    }
    if (line.what == ScriptLine::What::key || line.what == ScriptLine::What::hold)
      key_named(line.text, file, number);
    return line;
  }
  fail(file, number, "key, hold, press, type, wait, wait for, picture or end", text);
}

}  // namespace

void push_key(SDL_Keycode key, std::uint16_t modifiers, bool down) {
  SDL_Event event{};
  event.type = down ? SDL_KEYDOWN : SDL_KEYUP;
  event.key.state = down ? SDL_PRESSED : SDL_RELEASED;
  event.key.keysym.sym = key;
  event.key.keysym.scancode = SDL_GetScancodeFromKey(key);
  event.key.keysym.mod = modifiers;
  SDL_PushEvent(&event);
}

std::vector<ScriptLine> read_script(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw InputError(file.string() + ": expected a script, found nothing that can be read");
  std::vector<ScriptLine> lines;
  int number = 0;
  for (std::string text; std::getline(in, text);) {
    ++number;
    const std::string words = trimmed(text.substr(0, text.find('#')));
    if (!words.empty()) lines.push_back(read_line(words, file.string(), number));
  }
  return lines;
}

void Script::press_key(const std::string& name, double seconds, int line) {
  const auto [key, modifiers] = key_named(name, file_, line);
  if (modifiers & KMOD_LSHIFT) push_key(SDLK_LSHIFT, modifiers, true);
  if (modifiers & KMOD_LCTRL) push_key(SDLK_LCTRL, modifiers, true);
  push_key(key, modifiers, true);
  down_.push_back({key, modifiers, time_s_ + std::max(seconds, kTap_s)});
}

void Script::release_due() {
  for (auto& down : down_)
    if (time_s_ >= down.until_s - 1e-9) {
      push_key(down.key, down.modifiers, false);
      if (down.modifiers & KMOD_LSHIFT) push_key(SDLK_LSHIFT, 0, false);
      if (down.modifiers & KMOD_LCTRL) push_key(SDLK_LCTRL, 0, false);
    }
  std::erase_if(down_, [&](const Down& down) { return time_s_ >= down.until_s - 1e-9; });
}

/// A wait that never ends would hang a test: it ends the program with a clear line instead.
void Script::give_up_after(const ScriptLine& line) {
  if (waiting_since_s_ < 0.0) waiting_since_s_ = time_s_;
  if (time_s_ - waiting_since_s_ > kLongestWait_s)
    fail(file_, line.line, "these words on the screen within 1200 s", line.text);
}

void Script::play(const ScriptLine& line, Wanted& wanted) {
  switch (line.what) {
    case ScriptLine::What::key:
      press_key(line.text, kTap_s, line.line);
      free_at_s_ = time_s_ + 2.0 * kTap_s;
      break;
    case ScriptLine::What::hold:
      press_key(line.text, line.seconds, line.line);
      break;
    case ScriptLine::What::press:
      wanted.press = line.text;
      break;
    case ScriptLine::What::type: {
      SDL_Event event{};
      event.type = SDL_TEXTINPUT;
      std::snprintf(event.text.text, sizeof event.text.text, "%s", line.text.c_str());
      SDL_PushEvent(&event);
      free_at_s_ = time_s_ + kTap_s;
      break;
    }
    case ScriptLine::What::wait:
      free_at_s_ = time_s_ + line.seconds;
      break;
    case ScriptLine::What::wait_for:
      break;
    case ScriptLine::What::picture:
      wanted.pictures.emplace_back(line.text);
      break;
    case ScriptLine::What::end:
      wanted.end = true;
      break;
  }
}

}  // namespace stallwright::app
