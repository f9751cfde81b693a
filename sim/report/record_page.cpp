#include "sim/report/record_page.hpp"

#include "sim/report/html.hpp"
#include "sim/report/record_parts.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright {
namespace record {
namespace {

using html::element;
using html::text_element;

std::string written_or_line(const std::string& text, std::string_view look) {
  return text.empty() ? text_element("span", "", "class=\"line " + std::string(look) + "\"")
                      : text_element("strong", text);
}

std::string name_list(const Who& who) {
  std::string names;
  for (const std::string& name : who.names) names += (names.empty() ? "" : ", ") + name;
  return names;
}

}  // namespace

std::string section(std::string_view heading, std::string_view source, const std::string& inner) {
  if (inner.empty()) return "";
  const std::string from =
      source.empty() ? "" : text_element("span", "from " + std::string(source), "class=\"from\"");
  return element("section", element("h2", escaped(heading) + from) + inner);
}

std::string header(const Debrief& debrief, const Who& who) {
  const SortieSummary& s = debrief.page.summary;
  const std::string when = text_element("span", "Date: ") + written_or_line(who.date, "short");
  const std::string names = text_element("span", "Who: ") + written_or_line(name_list(who), "long");
  return element("header", text_element("h1", "Record of a rehearsed sortie: " + s.aircraft + ", " + s.card) +
                               text_element("p", cautions().front(), "class=\"caution\"") +
                               element("p", when + names, "class=\"who\""));
}

std::string further_cautions() {
  // The first stands at the head.
  std::vector<std::string> rest = cautions();
  rest.erase(rest.begin());
  return html::list(rest);
}

std::string sign_off(const Debrief& debrief, const Who& who) {
  const SortieSummary& s = debrief.page.summary;
  html::Table table;
  table.headings = {"name", "as (pilot, instructor, \u2026)", "signature", "date"};
  table.numeric = {false, false, false, false};
  for (const std::string& name : who.names) table.rows.push_back({escaped(name), "", "", ""});
  // Two hands at least: who flew, and who went through it with them.
  while (table.rows.size() < 2) table.rows.push_back({"", "", "", ""});
  return element("div", table.str(), "class=\"signed\"") +
         text_element("p",
                      // Named again, since this may be a second sheet.
                      "Signed for having read and talked over this record of " + s.aircraft + ", " + s.card +
                          " (" + made_by(s) +
                          "). It is no training credit, no endorsement and no leave to fly.",
                      "class=\"note\"");
}

std::string style_sheet() {
  return "@page { size: A4; margin: 11mm 13mm; }\n"
         "body { margin: 0; background: #fff; color: " +
         std::string(theme::kInk) + "; font: 12px/1.35 " + theme::kFonts + R"(; }
main { max-width: 760px; margin: 0 auto; padding: 18px 16px 30px; }
h1 { font-size: 19px; margin: 0 0 3px; }
h2 { font-size: 13.5px; margin: 11px 0 3px; padding-top: 4px; border-top: 1.5px solid #221f1c; display: flex; justify-content: space-between; align-items: baseline; gap: 16px; }
.from { font-size: 10px; font-weight: normal; }
p { margin: 3px 0; }
.caution { font-weight: bold; }
.who { display: grid; grid-template-columns: auto 1fr auto 2fr; gap: 4px 8px; align-items: end; margin: 9px 0 4px; overflow-wrap: anywhere; }
.line { border-bottom: 1px solid #221f1c; height: 20px; }
.halves { display: grid; grid-template-columns: 3fr 2fr; gap: 0 20px; align-items: start; }
dl { margin: 0; }
dl div { display: grid; grid-template-columns: 78px 1fr; padding: 1px 0; }
dd { margin: 0; overflow-wrap: anywhere; }
.sentence { font-size: 15px; font-weight: bold; }
ul { margin: 2px 0; padding-left: 18px; }
table { border-collapse: collapse; width: 100%; margin: 3px 0 6px; font-size: 11px; }
caption { text-align: left; font-weight: bold; padding-bottom: 2px; }
th, td { text-align: left; vertical-align: top; padding: 2px 5px; border-bottom: 1px solid #a39c92; font-weight: normal; overflow-wrap: anywhere; }
thead th { border-bottom: 1.5px solid #221f1c; vertical-align: bottom; font-size: 10.5px; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
thead .number { white-space: normal; }
.points table { table-layout: fixed; }
.points tbody th { font-weight: bold; }
.points th:nth-child(1) { width: 15%; }
.points th:nth-child(2) { width: 9%; }
.points th:nth-child(3) { width: 11%; }
.points th:nth-child(4) { width: 9%; }
.points th:nth-child(5) { width: 8%; }
.points th:nth-child(6) { width: 23%; }
.whole { white-space: nowrap; }
.option { display: inline-block; max-width: 100%; }
.signed td, .signed tbody th { height: 26px; vertical-align: bottom; }
.signed th { width: 28%; }
.note { font-size: 10.5px; }
pre { margin: 3px 0; font: 10.5px/1.35 'DejaVu Sans Mono', monospace; white-space: pre-wrap; overflow-wrap: anywhere; }
@media screen and (max-width: 620px) { .halves, .who { grid-template-columns: 1fr; } table { display: block; overflow-x: auto; } }
@media print {
  body { font-size: 8.4pt; line-height: 1.24; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 13.5pt; }
  h2 { font-size: 9.5pt; margin: 4pt 0 1pt; padding-top: 2pt; break-after: avoid; }
  p, ul { margin: 1.5pt 0; }
  .sentence { font-size: 10.5pt; }
  table { font-size: 8pt; margin: 1.5pt 0 3pt; }
  th, td { padding: 1px 4px; }
  .from, .note, thead th, pre { font-size: 7.4pt; }
  section, tr, .points { break-inside: avoid; }
}
)";
}

}  // namespace record

std::string record_page(const Debrief& debrief, const Who& who) {
  using html::element;
  const SortieSummary& s = debrief.page.summary;
  const std::string halves =
      element("div", record::flight(debrief) + record::loading(debrief), "class=\"halves\"");
  std::string body = record::header(debrief, who);
  body += record::section("What was flown", "sortie.json; limits: aircraft.toml", halves);
  body += record::section("Set points", "set-points.json; order, mass, \u00b1 kt and stall: judgement.json",
                          record::set_points(debrief));
  body += record::section("What the warning protects", "judgement.json (protection); wanted: card.toml",
                          record::protection(debrief));
  body += record::section("Verdict", "judgement.json; wanted: card.toml", record::verdict(debrief));
  body += record::section("To fly it again", "sortie.json", record::fly_it_again(debrief.flown));
  body += record::section("Cautions", "", record::further_cautions());
  body += record::section("Signed", who.empty() ? "" : "who.json", record::sign_off(debrief, who));
  return html::page("Record: " + s.aircraft + ", " + s.card, record::style_sheet(), body);
}

}  // namespace stallwright
