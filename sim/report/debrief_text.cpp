// The worded parts of the debrief page: head, verdict, events, cautions, and the style sheet.
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::debrief {
namespace {

using html::element;
using html::text_element;

void add_fact(std::string& facts, std::string_view name, const std::string& value) {
  if (!value.empty()) facts += element("div", text_element("dt", name) + text_element("dd", value));
}

std::string mass_words(const SortieSummary& summary) {
  std::string words = page_fixed(summary.mass_kg, 0) + " kg";
  if (std::isfinite(summary.reference_mass_kg))
    words += " (card speeds are for " + page_fixed(summary.reference_mass_kg, 0) + " kg)";
  return summary.loading.empty() ? words : words + ": " + summary.loading;
}

std::string air_fact(const SortieSummary& summary) {
  std::string words = summary.air;
  if (std::isfinite(summary.sigma_kt))
    words += ", gusts of \u03c3 = " + page_fixed(summary.sigma_kt, 1) + " kt at the working altitude";
  return summary.air_text.empty() ? words : words + ". " + summary.air_text;
}

std::string count_or_blank(int count) { return count == 0 ? "0" : element("strong", std::to_string(count)); }

std::string counts_table(const std::vector<PointCount>& counts) {
  html::Table table;
  table.caption = "What it took to fly each point";
  table.headings = {"point",       "flaps",         "records (wanted)", "attempts",          "timed out",
                    "left a band", "off condition", "given up",         "unintended stalls", "knocked off"};
  table.numeric = {false, true, true, true, true, true, true, true, true, true};
  for (const PointCount& c : counts)
    table.rows.push_back({escaped(c.point), shortest(c.flap_deg) + "\u00b0",
                          std::to_string(c.records) + " (" + std::to_string(c.records_wanted) + ")",
                          std::to_string(c.attempts), count_or_blank(c.timeouts), count_or_blank(c.left_band),
                          count_or_blank(c.forced), count_or_blank(c.given_up),
                          count_or_blank(c.unintended_stalls), count_or_blank(c.knocked_off)});
  return counts.empty() ? "" : table.str();
}

std::string events_table(const std::vector<SortieEvent>& events) {
  if (events.empty())
    return text_element(
        "p", "Nothing out of the ordinary: no unintended stall, no knock-it-off, no record off condition.");
  html::Table table;
  table.caption = "What happened (\u2715: danger)";
  table.headings = {"time, s", "what", "point", "seen"};
  table.numeric = {false, false, false, false};
  for (const SortieEvent& e : events)
    table.rows.push_back(
        {page_fixed(e.t_s, 0),
         e.danger ? element("strong", "\u2715 " + escaped(e.kind), "class=\"danger\"") : escaped(e.kind),
         escaped(e.point), escaped(e.text)});
  return table.str();
}

}  // namespace

std::string header(const DebriefInput& input) {
  const SortieSummary& s = input.summary;
  std::string facts;
  add_fact(facts, "Aeroplane", s.aircraft + " (invented). " + s.aircraft_summary);
  add_fact(facts, "Card", s.card_summary.empty() ? s.card : s.card + ": " + s.card_summary);
  add_fact(facts, "Air", air_fact(s));
  add_fact(facts, "Pilot", s.pilot);
  add_fact(facts, "Sensors", s.sensors);
  add_fact(facts, "Seed", std::to_string(s.seed));
  add_fact(facts, "Mass", mass_words(s));
  add_fact(facts, "Flown with", s.version.empty() ? "" : "Stallwright " + s.version);
  return element("header", text_element("h1", "Debrief: " + s.aircraft + ", " + s.card) +
                               text_element("p", cautions().front(), "class=\"caution\"") +
                               element("dl", facts));
}

std::string verdict(const DebriefInput& input) {
  std::string inner = text_element("p", verdict_sentence(input.judgement), "class=\"sentence\"");
  if (!input.judgement.reason.empty()) inner += text_element("p", "Reason: " + input.judgement.reason);
  inner += text_element("h3", "What to do next") + html::list(next_steps(input.judgement, input.summary));
  if (!input.set_points.warnings.empty())
    inner += text_element("h3", "Warnings from the reduction") + html::list(input.set_points.warnings);
  return element("section", inner, "class=\"verdict\"");
}

std::string events_and_counts(const DebriefInput& input) {
  return events_table(input.summary.events) + counts_table(input.summary.counts);
}

std::string caution_list() { return html::list(cautions(), "class=\"cautions\""); }

std::string style_sheet() {
  // Sizes in px on the screen; the printed page narrows to the paper by itself, and pictures scale.
  return "@page { size: A4; margin: 14mm 13mm; }\n"
         "body { margin: 0; background: #fff; color: " +
         std::string(theme::kInk) + "; font: 14px/1.45 " + theme::kFonts + R"(; }
main { max-width: 980px; margin: 0 auto; padding: 20px 16px 40px; }
h1 { font-size: 25px; margin: 0 0 4px; }
h2 { font-size: 19px; margin: 34px 0 8px; padding-top: 8px; border-top: 2px solid #221f1c; }
h3 { font-size: 15px; margin: 14px 0 4px; }
p { margin: 5px 0; }
.caution { font-weight: bold; }
dl { display: grid; grid-template-columns: 1fr 1fr; gap: 3px 26px; margin: 12px 0; }
dl div { display: grid; grid-template-columns: 88px 1fr; }
dt { color: #5d564f; }
dd { margin: 0; }
.verdict { border: 2px solid #221f1c; padding: 10px 16px; margin: 14px 0; }
.verdict .sentence { font-size: 20px; font-weight: bold; margin: 0; }
ul { margin: 4px 0; padding-left: 20px; }
figure { margin: 12px 0 18px; }
figure svg { display: block; width: 100%; height: auto; }
figcaption, .note { font-size: 12px; color: #5d564f; }
table { border-collapse: collapse; width: 100%; margin: 12px 0; font-size: 13px; }
caption { text-align: left; font-weight: bold; padding-bottom: 3px; }
th, td { text-align: left; vertical-align: top; padding: 3px 7px; border-bottom: 1px solid #cfc9c0; font-weight: normal; }
thead th { border-bottom: 1.5px solid #221f1c; vertical-align: bottom; font-size: 12px; color: #5d564f; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
.danger { border-left: 5px solid #D55E00; padding-left: 5px; }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 4px 22px; align-items: start; }
.pair > div { min-width: 0; }
.small { font-size: 12px; color: #5d564f; display: block; }
td svg { display: inline-block; margin-left: 7px; vertical-align: -1px; }
thead .number { white-space: normal; }
.keep tbody th { white-space: nowrap; }
@media screen and (max-width: 760px) { dl, .pair { grid-template-columns: 1fr; } table { display: block; overflow-x: auto; } }
@media print {
  body { font-size: 9.5pt; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 16pt; }
  h2 { font-size: 12.5pt; margin-top: 16pt; break-after: avoid; }
  h3, caption { break-after: avoid; }
  .fresh { break-before: page; }
  table { font-size: 8.5pt; }
  th, td { padding: 2px 4px; }
  figure, tr, .verdict, .pair > div, .keep { break-inside: avoid; }
  figcaption, .note, .small, dt, thead th { color: #221f1c; }
}
)";
}

}  // namespace stallwright::debrief
