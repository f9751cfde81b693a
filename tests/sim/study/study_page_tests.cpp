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
      require_in(page, ">" + page_fixed(cell.lines[line].rms_error_kt.value, 2) + "<");
      require_in(page, ">95 %: " + page_fixed(cell.lines[line].p95_error_kt.value, 2) + "<");
      require_in(page, ">mean " + page_fixed(cell.lines[line].mean_error_kt, 2) + "<");
    }
    require_in(page, ">" + page_fixed(100.0 * cell.late_warning.share(), 1) + " %<");
    require_in(page, ">" + page_fixed(100.0 * cell.out_of_order.share(), 1) + " %<");
    require_in(page, ">" + page_fixed(100.0 - 100.0 * cell.kept.share(), 1) + " %<");
    require_in(page, ">12.3 to 87.7 %<");
    require_in(page, "to " + page_fixed(100.0 * cell.late_warning.interval.upper, 1) + " %<");
    require_in(page, "to " + page_fixed(100.0 * cell.out_of_order.interval.upper, 1) + " %<");
    if (cell.hand == 0) require_in(page, page_fixed(cell.lines[1].rms_error_kt.value, 2));  // half the record
  }
  for (const LineResult& line : {map.varied[0].lines[0], map.varied[0].lines[2], map.unvaried.lines[0]}) {
    require_in(page, page_fixed(line.rms_error_kt.value, 2));
    require_in(page, page_fixed(line.rms_error_kt.interval.lower, 2) + " to " +
                         page_fixed(line.rms_error_kt.interval.upper, 2));
  }
  for (const char* text :
       {"0.37 (0.17 to 0.57)", "0.61 (0.43 to 0.83)", "0.13 (\u22120.44 to 0.29)", "1.71 (0.27 to 2.34)",
        "64 base points", "576 sorties", "uses 63 base points or more"})
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

TEST_CASE("the rules of thumb are what the map says", "[study][page]") {
  StudyMap map = made_up_map();
  for (MapCell& cell : map.cells) {
    if (cell.air == 1)
      cell.lines[1].rms_error_kt.value = cell.lines[0].rms_error_kt.value;  // calm: half is enough
    if (cell.air == 0) cell.lines[2].covered.times = 300;                   // moderate: stall
    if (cell.air == 2) cell.lines[0].records_wanted = {0, 0, 0, 400};       // light: warning
  }
  using Rows = std::vector<std::vector<std::string>>;
  const std::vector<RuleTable> tables = rule_tables(map);
  REQUIRE(tables.size() == 4);
  CHECK(tables[0].headings == std::vector<std::string>{"pilot", "within 1 kt", "within 2 kt", "within 3 kt"});
  CHECK(tables[0].rows == Rows{{"current", "in none", "calm", "calm"}, {"rusty", "in none", "calm", "calm"}});
  for (const std::size_t k : {1u, 2u, 3u})
    CHECK(tables[k].headings == std::vector<std::string>{"set point", "moderate", "calm", "light"});
  CHECK(tables[1].rows == Rows{{"warning", "100", "100", "100"}, {"stall", "75", "100", "100"}});
  CHECK(tables[2].rows == Rows{{"warning", "15", "7.5", "15"}, {"stall", kNoNumber, kNoNumber, kNoNumber}});
  CHECK(tables[3].rows == Rows{{"warning", "1", "1", "3"}, {"stall", kNoNumber, "1", "1"}});

  const std::string page = study_page(map);
  for (const RuleTable& rule : tables) {
    require_in(page, escaped(rule.title));
    for (const auto& row : rule.rows)
      for (const std::string& text : row) require_in(page, ">" + escaped(text) + "<");
  }
}

TEST_CASE("a rule of thumb says by which measure it goes, and nothing of an air that nobody knows",
          "[study][page]") {
  StudyMap map = made_up_map();
  CHECK_THAT(rule_tables(map)[0].title, Catch::EndsWith("(95 % of sorties do)"));
  map.cells[map.cell_index(2, 1)].lines[0].p95_error_kt = {};
  CHECK_THAT(rule_tables(map)[0].title, Catch::Contains("of pilots with *, RMS error"));
  CHECK(rule_tables(map)[0].rows[0][0] == "current");
  CHECK(rule_tables(map)[0].rows[1] == std::vector<std::string>{"rusty*", "calm", "light", "light"});
  for (std::size_t hand = 0; hand < 2; ++hand) map.cells[map.cell_index(1, hand)].lines[0] = {};
  CHECK(rule_tables(map)[0].rows[0] == std::vector<std::string>{"current", kNoNumber, kNoNumber, kNoNumber});
  CHECK(rule_tables(map)[3].rows[0] == std::vector<std::string>{"warning", "1", kNoNumber, "1"});
  CHECK_THAT(rule_tables(made_up_map(199))[0].title,
             Catch::EndsWith("(RMS error: too few sorties for a percentile)"));
}

TEST_CASE("a cell with few sorties has no percentile on the study page", "[study][page]") {
  StudyMap map = made_up_map();
  CHECK(count_of(study_page(map), ">no percentile<") == 0);
  MapCell& few = map.cells[map.cell_index(0, 1)];
  for (LineResult& line : few.lines) line = study_test::made_up_line(1.23, kLeastForPercentile - 1);
  CHECK(count_of(study_page(map), ">no percentile<") == 2);  // warning and stall
  CHECK(count_of(study_page(made_up_map(199)), ">95 %: ") == 0);
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
  for (MapCell& cell : map.cells) cell.late_warning = cell.out_of_order = cell.kept = {};
  const std::string page = study_page(map);
  for (const char* text : {"nan", "inf<"}) CHECK(count_of(page, text) == 0);
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
