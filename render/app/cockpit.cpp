#include "render/app/cockpit.hpp"

#include <epoxy/gl.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <iostream>
#include <thread>
#include <utility>

#include "aircraft/input_error.hpp"
#include "aircraft/type_file.hpp"
#include "render/app/order.hpp"
#include "render/input/settings_file.hpp"
#include "render/ui/screen_text.hpp"
#include "render/ui/theme.hpp"
#include "sim/report/verification_report.hpp"

namespace stallwright::app {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr double kStepFrame_s = 0.04;  ///< of scripts: two ticks
constexpr double kLeastFrame_s = 1.0 / 61.0, kSoftwareFrame_s = 1.0 / 31.0;
constexpr double kTooSlow_ms = 29.0;

const fs::path kRoot = STALLWRIGHT_SOURCE_DIR;

bool ready(const auto& future) {
  return future.valid() && future.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
}

/// The debrief of a folder, its files made first where it is fresh. Runs beside the frames.
view::DebriefView made_debrief(const fs::path& folder, bool fresh, const Who& who) {
  if (!fresh) return view::open_debrief(folder);
  const FlownSortie flown = read_sortie(folder);
  const std::vector<LogRow> rows = read_flight_log(folder / "log.csv", flown.config.card).rows;
  if (flown.config.card.verifies) return view::debrief_view(verify_folder(folder), rows);
  return view::debrief_view(debrief_folder(folder, who), rows);
}

outside::Detail detail_of(const std::string& name, bool software) {
  if (name == "full" || (name == "auto" && !software)) return outside::Detail::full;
  return name == "lean" ? outside::Detail::lean : outside::Detail::bare;
}

}  // namespace

Cockpit::Cockpit(const Options& options)
    : options_(options),
      window_(options),
      world_(kRoot / "assets", detail_of(options.detail, window_.software())),
      hands_(input::load_settings(options.settings / "hands.toml").settings),
      context_{window_, world_, registry_, hands_, nullptr, notices_, true, false} {
  if (!options.script.empty()) script_ = Script(options.script);
  context_.in_step = !script_.empty() || options.frames > 0 || options.headless;
  if (!options.silent && !context_.in_step) context_.speaker = &speaker_.emplace(1);
  notices_.say(input::load_settings(options.settings / "hands.toml").notice);
  notices_.say(window_.fonts().notice);
  notices_.say(options.notice);
  kept_settings_ = hands_.settings();
  start_.choice = options.choice;
  open_start();
  if (options.debrief) open_debrief(*options.debrief, false);
  if (options.replay) open_replay(*options.replay, kNone, Screen::start);
  if (!options.fly_at_once) return;
  start_.check = view::start_check(start_view_, start_.choice);
  if (!start_.check.can_fly())
    throw InputError("--fly: expected a flight that can be flown, found: " + start_.check.problems.front());
  begin_flight();
  if (screen_ == Screen::start) throw InputError("--fly: " + start_.notice);
}

Cockpit::~Cockpit() {
  if (preparing_.valid()) preparing_.wait();
  if (working_.valid()) working_.wait();
}

void Cockpit::open_start() {
  logbook_ = view::read_logbook(options_.sorties, logbook_);
  start_view_ =
      view::start_view({kRoot / "aircraft" / "types", kRoot / "assets" / "cards", kRoot / "assets" / "air"},
                       view::taught_offers(logbook_));
  start_.of = nullptr;  // checked anew
  screen_ = Screen::start;
}

void Cockpit::open_logbook() {
  logbook_ = view::read_logbook(options_.sorties, logbook_);
  logbook_state_ = {};
  screen_ = Screen::logbook;
}

void Cockpit::begin_flight() {
  try {
    order_ = order_of(start_.choice, start_.check, options_.sorties);
  } catch (const std::exception& e) {
    if (options_.fly_at_once && context_.in_step) throw;
    start_.notice = e.what();
    return;
  }
  order_.wait_for_set_points = context_.in_step;
  remember_choice();
  preparing_ = std::async(std::launch::async, [order = order_] { return std::make_unique<Flight>(order); });
  screen_ = Screen::preparing;
  if (context_.in_step) flight_ready();
}

/// What a command line asked for once is not what the pilot wants next time.
void Cockpit::remember_choice() {
  if (options_.fly_at_once) return;
  try {
    view::write_start_choice(options_.settings / "start.toml", start_.choice);
  } catch (const std::exception& e) {
    notices_.say(std::string("What was chosen cannot be remembered: ") + e.what());
  }
}

