// Head, foot and look of the study page.
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/theme.hpp"
#include "sim/report/verdict_text.hpp"
#include "sim/study/page/page_parts.hpp"
#include "sim/study/page/rough_air_cost.hpp"

namespace stallwright::study_parts {
namespace {

using html::element;
using html::text_element;

std::string fact(const std::string& name, const std::string& text) {
  return text.empty() ? "" : element("div", text_element("dt", name) + text_element("dd", text));
}

struct Counts {
  int sorties = 0, failed = 0;
};

Counts counts_of(const StudyMap& map) {
  Counts counts;
  for (std::size_t i = 0; i < map.flown_cells(); ++i) {
    counts.sorties += map.flown_cell(i).sorties;
    counts.failed += map.flown_cell(i).failed;
  }
  return counts;
}

}  // namespace

std::string made_by(const StudyMap& map) {
  return map.aircraft + " (invented), " + map.card + ", " + map.sensors + " sensors; recipe " +
         map.recipe_key + ", seeds from " + std::to_string(map.first_seed) + ".";
}

std::string header(const StudyMap& map) {
  const Counts counts = counts_of(map);
  const std::string facts =
      fact("Aeroplane", map.aircraft + " (invented)") + fact("Card", map.card) +
      fact("Sensors", map.sensors) +
      fact("Flown", std::to_string(counts.sorties) + " sorties in " + std::to_string(map.flown_cells()) +
                        " groups; " + std::to_string(counts.failed) + " were not finished");
  return element("header",
                 text_element("h1", "What rough air costs: " + map.aircraft + ", " + map.card) +
                     element("section", text_element("p", rough_air_sentence(map), "class=\"sentence\""),
                             "class=\"verdict\"") +
                     text_element("p", cautions().front(), "class=\"caution\"") + element("dl", facts));
}

std::string foot(const StudyMap& map) {
  return element("dl",
                 fact("Recipe", map.recipe_key + ": " + map.recipe + ". " + map.summary) +
                     fact("Aeroplane", map.aircraft_key + ", airframe " + std::to_string(map.airframe_seed)) +
                     fact("Card", map.card_key) +
                     fact("Seeds", std::to_string(map.first_seed) + " and up, the same in every cell") +
                     fact("Study", map.identity) +
                     fact("Flown with", map.version.empty() ? "" : "Stallwright " + map.version)) +
         html::list(cautions(), "class=\"cautions\"");
}

std::string style_sheet() {
  return "@page { size: A4 landscape; margin: 12mm; }\n"
         "body { margin: 0; background: #fff; color: " +
         std::string(theme::kInk) + "; font: 17px/1.45 " + theme::kFonts + R"(; }
main { max-width: 1320px; margin: 0 auto; padding: 22px 24px 48px; }
h1 { font-size: 30px; margin: 0 0 8px; }
h2 { font-size: 24px; margin: 40px 0 8px; padding-top: 10px; border-top: 2px solid #221f1c; }
p { margin: 6px 0; max-width: 1100px; }
.caution { font-weight: bold; }
dl { display: grid; grid-template-columns: 1fr 1fr; gap: 3px 30px; margin: 12px 0; }
dl div { display: grid; grid-template-columns: 110px 1fr; }
dt { color: #5d564f; }
dd { margin: 0; overflow-wrap: anywhere; }
.verdict { border: 3px solid #221f1c; padding: 14px 20px; margin: 12px 0 14px; }
.verdict .sentence { font-size: 28px; line-height: 1.35; font-weight: bold; margin: 0; max-width: none; }
ul { margin: 6px 0; padding-left: 22px; }
figure { margin: 8px 0 14px; }
figure svg { display: block; max-width: 100%; height: auto; }
.note, .small { font-size: 14.5px; color: #5d564f; }
.small { display: block; }
table { border-collapse: collapse; width: 100%; margin: 10px 0 16px; }
caption { text-align: left; font-weight: bold; padding-bottom: 4px; }
th, td { text-align: left; vertical-align: top; padding: 4px 9px; border-bottom: 1px solid #cfc9c0; font-weight: normal; }
thead th { border-bottom: 2px solid #221f1c; vertical-align: bottom; color: #5d564f; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
thead .number { white-space: normal; }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 8px 34px; align-items: start; }
.three { display: grid; grid-template-columns: 1fr 1fr 1fr; gap: 4px 20px; align-items: start; }
.pair > *, .three > * { min-width: 0; }
@media screen and (max-width: 900px) { .pair, .three, dl { grid-template-columns: 1fr; } table { display: block; overflow-x: auto; } }
@media print {
  body { font-size: 10pt; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 18pt; }
  h2 { font-size: 13.5pt; margin-top: 14pt; }
  h2, caption { break-after: avoid; }
  .verdict .sentence { font-size: 15pt; }
  th, td { padding: 2px 5px; }
  figure, tr, .verdict, .pair > div { break-inside: avoid; }
  .note, .small, dt, thead th { color: #221f1c; font-size: 8.5pt; }
  .fresh { break-before: page; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
)";
}

}  // namespace stallwright::study_parts
