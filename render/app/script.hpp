#pragma once
#include <SDL_events.h>

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace stallwright::app {

/// A script plays keys and presses into the cockpit, in its own time: one frame is 0.04 s. A line each, # begins a comment:
///
///   key NAME                press and let go a key, named as SDL names it (R, Left, PageUp, Escape); Shift+ before it
///   hold NAME SECONDS       keep it down so long; the script goes on at once
///   press LABEL             press the button on the screen that bears this label
///   type TEXT               type into whatever field has the keyboard
///   wait SECONDS            let time pass
///   wait for WORDS          until a text on the screen has these words (at most 1200 s)
///   picture FILE.png        write the next frame as it is drawn
///   end                     end the program
///
/// Keys go through SDL's event queue as a keyboard's would.
struct ScriptLine {
  enum class What { key, hold, press, type, wait, wait_for, picture, end };
  What what;
  std::string text;
  double seconds = 0.0;
  int line = 0;
};

/// Throws InputError, `FILE:LINE: expected ..., found ...`.
std::vector<ScriptLine> read_script(const std::filesystem::path& file);

/// A key that goes down or up, into SDL's event queue as a keyboard's would.
void push_key(SDL_Keycode key, std::uint16_t modifiers, bool down);

/// Plays a script frame by frame.
class Script {
 public:
  Script() = default;
  explicit Script(const std::filesystem::path& file) : lines_(read_script(file)), file_(file.string()) {}

  /// What is wanted of this frame beside the keys, which are pushed to SDL.
  struct Wanted {
    std::string press;
    std::vector<std::filesystem::path> pictures;
    bool end = false;
  };
  /// Before a frame of dt_s. `shows` answers whether the screen has some words.
  template <class Shows>
  Wanted next(double dt_s, const Shows& shows) {
    Wanted wanted;
    time_s_ += dt_s;
    release_due();
    while (place_ < lines_.size() && time_s_ >= free_at_s_) {
      const ScriptLine& line = lines_[place_];
      if (line.what == ScriptLine::What::wait_for && !shows(line.text)) {
        give_up_after(line);
        break;
      }
      waiting_since_s_ = -1.0;
      ++place_;
      play(line, wanted);
      if (wanted.end || !wanted.press.empty() || !wanted.pictures.empty()) break;
    }
    return wanted;
  }
  bool empty() const { return lines_.empty(); }
  bool over() const { return place_ >= lines_.size(); }

 private:
  struct Down {
    SDL_Keycode key;
    std::uint16_t modifiers;
    double until_s;
  };
  void play(const ScriptLine& line, Wanted& wanted);
  void give_up_after(const ScriptLine& line);
  void press_key(const std::string& name, double seconds, int line);
  void release_due();

  std::vector<ScriptLine> lines_;
  std::string file_;
  std::vector<Down> down_;
  std::size_t place_ = 0;
  double time_s_ = 0.0, free_at_s_ = 0.0, waiting_since_s_ = -1.0;
};

}  // namespace stallwright::app
