#include "aircraft/toml_reader.hpp"

#include <toml++/toml.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <utility>

namespace stallwright {

struct TomlState {
  std::string file;
  toml::table root;
  std::vector<KnownField> known;
  std::map<std::string, std::vector<std::string>>
      known_keys;  // table path without positions -> keys asked there

  [[noreturn]] void fail(std::size_t line, const std::string& message) const;
};

namespace {

constexpr std::uintmax_t kLargestFileBytes = 1'000'000;
constexpr std::size_t kLongestQuote = 40;

// Anything that would break the line, or ring the terminal's bell, is shown as a question mark.
std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](unsigned char c) { return c < 32 || c == 127; }, '?');
  return text;
}

std::string quoted(std::string text) {
  if (text.size() > kLongestQuote) text = text.substr(0, kLongestQuote) + "...";
  return '"' + one_line(std::move(text)) + '"';
}

const toml::node& as_node(const void* pointer) { return *static_cast<const toml::node*>(pointer); }

std::size_t line_of(const toml::node& node) { return std::max<std::size_t>(node.source().begin.line, 1); }

std::string describe(const toml::node& node) {
  if (const auto* text = node.as_string()) return quoted(text->get());
  if (const auto* integer = node.as_integer()) return std::to_string(integer->get());
  if (const auto* real = node.as_floating_point()) return number_text(real->get());
  if (const auto* flag = node.as_boolean()) return flag->get() ? "true" : "false";
  if (const auto* list = node.as_array()) return "a list of " + std::to_string(list->size());
  if (node.is_table()) return "a table";
  return "a date or time";
}

std::string without_positions(const std::string& path) {
  std::string out;
  bool inside = false;
  for (const char c : path) {
    if (c == ']') inside = false;
    if (!inside) out += c;
    if (c == '[') inside = true;
  }
  return out;
}

std::string range_text(const NumberField& field) {
  return number_text(field.low) + " to " + number_text(field.high);
}

std::string expectation(const NumberField& field) {
  const std::string unit_name = field.unit.name;
  return "a number from " + range_text(field) + (unit_name.empty() ? "" : " " + unit_name);
}

std::string join(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

std::string read_text_file(const std::filesystem::path& file) {
  const auto refuse = [&](const std::string& expected, const std::string& found) -> void {
    throw InputError(one_line(file.string()) + ": expected " + expected + ", found " + found);
  };
  std::error_code error;
  const auto status = std::filesystem::status(file, error);
  if (!std::filesystem::exists(status)) refuse("a TOML file", "no such file");
  if (std::filesystem::is_directory(status)) refuse("a TOML file", "a folder");
  if (!std::filesystem::is_regular_file(status)) refuse("a TOML file", "something that is not a plain file");
  const auto size = std::filesystem::file_size(file, error);
  if (error) refuse("a TOML file", "a file whose size cannot be read");
  if (size > kLargestFileBytes) refuse("a TOML file of at most 1 MB", std::to_string(size) + " bytes");
  std::ifstream stream(file, std::ios::binary);
  std::ostringstream text;
  if (!stream || (size > 0 && !(text << stream.rdbuf())))
    refuse("a readable TOML file", "a file that cannot be read");
  if (text.str().find('\0') != std::string::npos) refuse("a TOML file", "binary data (a zero byte)");
  return text.str();
}

toml::table parse(const std::string& text, const std::string& file) {
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& error) {
    throw InputError(file + ":" + std::to_string(std::max<std::size_t>(error.source().begin.line, 1)) +
                     ": not TOML: " + one_line(std::string(error.description())));
  }
}

double checked_number(const TomlState& state, const toml::node& node, const std::string& path,
                      const NumberField& field, const char* suffix = "") {
  const auto value = node.is_number() ? node.value<double>() : std::nullopt;
  if (!value || !std::isfinite(*value) || *value < field.low || *value > field.high) {
    state.fail(line_of(node),
               path + ": expected " + expectation(field) + suffix + ", found " + describe(node));
  }
  return *value * field.unit.si;
}

