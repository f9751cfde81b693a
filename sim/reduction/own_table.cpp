#include "sim/reduction/own_table.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/reduction/csv_rows.hpp"

namespace stallwright {
namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr std::string_view kMark = "\xEF\xBB\xBF";  ///< byte-order mark

[[noreturn]] void fail(const std::string& file, std::size_t line, const std::string& message) {
  throw InputError(file + (line > 0 ? ":" + std::to_string(line) : "") + ": " + message);
}

/// Found text as it may stand in a line: quoted, short, nothing that a terminal would obey.
std::string shown(std::string_view text) {
  std::string out = "'";
  for (const char c : text.substr(0, 40)) {
    const auto byte = static_cast<unsigned char>(c);
    out += byte < 0x20 || byte == 0x7f ? '?' : c;
  }
  return out + (text.size() > 40 ? "...'" : "'");
}

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// The text from a line on; lines before the header are anything at all.
std::string_view from_line(std::string_view text, std::size_t line, const std::string& file) {
  if (text.substr(0, kMark.size()) == kMark) text.remove_prefix(kMark.size());
  for (std::size_t k = 1; k < line; ++k) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos)
      fail(file, k,
           "expected the column names in line " + std::to_string(line) + ", found the end of the file");
    text.remove_prefix(end + 1);
  }
  return text;
}

std::vector<std::string> header_of(CsvRow row, const std::string& file, std::size_t line) {
  if (row.blank) fail(file, line, "expected a header row of column names, found a blank line");
  if (row.open_quote) fail(file, line, "expected a closing quote, found the end of the file");
  while (row.fields.size() > 1 && trimmed(row.fields.back()).empty()) row.fields.pop_back();
  for (std::string& name : row.fields) name = trimmed(name);
  return row.fields;
}

/// Where each mapped quantity stands, by the header.
std::array<std::size_t, kQuantities> places(const std::vector<std::string>& header, const std::string& file,
                                            const ColumnMap& map) {
  std::array<std::size_t, kQuantities> out{};
  for (std::size_t q = 0; q < kQuantities; ++q) {
    if (!map.columns[q]) continue;
    const std::string& name = map.columns[q]->name;
    const auto count = std::count(header.begin(), header.end(), name);
    const std::string near = nearest_word(name, header);
    if (count == 0)
      fail(file, map.header_line,
           "column " + name + ": expected in the header (column." + quantity_kinds()[q].key + " of " +
               map.file + "), found none" + (near.empty() ? "" : "; the nearest is " + shown(near)));
    if (count > 1)
      fail(file, map.header_line, "column " + name + ": expected once in the header, found it twice");
    out[q] = static_cast<std::size_t>(std::find(header.begin(), header.end(), name) - header.begin());
  }
  return out;
}

/// Numbers from low to high, in the column's own unit.
std::string range_text(const MappedColumn& column, const QuantityKind& kind) {
  double low = (kind.low - column.offset) / column.factor, high = (kind.high - column.offset) / column.factor;
  if (low > high) std::swap(low, high);
  const auto rounded = [](double x) { return number_text(std::round(x * 100.0) / 100.0); };
  return "a number from " + rounded(low) + " to " + rounded(high) +
         (column.unit.empty() ? "" : " " + column.unit);
}

double value_of(const std::string& field, Quantity quantity, const ColumnMap& map, const std::string& file,
                std::size_t line) {
  if (says_nothing(field)) return kNaN;
  const MappedColumn& column = *map.column(quantity);
  const QuantityKind& kind = kind_of(quantity);
  const bool clock = quantity == Quantity::time && map.clock;
  const auto number = clock ? clock_seconds(field) : number_in(field, map.decimal_comma);
  const auto refuse = [&](const std::string& expected) {
    fail(file, line, "column " + column.name + ": expected " + expected + ", found " + shown(trimmed(field)));
  };
  if (!number) refuse(clock ? "a time of day hh:mm:ss" : "a number");
  const double value = column.factor * *number + column.offset;
  if (!(value >= kind.low && value <= kind.high)) refuse(range_text(column, kind));
  return value;
}

std::string count_text(std::size_t count, const std::string& one, const std::string& more) {
  return std::to_string(count) + " " + (count == 1 ? one : more);
}

/// What was passed over on the way.
struct Passed {
  std::size_t ragged = 0, first_ragged = 0, headers = 0, blank = 0, timeless = 0;
  std::array<std::size_t, kQuantities> empty{};
  std::string ragged_text, cut_off;
};

