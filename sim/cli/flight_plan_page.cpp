#include <string_view>
#include <utility>

#include "sim/cli/envelope_chart.hpp"
#include "sim/cli/plan_page_style.hpp"
#include "sim/cli/plan_sections.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

using html::element;
using html::text_element;

std::string table_html(const PlanTable& table) {
  html::Table out{table.caption, table.headings, table.numeric, {}};
  for (const auto& row : table.rows) {
    out.rows.emplace_back();
    for (const std::string& cell : row) out.rows.back().push_back(escaped(cell));
  }
  return out.str();
}

std::string air_table(const std::vector<AirItem>& air) {
  PlanTable table{"", {"what", "go if", "observed", "because"}, {false, false, false, false}, {}};
  for (const AirItem& item : air)
    table.rows.push_back({item.what, item.wanted, "", item.reason + " (" + item.basis + ")"});
  return table_html(table);
}

bool looks(const PlanSection& section, std::string_view as) {
  return section.look.find(as) != std::string::npos;
}

std::string section_html(const PlanSection& section, const FlightPlan& plan) {
  std::string words, tables;
  for (const PlanTable& table : section.tables) tables += table_html(table);
  if (!section.air.empty()) tables += air_table(section.air);
  if (looks(section, "list"))
    words = html::list(section.lines);
  else
    for (const std::string& line : section.lines) words += text_element("p", line);
  std::string inner = looks(section, "floor") ? words + tables : tables + words;
  if (looks(section, "balance"))
    inner = tables + element("div",
                             html::figure(envelope_chart(plan), "Envelope; the diamond is today's load") +
                                 element("div", words),
                             "class=\"pair\"");
  return element("section", text_element("h2", section.heading) + inner, "class=\"" + section.look + "\"");
}

std::string verdict_html(const FlightPlan& plan) {
  std::string items;
  for (const GoItem& item : plan.items)
    items += text_element("li", (item.ok ? "yes: " : "NO: ") + item.text, item.ok ? "" : "class=\"no\"");
  for (const std::string& question : crew_questions()) items += text_element("li", "\u2610 " + question);
  const char* sentence =
      plan.go() ? "Plan: go, if the open boxes can be ticked." : "Plan: NO GO as it stands.";
  return element("section", text_element("p", sentence, "class=\"sentence\"") + element("ul", items),
                 "class=\"verdict\"");
}

std::string sheet(const FlightPlan& plan, int number) {
  std::string inner, halves;
  for (const PlanSection& section : plan_sections(plan)) {
    if (section.sheet != number) continue;
    const bool half = looks(section, "half");
    if (!half && !halves.empty()) inner += element("div", std::exchange(halves, ""), "class=\"pair\"");
    (half ? halves : inner) += section_html(section, plan);
  }
  if (number == 3)
    inner += element("section", text_element("h2", "Cautions") + html::list(cautions()), "class=\"keep\"");
  return number == 1 ? inner : element("div", inner, "class=\"fresh\"");
}

}  // namespace

std::string plan_page(const FlightPlan& plan) {
  const std::string title = "Flight plan: " + plan.flight.type.name + " (invented), " + plan.flight.card.name;
  std::string facts;
  for (const PlanFact& fact : plan_facts(plan))
    facts += text_element("dt", fact.name) + text_element("dd", fact.value);
  const std::string body = text_element("h1", title) +
                           text_element("p", cautions().front(), "class=\"caution\"") + element("dl", facts) +
                           verdict_html(plan) + sheet(plan, 1) + sheet(plan, 2) + sheet(plan, 3);
  return html::page(title, plan_style_sheet(), body);
}

}  // namespace stallwright::cli
