#pragma once
#include <deque>
#include <string>

#include "render/ui/fonts.hpp"

namespace stallwright::app {

/// Sentences that a user should know, shown one below the other for a while: no sound, a device that came or went, a disk that
/// takes nothing more. The same sentence is not said twice while it stands.
class Notices {
 public:
  void say(const std::string& sentence);
  void frame(double dt_s);
  /// From the given corner to the left and down.
  void draw(const ui::Fonts& fonts, ImVec2 upper_right) const;
  bool empty() const { return said_.empty(); }

 private:
  struct Said {
    std::string text;
    double left_s;
  };
  std::deque<Said> said_;
};

}  // namespace stallwright::app
