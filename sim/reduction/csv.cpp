#include "sim/reduction/csv.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/reduction/csv_rows.hpp"

namespace stallwright {
namespace {

constexpr std::string_view kTimeColumn = "t_s";

std::string place(const std::string& file, std::size_t line) {
  return file + (line > 0 ? ":" + std::to_string(line) : "") + ": ";
}

[[noreturn]] void fail(const std::string& file, std::size_t line, const std::string& message) {
  throw InputError(place(file, line) + message);
}

// Found text as it may stand in a one-line message: quoted, short, control characters spelt out.
std::string shown(std::string_view text) {
  constexpr std::size_t kMost = 40;
  constexpr std::string_view kHex = "0123456789abcdef";
  if (text.empty()) return "an empty field";
  std::string out = "'";
  for (const char c : text.substr(0, kMost)) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f)
      out += std::string("\\x") + kHex[byte >> 4] + kHex[byte & 15];
    else
      out += c;
  }
  return out + (text.size() > kMost ? "...'" : "'");
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

// What was expected where `field` stands, or nothing if it is a finite number.
const char* number_fault(std::string_view field, double& value) {
  std::string_view digits = trimmed(field);
  if (digits.size() > 1 && digits.front() == '+' && digits[1] != '-') digits.remove_prefix(1);
  if (digits.empty()) return "a number";
  const char* const end = digits.data() + digits.size();
  const std::from_chars_result result = std::from_chars(digits.data(), end, value);
  if (result.ec == std::errc::invalid_argument || result.ptr != end) return "a number";
  if (result.ec == std::errc::result_out_of_range) return "a number within the range of a double";
  return std::isfinite(value) ? nullptr : "a finite number";
}

std::string missing_column(const std::string& name, const std::vector<std::string>& names) {
  const std::string near = nearest_word(name, names);
  return "column " + name + ": expected in the header, found none" +
         (near.empty() ? "" : "; the nearest is " + shown(near));
}

void require_text(std::string_view text, const std::string& file) {
  if (text.empty()) fail(file, 0, "expected a CSV table with a header row, found an empty file");
  const std::size_t nul = text.find('\0');
  if (nul == std::string_view::npos) return;
  const std::string_view before = text.substr(0, nul);
  fail(file, 1 + static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')),
       "expected text, found a NUL byte (a damaged or binary file)");
}

std::vector<std::string> header_names(const std::string& file, const CsvRow& header) {
  if (header.blank) fail(file, header.line, "expected a header row of column names, found a blank line");
  if (header.open_quote) fail(file, header.line, "expected a closing quote, found the end of the file");
  double ignored = 0.0;
  const auto is_number = [&](const std::string& field) { return number_fault(field, ignored) == nullptr; };
  if (std::all_of(header.fields.begin(), header.fields.end(), is_number))
    fail(file, header.line, "expected a header row of column names, found numbers");

  std::vector<std::string> names;
  for (const std::string& field : header.fields) {
    const std::string name(trimmed(field));
    if (name.empty())
      fail(file, header.line,
           "expected a name for column " + std::to_string(names.size() + 1) + ", found an empty field");
    if (std::find(names.begin(), names.end(), name) != names.end())
      fail(file, header.line, "column " + shown(name) + ": expected each name once, found it twice");
    names.push_back(name);
  }
  if (names.size() == 1 && names[0].find_first_of(";\t") != std::string::npos)
    fail(file, header.line, "expected columns separated by commas, found " + shown(names[0]));
  return names;
}

// A column of the file on its way into the table; both pointers are null for one that nobody asked for.
struct Sink {
  std::string name;
  std::vector<double>* numbers = nullptr;
  std::vector<std::string>* texts = nullptr;
  bool may_be_empty = false;
  bool must_rise = false;
};

std::vector<Sink> make_sinks(NumericTable& table, std::size_t line, const std::vector<std::string>& names,
                             const CsvRequest& request) {
  std::vector<Sink> sinks;
  for (const std::string& name : names) sinks.push_back({name});
  const auto sink_of = [&](const std::string& name) -> Sink& {
    const auto at = std::find(names.begin(), names.end(), name);
    if (at == names.end()) fail(table.file, line, missing_column(name, names));
    return sinks[static_cast<std::size_t>(at - names.begin())];
  };
  for (const std::string& name : request.texts) sink_of(name).texts = &table.texts[name];
  for (const std::string& name : request.numbers_or_empty) {
    sink_of(name).numbers = &table.numbers[name];
    sink_of(name).may_be_empty = true;
  }
  for (const std::string& name : request.numbers) sink_of(name).numbers = &table.numbers[name];
  for (Sink& sink : sinks) {
    if (request.numbers.empty() && !sink.texts) sink.numbers = &table.numbers[sink.name];
    sink.must_rise = sink.name == kTimeColumn && sink.numbers && !sink.may_be_empty;
  }
  return sinks;
}

// The reason why a row cannot be taken, empty if it can; the numbers go to `values`.
std::string row_fault(const CsvRow& row, const std::vector<Sink>& sinks, std::vector<double>& values) {
  if (row.open_quote) return "expected a closing quote, found the end of the file";
  if (row.fields.size() != sinks.size())
    return "expected " + std::to_string(sinks.size()) + " fields, found " + std::to_string(row.fields.size());
  for (std::size_t i = 0; i < sinks.size(); ++i) {
    values[i] = std::numeric_limits<double>::quiet_NaN();
    if (!sinks[i].numbers || (sinks[i].may_be_empty && trimmed(row.fields[i]).empty())) continue;
    const char* expected = number_fault(row.fields[i], values[i]);
    if (!expected && sinks[i].must_rise && !sinks[i].numbers->empty() &&
        !(values[i] > sinks[i].numbers->back()))
      expected = "a time later than the row before";
    if (expected)
      return "column " + sinks[i].name + ": expected " + expected + ", found " + shown(row.fields[i]);
  }
  return {};
}

}  // namespace

