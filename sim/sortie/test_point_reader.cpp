#include "sim/sortie/test_point_reader.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/aircraft_type.hpp"
#include "sim/sortie/card_fields.hpp"

namespace stallwright {
namespace {

using namespace card_fields;

int whole_number(const TomlTable& table, const NumberField& field, double value) {
  if (value != std::floor(value)) table.reject(field.key, "a whole number", number_text(value));
  return static_cast<int>(value);
}

// A key that would have no effect is a misunderstanding, and the pilot should hear of it on the ground.
void refuse_useless(const TomlTable& table, const char* key, bool useful, const char* only_for) {
  if (table.has(key) && !useful) table.reject(key, std::string("no such key, since ") + only_for, "it");
}

void read_power(const TomlTable& table, TestPoint& point) {
  point.power = power_named(table.choice("power", {"level", "descent", "idle"}));
  point.power_reason = table.text_or("power_reason", 200, "");
  point.descent_fpm = table.number_or(kDescent, 0.0);
  const bool descends = point.power == PowerRule::descent;
  refuse_useless(table, "descent_fpm", descends, "only power = \"descent\" holds a rate of descent");
  if (descends && point.descent_fpm == 0.0)
    table.reject("descent_fpm", "a rate of descent in ft/min with power = \"descent\"", "nothing");
}

std::string target_keys() {
  std::string keys;
  for (const auto& field : kTargetFields) keys += (keys.empty() ? "" : ", ") + std::string(field.in_file.key);
  return keys;
}

void read_target(const TomlTable& table, TestPoint& point) {
  const char* given = nullptr;
  for (const auto& field : kTargetFields) {
    const double value = table.number_or(field.in_file, kUnset);
    if (std::isnan(value)) continue;
    if (given) {
      table.reject(field.in_file.key, "only one of " + target_keys(), std::string("it beside ") + given);
    }
    given = field.in_file.key;
    point.target = field.kind;
    (point.is_steady() ? point.target_value : point.entry_rate_ktps) = value;
  }
  point.from_above_stall_kt = table.number_or(kFromAboveStall, kUnset);
  point.to_above_stall_kt = table.number_or(kToAboveStall, kUnset);
  point.turn_bank_deg = table.number_or(kTurnBank, 0.0);
  if (!given) table.reject("target", "one of " + target_keys(), "none of them");
}

void check_slow_target(const TomlTable& table, const TestPoint& point) {
  const bool through = point.target == TargetKind::slow_through;
  for (const auto& field : {kFromAboveStall, kToAboveStall, kTurnBank}) {
    refuse_useless(table, field.key, through, "only slow_through_ktps runs from one speed to another");
    if (through && field.key != kTurnBank.key && !table.has(field.key))
      table.number(field);  // says what is missing
  }
  if (through && point.to_above_stall_kt >= point.from_above_stall_kt) {
    table.reject("to_above_stall_kt",
                 "a number below from_above_stall_kt, " + number_text(point.from_above_stall_kt) + " kt",
                 number_text(point.to_above_stall_kt));
  }
  refuse_useless(table, "record_s", point.is_steady(), "a run that slows down is recorded from end to end");
  // 14 CFR 23.201(b), amendment 62, lets power-on stalls be flown; but a set point taught with power washing
  // the wing is another one than the pilot meets at idle, so a card says why it wants that.
  if (point.is_stall() && point.power != PowerRule::idle && point.power_reason.empty()) {
    table.reject("power", "\"idle\" for a stall, or the reason in power_reason",
                 point.power == PowerRule::level ? "\"level\"" : "\"descent\"");
  }
}

}  // namespace

void announce_point_keys(const TomlTable& table) {
  for (const auto& field : kTargetFields) table.announce(field.in_file.key);
  for (const char* key : {"name", "flap_setting", "power", "power_reason", "descent_fpm", "bands", "settle_s",
                          "record_s", "repeats", "attempts", "timeout_s", "past_limit", "from_above_stall_kt",
                          "to_above_stall_kt", "turn_bank_deg"}) {
    table.announce(key);
  }
  if (!table.has("bands")) return;
  const TomlTable bands = table.table("bands");
  for (const auto& field : kBandFields) bands.announce(field.in_file.key);
}

TestPoint read_test_point(const TomlDocument& document, const TomlTable& table) {
  TestPoint point;
  point.name = table.text("name", 40);
  point.flap_setting =
      static_cast<std::size_t>(whole_number(table, kFlapSetting, table.number(kFlapSetting)));
  read_power(table, point);
  read_given(table, kTimeFields, point);
  point.repeats = whole_number(table, kRepeats, table.number_or(kRepeats, point.repeats));
  point.attempts = whole_number(table, kAttempts, table.number_or(kAttempts, point.attempts));
  if (table.has("past_limit") && table.choice("past_limit", {"record flagged", "give up"}) == "give up")
    point.past_limit = PastLimit::give_up;
  if (table.has("bands")) read_given(table.table("bands"), kBandFields, point.bands);
  // A misspelt target is an unknown key before it is a missing one.
  const bool none = std::none_of(kTargetFields.begin(), kTargetFields.end(),
                                 [&](const auto& field) { return table.has(field.in_file.key); });
  if (none) document.reject_unknown_keys();
  read_target(table, point);
  check_slow_target(table, point);
  if (point.timeout_s <= point.settle_s) {
    table.reject("timeout_s", "a number above settle_s, " + number_text(point.settle_s) + " s",
                 number_text(point.timeout_s));
  }
  if (!point.is_steady() && point.bands.entry_rate_ktps >= point.entry_rate_ktps) {
    const bool given = table.has("bands");
    const TomlTable place = given ? table.table("bands") : table;
    place.reject(given ? "entry_rate_ktps" : "bands.entry_rate_ktps",
                 "a band below the rate itself, " + number_text(point.entry_rate_ktps) + " kt/s",
                 number_text(point.bands.entry_rate_ktps));
  }
  return point;
}

}  // namespace stallwright
