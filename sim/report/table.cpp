#include "sim/report/table.hpp"

#include <array>
#include <sstream>
#include <string_view>

#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright {
namespace {

constexpr std::size_t kColumns = 100;

/// A name from a file must not steer the terminal: C0 and DEL, and C1 in its UTF-8 form.
std::string printable(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool c1 = byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0;
    if (c1) ++i;
    out += c1 || byte < 0x20 || byte == 0x7f ? '?' : text[i];
  }
  return out;
}

bool starts_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

std::size_t letters(const std::string& text) {
  std::size_t count = 0;
  for (const char c : text) count += starts_letter(c) ? 1 : 0;
  return count;
}

/// Cut after so many letters, with a mark that something is missing.
std::string at_most(const std::string& text, std::size_t width) {
  if (letters(text) <= width) return text;
  std::string out;
  std::size_t count = 0;
  for (const char c : text) {
    if (starts_letter(c) && ++count > width - 2) break;
    out += c;
  }
  return out + "..";
}

struct Column {
  std::string_view heading;
  std::size_t width;
  bool right;
};

constexpr std::array<Column, 6> kTable = {{{"set point", 24, false},
                                           {"ratio", 17, true},
                                           {"truth", 8, true},
                                           {"error, deg", 11, true},
                                           {"error, kt", 10, true},
                                           {"in order?", 10, false}}};

std::string row(const std::array<std::string, 6>& cells) {
  std::string line = " ";
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Column& column = kTable[i];
    const std::string cell = at_most(printable(cells[i]), column.width);
    const std::string padding(column.width - letters(cell), ' ');
    line += " " + (column.right ? padding + cell : cell + padding) + " ";
  }
  return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

std::string heading_row() {
  std::array<std::string, 6> cells;
  for (std::size_t i = 0; i < cells.size(); ++i) cells[i] = kTable[i].heading;
  const std::string line = row(cells);
  return line + "  " + std::string(letters(line) - 3, '-') + "\n";
}

/// Words filled into lines; continued lines are set in.
std::string filled(const std::string& first, const std::string& text) {
  std::istringstream words(printable(text));
  std::string out, line = first;
  const std::string indent(letters(first), ' ');
  for (std::string word; words >> word;) {
    word = at_most(word, kColumns - indent.size() - 1);
    if (letters(line) + 1 + letters(word) > kColumns) {
      out += line + "\n";
      line = indent;
    }
    line += (line == indent || line == first ? "" : " ") + word;
  }
  return out + line + "\n";
}

std::string set_rows(const JudgedSet& set) {
  std::string rows = "  " + flap_words(set.flap_deg) + ", " + fixed(set.mass_kg, 0) + " kg\n";
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const JudgedPoint& point = set.points[i];
    const SetPoint& measured = point.measured;
    rows += row({"  " + measured.name, plus_minus(measured.ratio, expanded_ratio(measured), 4),
                 fixed(point.true_ratio, 4), signed_fixed(point.error_deg, 2),
                 signed_fixed(point.error_kt, 2), order_word(set, i)});
  }
  return rows;
}

}  // namespace

std::string result_table(const Judgement& judgement, const SortieSummary& summary) {
  std::string text =
      filled("", summary.aircraft + " (invented), " + summary.card + ". " + made_by(summary) + ".");
  text += "\n" + heading_row();
  for (const JudgedSet& set : judgement.sets) text += set_rows(set);
  text += "\n" + filled("Verdict: ", verdict_sentence(judgement));
  text += filled("Reason:  ", judgement.reason);
  text += filled("Caution: ", cautions().front());
  return text;
}

}  // namespace stallwright
