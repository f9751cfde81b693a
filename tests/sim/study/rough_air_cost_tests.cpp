// The one sentence at the head of the study page.
#include <catch2/catch.hpp>

#include "sim/study/page/rough_air_cost.hpp"
#include "tests/sim/study/made_up_map.hpp"

using namespace stallwright;
using study_test::made_up_map;

TEST_CASE("the sentence holds the smoothest air against the roughest, by percentiles", "[study][page]") {
  CHECK(rough_air_sentence(made_up_map()) ==
        "In calm air a current pilot's warning comes out within 1.1 kt (95 % of sorties), in moderate air "
        "within "
        "5.9 kt: rough air costs 4.8 kt of the 7.0 kt that stand between warning and stall.");
}

TEST_CASE("a cost as great as the margin is said to take all of it", "[study][page]") {
  StudyMap map = made_up_map();
  map.cells[map.cell_index(1, 0)].warning_margin_kt = 4.5;
  CHECK_THAT(rough_air_sentence(map),
             Catch::Matchers::EndsWith(
                 ": rough air costs 4.8 kt, all of the 4.5 kt that stand between warning and stall."));
}

TEST_CASE("under 200 sorties the sentence speaks of RMS and says why", "[study][page]") {
  CHECK(rough_air_sentence(made_up_map(199)) ==
        "In calm air a current pilot's warning is off by 0.5 kt RMS, in moderate air by 2.9 kt: rough air "
        "costs 2.4 "
        "kt of the 7.0 kt that stand between warning and stall (199 sorties in each: too few for a "
        "percentile).");
}

TEST_CASE("the cost is the difference of the two figures as they are printed", "[study][page]") {
  RoughAirCost cost;
  cost.smooth_kt.value = 0.56;  // 0.6
  cost.rough_kt.value = 0.84;   // 0.8
  CHECK(cost.cost_kt() == 0.2);
}

TEST_CASE("a difference within the intervals is not called a cost", "[study][page]") {
  StudyMap map = made_up_map();
  for (MapCell& cell : map.cells) cell.lines[0] = study_test::made_up_line(cell.air == 0 ? 1.1 : 1.0, 400);
  CHECK(rough_air_sentence(map) ==
        "In calm air a current pilot's warning comes out within 2.0 kt (95 % of sorties), in moderate air "
        "within "
        "2.2 kt: between the two airs this study sees no difference beyond chance (400 sorties in each).");
}

TEST_CASE("hours of a day are told as such in the sentence", "[study][page]") {
  StudyMap map = made_up_map();
  map.hands[0] = "sharp-current";
  map.airs[1].name = "day 06:00";
  map.airs[0].name = "day 14:00";
  map.cells[map.cell_index(1, 1)].warning_margin_kt = kNone;
  CHECK(rough_air_sentence(map) ==
        "At 06:00 on a fair day a rusty pilot's warning comes out within 1.2 kt (95 % of sorties), at 14:00 "
        "on a "
        "fair day within 6.5 kt: rough air costs 5.3 kt.");
}

TEST_CASE("the sentence needs sorties and a second air", "[study][page]") {
  StudyMap map = made_up_map();
  map.cells[map.cell_index(0, 0)].lines[0] = {};
  CHECK(rough_air_sentence(map) ==
        "This study does not tell what rough air costs: too few sorties gave the set point.");
  StudyMap single = made_up_map();
  single.airs = {{"light", 0.75}};
  single.cells.resize(2);
  CHECK(rough_air_sentence(single) ==
        "In light air a current pilot's warning comes out within 5.9 kt (95 % of sorties); the study has no "
        "rougher "
        "air to compare it with.");
}