void Cockpit::flight_ready() {
  try {
    std::unique_ptr<Flight> flight = preparing_.get();
    std::unique_ptr<Drive> drive =
        context_.in_step ? stepped_drive(std::move(flight)) : threaded_drive(std::move(flight));
    const bool guide = start_.choice.guide && order_.flown.config.by_hand;
    flight_ = std::make_unique<FlightScreen>(
        std::move(drive), FlightScreen::Order{order_.flown.config, start_.choice.hour, guide}, context_);
    screen_ = Screen::flight;
  } catch (const std::exception& e) {
    if (options_.fly_at_once && context_.in_step) throw;
    // Folders are given by --out in the other program.
    const std::string why = e.what(), out = "--out: ";
    open_start();
    start_.notice = why.rfind(out, 0) == 0 ? "No flight: " + why.substr(out.size()) : why;
  }
}

void Cockpit::flight_over() {
  flight_->drive().finish();
  const fs::path folder = flight_->drive().flight().folder();
  if (const std::string& trouble = flight_->drive().flight().trouble(); !trouble.empty())
    notices_.say("The sortie could not be written to its end: " + trouble + ". What was written is kept in " +
                 folder.string() + ".");
  flight_.reset();
  open_debrief(folder, true);
}

void Cockpit::open_debrief(const fs::path& folder, bool fresh) {
  debriefed_ = folder;
  working_ = std::async(std::launch::async, made_debrief, folder, fresh, who_flies(start_.choice));
  screen_ = Screen::working;
  if (context_.in_step) debrief_ready();
}

void Cockpit::debrief_ready() {
  try {
    debrief_ = working_.get();
    debrief_state_ = {};
    screen_ = Screen::debrief;
  } catch (const std::exception& e) {
    open_start();
    start_.notice =
        "No debrief: " + std::string(e.what()) + " The sortie is kept in " + debriefed_.string() + ".";
  }
}

void Cockpit::open_replay(const fs::path& folder, double from_s, Screen back) {
  try {
    replay_ = std::make_unique<ReplayScreen>(folder, from_s);
    back_ = back;
    screen_ = Screen::replay;
  } catch (const InputError& e) {
    notices_.say(e.what());
  }
}

void Cockpit::save_settings() {
  kept_settings_ = hands_.settings();
  notices_.say(input::save_settings(options_.settings / "hands.toml", kept_settings_));
}

void Cockpit::draw_start() {
  switch (desk::draw_start(start_view_, start_, registry_, window_.fonts(), {0.0f, 0.0f}, context_.size())) {
    case desk::StartIntent::none:
      return;
    case desk::StartIntent::fly:
      return begin_flight();
    case desk::StartIntent::logbook:
      return open_logbook();
    case desk::StartIntent::hands:
      hands_page_open_ = true;
      return;
    case desk::StartIntent::quit:
      quit_ = true;
      return;
  }
}

void Cockpit::draw_debrief() {
  switch (desk::draw_debrief(debrief_, debrief_state_, registry_, window_.fonts(), {0.0f, 0.0f},
                             context_.size())) {
    case desk::DebriefIntent::none:
      return;
    case desk::DebriefIntent::again:
      open_start();
      start_.check = view::start_check(start_view_, start_.choice);
      if (start_.check.can_fly()) begin_flight();
      return;
    case desk::DebriefIntent::logbook:
      return open_logbook();
    case desk::DebriefIntent::replay:
      return open_replay(debriefed_, debrief_state_.plots.cursor_s, Screen::debrief);
    case desk::DebriefIntent::start:
      return open_start();
  }
}

void Cockpit::draw_logbook() {
  view::look_up_next_hold(logbook_);
  const desk::LogbookIntent intent =
      desk::draw_logbook(logbook_, logbook_state_, registry_, window_.fonts(), {0.0f, 0.0f}, context_.size());
  if (intent == desk::LogbookIntent::none) return;
  if (intent == desk::LogbookIntent::start) return open_start();
  const fs::path folder = logbook_.lines.at(logbook_state_.chosen).folder;
  if (intent == desk::LogbookIntent::debrief) return open_debrief(folder, false);
  open_replay(folder, kNone, Screen::logbook);
}

