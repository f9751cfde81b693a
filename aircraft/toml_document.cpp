#include <algorithm>
#include <charconv>
#include <fstream>
#include <sstream>
#include <utility>

#include "aircraft/toml_state.hpp"

namespace stallwright {

using namespace toml_text;

namespace {

constexpr std::uintmax_t kLargestFileBytes = 1'000'000;
constexpr std::size_t kLongestQuote = 40;

std::string read_text_file(const std::filesystem::path& file) {
  const auto refuse = [&](const std::string& expected, const std::string& found) {
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
  if (!stream || (size > 0 && !(text << stream.rdbuf()))) refuse("a TOML file", "a file that cannot be read");
  if (text.str().find('\0') != std::string::npos) refuse("a TOML file", "binary data (a zero byte)");
  return text.str();
}

toml::table parse(const std::string& text, const std::string& file) {
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& error) {
    throw InputError(file + ":" + std::to_string(std::max(error.source().begin.line, 1u)) +
                     ": not TOML: " + one_line(std::string(error.description())));
  }
}

void reject_unknown(const TomlState& state, const toml::table& table, const std::string& path) {
  const auto asked = state.known_keys.find(without_positions(path));
  const auto known = asked == state.known_keys.end() ? std::vector<std::string>{} : asked->second;
  for (const auto& [key, node] : table) {
    const std::string name(key.str());
    std::string full = path;
    if (!full.empty()) full += '.';
    full += name;
    if (std::find(known.begin(), known.end(), name) == known.end()) {
      const std::string nearest = nearest_word(name, known);
      state.fail(key.source(), full + ": unknown key, expected " +
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

void TomlState::fail(const toml::source_region& where, const std::string& message) const {
  throw InputError(one_line(file + ":" + std::to_string(std::max(where.begin.line, 1u)) + ": " + message));
}

namespace toml_text {

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](unsigned char c) { return c < 32 || c == 127; }, '?');
  return text;
}

std::string describe(const toml::node& node) {
  if (const auto* text = node.as_string()) {
    const std::string& all = text->get();
    if (all.size() <= kLongestQuote) return '"' + one_line(all) + '"';
    std::size_t end = kLongestQuote;
    while (end > 0 && (static_cast<unsigned char>(all[end]) & 0xC0) == 0x80)
      --end;  // not inside a UTF-8 letter
    return '"' + one_line(all.substr(0, end)) + "...\"";
  }
  if (const auto* integer = node.as_integer()) return std::to_string(integer->get());
  if (const auto* real = node.as_floating_point()) return number_text(real->get());
  if (const auto* flag = node.as_boolean()) return flag->get() ? "true" : "false";
  if (const auto* list = node.as_array()) return "a list of " + std::to_string(list->size());
  return node.is_table() ? "a table" : "a date or time";
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

std::string join(const std::vector<std::string>& words) {
  std::string out;
  for (const auto& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

}  // namespace toml_text

std::string number_text(double value) {
  char buffer[32];
  return {buffer, std::to_chars(buffer, buffer + sizeof buffer, value).ptr};
}

std::string joined_words(const std::vector<std::string>& words) { return join(words); }

std::string nearest_word(const std::string& word, const std::vector<std::string>& candidates) {
  std::string best;
  std::size_t best_distance = word.size() / 4 + 2;  // farther than this is another word, not a slip
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

TomlDocument::TomlDocument(const std::filesystem::path& file) : state_(std::make_shared<TomlState>()) {
  state_->file = one_line(file.string());
  state_->root = parse(read_text_file(file), state_->file);
}

TomlTable TomlDocument::root() const { return {state_, static_cast<const toml::node*>(&state_->root), ""}; }

void TomlDocument::reject_unknown_keys() const { reject_unknown(*state_, state_->root, ""); }

std::vector<KnownField> TomlDocument::known_fields() const { return state_->known; }

}  // namespace stallwright
