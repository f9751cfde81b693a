#include "sim/reduction/csv_rows.hpp"

#include <algorithm>
#include <utility>

namespace stallwright {

CsvRowCutter::CsvRowCutter(std::string_view text, bool skip_comments, char separator)
    : rest_(text), skip_comments_(skip_comments), separator_(separator) {
  if (rest_.substr(0, 3) == "\xEF\xBB\xBF") rest_.remove_prefix(3);
}

void CsvRowCutter::pass_comments() {
  while (skip_comments_ && !rest_.empty() && rest_.front() == '#') {
    rest_.remove_prefix(std::min(rest_.find('\n'), rest_.size() - 1) + 1);
    ++line_;
  }
}

bool CsvRowCutter::next(CsvRow& row) {
  pass_comments();
  if (rest_.find_first_not_of(" \t\r\n") == std::string_view::npos) return false;
  row = CsvRow{};
  row.line = line_;
  std::string field;
  bool quoted = false;
  std::size_t i = 0;
  for (; i < rest_.size() && !row.ended; ++i) {
    const char c = rest_[i];
    if (c == '\n') ++line_;
    if (quoted) {
      const bool doubled = c == '"' && i + 1 < rest_.size() && rest_[i + 1] == '"';
      if (doubled) ++i;
      if (c != '"' || doubled)
        field += c;
      else
        quoted = false;
    } else if (c == '"' && field.empty()) {
      quoted = true;
    } else if (c == separator_) {
      row.fields.push_back(std::exchange(field, {}));
    } else if (c == '\n') {
      row.ended = true;
    } else {
      field += c;
    }
  }
  // The CR of a CR LF, also where the text breaks off between the two; a CR inside quotes belongs to the
  // field.
  const std::size_t end = i - (row.ended ? 1 : 0);
  if (!quoted && end > 0 && rest_[end - 1] == '\r' && !field.empty()) field.pop_back();
  row.open_quote = quoted;
  row.blank = row.fields.empty() && field.find_first_not_of(" \t") == std::string::npos;
  row.fields.push_back(std::move(field));
  rest_.remove_prefix(i);
  return true;
}

}  // namespace stallwright