/// Words in the middle, while something is worked out beside the frames.
void Cockpit::draw_waiting(const char* words) {
  ImDrawList& list = *ImGui::GetBackgroundDrawList();
  const ImVec2 size = context_.size();
  list.AddRectFilled({0.0f, 0.0f}, size, ui::colour(ui::kTheme.panel));
  ImFont* font = window_.fonts().large;
  const ImVec2 wide = font->CalcTextSizeA(font->FontSize, 1e6f, 0.0f, words);
  list.AddText(font, font->FontSize, {0.5f * (size.x - wide.x), 0.45f * size.y}, ui::colour(ui::kTheme.ivory),
               words);
}

/// The page of hands lies over whatever is open; a flight under it holds still.
void Cockpit::draw_hands_page() {
  const float s = window_.fonts().scale;
  ImGui::SetNextWindowPos({0.0f, 0.0f});
  ImGui::SetNextWindowSize(context_.size());
  ImGui::SetNextWindowFocus();
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding,
                      {std::max(36.0f * s, 0.5f * (context_.size().x - 1400.0f * s)), 24.0f * s});
  ImGui::Begin("hands", nullptr,
               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings);
  // Escape ends whatever the page waits for first.
  const bool waited = hands_page_.waiting || hands_page_.finding || hands_page_.calibrating;
  const input::HandsIntent intent =
      input::draw_hands_page(registry_, window_.fonts(), hands_.view(), hands_.settings(), hands_page_);
  const bool escaped =
      !waited && !ImGui::IsAnyItemActive() && ImGui::IsKeyPressed(SDL_SCANCODE_ESCAPE, false);
  ImGui::End();
  ImGui::PopStyleVar();
  hands_.listen(intent.listen);
  if (intent.changed) hands_.set(*intent.changed);
  if (!intent.close && !escaped) return;
  hands_page_open_ = false;
  hands_page_ = {};
  hands_.listen(false);
  if (flight_) flight_->hands_page_closed(hands_.settings().keys);
  save_settings();
}

void Cockpit::common_actions() {
  if (screen_ == Screen::flight && flight_->wants_hands_page()) hands_page_open_ = true;
  // In the flight the flight's screen looks at the hands; elsewhere nobody does, but keys for sound act everywhere.
  if (screen_ != Screen::flight) {
    hands_.give_keys(ImGui::GetIO().WantTextInput ? input::KeysFor::typing : input::KeysFor::pages);
    hands_.update(ImGui::GetIO().DeltaTime, {0.0, 0.0, false});
  }
  say_what_keys_changed();
}

/// Volume and the mouse stick are moved by keys within the hands; here they are said and remembered.
void Cockpit::say_what_keys_changed() {
  const input::Settings& now = hands_.settings();
  if (hands_page_open_ || now == kept_settings_) return;
  char text[48];
  if (now.mouse_stick != kept_settings_.mouse_stick)
    std::snprintf(text, sizeof text,
                  now.mouse_stick ? "the pointer is the stick" : "the pointer is no stick any more");
  else
    std::snprintf(text, sizeof text, now.mute ? "sound off" : "volume %.0f %%", 100.0 * now.volume);
  notices_.say(text);
  save_settings();
}

void Cockpit::draw(double dt_s) {
  ImGuiIO& io = ImGui::GetIO();
  const bool pages = screen_ != Screen::flight || hands_page_open_ || flight_->page_open();
  io.ConfigFlags = pages ? io.ConfigFlags | ImGuiConfigFlags_NavEnableKeyboard
                         : io.ConfigFlags & ~ImGuiConfigFlags_NavEnableKeyboard;
  switch (screen_) {
    case Screen::start:
      draw_start();
      break;
    case Screen::preparing:
      draw_waiting("Getting ready \u2026");
      if (ready(preparing_)) flight_ready();
      break;
    case Screen::flight:
      if (flight_->frame(context_, dt_s) == FlightScreen::Result::over) flight_over();
      break;
    case Screen::working:
      draw_waiting("Working out what came of it \u2026");
      if (ready(working_)) debrief_ready();
      break;
    case Screen::debrief:
      draw_debrief();
      break;
    case Screen::logbook:
      draw_logbook();
      break;
    case Screen::replay:
      if (replay_->frame(context_, dt_s) == ReplayScreen::Result::leave) screen_ = back_;
      break;
  }
  common_actions();
  if (hands_page_open_) draw_hands_page();
  if (context_.speaker != nullptr && screen_ != Screen::flight) context_.speaker->set({.silent = true});
  notices_.frame(dt_s);
  notices_.draw(window_.fonts(), {context_.size().x - 10.0f, 44.0f * window_.fonts().scale});
}

