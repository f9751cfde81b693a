#include "render/input/hands.hpp"

#include <SDL.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace stallwright::input {
namespace {

constexpr double kTrimRun_ps = 0.4;      // towards the stick, as a quick hand turns the wheel
constexpr double kTriggerRate_ps = 0.5;  // power by a pad's triggers, fully pressed
constexpr double kMouseRate_ps = 4.0;
constexpr double kVolumeStep = 0.1;
constexpr double kShakeAgain_s = 0.1;  // a device shakes for twice as long

double within_stops(double x) { return std::clamp(x, -1.0, 1.0); }

}  // namespace

Hands::Hands(const Settings& settings) : settings_(settings) { view_.devices = &devices_.infos(); }

void Hands::place(double pitch_trim, double throttle, double pedal_right) {
  pitch_keys_ = roll_keys_ = pedal_keys_ = {};
  trim_ = {within_stops(pitch_trim)};
  trim_running_ = false;
  power_ = {std::clamp(throttle, 0.0, 1.0)};
  feet_ = {pedal_right, pedal_right};
  mouse_ = mouse_target_ = {};
  lever_ = {};
}

void Hands::give_keys(KeysFor use) {
  if (use == keys_for_) return;
  keys_for_ = use;
  actions_.release_keys();
  mouse_target_ = {};
}

void Hands::listen(bool on) {
  if (on && !listening_) {
    actions_.release_keys();
    actions_.release_buttons();
  }
  listening_ = on;
}

void Hands::handle(const SDL_Event& event) {
  devices_.handle(event);
  switch (event.type) {
    case SDL_KEYDOWN:
    case SDL_KEYUP:
      return key(event.key);
    case SDL_MOUSEMOTION:
      return pointer(event.motion);
    case SDL_WINDOWEVENT:
      if (event.window.event == SDL_WINDOWEVENT_SIZE_CHANGED) {
        window_width_ = event.window.data1;
        window_height_ = event.window.data2;
      }
      if (event.window.event == SDL_WINDOWEVENT_FOCUS_LOST) actions_.release_keys();
      // A pointer that has left the window says nothing more: the stick goes back to the trim.
      if (event.window.event == SDL_WINDOWEVENT_FOCUS_LOST || event.window.event == SDL_WINDOWEVENT_LEAVE)
        mouse_target_ = {};
      return;
    default:
      return;
  }
}

void Hands::key(const SDL_KeyboardEvent& event) {
  if (event.type == SDL_KEYUP) return actions_.key_up(event.keysym.scancode);
  if (event.repeat != 0) return;
  const KeyChord chord = key_chord(event.keysym);
  if (!chord.none()) key_ = chord;
  if (listening_ || keys_for_ == KeysFor::typing) return;
  const auto action = action_of(settings_.keys, chord);
  if (!action || (keys_for_ == KeysFor::pages && !acts_in_pages(*action))) return;
  actions_.key_down(event.keysym.scancode, *action);
}

void Hands::pointer(const SDL_MouseMotionEvent& event) {
  if (SDL_Window* window = SDL_GetWindowFromID(event.windowID)) {
    int width = 0, height = 0;
    SDL_GetWindowSize(window, &width, &height);
    window_width_ = width;
    window_height_ = height;
  }
  mouse_target_ = settings_.mouse_stick && keys_for_ == KeysFor::flying
                      ? mouse_stick(event.x, event.y, window_width_, window_height_)
                      : MouseStick{};
}

void Hands::buttons() {
  if (devices_.changes() != device_changes_) {
    // Places in the list have moved; a lever that is back must be moved again before it counts.
    device_changes_ = devices_.changes();
    actions_.release_buttons();
    lever_ = {};
  }
  for (const ButtonEvent& b : devices_.buttons()) {
    if (b.down) view_.button = ButtonSeen{b.device, b.button};
    if (!b.down) actions_.button_up(b.device, b.button);
    if (!b.down || listening_) continue;
    const auto action = action_of_button(settings_, devices_.infos()[b.device], b.button);
    if (action && (keys_for_ == KeysFor::flying || acts_in_pages(*action)))
      actions_.button_down(b.device, b.button, *action);
  }
  devices_.clear_buttons();
}

/// What the hands do for themselves; the rest is handed on.
void Hands::settle_actions() {
  HandsNow& now = view_.now;
  now.flap_steps = 0;
  now.pressed.count = 0;
  const auto volume = [&](double change) {
    settings_.volume = std::clamp(std::round((settings_.volume + change) * 100.0) / 100.0, 0.0, 1.0);
    settings_.mute = false;
  };
  for (const Action action : actions_.pressed()) {
    if (action == Action::flaps_down || action == Action::flaps_up) {
      now.flap_steps += action == Action::flaps_down ? 1 : -1;
      continue;
    }
    now.pressed.actions[now.pressed.count++] = action;
    if (action == Action::power_idle || action == Action::power_full) {
      power_.value = action == Action::power_full ? 1.0 : 0.0;
      lever_ = {};
    }
    if (action == Action::louder) volume(kVolumeStep);
    if (action == Action::quieter) volume(-kVolumeStep);
    if (action == Action::mute) settings_.mute = !settings_.mute;
    if (action == Action::mouse_stick) {
      settings_.mouse_stick = !settings_.mouse_stick;
      mouse_target_ = {};
    }
  }
}

int Hands::direction(Action less, Action more) const {
  return (actions_.holds(more) ? 1 : 0) - (actions_.holds(less) ? 1 : 0);
}

/// Of a stick or pedal axis, and notes what the page shows of it.
double Hands::device_share(Axis axis) {
  AxisSeen& seen = view_.axes[place_of(axis)];
  seen = {assigned(settings_, axis, devices_.infos()), 0, 0.0, 0.0};
  if (!seen.source) return 0.0;
  seen.raw = devices_.raw(seen.source->device, seen.source->axis);
  seen.straight = calibrated(seen.raw, seen.source->shape);
  return shaped(seen.raw, seen.source->shape);
}

