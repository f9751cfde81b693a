// Whether the stated uncertainty keeps its word, with the instruments and the hands of an ordinary flight.
#include <catch2/catch.hpp>

#include "sim/study/criteria.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

void hold_coverage(const std::string& type, int sorties) {
  const SortieConfig base = study_test::sortie(type, "current", "standard");
  const Study study = run_study(study_test::study(base, {"calm", "light", "moderate"}, sorties));
  for (const StudyAir& air : study.airs)
    for (const StudyRow& row : air.rows) {
      CAPTURE(type, air.air.name, row.name, row.found, row.covered, row.rms_error_kt, row.mean_expanded_kt);
      CHECK(row.sorties == sorties);
      const CoverageCall call = coverage_call(row, air.air);
      CHECK(call != CoverageCall::none_found);
      CHECK(call != CoverageCall::below);
      // What is above 99 % is said, with the component's name.
      if (call == CoverageCall::conservative) {
        REQUIRE_FALSE(row.surplus.name.empty());
        CHECK(conservative_note(row, air.air).find(row.surplus.name) != std::string::npos);
      }
    }
  // Rising means, a wait wherever the wing stalled unasked, every card finished; and the shares above once more.
  const std::vector<Criterion> criteria = study_criteria(study);
  for (std::size_t i = 0; i < criteria.size(); ++i) {
    CAPTURE(type, criteria[i].text);
    CHECK(criteria[i].holds);
  }
  // The last criterion would hold of nothing: moderate air does stall the wing at the warning point.
  CHECK(study.airs.back().unintended_stall_sorties > 0);
}

}  // namespace

TEST_CASE("95 % intervals hold the truth, rough air spoils the mean, and an unasked stall means waiting",
          "[study][statistics]") {
  hold_coverage("marram", 20);
}

TEST_CASE("95 % intervals hold the truth in 90 % of 200 sorties or more, every type",
          "[study][statistics][.slow]") {
  for (const std::string& type : list_aircraft_types()) hold_coverage(type, 200);
}