bool Cockpit::take_events() {
  SDL_Event event;
  while (SDL_PollEvent(&event) != 0) {
    if (event.type == SDL_QUIT) quit_ = true;
    if (event.type == SDL_KEYDOWN && event.key.keysym.sym == SDLK_F11) window_.toggle_full_screen();
    window_.handle(event);
    hands_.handle(event);
    if (context_.speaker != nullptr) context_.speaker->handle(event);
  }
  return !quit_;
}

void Cockpit::notices_of_devices() {
  for (std::string notice = hands_.take_notice(); !notice.empty(); notice = hands_.take_notice())
    notices_.say(notice);
  if (context_.speaker != nullptr) notices_.say(context_.speaker->take_notice());
}

Script::Wanted Cockpit::ask_script(double dt_s) {
  const ImDrawData* drawn = ImGui::GetDrawData();
  return script_.next(dt_s,
                      [&](const std::string& words) { return drawn != nullptr && ui::shows(*drawn, words); });
}

void Cockpit::frame(double dt_s) {
  if (context_.speaker != nullptr) context_.speaker->update(dt_s);
  notices_of_devices();
  window_.set_user_scale(hands_.settings().ui_scale);
  window_.begin_frame(dt_s);
  registry_.begin_frame();
  if (context_.draws) {
    glViewport(0, 0, window_.width(), window_.height());
    glClearColor(ui::kTheme.panel.r, ui::kTheme.panel.g, ui::kTheme.panel.b, 1.0f);
    glClear(GL_COLOR_BUFFER_BIT);  // depth is the world's, within its own part
  }
  draw(dt_s);
  window_.draw_ui(context_.draws);
}

/// Detail is given up when frames come late: half of the last two seconds' over 29 ms. Instruments never are.
void Cockpit::watch_times(double frame_ms) {
  times_.add(frame_ms);
  if (options_.detail != "auto" || screen_ != Screen::flight || times_.recent_median() < kTooSlow_ms) return;
  if (world_.detail() == outside::Detail::bare) return;
  world_.set_detail(world_.detail() == outside::Detail::full ? outside::Detail::lean : outside::Detail::bare);
  times_.forget_recent();
}

int Cockpit::run(const EachFrame& each_frame) {
  const double least_s = window_.software() ? kSoftwareFrame_s : kLeastFrame_s;
  auto last = Clock::now();
  for (long count = 0; !quit_ && (options_.frames == 0 || count < options_.frames); ++count) {
    const auto begin = Clock::now();
    const double passed_s = std::chrono::duration<double>(begin - last).count();
    last = begin;
    const double dt_s = context_.in_step ? kStepFrame_s : std::min(passed_s, 0.25);
    Script::Wanted wanted = script_.empty() ? Script::Wanted{} : ask_script(dt_s);
    if (!wanted.press.empty()) registry_.press(wanted.press);
    if (each_frame) each_frame(*this);
    if (wanted.end || !take_events()) break;
    if (!wanted_picture_.empty()) wanted.pictures.push_back(std::exchange(wanted_picture_, {}));
    const bool last_frame = options_.frames > 0 && count + 1 == options_.frames;
    if (last_frame && !options_.screenshot.empty()) wanted.pictures.push_back(options_.screenshot);
    context_.draws = count % options_.draw_every == 0 || !wanted.pictures.empty();
    frame(dt_s);
    for (const fs::path& picture : wanted.pictures) window_.save_picture(picture);
    if (!context_.draws) continue;
    window_.present();
    const double taken_s = std::chrono::duration<double>(Clock::now() - begin).count();
    watch_times(1000.0 * taken_s);
    if (!context_.in_step && taken_s < least_s)
      std::this_thread::sleep_for(std::chrono::duration<double>(least_s - taken_s));
  }
  if (options_.times) std::cerr << window_.renderer() << ": " << times_.summary() << '\n';
  // A flight that is left by closing the window is kept and closed as any that is ended early.
  if (flight_) {
    flight_->drive().finish();
    std::cerr << "The flight is kept in " << flight_->drive().flight().folder().string() << '\n';
  }
  return 0;
}

}  // namespace stallwright::app
