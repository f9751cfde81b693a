#pragma once
#include <imgui.h>

#include <string>
#include <vector>

namespace stallwright::ui {

/// What stood on the screen in the frame just drawn: every control made by the functions below, by name. Tests and scripts
/// press controls through it, since ImGui 1.86 cannot be asked.
struct Shown {
  std::string label;
  ImVec2 from, to;    ///< screen px
  std::string value;  ///< "on"/"off", a number, the chosen entry, or empty
  bool enabled = true;
};

/// The registry of the current frame. Holds what a script wants pressed, too: the named control acts as if clicked.
class Registry {
 public:
  void begin_frame();
  void add(Shown shown) { shown_.push_back(std::move(shown)); }
  const std::vector<Shown>& shown() const { return shown_; }
  const Shown* find(const std::string& label) const;

  /// The control of this name acts in the next frame that shows it.
  void press(const std::string& label) { wanted_ = label; }
  /// For the functions below: true once for a control that was asked for.
  bool take_press(const std::string& label);
  bool press_pending() const { return !wanted_.empty(); }

 private:
  std::vector<Shown> shown_;
  std::string wanted_;
};

/// Each draws the ImGui control and enters it in the registry. Labels may hide an ImGui id behind ##.
bool button(Registry& registry, const char* label, ImVec2 size = {0.0f, 0.0f}, bool enabled = true);
bool check(Registry& registry, const char* label, bool& value);
bool slider(Registry& registry, const char* label, float& value, float low, float high, const char* format);
bool text_field(Registry& registry, const char* label, std::string& value);
/// One of several, side by side as buttons; true when the choice changed.
bool choice(Registry& registry, const char* name, const std::vector<std::string>& entries,
            std::size_t& chosen);

}  // namespace stallwright::ui
