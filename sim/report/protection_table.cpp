// What the recorded warning protects, as a table: a row a flight, a column a bank.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/truth/truth_text.hpp"

namespace stallwright::debrief {
namespace {

std::string flight_words(const ProtectionRow& row) {
  return flaps_text(row.flap_deg) + (row.power == PowerRule::idle ? ", idle, " : ", level power, ") +
         page_fixed(row.mass_kg, 0) + " kg";
}

std::string cell(const ProtectionRow& row, double wanted_kt) {
  if (!std::isfinite(row.margin_kt)) return html::element("strong", escaped(row.note));
  const std::string text = page_signed(row.margin_kt, 1);
  if (!row.in_use) return "(" + text + ")";
  return row.margin_kt < wanted_kt ? html::element("strong", text + " \u25bc") : text;
}

}  // namespace

std::string protection_table(const DebriefInput& input) {
  const Protection& p = input.protection;
  if (p.rows.empty()) return "";
  html::Table table;
  table.caption = "Knots between the warning as recorded and the stall";
  table.headings = {"flight"};
  table.numeric = {false};
  std::vector<std::vector<const ProtectionRow*>> flights;
  for (const ProtectionRow& row : p.rows) {
    const auto same = std::find_if(flights.begin(), flights.end(), [&](const auto& flight) {
      return flight[0]->flap_deg == row.flap_deg && flight[0]->power == row.power &&
             flight[0]->heavy == row.heavy;
    });
    if (same == flights.end())
      flights.push_back({&row});
    else
      same->push_back(&row);
  }
  for (const ProtectionRow* row : flights.front()) {
    table.headings.push_back(row->bank_deg == 0.0 ? "wings level"
                                                  : page_fixed(row->bank_deg, 0) + "\u00b0 of bank");
    table.numeric.push_back(true);
  }
  for (const auto& flight : flights) {
    std::vector<std::string> line = {escaped(flight_words(*flight[0]))};
    for (const ProtectionRow* row : flight) line.push_back(cell(*row, input.summary.wanted_margin_kt));
    table.rows.push_back(line);
  }
  std::string sentence = p.sentence;
  if (!sentence.empty()) sentence[0] = 'A';
  return html::text_element("p", sentence) + table.str() +
         html::text_element(
             "p",
             "Truth of this aeroplane in smooth air, with the probe's own lag left out. In brackets: "
             "outside the use that the card states for the warning (its own flap settings, turns up to its "
             "bank); a flap setting without a set of its own is shown with the warning of the nearest one. "
             "\u25bc: less than the " +
                 page_fixed(input.summary.wanted_margin_kt, 1) + " kt that the card wants.",
             "class=\"note\"");
}

}  // namespace stallwright::debrief
