#include <catch2/catch.hpp>

#include "aircraft/input_error.hpp"
#include "sim/crew/pilot_grade.hpp"

namespace stallwright {

TEST_CASE("the grades between are half way between the two rows in every number", "[crew]") {
  const PilotGrade sharp = pilot_grade("sharp"), current = pilot_grade("current");
  const PilotGrade between = pilot_grade("sharp-current");
  CHECK(between.name == "sharp-current");
  CHECK(between.delay_s == 0.5 * (sharp.delay_s + current.delay_s));
  CHECK(between.remnant_deg == 0.5 * (sharp.remnant_deg + current.remnant_deg));
  CHECK(between.early_release == 0.5 * (sharp.early_release + current.early_release));
  CHECK(pilot_grade("current-rusty").scan_s == 0.5 * (current.scan_s + pilot_grade("rusty").scan_s));
}

TEST_CASE("a grade that is none is refused with the five that are", "[crew]") {
  for (const char* name : {"rusty-sharp", "sharp-rusty", "", "Sharp"})
    CHECK_THROWS_WITH(pilot_grade(name),
                      Catch::Contains("sharp, sharp-current, current, current-rusty, rusty"));
}

}  // namespace stallwright
