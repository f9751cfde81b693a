#include "render/input/action.hpp"

#include <algorithm>
#include <array>

namespace stallwright::input {
namespace {

struct Row {
  Action action;
  const char* name;
  const char* group;
  bool in_pages;
};

constexpr std::array<Row, kActions> kRows = {{
    {Action::stick_back, "stick back", "fly", false},
    {Action::stick_forward, "stick forward", "fly", false},
    {Action::stick_left, "stick left", "fly", false},
    {Action::stick_right, "stick right", "fly", false},
    {Action::pedal_left, "left pedal", "fly", false},
    {Action::pedal_right, "right pedal", "fly", false},
    {Action::more_power, "more power", "fly", false},
    {Action::less_power, "less power", "fly", false},
    {Action::power_idle, "power idle", "fly", false},
    {Action::power_full, "power full", "fly", false},
    {Action::trim_nose_up, "trim nose up", "fly", false},
    {Action::trim_nose_down, "trim nose down", "fly", false},
    {Action::trim_to_stick, "trim to where the stick is", "fly", false},
    {Action::flaps_down, "flaps down", "fly", false},
    {Action::flaps_up, "flaps up", "fly", false},
    {Action::mouse_stick, "stick by mouse on or off", "fly", false},
    {Action::look_left, "look left", "look", false},
    {Action::look_right, "look right", "look", false},
    {Action::look_ahead, "look ahead", "look", false},
    {Action::look_over_nose, "look over the nose", "look", false},
    {Action::record, "record", "card", false},
    {Action::record_anyway, "record anyway", "card", false},
    {Action::area_clear, "area clear", "card", false},
    {Action::knock_it_off, "knock it off", "card", false},
    {Action::pause, "pause", "program", true},
    {Action::faster, "time faster", "program", false},
    {Action::slower, "time slower", "program", false},
    {Action::louder, "louder", "program", true},
    {Action::quieter, "quieter", "program", true},
    {Action::mute, "mute", "program", true},
    {Action::help, "show all keys", "program", true},
    {Action::hands, "set up hands", "program", true},
    {Action::leave, "leave", "program", true},
}};

const Row& row(Action action) {
  return *std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) { return r.action == action; });
}

constexpr bool has_every_action_once() {
  std::array<int, kActions> seen{};
  for (const Row& r : kRows) ++seen[place_of(r.action)];
  return std::all_of(seen.begin(), seen.end(), [](int n) { return n == 1; });
}
static_assert(has_every_action_once());

std::vector<Action> in_order() {
  std::vector<Action> out;
  for (const Row& r : kRows) out.push_back(r.action);
  return out;
}

const std::vector<Action> kAll = in_order();

}  // namespace

bool acts_in_pages(Action action) { return row(action).in_pages; }
const std::vector<Action>& all_actions() { return kAll; }
std::string action_name(Action action) { return row(action).name; }
const char* action_group(Action action) { return row(action).group; }

}  // namespace stallwright::input
