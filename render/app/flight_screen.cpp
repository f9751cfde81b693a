#include "render/app/flight_screen.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/app/overlay.hpp"
#include "render/panel/panel.hpp"
#include "render/panel/probe_scale.hpp"
#include "render/ui/theme.hpp"
#include "render/view/outside_from.hpp"
#include "sim/motion/flight.hpp"

namespace stallwright::app {
namespace {

using input::Action;

constexpr double kRates[] = {0.25, 0.5, 1.0, 2.0, 4.0};
constexpr double kSide_deg = 80.0, kOverNose_deg = -9.0, kHeadRate_degps = 260.0, kStretch_m = 0.07;

view::KeyNames key_names(const input::KeyBindings& bindings) {
  const auto of = [&](Action action) { return input::key_to_press(bindings, action); };
  view::KeyNames names;
  names.record = of(Action::record);
  names.area_clear = of(Action::area_clear);
  names.flaps_down = of(Action::flaps_down);
  names.flaps_up = of(Action::flaps_up);
  names.nose_up = of(Action::stick_back);
  names.nose_down = of(Action::stick_forward);
  names.bank_left = of(Action::stick_left);
  names.bank_right = of(Action::stick_right);
  names.more_power = of(Action::more_power);
  names.less_power = of(Action::less_power);
  names.full_power = of(Action::power_full);
  names.no_power = of(Action::power_idle);
  names.look_left = of(Action::look_left);
  names.look_right = of(Action::look_right);
  names.trim = of(Action::trim_to_stick);
  names.help = of(Action::help);
  return names;
}

double toward(double now, double goal, double most) { return now + std::clamp(goal - now, -most, most); }

}  // namespace

FlightScreen::FlightScreen(std::unique_ptr<Drive> drive, const Order& order, Context& context)
    : drive_(std::move(drive)),
      order_(order),
      speeds_(drive_->flight().sortie().director().speeds()),
      keys_(key_names(context.hands.settings().keys)),
      outside_(view::outside_of(order.config, order.hour)),
      eye_B_m_(view::eye_place(order.config)) {
  const Hands& first = drive_->flight().first_hands();
  context.hands.place(first.stick_aft, first.throttle, first.pedal_right);
  rest_right_ = first.stick_right;
  context.hands.give_keys(input::KeysFor::flying);
  drive_->look(seen_);
}

FlightScreen::Layout FlightScreen::layout(const Context& context) const {
  const ImVec2 size = context.size();
  const float s = context.fonts().scale;
  const float coach = desk::coach_height(context.fonts(), order_.guide), scale = 58.0f * s;
  const float panel = std::min(204.0f * s, 0.34f * size.y);
  Layout at;
  at.panel_to = {size.x, size.y - 5.0f * s};  // the lowest scale keeps clear of the edge
  at.panel_from = {0.0f, size.y - panel};
  at.coach_to = {size.x, at.panel_from.y};
  at.coach_from = {0.0f, at.coach_to.y - coach};
  at.scale_to = {size.x, at.coach_from.y};
  at.scale_from = {0.0f, at.scale_to.y - scale};
  at.world_to = {size.x, at.scale_from.y};
  return at;
}

/// Whether the next thing to fly is a stall that its checks have not been gone through for.
bool FlightScreen::stall_ahead() const {
  const Marks& marks = seen_.now.marks;
  if (stall_checked_ || marks.point == 0) return false;
  const bool before =
      marks.phase == Phase::clearing || marks.phase == Phase::transit || marks.phase == Phase::settle;
  return before && order_.config.card.points[static_cast<std::size_t>(marks.point - 1)].is_stall();
}

void FlightScreen::hands_page_closed(const input::KeyBindings& keys) {
  wants_hands_page_ = false;
  keys_ = key_names(keys);
}

void FlightScreen::hold_still() { drive_->pause(paused_ || page_open()); }

void FlightScreen::act(Action action, Presses& presses) {
  switch (action) {
    case Action::record:
      presses.record = true;
      break;
    case Action::record_anyway:
      presses.record_anyway = true;
      break;
    case Action::area_clear:
      presses.area_clear = true;
      break;
    case Action::knock_it_off:
      presses.knock_it_off = true;
      break;
    case Action::pause:
      paused_ = !paused_;
      break;
    case Action::faster:
    case Action::slower: {
      const auto* place = std::find(std::begin(kRates), std::end(kRates), rate_);
      const long k =
          std::clamp<long>(place - kRates + (action == Action::faster ? 1 : -1), 0, std::size(kRates) - 1);
      rate_ = kRates[k];
      drive_->rate(rate_);
      break;
    }
    case Action::help:
      opening_ = page_ == Page::none ? Page::keys : Page::none;
      if (page_ == Page::keys) page_ = Page::none;
      break;
    case Action::hands:
      wants_hands_page_ = true;
      break;
    case Action::leave:
      if (!page_open()) opening_ = Page::leave;  // an open page closes itself
      break;
    default:
      break;  // volume and the like are the cockpit's
  }
}

void FlightScreen::move_head(const input::HandsNow& now, double dt_s) {
  double right = 0.0, up = 0.0;
  if (now.holds(Action::look_left)) right = -kSide_deg;
  if (now.holds(Action::look_right)) right = kSide_deg;
  if (now.holds(Action::look_over_nose)) up = kOverNose_deg;
  look_right_deg_ = toward(look_right_deg_, right, kHeadRate_degps * dt_s);
  look_up_deg_ = toward(look_up_deg_, up, 60.0 * dt_s);
}

void FlightScreen::take_actions(Context& context, double dt_s) {
  const Readings<double>& r = seen_.now.readings;
  const bool still = paused_ || page_open();
  const input::HandsNow& now =
      context.hands.update(dt_s, {-r.right_mps2 / kStandardGravity_mps2, seen_.now.buffet_g, !still});
  Presses presses;
  for (const Action action : now.pressed) act(action, presses);
  presses.record |= pressed_.record;
  presses.record_anyway |= pressed_.record_anyway;
  presses.area_clear |= pressed_.area_clear;
  presses.knock_it_off |= pressed_.knock_it_off;
  move_head(now, dt_s);
  const long last = static_cast<long>(order_.config.type.flaps.size()) - 1;
  flap_setting_ =
      static_cast<std::size_t>(std::clamp(static_cast<long>(flap_setting_) + now.flap_steps, 0L, last));
  const double stick_right = std::clamp(now.stick_right + rest_right_, -1.0, 1.0);
  drive_->hands(
      {now.stick_aft, stick_right, now.pedal_right, now.throttle, flap_setting_, now.feet_assisted, presses});
  hold_still();
  drive_->frame(dt_s);
  drive_->look(seen_);
  seen_.now.pitch_trim = now.pitch_trim;
  if (stall_ahead() && page_ == Page::none && order_.config.by_hand) opening_ = Page::stall_checks;
  if (!seen_.trouble.empty())
    context.notices.say("The sortie can no longer be written: " + seen_.trouble +
                        ". What was written is safe.");
}

void FlightScreen::draw_world(Context& context, const Layout& at, double dt_s) {
  Vec3<double> eye = eye_B_m_;
  eye.z -= kStretch_m * look_up_deg_ / kOverNose_deg;  // stretching up to see over the nose
  if (!seen_.paused) turns_ = std::fmod(turns_ + seen_.now.propeller_radps / (2.0 * math::kPi) * dt_s, 1.0);
  view::place_eye(seen_, eye, look_right_deg_, look_up_deg_, outside_);
  outside_.propeller_turns = turns_;
  if (!context.draws) return;
  const int bottom = context.window.height() - static_cast<int>(std::lround(at.world_to.y));
  context.world.draw(outside_, {0, bottom, context.window.width(), context.window.height() - bottom});
}

/// Captions on the left, rate and seed on the right, at the top of the sky: clear of the horizon.
void FlightScreen::draw_status(Context& context, const Layout& at) {
  ImDrawList& list = *ImGui::GetBackgroundDrawList();
  const ui::Fonts& fonts = context.fonts();
  const float s = fonts.scale;
  const view::Captions words = view::captions(caption_clock_);
  float x = 10.0f * s;
  for (std::size_t k = 0; k < words.count; ++k) {
    const ImVec2 size = fonts.bold->CalcTextSizeA(fonts.bold->FontSize, 1e6f, 0.0f, words.words[k]);
    list.AddRectFilled({x, 10.0f * s}, {x + size.x + 16.0f * s, 16.0f * s + size.y},
                       ui::colour(ui::kTheme.panel, 0.9f));
    list.AddText(fonts.bold, fonts.bold->FontSize, {x + 8.0f * s, 13.0f * s}, ui::colour(ui::kTheme.ivory),
                 words.words[k]);
    x += size.x + 24.0f * s;
  }
  char text[160];
  const bool slow = !seen_.paused && seen_.achieved_rate < 0.93 * seen_.wanted_rate && seen_.now.time_s > 4.0;
  if (seen_.paused)
    std::snprintf(text, sizeof text, page_open() ? "holding still" : "PAUSED");
  else if (slow)
    std::snprintf(text, sizeof text, "this machine flies at %.2f of real time", seen_.achieved_rate);
  else if (rate_ != 1.0)
    std::snprintf(text, sizeof text, "%g times real time", rate_);
  else
    std::snprintf(text, sizeof text, "%s for keys", keys_.help.c_str());
  const ImVec2 size = fonts.small->CalcTextSizeA(fonts.small->FontSize, 1e6f, 0.0f, text);
  const ImVec2 from{at.world_to.x - size.x - 20.0f * s, 10.0f * s};
  list.AddRectFilled(from, {from.x + size.x + 12.0f * s, from.y + size.y + 6.0f * s},
                     ui::colour(ui::kTheme.panel, 0.85f));
  list.AddText(fonts.small, fonts.small->FontSize, {from.x + 6.0f * s, from.y + 3.0f * s},
               ui::colour(ui::kTheme.ivory), text);
}

void FlightScreen::draw_panel(Context& context, const Layout& at) {
  panel::draw_probe_scale(view::probe_scale_view(seen_.now), context.fonts(), at.scale_from, at.scale_to);
  panel::draw_panel(view::panel_view(seen_.now, order_.config.type), context.fonts(), at.panel_from,
                    at.panel_to);
  view::coach_view(seen_.now, order_.config.card, order_.config.type, speeds_, keys_,
                   {order_.config.by_hand, order_.guide}, coach_);
  if (page_ != Page::none) {
    pressed_ = {};
    return;
  }
  ImGui::SetNextWindowPos(at.coach_from);
  ImGui::SetNextWindowSize({at.coach_to.x - at.coach_from.x, at.coach_to.y - at.coach_from.y});
  ImGui::Begin("coach", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoNav);
  pressed_ = desk::draw_coach(coach_, context.registry, context.fonts(), at.coach_from, at.coach_to);
  ImGui::End();
}

void FlightScreen::draw_page(Context& context, const Layout& at) {
  Answer answer = Answer::none;
  switch (page_) {
    case Page::none:
      return;
    case Page::stall_checks:
      answer = draw_stall_checks(order_.config.card, context.registry, context.fonts(), at.scale_from,
                                 context.size());
      stall_checked_ = stall_checked_ || answer == Answer::yes;
      break;
    case Page::keys:
      answer = draw_key_page(help_, context.registry, context.fonts(), at.scale_from, context.size());
      break;
    case Page::leave:
      answer = draw_leave_page(context.registry, context.fonts(), at.coach_from, context.size());
      if (answer == Answer::yes) {
        drive_->finish();
        drive_->look(seen_);
        seen_.over = true;
      }
      break;
  }
  if (answer != Answer::none) page_ = Page::none;
}

void FlightScreen::sound(Context& context, double dt_s) {
  const Snapshot& now = seen_.now;
  const input::Settings& settings = context.hands.settings();
  for (; events_seen_ < now.events; ++events_seen_)
    if (now.last_event.kind == "break" || now.last_event.kind == "unintended stall" ||
        now.last_event.kind == "wing drop") {
      ++heard_.breaks;
      events_seen_ = now.events;
      break;
    }
  heard_.rpm = now.propeller_radps * 60.0 / (2.0 * math::kPi);
  heard_.power_share = now.power_share;
  heard_.airspeed_mps = now.airspeed_mps;
  heard_.slip_balls = now.needles.slip_balls;
  heard_.buffet_g = now.buffet_g;
  heard_.horn = now.horn;
  heard_.tone = now.tone;
  heard_.silent = seen_.paused;
  if (now.marks.recording && !was_recording_) ++heard_.records;
  was_recording_ = now.marks.recording;
  heard_.volume = settings.mute ? 0.0 : settings.volume;
  caption_clock_ = view::advance(caption_clock_, heard_, seen_.paused ? 0.0 : dt_s);
  if (context.speaker != nullptr) context.speaker->set(heard_);
}

FlightScreen::Result FlightScreen::frame(Context& context, double dt_s) {
  context.hands.give_keys(page_open() ? input::KeysFor::pages : input::KeysFor::flying);
  take_actions(context, dt_s);
  sound(context, dt_s);
  const Layout at = layout(context);
  draw_world(context, at, dt_s);
  draw_status(context, at);
  draw_panel(context, at);
  draw_page(context, at);
  // A page opens in the next frame: the key that called for it is not for the page.
  if (opening_ != Page::none) page_ = opening_;
  if (opening_ == Page::keys) help_ = input::key_help(context.hands.settings().keys);
  opening_ = Page::none;
  hold_still();
  return seen_.over ? Result::over : Result::flying;
}

}  // namespace stallwright::app
