// How near the adopted set points come to the truth when nothing but flying is in the way.
#include <catch2/catch.hpp>

#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

constexpr double kSteady_kt = 0.3;     ///< every lift-corrected estimate
constexpr double kStall_kt = 1.0;      ///< every stall from maximum lift, entered at 1 kt/s
constexpr double kMeanStall_kt = 0.5;  ///< and their mean

void hold_accuracy(const std::string& type, int sorties) {
  const SortieConfig base = study_test::sortie(type, "sharp", "ideal");
  const Study study = run_study(study_test::study(base, {"calm"}, sorties));
  const StudyAir& calm = study.airs.front();
  CHECK(calm.failed == 0);
  REQUIRE(calm.rows.size() == base.card.points.size());
  for (const StudyRow& row : calm.rows) {
    CAPTURE(type, row.name, row.mean_error_kt, row.rms_error_kt);
    CHECK(row.found == sorties);
    CHECK(row.largest_error_kt < (row.is_stall ? kStall_kt : kSteady_kt));
    if (row.is_stall) CHECK(std::abs(row.mean_error_kt) < kMeanStall_kt);
  }
}

}  // namespace

TEST_CASE("in calm air a sharp pilot with ideal sensors finds marram's set points", "[study][statistics]") {
  hold_accuracy("marram", 20);
}

TEST_CASE("in calm air a sharp pilot with ideal sensors finds sarsen's set points", "[study][statistics]") {
  hold_accuracy("sarsen", 20);
}

TEST_CASE("in calm air a sharp pilot with ideal sensors finds tarnfell's set points", "[study][statistics]") {
  hold_accuracy("tarnfell", 20);
}

TEST_CASE("in calm air a sharp pilot with ideal sensors finds the set points of every type, 200 times",
          "[study][statistics][.slow]") {
  for (const std::string& type : list_aircraft_types()) hold_accuracy(type, 200);
}
