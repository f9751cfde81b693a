#pragma once

#include <cstddef>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stallwright {

/// CSV as in RFC 4180: one header row, commas, fields quoted where they hold a comma, a quote or a line end.
/// UTF-8.

struct CsvColumn {
  std::string name;  ///< with its unit, as t_s
  std::optional<int>
      decimals{};  ///< digits after the point, 0 to 17; none: the shortest text that reads back exactly
  bool may_be_empty = false;  ///< a NaN is written as an empty field instead of being refused
};

/// A text as a field: quoted where it must be.
std::string csv_field(std::string_view text);
/// A number in the shortest form that reads back exactly; a NaN is an empty field.
std::string csv_field(double value);

using CsvValue = std::variant<double, std::string_view>;

/// Writes a table row by row. Rows reach the file in groups of whole lines, one system call a group, so a
/// program that is killed leaves only whole lines and loses at most `rows_per_flush` - 1 of them. Throws
/// std::runtime_error when the file cannot be opened or written, std::invalid_argument for a row of the wrong
/// length or a number that is not finite (column and line named). Line ends are "\n".
class CsvWriter {
 public:
  CsvWriter(const std::filesystem::path& file, std::vector<CsvColumn> columns,
            std::size_t rows_per_flush = 50);
  ~CsvWriter();
  CsvWriter(const CsvWriter&) = delete;
  CsvWriter& operator=(const CsvWriter&) = delete;

  void write_row(std::span<const double> values);
  void write_row(std::span<const CsvValue> values);
  /// Hands everything written so far to the operating system. The destructor does so too, but cannot report
  /// errors.
  void flush();

 private:
  void append(const CsvColumn& column, const CsvValue& value);
  void end_row();

  std::filesystem::path file_;
  std::vector<CsvColumn> columns_;
  std::size_t rows_per_flush_;
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream_;
  std::string pending_;
  std::size_t pending_rows_ = 0;
  std::size_t rows_ = 0;
};

/// What a reader wants of a file.
struct CsvRequest {
  std::vector<std::string> numbers{};           ///< must be there; empty: every column that is not text
  std::vector<std::string> numbers_or_empty{};  ///< must be there; an empty field reads as NaN
  std::vector<std::string> texts{};             ///< must be there; kept as they stand
  std::size_t least_rows = 1;
  bool skip_comments = false;  ///< lines that start with '#' are passed over (reference data)
};

/// A table by column. Columns that `numbers` does not name are ignored when it names any.
struct NumericTable {
  std::string file;
  std::size_t rows = 0;
  std::map<std::string, std::vector<double>> numbers;
  std::map<std::string, std::vector<std::string>> texts;
  std::vector<std::size_t> line_of_row;  ///< 1-based line in the file, for later messages
  std::vector<std::string> warnings;     ///< one line each

  /// Throws InputError, naming the nearest column, when there is no such column of numbers.
  const std::vector<double>& column(std::string_view name) const;
};

/// Reads a whole file. CRLF and a byte-order mark are accepted, blanks around numbers and names too, and a
/// last line without its line end if it is whole; if it is not, it is dropped with a warning. Throws
/// InputError (aircraft/input_error.hpp), one line "FILE:LINE: column NAME: expected ..., found ...", for a
/// missing file or folder, an empty file, no header, a repeated or missing column (the nearest is named), too
/// few rows, a ragged row, an open quote, something that is not a number or not finite, NUL bytes, and a
/// column t_s that does not rise strictly.
NumericTable read_csv(const std::filesystem::path& file, const CsvRequest& request = {});

/// The same for text already in memory; `name` stands for the file in messages.
NumericTable parse_csv(std::string_view text, const std::string& name, const CsvRequest& request = {});

}  // namespace stallwright
