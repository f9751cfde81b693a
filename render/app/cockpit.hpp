#pragma once
#include <functional>
#include <future>
#include <memory>
#include <optional>

#include "render/app/flight_screen.hpp"
#include "render/app/frame_times.hpp"
#include "render/app/options.hpp"
#include "render/app/replay_screen.hpp"
#include "render/app/script.hpp"
#include "render/desk/debrief.hpp"
#include "render/desk/logbook.hpp"
#include "render/desk/start.hpp"
#include "render/input/hands_page.hpp"

namespace stallwright::app {

/// The program from its start page to its end: which screen is open, and what leads from one to the other.
class Cockpit {
 public:
  explicit Cockpit(const Options& options);
  ~Cockpit();
  /// Runs until the pilot quits, the script ends or the frames are drawn. Exit status of the program.
  using EachFrame = std::function<void(Cockpit&)>;
  ///   each_frame  called before the events of each frame are taken: for tests that press keys by what they see
  int run(const EachFrame& each_frame = {});

  /// The flight under way, or null.
  const Seen* flight() const { return flight_ ? &flight_->seen() : nullptr; }
  /// The screen of the flight under way, or null.
  FlightScreen* flight_screen() { return flight_.get(); }
  ui::Registry& registry() { return registry_; }
  /// Writes the next frame as it is drawn.
  void take_picture(const std::filesystem::path& file) { wanted_picture_ = file; }
  void quit() { quit_ = true; }

 private:
  enum class Screen { start, preparing, flight, working, debrief, logbook, replay };
  using DebriefJob = std::future<view::DebriefView>;

  bool take_events();
  void frame(double dt_s);
  void draw(double dt_s);
  void draw_start();
  void draw_waiting(const char* words);
  void draw_debrief();
  void draw_logbook();
  void draw_hands_page();
  void common_actions();
  void say_what_keys_changed();
  void open_start();
  void open_logbook();
  void open_debrief(const std::filesystem::path& folder, bool fresh);
  void open_replay(const std::filesystem::path& folder, double from_s, Screen back);
  void begin_flight();
  void remember_choice();
  void flight_ready();
  void flight_over();
  void debrief_ready();
  void save_settings();
  void notices_of_devices();
  double wait_for_frame();
  void watch_times(double frame_ms);
  Script::Wanted ask_script(double dt_s);

  Options options_;
  Window window_;
  outside::World world_;
  ui::Registry registry_;
  input::Hands hands_;
  std::optional<sound::Speaker> speaker_;
  Notices notices_;
  Script script_;
  Context context_;
  FrameTimes times_;

  Screen screen_ = Screen::start, back_ = Screen::start;
  view::Logbook logbook_;
  view::StartView start_view_;
  desk::StartState start_;
  std::future<std::unique_ptr<Flight>> preparing_;
  FlightOrder order_;
  std::unique_ptr<FlightScreen> flight_;
  DebriefJob working_;
  std::filesystem::path debriefed_;
  view::DebriefView debrief_;
  desk::DebriefState debrief_state_;
  desk::LogbookState logbook_state_;
  std::unique_ptr<ReplayScreen> replay_;
  std::filesystem::path wanted_picture_;
  input::HandsPageState hands_page_;
  input::Settings kept_settings_;  ///< as the file has them
  bool hands_page_open_ = false, quit_ = false;
};

}  // namespace stallwright::app
