#include "aircraft/toml_reader.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "aircraft/toml_state.hpp"

namespace stallwright {
namespace {

using namespace toml_text;

const toml::node& as_node(const void* pointer) { return *static_cast<const toml::node*>(pointer); }

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string range_text(const NumberField& field) {
  return number_text(field.low) + " to " + number_text(field.high);
}

std::string expectation(const NumberField& field) {
  const std::string unit_name = field.unit.name;
  return "a number from " + range_text(field) + (unit_name.empty() ? "" : " " + unit_name);
}

double checked_number(const TomlState& state, const toml::node& node, const std::string& path,
                      const NumberField& field, const char* suffix = "") {
  const auto value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value) || *value < field.low || *value > field.high) {
    state.fail(node.source(),
               path + ": expected " + expectation(field) + suffix + ", found " + describe(node));
  }
  return *value * field.unit.si;
}

std::string text_expected(std::size_t longest) {
  return "text of 1 to " + std::to_string(longest) + " characters on one line";
}

std::string checked_text(const TomlState& state, const toml::node& node, const std::string& path,
                         std::size_t longest) {
  const auto* value = node.as_string();
  if (!value || value->get().empty() || value->get().size() > longest ||
      one_line(value->get()) != value->get()) {
    state.fail(node.source(), path + ": expected " + text_expected(longest) + ", found " + describe(node));
  }
  return value->get();
}

}  // namespace

TomlTable::TomlTable(std::shared_ptr<TomlState> state, const void* node, std::string path)
    : state_(std::move(state)), node_(node), path_(std::move(path)) {}

std::string TomlTable::path_to(const std::string& key) const {
  return path_.empty() ? key : path_ + "." + key;
}

void TomlTable::announce(const char* key) const {
  auto& keys = state_->known_keys[without_positions(path_)];
  if (!contains(keys, key)) keys.emplace_back(key);
}

const void* TomlTable::find(const char* key, const std::string& unit_name, const std::string& range) const {
  announce(key);
  const std::string path = without_positions(path_to(key));
  const auto same = [&](const KnownField& field) { return field.path == path; };
  if (std::none_of(state_->known.begin(), state_->known.end(), same))
    state_->known.push_back({path, unit_name, range});
  return as_node(node_).as_table()->get(key);
}

const void* TomlTable::require(const char* key, const std::string& unit_name, const std::string& range,
                               const std::string& expected) const {
  if (const void* node = find(key, unit_name, range)) return node;
  // A misspelt key is both missing and unknown; the line with the slip on it is the one to show.
  const auto& known = state_->known_keys[without_positions(path_)];
  for (const auto& [other, node] : *as_node(node_).as_table()) {
    const std::string name(other.str());
    if (!contains(known, name) && nearest_word(name, {key}) == key) {
      state_->fail(other.source(), path_to(name) + ": unknown key, expected perhaps " + key);
    }
  }
  state_->fail(as_node(node_).source(), path_to(key) + ": expected " + expected + ", found nothing");
}

bool TomlTable::has(const char* key) const { return as_node(node_).as_table()->contains(key); }

double TomlTable::number(const NumberField& field) const {
  const void* node = require(field.key, field.unit.name, range_text(field), expectation(field));
  return checked_number(*state_, as_node(node), path_to(field.key), field);
}

double TomlTable::number_or(const NumberField& field, double fallback_si) const {
  const void* node = find(field.key, field.unit.name, range_text(field));
  return node ? checked_number(*state_, as_node(node), path_to(field.key), field) : fallback_si;
}

std::vector<double> TomlTable::numbers(const NumberField& field, ListShape shape) const {
  const std::string count =
      std::to_string(shape.least) + (shape.most > shape.least ? " to " + std::to_string(shape.most) : "");
  const std::string unit_name = field.unit.name;
  const std::string expected = "a list of " + count + " numbers from " + range_text(field) +
                               (unit_name.empty() ? "" : " " + unit_name) + (shape.rising ? ", rising" : "");
  const toml::node& node = as_node(require(field.key, unit_name, range_text(field), expected));
  const auto* list = node.as_array();
  if (!list || list->size() < shape.least || list->size() > shape.most) {
    state_->fail(node.source(), path_to(field.key) + ": expected " + expected + ", found " + describe(node));
  }
  std::vector<double> out;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const toml::node& item = (*list)[i];
    const std::string item_path = path_to(field.key) + "[" + std::to_string(i + 1) + "]";
    out.push_back(checked_number(*state_, item, item_path, field));
    if (shape.rising && i > 0 && !(out[i] > out[i - 1])) {
      state_->fail(item.source(), item_path + ": expected a number above " + describe((*list)[i - 1]) +
                                      " (the list must rise), found " + describe(item));
    }
  }
  return out;
}

