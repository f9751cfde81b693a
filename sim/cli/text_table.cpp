#include "sim/cli/text_table.hpp"

#include <algorithm>
#include <numeric>
#include <sstream>

#include "sim/cli/cli_common.hpp"

namespace stallwright::cli {
namespace {

using Row = std::vector<std::string>;

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

/// The first letters of a text; the rest stays in it.
std::string taken(std::string& text, std::size_t count) {
  std::size_t at = 0;
  for (; at < text.size(); ++at)
    if (!continues(text[at]) && count-- == 0) break;
  const std::string head = text.substr(0, at);
  text.erase(0, at);
  return head;
}

/// Words in lines of a width; a word that is too long by itself is cut.
Row wrapped(const std::string& text, std::size_t width) {
  Row lines;
  std::string line;
  std::istringstream words(one_line(text));
  for (std::string word; words >> word;) {
    if (!line.empty() && letters(line) + 1 + letters(word) <= width) {
      line += ' ' + word;
      continue;
    }
    if (!line.empty()) lines.push_back(line);
    while (letters(word) > width) lines.push_back(taken(word, width));
    line = word;
  }
  lines.push_back(line);
  return lines;
}

std::vector<std::size_t> widths_of(const Row& headings, const std::vector<Row>& rows, std::size_t room) {
  constexpr std::size_t kLeast = 5, kToWriteIn = 8;
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < headings.size(); ++i) {
    std::size_t width = letters(headings[i]);
    for (const Row& row : rows) width = std::max(width, row[i].empty() ? kLeast : letters(row[i]));
    widths.push_back(width);
  }
  const auto all = [&] { return std::accumulate(widths.begin(), widths.end(), std::size_t{0}); };
  while (all() > room) {
    const auto widest = std::max_element(widths.begin(), widths.end());
    if (*widest <= kLeast) break;
    --*widest;
  }
  // What is left over is for the hand.
  const bool to_write =
      std::any_of(rows.begin(), rows.end(), [](const Row& row) { return row.back().empty(); });
  if (to_write && all() < room) widths.back() = std::max(kToWriteIn, widths.back() + room - all());
  return widths;
}

std::string set_row(const Row& row, const std::vector<std::size_t>& widths, const std::vector<bool>& numeric,
                    std::size_t indent, bool blanks) {
  std::vector<Row> cells;
  std::size_t height = 1;
  for (std::size_t i = 0; i < row.size(); ++i) {
    cells.push_back(row[i].empty() && blanks ? Row{std::string(widths[i], '_')} : wrapped(row[i], widths[i]));
    height = std::max(height, cells.back().size());
  }
  std::string text;
  for (std::size_t k = 0; k < height; ++k) {
    std::string line(indent, ' ');
    for (std::size_t i = 0; i < cells.size(); ++i)
      line += padded(k < cells[i].size() ? cells[i][k] : "", widths[i], numeric[i]) +
              (i + 1 < cells.size() ? "  " : "");
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text;
}

}  // namespace

std::string text_table(const Row& headings, const std::vector<bool>& numeric, const std::vector<Row>& rows,
                       std::size_t indent, std::size_t columns) {
  const std::size_t room = columns - indent - 2 * (headings.size() - 1);
  const std::vector<std::size_t> widths = widths_of(headings, rows, room);
  std::string text = set_row(headings, widths, numeric, indent, false);
  for (const Row& row : rows) text += set_row(row, widths, numeric, indent, true);
  return text;
}

}  // namespace stallwright::cli
