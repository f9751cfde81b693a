#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstring>
#include <stdexcept>
#include <utility>

#include "sim/reduction/csv.hpp"

namespace stallwright {
namespace {

constexpr int kMostDecimals = 17;

void append_text(std::string& line, std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    line += text;
    return;
  }
  line += '"';
  for (const char c : text) {
    if (c == '"') line += '"';
    line += c;
  }
  line += '"';
}

void append_number(std::string& line, double value, std::optional<int> decimals) {
  std::array<char, 400> buffer;  // the largest double has 309 digits before the point
  char* const end = buffer.data() + buffer.size();
  const std::to_chars_result result =
      decimals ? std::to_chars(buffer.data(), end, value, std::chars_format::fixed, *decimals)
               : std::to_chars(buffer.data(), end, value);
  std::string_view digits(buffer.data(), static_cast<std::size_t>(result.ptr - buffer.data()));
  // A small negative number rounds to "-0.00"; the sign says nothing then.
  if (decimals && digits.front() == '-' && digits.find_first_of("123456789") == std::string_view::npos)
    digits.remove_prefix(1);
  line += digits;
}

}  // namespace

std::string csv_field(std::string_view text) {
  std::string field;
  append_text(field, text);
  return field;
}

std::string csv_field(double value) {
  std::string field;
  if (!std::isnan(value)) append_number(field, value, std::nullopt);
  return field;
}

CsvWriter::CsvWriter(const std::filesystem::path& file, std::vector<CsvColumn> columns,
                     std::size_t rows_per_flush)
    : file_(file),
      columns_(std::move(columns)),
      rows_per_flush_(std::max<std::size_t>(1, rows_per_flush)),
      stream_(nullptr, &std::fclose) {
  if (columns_.empty()) throw std::invalid_argument("csv: a table needs columns");
  for (const CsvColumn& column : columns_)
    if (column.decimals && (*column.decimals < 0 || *column.decimals > kMostDecimals))
      throw std::invalid_argument("csv: column " + column.name + ": decimals must lie between 0 and 17");
  stream_.reset(std::fopen(file_.c_str(), "wb"));
  if (!stream_) throw std::runtime_error(file_.string() + ": cannot write: " + std::strerror(errno));
  // No buffer of the library's: it would cut lines where it is full.
  std::setvbuf(stream_.get(), nullptr, _IONBF, 0);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (i > 0) pending_ += ',';
    append_text(pending_, columns_[i].name);
  }
  pending_ += '\n';
  flush();
}

CsvWriter::~CsvWriter() {
  try {
    if (!pending_.empty()) flush();
  } catch (const std::runtime_error&) {  // told by whoever asked for a flush; here nobody listens
  }
}

void CsvWriter::write_row(std::span<const double> values) {
  write_row(std::vector<CsvValue>(values.begin(), values.end()));
}

void CsvWriter::write_row(std::span<const CsvValue> values) {
  if (values.size() != columns_.size()) throw std::invalid_argument("csv: a row of the wrong length");
  const std::size_t start = pending_.size();
  try {
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (i > 0) pending_ += ',';
      append(columns_[i], values[i]);
    }
  } catch (...) {
    pending_.resize(start);  // a refused row leaves nothing behind
    throw;
  }
  end_row();
}

void CsvWriter::append(const CsvColumn& column, const CsvValue& value) {
  if (const std::string_view* text = std::get_if<std::string_view>(&value))
    return append_text(pending_, *text);
  const double number = std::get<double>(value);
  if (std::isnan(number) && column.may_be_empty) return;
  if (!std::isfinite(number))
    throw std::invalid_argument(file_.string() + ":" + std::to_string(rows_ + 2) + ": column " + column.name +
                                ": a number that is not finite cannot be written");
  append_number(pending_, number, column.decimals);
}

void CsvWriter::end_row() {
  pending_ += '\n';
  ++rows_;
  if (++pending_rows_ >= rows_per_flush_) flush();
}

void CsvWriter::flush() {
  if (!stream_) throw std::runtime_error(file_.string() + ": cannot write: an earlier part is missing");
  const long begin = std::ftell(stream_.get());
  const std::size_t written = std::fwrite(pending_.data(), 1, pending_.size(), stream_.get());
  if (written != pending_.size()) {
    const std::string reason = std::strerror(errno);
    // A full disk takes what fits, and that ends in the middle of a line: the piece goes again. Nothing may follow behind
    // the gap later, when there is room again.
    const std::size_t whole = written == 0 ? 0 : pending_.rfind('\n', written - 1) + 1;
    const bool cut = begin < 0 || ::ftruncate(::fileno(stream_.get()), begin + static_cast<long>(whole)) == 0;
    stream_.reset();
    throw std::runtime_error(file_.string() + ": cannot write: " + reason +
                             (cut ? "" : "; its last line may be cut short"));
  }
  pending_.clear();
  pending_rows_ = 0;
}

}  // namespace stallwright
