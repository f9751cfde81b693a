#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stallwright {

/// One row of CSV text, cut into fields but not yet understood.
struct CsvRow {
  std::vector<std::string> fields;
  std::size_t line = 0;     ///< where it starts, from 1
  bool ended = false;       ///< by a line end; false where the text breaks off
  bool open_quote = false;  ///< the text ended inside a quoted field
  bool blank = false;       ///< nothing but blanks
};

/// Cuts RFC 4180 text into rows: quoted fields may hold commas, doubled quotes and line ends; a line ends
/// with LF or CR LF; a UTF-8 byte-order mark is passed over, and so are blank lines at the very end.
class CsvRowCutter {
 public:
  /// The text must outlive the cutter. With skip_comments, lines that start with '#' are passed over. Other recorders
  /// than ours separate by semicolons or tabs.
  CsvRowCutter(std::string_view text, bool skip_comments, char separator = ',');

  /// False when there is no further row.
  bool next(CsvRow& row);

 private:
  void pass_comments();

  std::string_view rest_;
  std::size_t line_ = 1;
  bool skip_comments_;
  char separator_;
};

}  // namespace stallwright
