#include "sim/study/page/study_page.hpp"

#include "sim/report/html.hpp"
#include "sim/study/page/page_parts.hpp"

namespace stallwright {
namespace {

std::string section(std::string_view heading, const std::string& inner) {
  return inner.empty() ? "" : html::element("section", html::text_element("h2", heading) + inner);
}

}  // namespace

std::string study_page(const StudyMap& map) {
  namespace parts = study_parts;
  std::string body = parts::header(map);
  body += section("How far off each set point comes out", parts::heat_maps(map));
  body += section("Each pilot, air by air", parts::error_panels(map));
  body +=
      section("How often a set is sent back, a warning late, a set out of order", parts::chance_maps(map));
  body += section("What matters most", parts::sensitivity(map));
  body += section("One thing changed at a time", parts::varied(map));
  body += section("How long to record", parts::windows(map));
  body += section("Rules of thumb", parts::rules(map));
  body += section("What was flown", parts::foot(map));
  return html::page("Study: " + map.aircraft + ", " + map.card, parts::style_sheet(), body);
}

}  // namespace stallwright