void reject_unknown(const TomlState& state, const toml::table& table, const std::string& path) {
  const auto asked = state.known_keys.find(without_positions(path));
  const std::vector<std::string> known =
      asked == state.known_keys.end() ? std::vector<std::string>{} : asked->second;
  for (const auto& [key, node] : table) {
    const std::string name(key.str());
    const std::string full = path.empty() ? name : path + "." + name;
    if (std::find(known.begin(), known.end(), name) == known.end()) {
      const std::string nearest = nearest_word(name, known);
      state.fail(std::max<std::size_t>(key.source().begin.line, 1),
                 full + ": unknown key, expected " +
                     (nearest.empty() ? "one of " + join(known) : "perhaps " + nearest));
    }
    if (const auto* child = node.as_table()) reject_unknown(state, *child, full);
    if (const auto* list = node.as_array()) {
      for (std::size_t i = 0; i < list->size(); ++i) {
        const auto* child = (*list)[i].as_table();
        if (child) reject_unknown(state, *child, full + "[" + std::to_string(i + 1) + "]");
      }
    }
  }
}

}  // namespace

void TomlState::fail(std::size_t line, const std::string& message) const {
  throw InputError(one_line(file + ":" + std::to_string(line) + ": " + message));
}

std::string number_text(double value) {
  char buffer[32];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

std::string nearest_word(const std::string& word, const std::vector<std::string>& candidates) {
  std::string best;
  std::size_t best_distance = word.size() / 3 + 2;  // farther than this is another word, not a slip
  for (const auto& candidate : candidates) {
    std::vector<std::size_t> row(candidate.size() + 1);  // Levenshtein distance, one row at a time
    for (std::size_t j = 0; j < row.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= word.size(); ++i) {
      std::size_t diagonal = std::exchange(row[0], i);
      for (std::size_t j = 1; j < row.size(); ++j) {
        const std::size_t change = diagonal + (word[i - 1] == candidate[j - 1] ? 0 : 1);
        diagonal = std::exchange(row[j], std::min({change, row[j] + 1, row[j - 1] + 1}));
      }
    }
    if (row.back() < best_distance) {
      best_distance = row.back();
      best = candidate;
    }
  }
  return best;
}

TomlTable::TomlTable(std::shared_ptr<TomlState> state, const void* node, std::string path)
    : state_(std::move(state)), node_(node), path_(std::move(path)) {}

std::string TomlTable::path_to(const std::string& key) const {
  return path_.empty() ? key : path_ + "." + key;
}

const void* TomlTable::find(const char* key, const std::string& unit_name, const std::string& range) const {
  auto& keys = state_->known_keys[without_positions(path_)];
  if (std::find(keys.begin(), keys.end(), key) == keys.end()) {
    keys.emplace_back(key);
    state_->known.push_back({without_positions(path_to(key)), unit_name, range});
  }
  return as_node(node_).as_table()->get(key);
}

const void* TomlTable::require(const char* key, const std::string& unit_name, const std::string& range,
                               const std::string& expected) const {
  if (const void* node = find(key, unit_name, range)) return node;
  // A misspelt key is both missing and unknown; the line with the slip on it is the one to show.
  const auto& known = state_->known_keys[without_positions(path_)];
  for (const auto& [other, node] : *as_node(node_).as_table()) {
    const std::string name(other.str());
    const bool unknown = std::find(known.begin(), known.end(), name) == known.end();
    if (unknown && name.size() + 2 > std::string(key).size() && nearest_word(name, {key}) == key &&
        name.substr(0, 2) == std::string(key).substr(0, 2) && name.size() < std::string(key).size() + 3) {
      state_->fail(std::max<std::size_t>(other.source().begin.line, 1),
                   path_to(name) + ": unknown key, expected perhaps " + key);
    }
  }
  state_->fail(line_of(as_node(node_)), path_to(key) + ": expected " + expected + ", found nothing");
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
  const std::string count = number_text(double(shape.least)) + " to " + number_text(double(shape.most));
  const std::string unit_name = field.unit.name;
  const std::string expected = "a list of " + count + " numbers from " + range_text(field) +
                               (unit_name.empty() ? "" : " " + unit_name) + (shape.rising ? ", rising" : "");
  const toml::node& node = as_node(require(field.key, unit_name, range_text(field), expected));
  const auto* list = node.as_array();
  if (!list || list->size() < shape.least || list->size() > shape.most) {
    state_->fail(line_of(node), path_to(field.key) + ": expected " + expected + ", found " + describe(node));
  }
  std::vector<double> out;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const toml::node& item = (*list)[i];
    const std::string item_path = path_to(field.key) + "[" + std::to_string(i + 1) + "]";
    out.push_back(checked_number(*state_, item, item_path, field));
    if (shape.rising && i > 0 && !(out[i] > out[i - 1])) {
      state_->fail(line_of(item), item_path + ": expected a number above " + describe((*list)[i - 1]) +
                                      " (the list must rise), found " + describe(item));
    }
  }
  return out;
}

