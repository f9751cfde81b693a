// The page of a study: what must stand in it, and in what form.
#include <algorithm>
#include <catch2/catch.hpp>

#include "sim/report/number_text.hpp"
#include "sim/study/map/rule_tables.hpp"
#include "sim/study/page/rough_air_cost.hpp"
#include "sim/study/page/shaded_grid.hpp"
#include "sim/study/page/study_page.hpp"
#include "tests/sim/report/page_checks.hpp"
#include "tests/sim/study/made_up_map.hpp"

using namespace stallwright;
using page_checks::count_of;
using study_test::made_up_map;

namespace {

void require_in(const std::string& page, const std::string& text) {
  INFO("missing: " << text);
  CHECK(count_of(page, text) > 0);
}

}  // namespace

TEST_CASE("the study page holds each number of the map", "[study][page]") {
  const StudyMap map = made_up_map();
  const std::string page = study_page(map);
  for (const MapCell& cell : map.cells) {
    for (const std::size_t line : {0u, 2u}) {
      require_in(page, ">" + page_fixed(cell.lines[line].rms_error_kt.value, 1) + "<");
      require_in(page, ">95 % within " + page_fixed(cell.lines[line].p95_error_kt.value, 1) + "<");
    }
    require_in(page, ">" + page_fixed(100.0 * cell.late_warning.share(), 1) + " %<");
    require_in(page, ">" + page_fixed(100.0 * cell.out_of_order.share(), 1) + " %<");
    require_in(page, "to " + page_fixed(100.0 * cell.late_warning.interval.upper, 1) + " %<");
    require_in(page, "to " + page_fixed(100.0 * cell.out_of_order.interval.upper, 1) + " %<");
    if (cell.hand == 0) require_in(page, page_fixed(cell.lines[1].rms_error_kt.value, 2));  // half the record
  }
  for (const LineResult& line : {map.varied[0].lines[0], map.varied[0].lines[2]}) {
    require_in(page, page_fixed(line.rms_error_kt.value, 2));
    require_in(page, page_fixed(line.rms_error_kt.interval.lower, 2) + " to " +
                         page_fixed(line.rms_error_kt.interval.upper, 2));
  }
  for (const char* text : {"0.37 (0.17 to 0.57)", "0.61 (0.43 to 0.83)", "0.13 (\u22120.44 to 0.29)",
                           "1.71 (0.27 to 2.34)", "64 base points", "576 sorties", "63 base points or more"})
    require_in(page, text);
}

TEST_CASE("the study page says what was flown, with which seeds, and the cautions", "[study][page]") {
  const StudyMap map = made_up_map();
  const std::string page = study_page(map);
  for (const char* text : {"made-up: Made up. For a test.", "4711 and up", "airframe 31", "0123456789abcdef",
                           "Stallwright 9.8.7", "Marram &amp; &lt;sons&gt;", "entry rate: 2 kt/s",
                           "Stalls kill.", "flight manual", "The aeroplane is invented", "7.5 s"})
    require_in(page, text);
  require_in(page, escaped(rough_air_sentence(map)));
  CHECK(page.find(escaped(rough_air_sentence(map))) < page.find("<dl>"));
}

TEST_CASE("the rules of thumb on the study page are those of the summary", "[study][page]") {
  const StudyMap map = made_up_map();
  const std::string page = study_page(map);
  REQUIRE(rule_tables(map).size() == 3);
  for (const RuleTable& rule : rule_tables(map)) {
    require_in(page, escaped(rule.title));
    for (const auto& row : rule.rows)
      for (const std::string& text : row) require_in(page, ">" + escaped(text) + "<");
  }
}

TEST_CASE("a cell with few sorties has no percentile on the study page", "[study][page]") {
  StudyMap map = made_up_map();
  CHECK(count_of(study_page(map), ">no percentile<") == 0);
  MapCell& few = map.cells[map.cell_index(0, 1)];
  for (LineResult& line : few.lines) line = study_test::made_up_line(1.23, kLeastForPercentile - 1);
  CHECK(count_of(study_page(map), ">no percentile<") == 2);  // warning and stall
  CHECK(count_of(study_page(made_up_map(199)), "95 % within") == 0);
}

TEST_CASE("the study page is one well-formed file that loads nothing and runs nothing", "[study][page]") {
  const std::string page = study_page(made_up_map());
  CHECK(page_checks::imbalance(page).empty());
  CHECK_FALSE(page_checks::has_bare_ampersand(page));
  for (const char* text : {"<script", "http://", "https://", "url(", "nan", "inf<"}) {
    INFO(text);
    const std::size_t names =
        std::string(text) == "http://" ? count_of(page, "xmlns=\"http://www.w3.org/2000/svg\"") : 0;
    CHECK(count_of(page, text) == names);
  }
}

TEST_CASE("a study without varied cells, indices or anything found still has a page", "[study][page]") {
  StudyMap map = made_up_map();
  map.varied.clear();
  map.sensitivity = {};
  for (MapCell& cell : map.cells)
    for (LineResult& line : cell.lines) line = {};
  for (MapCell& cell : map.cells) cell.late_warning = cell.out_of_order = {};
  const std::string page = study_page(map);
  CHECK(page_checks::imbalance(page).empty());
  CHECK_FALSE(page_checks::has_bare_ampersand(page));
  require_in(page, ">not found<");
  CHECK(count_of(page, "What matters most") == 0);
  CHECK(count_of(page, "One thing changed") == 0);
}

TEST_CASE("shades step at the bounds and each bound has an edge of its own form", "[study][page]") {
  const std::array<double, 3> bounds{1.0, 2.0, 3.0};
  CHECK(shade_of(0.9, bounds) == 0);
  CHECK(shade_of(1.0, bounds) == 1);
  CHECK(shade_of(2.9, bounds) == 2);
  CHECK(shade_of(3.0, bounds) == 3);
  CHECK(shade_of(kNone, bounds) == -1);
  const auto edges = [&](double left, double right) {
    ShadedGrid grid;
    grid.rows = {"row"};
    grid.columns = {"a", "b"};
    grid.bounds = bounds;
    grid.places = {{left, "", "", ""}, {right, "", "", ""}};
    const std::string svg = shaded_grid(grid).str();
    return std::vector<std::size_t>{
        count_of(svg, "stroke-dasharray=\"2 4\""), count_of(svg, "stroke-dasharray=\"9 4\""),
        count_of(svg, "stroke-width=\"4\"/>") - count_of(svg, "stroke=\"#ffffff\" stroke-width=\"4\"/>")};
  };
  CHECK(edges(0.5, 0.7) == std::vector<std::size_t>{0, 0, 0});
  CHECK(edges(0.5, 1.5) == std::vector<std::size_t>{1, 0, 0});
  CHECK(edges(2.5, 1.5) == std::vector<std::size_t>{0, 1, 0});
  CHECK(edges(0.5, 9.0) == std::vector<std::size_t>{0, 0, 1});
  CHECK(edges(kNone, 9.0) == std::vector<std::size_t>{0, 0, 0});
}