void say(const Passed& passed, const ColumnMap& map, OwnTable& table) {
  const std::string in = table.file + ": ";
  auto& warnings = table.warnings;
  if (!passed.cut_off.empty()) warnings.push_back(passed.cut_off);
  if (passed.ragged > 0)
    warnings.push_back(in + count_text(passed.ragged, "line", "lines") +
                       " passed over for another number of fields, the first is line " +
                       std::to_string(passed.first_ragged));
  if (passed.headers > 0)
    warnings.push_back(in + "the header comes again " + count_text(passed.headers, "time", "times"));
  if (passed.blank > 0)
    warnings.push_back(in + count_text(passed.blank, "blank line", "blank lines") + " passed over");
  if (passed.timeless > 0)
    warnings.push_back(in + count_text(passed.timeless, "line", "lines") + " without a time passed over");
  for (std::size_t q = 0; q < kQuantities; ++q)
    if (passed.empty[q] > 0)
      warnings.push_back(in + "column " + map.columns[q]->name + ": " +
                         count_text(passed.empty[q], "empty field", "empty fields") +
                         ", bridged between its neighbours where they are near");
}

void take_row(const CsvRow& row, std::size_t line, const std::array<std::size_t, kQuantities>& place,
              const ColumnMap& map, OwnTable& table, Passed& passed) {
  std::array<double, kQuantities> values{};
  for (std::size_t q = 0; q < kQuantities; ++q)
    if (map.columns[q])
      values[q] = value_of(row.fields[place[q]], static_cast<Quantity>(q), map, table.file, line);
  double& mark = values[static_cast<std::size_t>(Quantity::mark)];
  if (std::isnan(mark)) mark = 0.0;  // recorders leave the field empty where nobody marks anything
  if (std::isnan(values[0])) {
    ++passed.timeless;
    return;
  }
  for (std::size_t q = 0; q < kQuantities; ++q) {
    if (!map.columns[q]) continue;
    table.values[q].push_back(values[q]);
    if (std::isnan(values[q])) ++passed.empty[q];
  }
  table.line.push_back(line);
}

}  // namespace

OwnTable parse_own_table(std::string_view text, const std::string& file, const ColumnMap& map) {
  if (text.empty()) fail(file, 0, "expected a log with a header row, found an empty file");
  if (text.find('\0') != std::string_view::npos)
    fail(file, 0, "expected text, found a NUL byte (a damaged or binary file)");
  CsvRowCutter cutter(from_line(text, map.header_line, file), false, map.separator);
  CsvRow row;
  if (!cutter.next(row)) fail(file, map.header_line, "expected a header row of column names, found nothing");
  const std::vector<std::string> header = header_of(row, file, map.header_line);
  const auto place = places(header, file, map);

  OwnTable table;
  table.file = file;
  Passed passed;
  while (cutter.next(row)) {
    const std::size_t line = row.line + map.header_line - 1;
    if (line < map.data_line) continue;
    if (row.blank) {
      ++passed.blank;
      continue;
    }
    const bool swallowed = row.open_quote && row.fields.back().find('\n') != std::string::npos;
    if (swallowed) fail(file, line, "expected a closing quote, found the end of the file");
    while (row.fields.size() > header.size() && trimmed(row.fields.back()).empty()) row.fields.pop_back();
    if (row.fields.size() != header.size() || row.open_quote) {
      const std::string fault =
          "expected " + std::to_string(header.size()) + " fields, found " + std::to_string(row.fields.size());
      if (!row.ended) {
        passed.cut_off =
            file + ":" + std::to_string(line) + ": the file breaks off here, line dropped (" + fault + ")";
        break;
      }
      if (passed.ragged++ == 0) {
        passed.first_ragged = line;
        passed.ragged_text = fault;
      }
      continue;
    }
    if (std::equal(
            header.begin(), header.end(), row.fields.begin(),
            [](const std::string& name, const std::string& field) { return name == trimmed(field); })) {
      ++passed.headers;
      continue;
    }
    take_row(row, line, place, map, table, passed);
  }
  constexpr std::size_t kFew = 3;
  if (passed.ragged > std::max(kFew, table.rows() / 100))
    fail(file, passed.first_ragged,
         passed.ragged_text + " (and so in " + count_text(passed.ragged, "line", "lines") + ")");
  if (table.rows() < 2)
    fail(file, map.header_line,
         "expected two or more rows of data below the header, found " + std::to_string(table.rows()));
  say(passed, map, table);
  return table;
}

}  // namespace stallwright
