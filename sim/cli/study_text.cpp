#include <algorithm>
#include <array>
#include <sstream>
#include <string_view>

#include "sim/cli/study_report.hpp"
#include "sim/report/number_text.hpp"
#include "sim/study/criteria.hpp"

namespace stallwright::cli {
namespace {

constexpr std::size_t kColumns = 120;

/// A name from a file must not steer the terminal.
std::string printable(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
  return text;
}

bool starts_letter(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_letter));
}

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

/// Words filled into lines of the page; continued lines are set in.
std::string filled(const std::string& text, const std::string& first) {
  std::istringstream words(printable(text));
  const std::string next(letters(first), ' ');
  std::string out = first, word;
  std::size_t width = letters(first);
  bool line_is_empty = true;
  while (words >> word) {
    if (!line_is_empty && width + 1 + letters(word) > kColumns) {
      out += "\n" + next;
      width = letters(next);
      line_is_empty = true;
    }
    if (!line_is_empty) {
      out += ' ';
      ++width;
    }
    out += word;
    width += letters(word);
    line_is_empty = false;
  }
  return out + "\n";
}

struct Column {
  std::string_view above, heading;
  std::size_t width;
};

/// Errors, U95 (half of the 95 % interval) and readings in knots; the rest in per cent of sorties.
constexpr std::array<Column, 18> kTable = {{{"", "set point", 14},
                                            {"", "found", 5},
                                            {"mean", "error", 5},
                                            {"RMS", "error", 5},
                                            {"max", "error", 5},
                                            {"mean", "U95", 5},
                                            {"U95", "covers", 6},
                                            {"95 %", "of it", 6},
                                            {"90-99", "asked", 5},
                                            {"Type A", "covers", 6},
                                            {"spot/", "break", 5},
                                            {"mean/", "peak", 5},
                                            {"time-", "out", 5},
                                            {"left", "band", 4},
                                            {"", "forced", 6},
                                            {"given", "up", 5},
                                            {"", "stalls", 6},
                                            {"no", "break", 5}}};
using Cells = std::array<std::string, kTable.size()>;

std::string line_of(const Cells& cells) {
  std::string line;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string cell = at_most(printable(cells[i]), kTable[i].width);
    const std::string padding(kTable[i].width - letters(cell), ' ');
    if (i > 0) line += ' ';
    line += i == 0 ? cell + padding : padding + cell;
  }
  return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
}

std::string heading() {
  Cells above, below;
  for (std::size_t i = 0; i < kTable.size(); ++i) {
    above[i] = kTable[i].above;
    below[i] = kTable[i].heading;
  }
  const std::string line = line_of(below);
  return line_of(above) + line + std::string(letters(line) - 1, '-') + "\n";
}

std::string row_line(const StudyRow& row, const AirPreset& air) {
  const auto share = [&](int n) { return fixed(100.0 * n / std::max(1, row.sorties), 0); };
  const std::string interval = row.found > 0 ? fixed(100.0 * row.coverage_interval.lower, 0) + "-" +
                                                   fixed(100.0 * row.coverage_interval.upper, 0)
                                             : kNoNumber;
  return line_of({row.name, std::to_string(row.found), signed_fixed(row.mean_error_kt, 2),
                  fixed(row.rms_error_kt, 2), fixed(row.largest_error_kt, 2), fixed(row.mean_expanded_kt, 2),
                  fixed(100.0 * row.coverage(), 1), interval, coverage_word(coverage_call(row, air)),
                  fixed(100.0 * row.type_a_coverage(), 0), fixed(row.other_rms_kt[0], 2),
                  fixed(row.other_rms_kt[1], 2), share(row.timed_out), share(row.flagged), share(row.forced),
                  share(row.given_up), share(row.unintended_stalls),
                  row.is_stall ? share(row.no_break) : kNoNumber});
}

std::string air_page(const StudyAir& air) {
  std::string text = printable(air.air.name) + " air: " + std::to_string(air.sorties.size()) + " sorties, " +
                     std::to_string(air.failed) + " not finished. Verdicts: keep " +
                     std::to_string(air.verdicts[0]) + ", fly again " + std::to_string(air.verdicts[1]) +
                     ", wait for better air " + std::to_string(air.verdicts[2]) + ".\n" + heading();
  double flap = -1.0;
  for (const StudyRow& row : air.rows) {
    if (row.flap_deg != flap) text += "Flaps " + shortest(row.flap_deg) + "\u00b0\n";
    flap = row.flap_deg;
    text += row_line(row, air.air);
  }
  for (const StudyRow& row : air.rows) {
    if (row.missing() > 0)
      text += filled(row.name + ", flaps " + shortest(row.flap_deg) + "\u00b0: no set point came of " +
                         std::to_string(row.missing()) + " sorties; they are not in the errors",
                     "  missing: ");
    const std::string note = conservative_note(row, air.air);
    if (!note.empty()) text += filled(note, "  wide: ");
    if (row.wing_stalled > 0 || (row.unintended_stalls > 0 && !row.is_stall))
      text +=
          filled(row.name + ", flaps " + shortest(row.flap_deg) +
                     "\u00b0: an unintended stall was called in " + std::to_string(row.unintended_stalls) +
                     " sorties; the wing's root stalled in truth in " + std::to_string(row.wing_stalled),
                 "  gusts: ");
  }
  for (const StudySortie& sortie : air.sorties)
    if (!sortie.failure.empty())
      text += filled("seed " + std::to_string(sortie.seed) + ": " + sortie.failure, "  failed: ");
  return text + "\n";
}

}  // namespace

std::string study_text(const Study& study) {
  const SortieConfig& base = study.config.base;
  std::string text = filled(
      base.type.name + ", " + base.card.name + ", " + base.pilot.name + " pilot, " + base.instruments.name +
          " sensors, seeds " + std::to_string(study.config.first_seed) + " to " +
          std::to_string(study.config.first_seed + static_cast<std::uint64_t>(study.config.sorties) - 1) +
          ". Errors in knots, measured less true; U95 is half of the 95 % interval; 'covers' and "
          "the columns right of 'peak' in per cent, the last ones of sorties in which it happened at "
          "least once. A stall counted under a steady point was unintended.",
      "");
  text += "\n";
  for (const StudyAir& air : study.airs) text += air_page(air);
  text += "Criteria\n";
  for (const Criterion& c : study_criteria(study))
    text += filled(c.text, c.holds ? "  holds  " : "  FAILS  ");
  text +=
      "\nA rehearsal aid, with invented aeroplanes: the flight manual, local rules and a qualified "
      "instructor govern.\n";
  return text;
}

}  // namespace stallwright::cli
