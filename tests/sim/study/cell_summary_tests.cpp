#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "sim/reduction/csv.hpp"
#include "sim/study/map/cell_summary.hpp"
#include "sim/study/map/map_csv.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/place_on_map.hpp"
#include "sim/study/map/rules.hpp"
#include "tests/sim/study/map_setup.hpp"

namespace stallwright {
namespace {

/// Sorties whose errors go evenly from -half to half.
std::vector<SortieNumbers> even(const StudyMap& map, int count, double half_kt) {
  std::vector<SortieNumbers> sorties;
  for (int k = 0; k < count; ++k)
    sorties.push_back(study_test::made_up(map, half_kt * (2.0 * k / (count - 1) - 1.0)));
  return sorties;
}

/// All cells filled, each with errors up to so many knots; gusts differ from air to air.
StudyMap filled(const std::vector<double>& halves_kt) {
  StudyMap map = study_test::small_plan(250).map;
  for (std::size_t i = 0; i < map.all_cells(); ++i) {
    std::vector<SortieNumbers> sorties = even(map, 250, halves_kt.at(i));
    for (SortieNumbers& s : sorties) s.gust_rms_mps = map.any_cell(i).air == 0 ? 0.1 : 1.0;
    summarise_cell(map, i, sorties);
  }
  return map;
}

}  // namespace

TEST_CASE("a cell has mean, RMS, percentile and coverage of its errors", "[study][map]") {
  StudyMap map = study_test::small_plan(201).map;
  std::vector<SortieNumbers> sorties = even(map, 201, 1.0);
  sorties[0].lines[0] = {};
  sorties[1].lines[0].covered = false;
  sorties[2].failure = "lost";
  summarise_cell(map, 0, sorties);
  const MapCell& cell = map.cells[0];
  const LineResult &first = cell.lines.at(0), &second = cell.lines.at(1);
  CHECK(cell.failed == 1);
  CHECK(first.found == 200);
  CHECK(first.covered.times == 199);
  CHECK(second.found == 201);
  CHECK_THAT(second.mean_error_kt, Catch::WithinAbs(0.0, 1e-12));
  // Evenly from -1 to 1: RMS 1/sqrt 3 (and a little more for steps of 0.01), |error| evenly from 0 to 1.
  CHECK_THAT(second.rms_error_kt.value, Catch::WithinAbs(std::sqrt(1.01 / 3.0), 1e-9));
  CHECK(second.rms_error_kt.interval.contains(second.rms_error_kt.value));
  CHECK_THAT(second.p95_error_kt.value, Catch::WithinAbs(0.95, 1e-9));
  CHECK(second.p95_error_kt.interval.contains(0.95));
  CHECK_THAT(second.quantiles_kt[2], Catch::WithinAbs(0.0, 1e-12));
  CHECK_THAT(second.quantiles_kt[4], Catch::WithinAbs(0.9, 1e-9));
  CHECK(std::accumulate(second.histogram.begin(), second.histogram.end(), 0) == 201);
  CHECK(second.records_wanted[2] == 201);
}

TEST_CASE("a cell of fewer than 200 sorties, or a line that fewer than 150 gave, has no percentile",
          "[study][map]") {
  const auto line_of = [](int sorties, int found) {
    StudyMap map = study_test::small_plan(sorties).map;
    std::vector<SortieNumbers> all = even(map, sorties, 1.0);
    for (int k = found; k < sorties; ++k) all[static_cast<std::size_t>(k)].lines[0] = {};
    summarise_cell(map, 0, all);
    return map.cells[0].lines[0];
  };
  for (const auto& [sorties, found] : {std::pair{199, 199}, {200, 149}}) {
    const LineResult line = line_of(sorties, found);
    CHECK(line.found == found);
    CHECK(std::isfinite(line.rms_error_kt.interval.lower));
    CHECK(std::isnan(line.p95_error_kt.value));
    CHECK(std::isnan(line.quantiles_kt[0]));
  }
  CHECK(std::isfinite(line_of(200, 150).p95_error_kt.value));
  CHECK(std::isfinite(line_of(200, 199).quantiles_kt[0]));
}

TEST_CASE("an RMS error of fewer than 30 sorties has no interval", "[study][map]") {
  for (const int count : {29, 30}) {
    StudyMap map = study_test::small_plan(count).map;
    summarise_cell(map, 0, even(map, count, 1.0));
    const Estimate& rms = map.cells[0].lines[0].rms_error_kt;
    CHECK(std::isfinite(rms.value));
    CHECK(std::isfinite(rms.interval.lower) == (count == 30));
  }
}

TEST_CASE("sets that the debrief keeps are counted among those it judged", "[study][map]") {
  StudyMap map = study_test::small_plan(5).map;
  std::vector<SortieNumbers> sorties = even(map, 5, 1.0);
  sorties[0].verdict = Verdict::wait_for_better_air;
  sorties[1].verdict = Verdict::fly_again;
  sorties[2].verdict.reset();
  summarise_cell(map, 0, sorties);
  CHECK(map.cells[0].kept.times == 2);
  CHECK(map.cells[0].kept.of == 4);
  CHECK(map.cells[0].kept.interval.lower == clopper_pearson(2, 4).lower);
}

TEST_CASE("what is varied is held against the base cell's sorties with the same seeds", "[study][map]") {
  StudyMap map = study_test::small_plan(60).map;
  map.varied.front().sorties = 40;
  std::vector<SortieNumbers> sorties(60, study_test::made_up(map, 1.0));
  for (std::size_t k = 40; k < 60; ++k) sorties[k] = study_test::made_up(map, 9.0);
  for (std::size_t cell = 0; cell < map.all_cells(); ++cell) summarise_cell(map, cell, sorties);
  CHECK(map.unvaried.sorties == 40);
  CHECK(map.unvaried.air == map.cells[map.base_cell].air);
  CHECK(map.unvaried.hand == map.cells[map.base_cell].hand);
  REQUIRE(map.unvaried.lines.size() == map.lines.size());
  CHECK(map.unvaried.lines[0].found == 40);
  CHECK(map.unvaried.lines[0].rms_error_kt.value == Approx(1.0));
  CHECK(map.cells[map.base_cell].lines[0].rms_error_kt.value > 5.0);
}

TEST_CASE("late warnings and sets out of order are counted among those that can be", "[study][map]") {
  StudyMap map = study_test::small_plan(4).map;
  std::vector<SortieNumbers> sorties = even(map, 4, 3.0);  // margins 4, 6, 8, 10 of 5 wanted
  sorties[3].warning_margin_kt = kNone;
  sorties[0].out_of_order = true;
  sorties[1].out_of_order.reset();
  summarise_cell(map, 1, sorties);
  CHECK(map.cells[1].late_warning.times == 1);
  CHECK(map.cells[1].late_warning.of == 3);
  CHECK(map.cells[1].late_warning.interval.upper == clopper_pearson(1, 3).upper);
  CHECK(map.cells[1].out_of_order.times == 1);
  CHECK(map.cells[1].out_of_order.of == 3);
}

TEST_CASE("an error outside all classes is counted at the end", "[study][map]") {
  StudyMap map = study_test::small_plan(2).map;
  summarise_cell(map, 0, even(map, 2, 50.0));
  CHECK(map.cells[0].lines[0].histogram.front() == 1);
  CHECK(map.cells[0].lines[0].histogram.back() == 1);
}

TEST_CASE("the table has a row for each line of each cell and reads back as CSV", "[study][map]") {
  const StudyMap map = filled({0.5, 1.0, 2.0, 3.0, 2.0});
  CsvRequest request;
  request.texts = {"air", "pilot", "varied", "value", "set_point"};
  request.numbers = {"found", "rms_error_kt", "rms_low_kt", "rms_high_kt", "coverage_low", "gust_rms_mps"};
  request.numbers_or_empty = {"window_s"};
  const NumericTable table = parse_csv(map_to_csv(map), "study.csv", request);
  REQUIRE(table.rows == 5 * map.lines.size());
  CHECK(table.texts.at("air").back() == "rough, \"very\"");
  CHECK(table.texts.at("value").back() == "2 kt/s");
  CHECK(std::isnan(table.column("window_s").back()));
  CHECK(table.column("rms_error_kt").front() == map.cells[0].lines[0].rms_error_kt.value);
  CHECK(map_to_json(map).find("\"stallwright-map-1\"") != std::string::npos);
}

TEST_CASE("the roughest air is the last before a pilot's errors grow too large", "[study][map]") {
  // 95th percentile of |error|: 0.95 of the half. Cells: calm sharp, calm rusty, rough sharp, rough rusty.
  const StudyMap map = filled({0.5, 1.5, 1.5, 1.0, 2.0});
  const std::size_t line = 0;
  CHECK(airs_by_roughness(map) == std::vector<std::size_t>{0, 1});
  CHECK(roughest_air(map, line, 0, 1.0) == std::size_t{0});
  CHECK(roughest_air(map, line, 0, 2.0) == std::size_t{1});
  // Rusty: the rough air would do, but the smoother one does not.
  CHECK_FALSE(roughest_air(map, line, 1, 1.0));
}

TEST_CASE("airs are compared by one measure, and one that too few sorties got through is within nothing",
          "[study][map]") {
  StudyMap map = filled({1.02, 1.0, 1.5, 1.0, 2.0});
  CHECK(has_percentiles(map, 0, 0));
  CHECK(roughest_air(map, 0, 0, 1.0) == std::size_t{0});
  CHECK(roughest_air(map, 0, 0, 0.9) == std::nullopt);
  // The rough air lost its percentile: RMS errors of 0.59 and 0.87, of both airs alike.
  map.cells[map.cell_index(1, 0)].lines[0].p95_error_kt = {};
  CHECK_FALSE(has_percentiles(map, 0, 0));
  CHECK(roughest_air(map, 0, 0, 0.9) == std::size_t{1});
  CHECK(roughest_air(map, 0, 0, 0.8) == std::size_t{0});
  map.cells[map.cell_index(1, 0)].lines[0].found = kLeastForInterval - 1;
  CHECK(has_percentiles(map, 0, 0));
  CHECK(roughest_air(map, 0, 0, 9.0) == std::size_t{0});
}

TEST_CASE("an air in which nobody got a record is the roughest", "[study][map]") {
  StudyMap map = filled({0.5, 0.5, 0.5, 0.5, 0.5});
  for (std::size_t hand = 0; hand < 2; ++hand) map.cells[map.cell_index(0, hand)].gust_rms_mps = kNone;
  CHECK(airs_by_roughness(map) == std::vector<std::size_t>{1, 0});
}

TEST_CASE("the shortest window that is nearly as good is enough, and records are counted by budget",
          "[study][map]") {
  StudyMap map = filled({1.0, 1.0, 1.0, 1.0, 1.0});
  REQUIRE(map.lines[1].window_s == 7.5);
  CHECK(window_enough_s(map, 0, 0) == 3.75);
  // Intervals of the shortest window hold the truth too seldom: 465 of 500 are just 93 %.
  map.cells[0].lines[2].covered.times = map.cells[1].lines[2].covered.times = 232;
  CHECK(window_enough_s(map, 0, 0) == 7.5);
  map.cells[1].lines[2].covered.times = 233;
  CHECK(window_enough_s(map, 0, 0) == 3.75);
  for (MapCell& cell : map.cells) cell.lines[2].rms_error_kt.value *= 1.11;
  CHECK(window_enough_s(map, 0, 0) == 7.5);
  for (MapCell& cell : map.cells) cell.lines[1].rms_error_kt.value *= 1.11;
  CHECK(window_enough_s(map, 0, 0) == 15.0);
  CHECK(records_enough(map, 0, 0) == 2);
  // 500 sorties of two pilots: 25 that no number helps are just 5 %, 26 are more.
  LineResult& result = map.cells[0].lines[0];
  result.records_wanted = {25, 0, 200, 25};
  CHECK(records_enough(map, 0, 0) == 3);
  result.records_wanted = {26, 0, 199, 25};
  CHECK(records_enough(map, 0, 0) == 0);
  result.records_wanted = {0, 250};
  CHECK(records_enough(map, 0, 0) == 2);
  map.cells[0].lines[0].covered.times = map.cells[1].lines[0].covered.times = 232;
  CHECK(pooled_coverage(map, 0, 0).share() == 0.928);
  CHECK_FALSE(records_enough(map, 0, 0));
}

TEST_CASE("a sortie is placed on straight lines between the cells, and held at the ends", "[study][map]") {
  StudyMap map = filled({0.5, 1.5, 1.5, 3.5, 2.0});
  // Hold, kt: calm sharp 1, calm rusty 2, rough sharp 2, rough rusty 4. Gusts 0.1 and 1.0 m/s.
  for (std::size_t i = 0; i < 4; ++i) map.cells[i].hold_rms_kt = i == 0 ? 1.0 : i == 3 ? 4.0 : 2.0;
  const auto rms = [&](std::size_t air, std::size_t hand) {
    return map.cell(air, hand).lines[0].rms_error_kt.value;
  };
  const PlaceOnMap middle = place_on_map(map, {2.25, 0.55});
  CHECK_THAT(middle.air.share, Catch::WithinAbs(0.5, 1e-12));
  CHECK_THAT(middle.hold_rms_kt[0], Catch::WithinAbs(1.5, 1e-12));
  CHECK_THAT(middle.hold_rms_kt[1], Catch::WithinAbs(3.0, 1e-12));
  CHECK_THAT(middle.hand.share, Catch::WithinAbs(0.5, 1e-12));
  CHECK_THAT(middle.rms_error_kt[0],
             Catch::WithinRel(0.25 * (rms(0, 0) + rms(0, 1) + rms(1, 0) + rms(1, 1)), 1e-12));
  const PlaceOnMap beyond = place_on_map(map, {9.0, 5.0});
  CHECK(beyond.air.beyond);
  CHECK(beyond.hand.beyond);
  CHECK(beyond.rms_error_kt[0] == rms(1, 1));
  const PlaceOnMap calmest = place_on_map(map, {0.5, 0.0});
  CHECK(calmest.air.from == 0);
  CHECK(calmest.hand.beyond);
  CHECK(calmest.rms_error_kt[0] == rms(0, 0));
  CHECK(place_in_air(map, 1, 3.0).hand.share == 0.5);
}

}  // namespace stallwright