const std::vector<double>& NumericTable::column(std::string_view name) const {
  const auto at = numbers.find(std::string(name));
  if (at != numbers.end()) return at->second;
  std::vector<std::string> names;
  for (const auto& [known, values] : numbers) names.push_back(known);
  fail(file, 1, missing_column(std::string(name), names));
}

NumericTable parse_csv(std::string_view text, const std::string& file, const CsvRequest& request) {
  require_text(text, file);
  CsvRowCutter cutter(text, request.skip_comments);
  CsvRow row;
  if (!cutter.next(row)) fail(file, 1, "expected a header row of column names, found nothing");
  NumericTable table;
  table.file = file;
  const std::size_t header_line = row.line;
  const std::vector<Sink> sinks = make_sinks(table, header_line, header_names(file, row), request);

  std::vector<double> values(sinks.size());
  while (cutter.next(row)) {
    const std::string fault = row_fault(row, sinks, values);
    // Only the last line may be broken off; a quote left open further up would swallow all that follows it.
    const bool swallowed = row.open_quote && row.fields.back().find('\n') != std::string::npos;
    if (!fault.empty() && !row.ended && !swallowed) {
      table.warnings.push_back(place(file, row.line) + "the file breaks off here, line dropped (" + fault +
                               ")");
      break;
    }
    if (!fault.empty()) fail(file, row.line, fault);
    for (std::size_t i = 0; i < sinks.size(); ++i) {
      if (sinks[i].numbers) sinks[i].numbers->push_back(values[i]);
      if (sinks[i].texts) sinks[i].texts->push_back(std::move(row.fields[i]));
    }
    table.line_of_row.push_back(row.line);
  }
  table.rows = table.line_of_row.size();
  if (table.rows < request.least_rows)
    fail(file, header_line,
         "expected " + std::to_string(request.least_rows) + " or more rows of data below the header, found " +
             std::to_string(table.rows));
  return table;
}

NumericTable read_csv(const std::filesystem::path& file, const CsvRequest& request) {
  const std::string name = file.string();
  std::error_code ignored;
  if (std::filesystem::is_directory(file, ignored)) fail(name, 0, "expected a CSV file, found a folder");
  if (!std::filesystem::exists(file, ignored)) fail(name, 0, "expected a CSV file, found no such file");
  std::ifstream stream(file, std::ios::binary);
  if (!stream) fail(name, 0, "expected a file that can be read, found that it cannot be opened");
  const std::string content{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  return parse_csv(content, name, request);
}

}  // namespace stallwright
