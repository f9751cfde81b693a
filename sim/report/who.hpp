#pragma once
#include <filesystem>
#include <string>
#include <vector>

namespace stallwright {

/// Who flew and debriefed, and when, as they want it on the record. Both may be left out; a person then writes
/// on the paper. Stands in record.html and in who.json of the sortie folder and nowhere else; removing that file
/// takes the names away.
struct Who {
  std::vector<std::string> names;
  std::string date;  ///< in any words: the program knows no calendar
  bool empty() const { return names.empty() && date.empty(); }
  friend bool operator==(const Who&, const Who&) = default;
};

inline constexpr std::size_t kWhoMostLetters = 80;  ///< of a name and of the date
inline constexpr std::size_t kWhoMostNames = 6;     ///< more would not fit the sheet

/// Throws InputError, one line naming --who or --date, for more names than fit, a text that is blank, too long
/// or not UTF-8, and for control characters and those that turn the direction of writing or end a line.
/// No date is given as an empty text.
void check_who(const Who& who);

/// The file who.json.
///   format "stallwright-who-1"; names[]; date (null: none)
std::string who_to_json(const Who& who);

/// who.json of a sortie folder; empty where there is none. Throws InputError, one line, for anything else.
Who read_who(const std::filesystem::path& folder);

/// What was kept, replaced by what is given now: the names by names, the date by a date.
Who with_given(Who kept, const Who& given);

}  // namespace stallwright