double Hands::deflection(Axis axis, const KeyAxis& keys, double by_mouse) {
  return within_stops(device_share(axis) + by_mouse + keys.deflection);
}

/// Not at once: where the pointer lies when it becomes the stick is chance.
void Hands::move_mouse_stick(double dt_s) {
  const double most = kMouseRate_ps * dt_s;
  mouse_.aft += std::clamp(mouse_target_.aft - mouse_.aft, -most, most);
  mouse_.right += std::clamp(mouse_target_.right - mouse_.right, -most, most);
}

void Hands::move_trim(double dt_s) {
  const int way = direction(Action::trim_nose_down, Action::trim_nose_up);
  trim_ = advance(trim_, way, dt_s, kTrimKeys);
  const bool wanted = actions_.holds(Action::trim_to_stick) && way == 0;
  // The place is taken when the key goes down: the stick comes back to the trim while the trim comes to the stick.
  if (wanted && !trim_running_) trim_target_ = view_.now.stick_aft;
  trim_running_ = wanted;
  if (!wanted) return;
  const double most = kTrimRun_ps * dt_s;
  trim_.value += std::clamp(trim_target_ - trim_.value, -most, most);
}

double Hands::trigger_rate() const {
  if (settings_.axes[place_of(Axis::throttle)].device != kAutomatic) return 0.0;
  for (std::size_t k = 0; k < devices_.infos().size(); ++k) {
    if (devices_.infos()[k].kind != DeviceKind::pad) continue;
    const auto pull = [&](int axis) { return with_dead_zone(devices_.raw(k, axis) / 32767.0, 0.05); };
    return pull(SDL_CONTROLLER_AXIS_TRIGGERRIGHT) - pull(SDL_CONTROLLER_AXIS_TRIGGERLEFT);
  }
  return 0.0;
}

void Hands::move_throttle(double dt_s) {
  const double before = power_.value;
  power_ = advance(power_, direction(Action::less_power, Action::more_power), dt_s, kPowerKeys);
  power_.value = std::clamp(power_.value + trigger_rate() * kTriggerRate_ps * dt_s, 0.0, 1.0);
  if (power_.value != before) lever_ = {};
  AxisSeen& seen = view_.axes[place_of(Axis::throttle)];
  seen = {assigned(settings_, Axis::throttle, devices_.infos()), 0, 0.0, 0.0};
  if (!seen.source) return;
  seen.raw = devices_.raw(seen.source->device, seen.source->axis);
  seen.straight = lever(seen.raw, seen.source->shape);
  lever_ = advance(lever_, seen.straight);
  if (lever_.counts) power_.value = seen.straight;
}

double Hands::pedals(double dt_s, const Felt& felt) {
  HandsNow& now = view_.now;
  const double by_hand = deflection(Axis::pedals, pedal_keys_, 0.0);
  const bool no_pedals = !view_.axes[place_of(Axis::pedals)].source;
  now.feet_assisted = settings_.feet_assist && no_pedals;
  if (!now.feet_assisted)
    feet_ = released(feet_, dt_s);
  else if (felt.flying && by_hand == 0.0)  // a pilot's own foot stops them where they are
    feet_ = advance(feet_, felt.slip_g, dt_s);
  return within_stops(by_hand + feet_.pedal_right);
}

void Hands::shake(double dt_s, const Felt& felt) {
  since_shake_s_ += dt_s;
  const double strength = settings_.rumble && felt.flying ? rumble_strength(felt.buffet_g) : 0.0;
  if (strength == 0.0 && !shaking_) return;
  if (strength > 0.0 && since_shake_s_ < kShakeAgain_s) return;
  devices_.rumble(strength);
  shaking_ = strength > 0.0;
  since_shake_s_ = 0.0;
}

/// Raw axes for the page; the list grows only when a device comes.
void Hands::look() {
  view_.raw.resize(devices_.infos().size());
  for (std::size_t d = 0; d < view_.raw.size(); ++d)
    for (std::size_t a = 0; a < HandsView::kRaw; ++a) view_.raw[d][a] = devices_.raw(d, static_cast<int>(a));
}

const HandsNow& Hands::update(double dt_s, const Felt& felt) {
  // What was pressed shows on the page for one look: the events came since the last one.
  view_.key = std::exchange(key_, std::nullopt);
  view_.button.reset();
  buttons();
  settle_actions();
  HandsNow& now = view_.now;
  pitch_keys_ = advance(pitch_keys_, direction(Action::stick_forward, Action::stick_back), dt_s, kPitchKeys);
  roll_keys_ = advance(roll_keys_, direction(Action::stick_left, Action::stick_right), dt_s, kRollKeys);
  pedal_keys_ = advance(pedal_keys_, direction(Action::pedal_left, Action::pedal_right), dt_s, kPedalKeys);
  move_mouse_stick(dt_s);
  move_trim(dt_s);
  move_throttle(dt_s);
  now.pitch_trim = trim_.value;
  now.stick_aft = about_trim(trim_.value, deflection(Axis::pitch, pitch_keys_, mouse_.aft));
  now.stick_right = deflection(Axis::roll, roll_keys_, mouse_.right);
  now.pedal_right = pedals(dt_s, felt);
  now.throttle = power_.value;
  now.held = actions_.held();
  for (std::size_t k = 0; k < kAxes; ++k)
    view_.axes[k].out = std::array{now.stick_aft, now.stick_right, now.pedal_right, now.throttle}[k];
  shake(dt_s, felt);
  look();
  actions_.next_look();
  return now;
}

}  // namespace stallwright::input
