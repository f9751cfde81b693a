// The page to keep: set points, what the warning protects, and the verdict.
#include <algorithm>
#include <cmath>

#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/record_parts.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::record {
namespace {

using html::element;
using html::text_element;

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : std::string(between)) + word;
  return text;
}

/// Not broken within: a line may end between windows only.
std::string window_text(const RecordWindow& window, bool last) {
  const std::string sortie = window.sortie > 0 ? "sortie " + std::to_string(window.sortie) + ": " : "";
  return "<span class=\"whole\">" + sortie + page_fixed(window.begin_s, 0) + "\u2013" +
         page_fixed(window.end_s, 0) + (last ? "" : ",") + "</span>";
}

std::string windows_text(const SetPoint& point) {
  std::vector<std::string> texts;
  for (const RecordWindow& window : point.windows)
    texts.push_back(window_text(window, &window == &point.windows.back()));
  return texts.empty() ? kNoNumber : joined(texts, " ");
}

std::string with_sign(const std::string& number) { return number == kNoNumber ? number : "\u00b1 " + number; }

std::string set_table(const JudgedSet& set) {
  html::Table table;
  table.caption = flap_words(set.flap_deg) + ", " + page_fixed(set.mass_kg, 0) + " kg; true 1 g stall at " +
                  page_fixed(set.stall_speed_kt, 1) + " kt; order " +
                  (set.order_ok ? "holds" : "DOES NOT HOLD");
  table.headings = {"set point", "ratio", "95 %, ratio", "95 %, kt", "speed, kt", "recorded, s", "flags"};
  table.numeric = {false, true, true, true, true, false, false};
  for (const JudgedPoint& p : set.points) {
    const SetPoint& m = p.measured;
    table.rows.push_back({escaped(m.name), page_fixed(m.ratio, 4),
                          with_sign(page_fixed(expanded_ratio(m), 4)),
                          with_sign(page_fixed(p.expanded_kt, 2)), page_fixed(m.speed_kt, 1), windows_text(m),
                          escaped(m.flags.empty() ? "none" : joined(m.flags, "; "))});
  }
  return element("div", table.str(), "class=\"points\"");
}

std::string flight_words(const ProtectionRow& row) {
  return flap_words(row.flap_deg) + (row.power == PowerRule::idle ? ", idle, " : ", level power, ") +
         (row.bank_deg == 0.0 ? "wings level" : page_fixed(row.bank_deg, 0) + "\u00b0 of bank") + ", " +
         page_fixed(row.mass_kg, 0) + " kg";
}

/// No number in use is worse than any: the wing may stall unwarned.
bool is_less(const ProtectionRow& a, const ProtectionRow& b) {
  if (std::isfinite(a.margin_kt) != std::isfinite(b.margin_kt)) return !std::isfinite(a.margin_kt);
  return a.margin_kt < b.margin_kt;
}

/// The row in use with the least margin of each flap setting, in the order of the rows.
std::vector<const ProtectionRow*> least_rows(const Protection& protection) {
  std::vector<const ProtectionRow*> least;
  for (const ProtectionRow& row : protection.rows) {
    if (!row.in_use) continue;
    const auto same = std::find_if(least.begin(), least.end(), [&](const ProtectionRow* other) {
      return other->flap_deg == row.flap_deg;
    });
    if (same == least.end())
      least.push_back(&row);
    else if (is_less(row, **same))
      *same = &row;
  }
  return least;
}

std::string margin_text(const ProtectionRow& row, double wanted_kt) {
  if (!std::isfinite(row.margin_kt))
    return element("strong", escaped(row.note.empty() ? kNoNumber : row.note));
  const std::string text = page_signed(row.margin_kt, 1);
  return row.margin_kt < wanted_kt ? element("strong", text + " \u25bc") : text;
}

}  // namespace

std::string set_points(const Debrief& debrief) {
  std::string tables;
  for (const JudgedSet& set : debrief.page.judgement.sets) tables += set_table(set);
  if (tables.empty()) return text_element("p", "None was found.");
  return tables + html::list(debrief.page.set_points.warnings) +
         text_element("p",
                      "Ratio: probe differential over impact pressure, no unit. 95 %: half of the interval. "
                      "Speed: indicated, where the point belongs at the mass that the pilot entered. "
                      "Recorded: seconds from the start of log.csv.",
                      "class=\"note\"");
}

std::string protection(const Debrief& debrief) {
  const Protection& p = debrief.page.protection;
  const double wanted_kt = debrief.page.summary.wanted_margin_kt;
  if (p.rows.empty()) return text_element("p", "Not known: no warning was recorded.");
  std::string sentence = p.sentence;
  if (!sentence.empty() && sentence[0] == 'a') sentence[0] = 'A';
  html::Table table;
  table.headings = {"least margin in use, by flap setting", "kt above the stall"};
  table.numeric = {false, true};
  for (const ProtectionRow* row : least_rows(p))
    table.rows.push_back({escaped(flight_words(*row)), margin_text(*row, wanted_kt)});
  return text_element("p", sentence) + (table.rows.empty() ? "" : table.str()) +
         text_element("p",
                      "The card wants " + page_fixed(wanted_kt, 1) +
                          " kt (\u25bc: less); in the flight it was "
                          "taught in: " +
                          page_fixed(p.taught_margin_kt, 1) +
                          " kt. Truth of this aeroplane in smooth air, without the probe\u2019s lag.",
                      "class=\"note\"");
}

std::string verdict(const Debrief& debrief) {
  const Judgement& judgement = debrief.page.judgement;
  std::string inner = text_element("p", verdict_sentence(judgement), "class=\"sentence\"");
  if (!judgement.reason.empty()) inner += text_element("p", "Reason: " + judgement.reason);
  return inner + html::list(next_steps(judgement, debrief.page.summary));
}

}  // namespace stallwright::record
