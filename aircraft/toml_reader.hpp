#pragma once
#include <array>
#include <cstddef>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"

namespace stallwright {

/// Unit of a number in a file: its name there, and the SI value of one of it.
struct FileUnit {
  const char* name;
  double si;
};

namespace unit {
inline constexpr FileUnit kNone{"", 1.0};
inline constexpr FileUnit kPerRad{"/rad", 1.0};
inline constexpr FileUnit kDegree{"deg", 0.017453292519943295};  ///< pi/180, by definition
inline constexpr FileUnit kDegreePerSecond{"deg/s", 0.017453292519943295};
inline constexpr FileUnit kKnot{"kt", 1852.0 / 3600.0};      ///< by definition
inline constexpr FileUnit kRpm{"rpm", 0.10471975511965977};  ///< 2 pi/60
inline constexpr FileUnit kMetre{"m", 1.0}, kSquareMetre{"m2", 1.0}, kCubicMetre{"m3", 1.0};
inline constexpr FileUnit kMillimetre{"mm", 1e-3}, kCubicCentimetre{"cm3", 1e-6};
inline constexpr FileUnit kFoot{"ft", 0.3048}, kSecond{"s", 1.0}, kChord{"chords", 1.0};
inline constexpr FileUnit kKilogram{"kg", 1.0}, kKilogramPerHour{"kg/h", 1.0 / 3600.0};
inline constexpr FileUnit kKilogramSquareMetre{"kg m2", 1.0}, kNewtonMetre{"N m", 1.0}, kKilowatt{"kW", 1e3};
}  // namespace unit

/// A number that a file must give: key, unit, allowed range in that unit (both ends allowed).
struct NumberField {
  const char* key;
  FileUnit unit;
  double low, high;
};

/// A number of a file and the member of T that takes it; tables of these are read by read_fields.
template <class T>
struct Field {
  NumberField in_file;
  double T::*member;
};

/// How many numbers a list may hold, and whether they must rise.
struct ListShape {
  std::size_t least = 1, most = 1000;
  bool rising = false;
};

/// What a reader asked for: the path with list positions left out (`wing.station[].chord_m`).
/// For numbers the unit and range as written in error messages; otherwise only `expected` says what it is.
struct KnownField {
  std::string path, unit, range;
  bool operator==(const KnownField&) const = default;
};

struct TomlState;  // the parsed file and what has been asked of it

/// One table of a TOML file. Each read names the key, the unit and the range, returns SI, and throws
/// InputError
///   FILE:LINE: wing.section.stall_deg: expected a number from 5 to 30 deg, found "abc"
/// on one line when the file says anything else. Positions in lists of tables count from 1.
class TomlTable {
 public:
  double number(const NumberField& field) const;
  double number_or(const NumberField& field, double fallback_si) const;  ///< for a key that may be left out
  std::vector<double> numbers(const NumberField& field, ListShape shape) const;
  bool flag(const char* key) const;
  bool flag_or(const char* key, bool fallback) const;
  std::string text(const char* key, std::size_t longest) const;  ///< one line, at least one character
  std::string text_or(const char* key, std::size_t longest, const std::string& fallback) const;
  /// A list of such texts; `rising` of the shape is not looked at.
  std::vector<std::string> texts(const char* key, std::size_t longest, ListShape shape) const;
  std::string choice(const char* key, const std::vector<std::string>& allowed) const;
  TomlTable table(const char* key) const;
  std::vector<TomlTable> tables(const char* key, std::size_t least, std::size_t most) const;  ///< [[key]]
  bool has(const char* key) const;

  /// Tells that a key will be asked for, so that it is not taken for a misspelling of one that is missing.
  void announce(const char* key) const;

  /// Reports what the values say together: `FILE:LINE: path.key: expected ..., found ...` at the key's own
  /// line.
  [[noreturn]] void reject(const char* key, const std::string& expected, const std::string& found) const;

 private:
  friend class TomlDocument;
  TomlTable(std::shared_ptr<TomlState> state, const void* node, std::string path);
  const void* find(const char* key, const std::string& unit, const std::string& range) const;
  const void* require(const char* key, const std::string& unit, const std::string& range,
                      const std::string& expected) const;
  std::string path_to(const std::string& key) const;

  std::shared_ptr<TomlState> state_;
  const void* node_;  // toml::table inside *state_; the parser's header stays out of ours
  std::string path_;
};

/// A TOML file, checked to be one: a plain file of at most 1 MB, text, well formed. Otherwise InputError.
/// Call reject_unknown_keys() after the last read: a key nobody asked for is an error naming the nearest
/// known one.
class TomlDocument {
 public:
  explicit TomlDocument(const std::filesystem::path& file);
  TomlTable root() const;
  void reject_unknown_keys() const;
  std::vector<KnownField> known_fields() const;  ///< all that has been asked so far, in order of asking

 private:
  std::shared_ptr<TomlState> state_;
};

/// Fills the members of a struct from a table, and hands it back.
template <class T, std::size_t N>
T read_fields(const TomlTable& table, const std::array<Field<T>, N>& fields, T out = {}) {
  for (const auto& field : fields) table.announce(field.in_file.key);
  for (const auto& field : fields) out.*field.member = table.number(field.in_file);
  return out;
}

/// Shortest text that reads back as the same number (30, 0.25, 1e-06).
std::string number_text(double value);

/// The words with commas between them, for messages.
std::string joined_words(const std::vector<std::string>& words);

/// Of the candidates the one with the fewest letters to change, or "" if none is near.
std::string nearest_word(const std::string& word, const std::vector<std::string>& candidates);

}  // namespace stallwright
