// The one sentence at the head of the study page.
#include <catch2/catch.hpp>
#include <string>

#include "sim/study/page/rough_air_cost.hpp"
#include "tests/sim/study/made_up_map.hpp"

using namespace stallwright;
using study_test::made_up_map;

namespace {

const std::string kKept =
    " The debrief keeps 80 % of the sets flown in calm air, 40 % of those in moderate air.";

}  // namespace

TEST_CASE("the sentence holds the smoothest air against the roughest, by percentiles", "[study][page]") {
  CHECK(
      rough_air_sentence(made_up_map()) ==
      "In calm air a current pilot's warning comes out within 1.06 kt (95 % of sorties), in moderate air "
      "within "
      "5.89 kt: rough air costs 4.83 kt of the 7.0 kt that stand between this warning and the stall at 1 g." +
          kKept);
}

TEST_CASE("a share is not rounded to all or to none", "[study][page]") {
  StudyMap map = made_up_map();
  map.cells[map.cell_index(1, 0)].kept.times = 399;
  map.cells[map.cell_index(0, 0)].kept.times = 1;
  CHECK_THAT(rough_air_sentence(map),
             Catch::EndsWith("keeps over 99 % of the sets flown in calm air, under 1 % of "
                             "those in moderate air."));
}

TEST_CASE("a cost as great as the margin is said to take all of it", "[study][page]") {
  StudyMap map = made_up_map();
  map.cells[map.cell_index(1, 0)].warning_margin_kt = 4.5;
  CHECK_THAT(rough_air_sentence(map), Catch::Contains(": rough air costs 4.83 kt, all of the 4.5 kt that "
                                                      "stand between this warning and the stall at 1 g."));
}

TEST_CASE("under 200 sorties the sentence speaks of RMS and says why", "[study][page]") {
  StudyMap map = made_up_map(199);
  CHECK_THAT(
      rough_air_sentence(map),
      Catch::StartsWith(
          "In calm air a current pilot's warning is off by 0.53 kt RMS, in moderate air by 2.95 kt: rough "
          "air "
          "costs 2.42 kt of the 7.0 kt that stand between this warning and the stall at 1 g (199 sorties in "
          "each: too few for a percentile)."));
  map.cells[map.cell_index(0, 0)].lines[0].found = 191;
  CHECK_THAT(rough_air_sentence(map), Catch::Contains("(199 sorties against 191: too few for a percentile)"));
}

TEST_CASE("the cost is the difference of the two figures as they are printed", "[study][page]") {
  RoughAirCost cost;
  cost.smooth_kt.value = 0.556;  // 0.56
  cost.rough_kt.value = 0.844;   // 0.84
  CHECK(cost.cost_kt() == 0.28);
}

TEST_CASE("a difference whose intervals overlap is neither called a cost nor chance", "[study][page]") {
  StudyMap map = made_up_map();
  for (MapCell& cell : map.cells) cell.lines[0] = study_test::made_up_line(cell.air == 0 ? 1.1 : 1.0, 400);
  CHECK(rough_air_sentence(map) ==
        "In calm air a current pilot's warning comes out within 2.00 kt (95 % of sorties), in moderate air "
        "within "
        "2.20 kt: the 95 % intervals of the two overlap, and more sorties might tell them apart (400 sorties "
        "in each)." +
            kKept);
}

TEST_CASE("hours of a day are told as such in the sentence", "[study][page]") {
  StudyMap map = made_up_map();
  map.hands[0] = "sharp-current";
  map.airs[1].name = "day 06:00";
  map.airs[0].name = "day 14:00";
  map.cells[map.cell_index(1, 1)].warning_margin_kt = kNone;
  CHECK(rough_air_sentence(map) ==
        "At 06:00 on a fair day a rusty pilot's warning comes out within 1.17 kt (95 % of sorties), at 14:00 "
        "on a "
        "fair day within 6.48 kt: rough air costs 5.31 kt. The debrief keeps 80 % of the sets flown at 06:00 "
        "on a "
        "fair day, 40 % of those at 14:00 on a fair day.");
}

TEST_CASE("where too few sorties gave the set point the sentence says how many and makes nothing of them",
          "[study][page]") {
  StudyMap map = made_up_map();
  map.cells[map.cell_index(0, 0)].lines[0] = study_test::made_up_line(25.0, 29);
  CHECK(rough_air_sentence(map) ==
        "This study does not tell what rough air costs: a current pilot got the warning in 400 of 400 "
        "sorties in "
        "calm air, in 29 of 400 sorties in moderate air; it takes 30 to tell.");
  map.cells[map.cell_index(0, 0)].lines[0] = study_test::made_up_line(25.0, 30);
  CHECK_THAT(rough_air_sentence(map), Catch::Contains("rough air costs"));
  // Nobody got a record there: the roughest air of all, not the smoothest.
  map.cells[map.cell_index(0, 0)].lines[0] = {};
  for (std::size_t hand = 0; hand < 2; ++hand) map.cells[map.cell_index(0, hand)].gust_rms_mps = kNone;
  CHECK_THAT(rough_air_sentence(map),
             Catch::EndsWith("in calm air, in 0 of 400 sorties in moderate air; it takes 30 to tell."));
}

TEST_CASE("the sentence needs a second air", "[study][page]") {
  StudyMap single = made_up_map();
  single.airs = {{"light", 0.75}};
  single.cells.resize(2);
  CHECK(rough_air_sentence(single) ==
        "In light air a current pilot's warning comes out within 5.89 kt (95 % of sorties); the study has no "
        "rougher "
        "air to compare it with. The debrief keeps 40 % of the sets flown in light air.");
}
