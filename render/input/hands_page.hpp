#pragma once
#include <optional>

#include "render/input/calibration.hpp"
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"

namespace stallwright::input {

/// A key of an action that waits for being pressed anew.
struct WaitingKey {
  Action action;
  std::size_t place;
};

/// What the page of hands remembers.
struct HandsPageState {
  std::optional<Axis> finding;  ///< waits for an axis to be moved
  RawAxes found_from;           ///< raw values when the waiting began
  bool calibrating = false;
  Travels travels;
  std::optional<WaitingKey> waiting;
  bool reset_asked = false;
};

/// What the user wants.
struct HandsIntent {
  std::optional<Settings> changed;  ///< in force from now on; to be saved when the page closes
  bool listen = false;              ///< keys and buttons are for this page: Hands::listen
  bool close = false;
};

/// The page on which devices, keys and ears are set up, into the current ImGui window (about 1100 x 500 px at scale 1 or more;
/// it scrolls). Everything can be reached with the keyboard alone.
HandsIntent draw_hands_page(ui::Registry& registry, const ui::Fonts& fonts, const HandsView& view,
                            const Settings& settings, HandsPageState& state);

}  // namespace stallwright::input