bool TomlTable::flag(const char* key) const {
  const toml::node& node = as_node(require(key, "", "true or false", "true or false"));
  if (const auto* value = node.as_boolean()) return value->get();
  state_->fail(node.source(), path_to(key) + ": expected true or false, found " + describe(node));
}

bool TomlTable::flag_or(const char* key, bool fallback) const {
  return find(key, "", "true or false") ? flag(key) : fallback;
}

std::string TomlTable::text(const char* key, std::size_t longest) const {
  return checked_text(*state_, as_node(require(key, "", "text", text_expected(longest))), path_to(key),
                      longest);
}

std::vector<std::string> TomlTable::texts(const char* key, std::size_t longest, ListShape shape) const {
  const std::string expected =
      "a list of " + std::to_string(shape.least) + " to " + std::to_string(shape.most) + " texts";
  const toml::node& node = as_node(require(key, "", "list of texts", expected));
  const auto* list = node.as_array();
  if (!list || list->size() < shape.least || list->size() > shape.most)
    state_->fail(node.source(), path_to(key) + ": expected " + expected + ", found " + describe(node));
  std::vector<std::string> out;
  for (std::size_t i = 0; i < list->size(); ++i)
    out.push_back(
        checked_text(*state_, (*list)[i], path_to(key) + "[" + std::to_string(i + 1) + "]", longest));
  return out;
}

std::string TomlTable::text_or(const char* key, std::size_t longest, const std::string& fallback) const {
  return find(key, "", "text") ? text(key, longest) : fallback;
}

std::string TomlTable::choice(const char* key, const std::vector<std::string>& allowed) const {
  const std::string expected = (allowed.size() > 1 ? "one of " : "") + join(allowed);
  const toml::node& node = as_node(require(key, "", join(allowed), expected));
  const auto* value = node.as_string();
  if (value && contains(allowed, value->get())) return value->get();
  state_->fail(node.source(), path_to(key) + ": expected " + expected + ", found " + describe(node));
}

TomlTable TomlTable::table(const char* key) const {
  const toml::node& node = as_node(require(key, "", "table", "a table"));
  if (!node.is_table()) {
    state_->fail(node.source(), path_to(key) + ": expected a table, found " + describe(node));
  }
  return {state_, &node, path_to(key)};
}

std::vector<TomlTable> TomlTable::tables(const char* key, std::size_t least, std::size_t most) const {
  const std::string expected = std::to_string(least) + " to " + std::to_string(most) + " tables [[" +
                               without_positions(path_to(key)) + "]]";
  const void* found = least == 0 ? find(key, "", "tables") : require(key, "", "tables", expected);
  if (!found) return {};
  const toml::node& node = as_node(found);
  const auto* list = node.as_array();
  const bool all_tables =
      list && std::all_of(list->begin(), list->end(), [](const auto& n) { return n.is_table(); });
  if (!all_tables || list->size() < least || list->size() > most) {
    state_->fail(node.source(), path_to(key) + ": expected " + expected + ", found " + describe(node));
  }
  std::vector<TomlTable> out;
  for (std::size_t i = 0; i < list->size(); ++i) {
    out.push_back(TomlTable(state_, &(*list)[i], path_to(key) + "[" + std::to_string(i + 1) + "]"));
  }
  return out;
}

void TomlTable::reject(const char* key, const std::string& expected, const std::string& found) const {
  const toml::node* value = as_node(node_).as_table()->get(key);
  const toml::node& at = value ? *value : as_node(node_);
  state_->fail(at.source(), path_to(key) + ": expected " + expected + ", found " + found);
}

}  // namespace stallwright
