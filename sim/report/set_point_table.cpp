// Tables of the debrief: the set points, and the uncertainty budget of each.
#include <algorithm>
#include <cmath>

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::debrief {
namespace {

using html::element;
using html::text_element;

std::string flags_text(const SetPoint& point) {
  std::string text;
  for (const std::string& flag : point.flags) text += (text.empty() ? "" : "; ") + flag;
  return text.empty() ? "none" : text;
}

std::string holds_truth(const JudgedPoint& point) {
  if (!std::isfinite(point.error_kt)) return kNoNumber;
  return point.covered ? "yes" : element("strong", "NO");
}

std::string table_of(const JudgedSet& set) {
  html::Table table;
  table.caption = flap_words(set.flap_deg) + ", " + page_fixed(set.mass_kg, 0) + " kg; 1 g stall at " +
                  page_fixed(set.stall_speed_kt, 1) + " kt";
  table.headings = {
      "set point",        "ratio \u00b1 (95 %)", "truth",    "error, \u00b0", "error, kt", "\u00b1, kt",
      "95 % holds truth", "margin, kt (true)",   "in order", "flags"};
  table.numeric = {false, true, true, true, true, true, false, true, false, false};
  for (std::size_t i = 0; i < set.points.size(); ++i) {
    const JudgedPoint& p = set.points[i];
    const std::string order = order_word(set, i);
    table.rows.push_back(
        {text_element("strong", p.measured.name), plus_minus(p.measured.ratio, expanded_ratio(p.measured), 4),
         page_fixed(p.true_ratio, 4), page_signed(p.error_deg, 2), page_signed(p.error_kt, 2),
         page_fixed(p.expanded_kt, 2), holds_truth(p),
         page_fixed(p.margin_kt, 1) + " (" + page_fixed(p.true_margin_kt, 1) + ")",
         order == "yes" ? order : element("strong", order), escaped(flags_text(p.measured))});
  }
  return element("div", table.str(), "class=\"keep\"");
}

double sum_of_squares(const std::vector<BudgetLine>& budget) {
  double sum = 0.0;
  for (const BudgetLine& line : budget)
    if (std::isfinite(line.u_ratio)) sum += line.u_ratio * line.u_ratio;
  return sum;
}

/// A share of the variance as a bar that prints.
std::string bar(double share) {
  Svg svg(48, 10, "share of the variance");
  svg.box({0.5, 1.5, 47 * std::clamp(share, 0.0, 1.0), 7}, theme::kMeasured);
  svg.frame({0.5, 1.5, 47, 7}, {theme::kInk, 0.7});
  return svg.str();
}

const Reading& adopted_reading(const SetPoint& point) {
  return point.is_stall ? point.max_lift : point.lift_corrected;
}

std::string summary_line(const JudgedPoint& judged, double variance) {
  const SetPoint& point = judged.measured;
  const double kt = knots_per_ratio(judged);
  const auto dominant = std::max_element(point.budget.begin(), point.budget.end(),
                                         [](const auto& a, const auto& b) { return a.u_ratio < b.u_ratio; });
  const double type_a = adopted_reading(point).type_a_u;
  const double share = dominant->u_ratio * dominant->u_ratio / variance;
  return element("p",
                 "Largest: " + text_element("strong", dominant->name) + " (" + page_fixed(100.0 * share, 0) +
                     " % of the variance). Combined u = " + page_fixed(point.u, 4) + " (" +
                     page_fixed(point.u * kt, 2) + " kt); Type A alone " + page_fixed(type_a, 4) + " (" +
                     page_fixed(type_a * kt, 2) + " kt).",
                 "class=\"note\"");
}

std::string budget_of(const JudgedSet& set, const JudgedPoint& judged) {
  const SetPoint& point = judged.measured;
  const double variance = sum_of_squares(point.budget);
  const std::string name = flap_words(set.flap_deg) + ", " + point.name;
  if (point.budget.empty() || variance <= 0.0)
    return element("div", text_element("p", name + ": no uncertainty budget, since no set point was found."));
  const double kt = knots_per_ratio(judged);
  html::Table table;
  table.caption = name;
  table.headings = {"component", "type", "u, ratio", "u, kt", "share"};
  table.numeric = {false, false, true, true, true};
  std::vector<BudgetLine> lines = point.budget;
  std::stable_sort(lines.begin(), lines.end(),
                   [](const BudgetLine& a, const BudgetLine& b) { return a.u_ratio > b.u_ratio; });
  for (const BudgetLine& line : lines) {
    const double share = line.u_ratio * line.u_ratio / variance;
    const std::string note = line.note.empty() ? "" : text_element("span", line.note, "class=\"small\"");
    table.rows.push_back({escaped(line.name) + note, std::string(1, line.kind), page_fixed(line.u_ratio, 5),
                          page_fixed(line.u_ratio * kt, 2),
                          page_fixed(100.0 * share, 0) + " %" + bar(share)});
  }
  return element("div", table.str() + summary_line(judged, variance));
}

}  // namespace

std::string set_point_tables(const DebriefInput& input) {
  std::string tables;
  for (std::size_t i = 0; i < input.judgement.sets.size(); ++i) {
    tables += table_of(input.judgement.sets[i]);
    if (i < input.set_points.sets.size()) tables += html::list(input.set_points.sets[i].order_notes);
  }
  return tables +
         text_element("p",
                      "Errors are measured less true. Positive degrees: the set point lies at more angle of "
                      "attack than it should and warns late; positive knots: it is faster than it should be "
                      "and warns early. Margin: speed above the 1 g stall.",
                      "class=\"note\"");
}

std::string budgets(const DebriefInput& input) {
  std::string tables;
  for (const JudgedSet& set : input.judgement.sets)
    for (const JudgedPoint& point : set.points) tables += budget_of(set, point);
  if (tables.empty()) return "";
  return text_element(
             "p",
             "Standard uncertainties of the adopted reading. Type A comes from the scatter of the record, "
             "type B from what is known otherwise. Type A alone says too little.",
             "class=\"note\"") +
         element("div", tables, "class=\"pair\"");
}

}  // namespace stallwright::debrief