bool TomlTable::flag(const char* key) const {
  const toml::node& node = as_node(require(key, "", "true or false", "true or false"));
  if (const auto* value = node.as_boolean()) return value->get();
  state_->fail(line_of(node), path_to(key) + ": expected true or false, found " + describe(node));
}

bool TomlTable::flag_or(const char* key, bool fallback) const {
  return find(key, "", "true or false") ? flag(key) : fallback;
}

std::string TomlTable::text(const char* key, std::size_t longest) const {
  const std::string expected = "text of 1 to " + std::to_string(longest) + " characters on one line";
  const toml::node& node = as_node(require(key, "", "text", expected));
  const auto* value = node.as_string();
  if (!value || value->get().empty() || value->get().size() > longest ||
      one_line(value->get()) != value->get()) {
    state_->fail(line_of(node), path_to(key) + ": expected " + expected + ", found " + describe(node));
  }
  return value->get();
}

std::string TomlTable::text_or(const char* key, std::size_t longest, const std::string& fallback) const {
  return find(key, "", "text") ? text(key, longest) : fallback;
}

std::string TomlTable::choice(const char* key, const std::vector<std::string>& allowed) const {
  const std::string expected = (allowed.size() > 1 ? "one of " : "") + join(allowed);
  const toml::node& node = as_node(require(key, "", join(allowed), expected));
  const auto* value = node.as_string();
  if (value && std::find(allowed.begin(), allowed.end(), value->get()) != allowed.end()) return value->get();
  state_->fail(line_of(node), path_to(key) + ": expected " + expected + ", found " + describe(node));
}

TomlTable TomlTable::table(const char* key) const {
  const toml::node& node = as_node(require(key, "", "table", "a table"));
  if (!node.is_table()) {
    state_->fail(line_of(node), path_to(key) + ": expected a table, found " + describe(node));
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
    state_->fail(line_of(node), path_to(key) + ": expected " + expected + ", found " + describe(node));
  }
  std::vector<TomlTable> out;
  for (std::size_t i = 0; i < list->size(); ++i) {
    out.push_back(TomlTable(state_, &(*list)[i], path_to(key) + "[" + std::to_string(i + 1) + "]"));
  }
  return out;
}

void TomlTable::reject(const char* key, const std::string& expected, const std::string& found) const {
  const toml::node* node = as_node(node_).as_table()->get(key);
  state_->fail(line_of(node ? *node : as_node(node_)),
               path_to(key) + ": expected " + expected + ", found " + found);
}

TomlDocument::TomlDocument(const std::filesystem::path& file) : state_(std::make_shared<TomlState>()) {
  state_->file = one_line(file.string());
  state_->root = parse(read_text_file(file), state_->file);
}

TomlTable TomlDocument::root() const { return {state_, static_cast<const toml::node*>(&state_->root), ""}; }

void TomlDocument::reject_unknown_keys() const { reject_unknown(*state_, state_->root, ""); }

std::vector<KnownField> TomlDocument::known_fields() const { return state_->known; }

}  // namespace stallwright
