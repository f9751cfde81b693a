#pragma once
#include <memory>

#include "render/app/context.hpp"
#include "render/desk/coach.hpp"
#include "render/flight/drive.hpp"
#include "render/input/key_help.hpp"
#include "render/view/captions.hpp"
#include "render/view/coach_view.hpp"
#include "render/view/outside_view.hpp"
#include "render/view/sound_view.hpp"

namespace stallwright::app {

/// The flight as it is flown: world, probe scale, coach, panel, and the pages that open over the panel.
class FlightScreen {
 public:
  struct Order {
    SortieConfig config;
    double hour = 10.0;
    bool guide = false;
  };
  FlightScreen(std::unique_ptr<Drive> drive, const Order& order, Context& context);

  enum class Result { flying, over };
  Result frame(Context& context, double dt_s);

  Drive& drive() { return *drive_; }
  const Seen& seen() const { return seen_; }
  bool wants_hands_page() const { return wants_hands_page_; }
  /// Keys may have other names now.
  void hands_page_closed(const input::KeyBindings& keys);
  /// The pages over the panel hold the flight still.
  bool page_open() const { return page_ != Page::none || wants_hands_page_; }

 private:
  enum class Page { none, stall_checks, keys, leave };
  struct Layout {
    ImVec2 world_to, scale_from, scale_to, coach_from, coach_to, panel_from, panel_to;
  };
  Layout layout(const Context& context) const;
  void take_actions(Context& context, double dt_s);
  void act(input::Action action, Presses& presses);
  void move_head(const input::HandsNow& now, double dt_s);
  void draw_world(Context& context, const Layout& at, double dt_s);
  void draw_status(Context& context, const Layout& at);
  void draw_panel(Context& context, const Layout& at);
  void draw_page(Context& context, const Layout& at);
  void sound(Context& context, double dt_s);
  bool stall_ahead() const;
  void hold_still();

  std::unique_ptr<Drive> drive_;
  Order order_;
  std::vector<PointSpeeds> speeds_;
  view::KeyNames keys_;
  std::vector<input::KeyHelp> help_;  ///< made when its page opens
  Seen seen_;
  view::OutsideView outside_;
  Vec3<double> eye_B_m_;
  view::CoachView coach_;
  view::SoundView heard_;
  view::CaptionClock caption_clock_;
  desk::CoachIntent pressed_;
  Page page_ = Page::none, opening_ = Page::none;
  bool wants_hands_page_ = false, stall_checked_ = false, paused_ = false;
  std::size_t events_seen_ = 0;
  std::size_t flap_setting_ = 0;
  double rest_right_ = 0.0;  ///< where the stick lies with nobody's hand on it, as the aeroplane is rigged
  double rate_ = 1.0, look_right_deg_ = 0.0, look_up_deg_ = 0.0, turns_ = 0.0;
  bool was_recording_ = false;
};

}  // namespace stallwright::app
