#include "sim/report/who.hpp"

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "sim/reduction/set_points_json.hpp"
#include "sim/reduction/set_points_json_node.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kFormat = "stallwright-who-1";
constexpr std::uintmax_t kLargest = 64u << 10;

bool is_utf8(const std::string& text) {
  try {
    const std::string strictly = nlohmann::json(text).dump();
    return !strictly.empty();
  } catch (const nlohmann::json::type_error&) {
    return false;
  }
}

/// Code points of a text that is known to be UTF-8.
std::u32string code_points(const std::string& text) {
  std::u32string points;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0) == 0x80)
      points.back() = (points.back() << 6) | (byte & 0x3Fu);
    else
      points += byte < 0x80 ? byte : byte < 0xE0 ? byte & 0x1Fu : byte < 0xF0 ? byte & 0x0Fu : byte & 0x07u;
  }
  return points;
}

/// C0, DEL, C1; line and paragraph separators; embeddings, overrides and isolates of direction; what XML
/// forbids.
bool is_control(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c <= 0x9F) || (c >= 0x2028 && c <= 0x202E) ||
         (c >= 0x2066 && c <= 0x2069) || (c & 0xFFFE) == 0xFFFE;
}

void check_text(const std::string& where, const std::string& text) {
  const std::string expected =
      where + ": expected 1 to " + std::to_string(kWhoMostLetters) + " characters, found ";
  if (!is_utf8(text)) throw InputError(expected + "bytes that are not UTF-8");
  const std::u32string points = code_points(text);
  if (points.find_first_not_of(U' ') == std::u32string::npos) throw InputError(expected + "none");
  for (const char32_t c : points)
    if (is_control(c)) throw InputError(expected + "a control character");
  if (points.size() > kWhoMostLetters) throw InputError(expected + std::to_string(points.size()));
}

void check_count(const std::string& where, std::size_t names) {
  if (names > kWhoMostNames)
    throw InputError(where + ": expected at most " + std::to_string(kWhoMostNames) + " names, found " +
                     std::to_string(names));
}

std::string text_of_file(const fs::path& file) {
  std::error_code error;
  const std::string expected = file.string() + ": expected a file of names, found ";
  if (!fs::is_regular_file(file, error)) throw InputError(expected + "something else");
  if (fs::file_size(file, error) > kLargest || error) throw InputError(expected + "more than 64 kB");
  std::ifstream in(file, std::ios::binary);
  if (!in) throw InputError(expected + "one that cannot be read");
  return {std::istreambuf_iterator<char>(in), {}};
}

Who who_from_json(const std::string& text, const std::string& file) {
  const nlohmann::json json = nlohmann::json::parse(text, nullptr, false);
  if (json.is_discarded()) throw InputError(file + ": expected JSON, found something else");
  const JsonNode root(json, file, "");
  if (root.at("format").text() != kFormat) root.at("format").fail("\"" + std::string(kFormat) + "\"");
  Who who;
  who.names = root.at("names").texts();
  check_count(file + ": names", who.names.size());
  for (const std::string& name : who.names) check_text(file + ": names", name);
  if (root.has("date") && !json["date"].is_null()) {
    who.date = root.at("date").text();
    check_text(file + ": date", who.date);
  }
  return who;
}

}  // namespace

void check_who(const Who& who) {
  check_count("--who", who.names.size());
  for (const std::string& name : who.names) check_text("--who", name);
  if (!who.date.empty()) check_text("--date", who.date);
}

std::string who_to_json(const Who& who) {
  using Json = nlohmann::ordered_json;
  return json_text({{"format", std::string(kFormat)},
                    {"names", who.names},
                    {"date", who.date.empty() ? Json(nullptr) : Json(who.date)}});
}

Who read_who(const fs::path& folder) {
  const fs::path file = folder / "who.json";
  std::error_code error;
  if (!fs::exists(fs::symlink_status(file, error))) return {};
  return who_from_json(text_of_file(file), file.string());
}

Who with_given(Who kept, const Who& given) {
  if (!given.names.empty()) kept.names = given.names;
  if (!given.date.empty()) kept.date = given.date;
  return kept;
}

}  // namespace stallwright
