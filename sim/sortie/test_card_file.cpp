#include "sim/sortie/test_card_file.hpp"

#include <algorithm>
#include <map>

#include "sim/sortie/card_fields.hpp"
#include "sim/sortie/test_point_reader.hpp"

namespace stallwright {
namespace {

using namespace card_fields;

TestCard read_head(const TomlTable& table) {
  TestCard card;
  for (const auto& field : kCardFields) table.announce(field.in_file.key);
  for (const char* key : {"name", "summary", "clearing_turns", "purpose"}) table.announce(key);
  card.name = table.text("name", 60);
  card.summary = table.text("summary", 400);
  read_given(table, kCardFields, card);
  if (table.has("purpose")) card.verifies = table.choice("purpose", {"teach", "verify"}) == "verify";
  if (table.has("tone_band_kt") && !card.verifies)
    table.reject("tone_band_kt", "no such key, since only purpose = \"verify\" listens for a tone", "it");
  card.clearing_turns = table.flag_or("clearing_turns", card.clearing_turns);
  const double highest_ft = card.working_height_ft - kLeastHeightAboveFloor_ft;
  if (card.floor_ft > highest_ft) {
    table.reject("floor_ft",
                 "at most " + number_text(highest_ft) + " ft, " + number_text(kLeastHeightAboveFloor_ft) +
                     " ft below the working height",
                 number_text(card.floor_ft));
  }
  return card;
}

// Place of a name in the order of falling speed; a card's own names may stand anywhere.
std::size_t place_of(const std::string& name) {
  constexpr std::array kOrder{"fast reference", "approach", "warning", "stall"};
  return static_cast<std::size_t>(std::find(kOrder.begin(), kOrder.end(), name) - kOrder.begin());
}

void check_sets(const TomlTable& root, const std::vector<TomlTable>& tables, const TestCard& card) {
  std::map<std::size_t, std::vector<std::size_t>> sets;  // by flap setting: indices of the points before
  std::map<std::size_t, int> set_points;
  for (std::size_t i = 0; i < card.points.size(); ++i) {
    const TestPoint& point = card.points[i];
    for (const std::size_t j : sets[point.flap_setting]) {
      const TestPoint& before = card.points[j];
      if (before.name == point.name) {
        tables[i].reject(
            "name",
            "a name that no other point of flap setting " + std::to_string(point.flap_setting) + " has",
            "\"" + point.name + "\" as in point[" + std::to_string(j + 1) + "]");
      }
      if (place_of(point.name) < place_of(before.name) && place_of(before.name) < 4) {
        tables[i].reject("name", "fast reference, approach, warning, stall in this order",
                         "\"" + point.name + "\" after \"" + before.name + "\"");
      }
    }
    sets[point.flap_setting].push_back(i);
    set_points[point.flap_setting] += point.target != TargetKind::slow_through;
  }
  if (card.verifies) {
    for (std::size_t i = 0; i < card.points.size(); ++i)
      if (card.points[i].is_stall())
        tables[i].reject("slow_to_break_ktps", "no stall on a card that verifies", "one");
    return;
  }
  for (const auto& [setting, count] : set_points) {
    if (count >= 3 && count <= 8) continue;
    const std::string at = " at flap setting " + std::to_string(setting);
    root.reject("point", "three to eight set points" + at + " (slow_through_ktps makes none)",
                std::to_string(count));
  }
}

}  // namespace

TestCard load_test_card(const std::filesystem::path& file, std::vector<KnownField>& known) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  for (const char* key : {"format", "card", "point"}) root.announce(key);
  root.choice("format", {"stallwright-card-1"});
  TestCard card = read_head(root.table("card"));
  card.key = file.stem().string();
  const auto tables = root.tables("point", 1, 40);
  for (const auto& table : tables) announce_point_keys(table);
  for (const auto& table : tables) card.points.push_back(read_test_point(document, table));
  document.reject_unknown_keys();
  check_sets(root, tables, card);
  known = document.known_fields();
  return card;
}

TestCard load_test_card(const std::filesystem::path& file) {
  std::vector<KnownField> known;
  return load_test_card(file, known);
}

}  // namespace stallwright
