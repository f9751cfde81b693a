#include "sim/report/debrief_page.hpp"

#include "sim/report/debrief_parts.hpp"
#include "sim/report/html.hpp"

namespace stallwright {
namespace {

/// `look` is a class of the style sheet: `fresh` starts a printed page (a grid of pictures would leave its
/// heading behind), `keep` stays on one.
std::string section(std::string_view heading, const std::string& inner, std::string_view look = "") {
  return inner.empty() ? ""
                       : html::element("section", html::text_element("h2", heading) + inner,
                                       look.empty() ? "" : "class=\"" + std::string(look) + "\"");
}

}  // namespace

std::string debrief_page(const DebriefInput& input) {
  using html::element;
  const std::string title = "Debrief: " + input.summary.aircraft + ", " + input.summary.card;
  std::string body = debrief::header(input) + debrief::verdict(input);
  body += section("Set points against the truth",
                  debrief::set_point_charts(input) + debrief::set_point_tables(input));
  body += section("What the warning protects", debrief::protection_table(input), "keep");
  body += section("What the errors are made of", debrief::split_charts(input));
  body += section("Three readings of each point", debrief::readings_charts(input));
  body += section("Where the uncertainty comes from", debrief::budgets(input), "fresh");
  body += section("The flight", debrief::whole_flight(input));
  body += section("The records, close up", debrief::record_close_ups(input), "fresh");
  body += section("Events and counts", debrief::events_and_counts(input), "keep");
  body += section("Cautions", debrief::caution_list());
  return html::page(title, debrief::style_sheet(), body);
}

}  // namespace stallwright
