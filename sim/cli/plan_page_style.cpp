#include "sim/cli/plan_page_style.hpp"

#include "sim/report/theme.hpp"

namespace stallwright::cli {

std::string plan_style_sheet() {
  return "@page { size: A4; margin: 7mm 11mm; }\n"
         "body { margin: 0; background: #fff; color: " +
         std::string(theme::kInk) + "; font: 14px/1.38 " + theme::kFonts + R"(; }
main { max-width: 900px; margin: 0 auto; padding: 18px 16px 40px; }
h1 { font-size: 23px; margin: 0 0 2px; }
h2 { font-size: 16px; margin: 14px 0 3px; padding-top: 4px; border-top: 2px solid #221f1c; }
p, ul { margin: 3px 0; }
ul { padding-left: 19px; }
.caution { font-weight: bold; }
dl { display: grid; grid-template-columns: 76px 1fr; gap: 1px 8px; margin: 7px 0; }
dt { font-weight: bold; }
dd { margin: 0; }
.verdict { border: 2.5px solid #221f1c; padding: 5px 11px; margin: 7px 0; }
.verdict .sentence { font-size: 19px; font-weight: bold; margin: 0; }
.verdict ul { list-style: none; padding: 0; }
.no { font-weight: bold; border-left: 6px solid #D55E00; padding-left: 6px; }
.floor { display: grid; grid-template-columns: 1fr 1fr; gap: 0 20px; align-items: start; }
.floor h2, .floor p:first-of-type { grid-column: 1 / 3; }
.floor p:first-of-type { font-size: 22px; font-weight: bold; border: 2.5px solid #221f1c; padding: 5px 11px; }
.pair { display: grid; grid-template-columns: 1fr 1fr; gap: 0 20px; align-items: start; }
.pair > * { min-width: 0; }
.balance .pair { grid-template-columns: 4fr 7fr; }
figure { margin: 4px 0; }
figure svg { display: block; width: 100%; height: auto; }
figcaption { font-size: 12px; }
table { border-collapse: collapse; width: 100%; margin: 4px 0; font-size: 13px; }
caption { text-align: left; padding-bottom: 2px; }
th, td { text-align: left; vertical-align: top; padding: 2px 6px; border: 1px solid #8d867d; font-weight: normal; }
thead th { vertical-align: bottom; font-weight: bold; background: #ece8e1; }
.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
tbody th { font-weight: bold; }
.speeds table { font-size: 15px; }
.record td, .record th { height: 21px; vertical-align: middle; }
.record tbody th { white-space: nowrap; }
.record td:last-child, .record thead th:last-child { width: 24%; }
.manual td { height: 24px; }
.manual tbody th { white-space: nowrap; }
.manual td:last-child { width: 76%; }
.manual td:nth-child(2) { width: 7%; }
.half td:last-child { width: 34%; }
.air th:first-child { width: 15%; }
.air td:nth-child(2) { width: 14%; }
.air td:nth-child(3) { width: 13%; }
.climb { display: grid; grid-template-columns: 1fr 1fr; gap: 0 20px; align-items: start; }
.climb h2 { grid-column: 1 / 3; }
.signed p { margin: 13px 0 0; white-space: pre-wrap; }
@media screen and (max-width: 760px) { .pair, .climb, .floor { display: block; } table { display: block; overflow-x: auto; } }
@media print {
  body { font-size: 9pt; line-height: 1.23; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 15pt; }
  h2 { font-size: 11pt; margin-top: 5pt; padding-top: 2px; break-after: avoid; }
  caption { break-after: avoid; }
  .fresh { break-before: page; }
  table { font-size: 8.8pt; }
  .speeds table { font-size: 9.6pt; }
  .speeds td, .speeds th { padding: 0.4px 4px; }
  .manual td { height: 20px; }
  .record td, .record th { height: 19px; }
  .half ul { padding-left: 14px; }
  .air table, .floor table { font-size: 8.4pt; }
  .verdict ul { columns: 2; column-gap: 20px; }
  th, td { padding: 1.2px 4px; }
  figure, tr, .verdict, section.keep { break-inside: avoid; }
}
)";
}

}  // namespace stallwright::cli
