// What the entry rate does to the reading at the break, and what it does not do to the one at maximum lift.
#include <catch2/catch.hpp>

#include "sim/study/entry_rate.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

EntryRateStudy fly(const std::string& type, int sorties) {
  EntryRateConfig config;
  config.base = study_test::sortie(type, "sharp", "ideal");
  config.sorties = sorties;
  return run_entry_rates(config);
}

void hold_entry_rates(const std::string& type, int sorties) {
  const EntryRateStudy study = fly(type, sorties);
  for (const EntryRateRow& row : study.rows) {
    CAPTURE(type, row.asked_ktps, row.flown_ktps.value);
    CHECK(row.found == sorties);
    CHECK(row.flown_ktps.value == Approx(row.asked_ktps).epsilon(0.2));
  }
  CAPTURE(type, study.break_rise.value, study.break_rise.standard_error, study.let_go_rise_rad.value,
          study.let_go_rise_rad.standard_error, study.expected_rise_rad.value,
          study.expected_rise_rad.standard_error);
  CHECK(study.break_rise.value > 3.0 * study.break_rise.standard_error);
  CHECK(agree(study.let_go_rise_rad, study.expected_rise_rad));
  CAPTURE(study.max_lift_shift_kt.value, study.max_lift_shift_kt.standard_error);
  CHECK(std::abs(study.max_lift_shift_kt.value) < 0.5);
  CHECK(study.attached_share() < 0.05);
}

}  // namespace

TEST_CASE("marram's break comes later at 3 kt/s, its maximum lift does not", "[study][statistics]") {
  hold_entry_rates("marram", 20);
}

TEST_CASE("sarsen's break comes later at 3 kt/s, its maximum lift does not", "[study][statistics]") {
  hold_entry_rates("sarsen", 20);
}

TEST_CASE("tarnfell's break comes later at 3 kt/s, its maximum lift does not", "[study][statistics]") {
  hold_entry_rates("tarnfell", 20);
}

TEST_CASE("the break comes later at 3 kt/s and maximum lift does not, every type, 200 times",
          "[study][statistics][.slow]") {
  for (const std::string& type : list_aircraft_types()) hold_entry_rates(type, 200);
}

// Known not to hold, and kept to tell when it does: tau2 is the wing's delay alone. At the break the angle that is
// gained while the nose takes its time comes on top, and is larger the faster the entry. As the wing lets go tau2 says it
// all (hold_entry_rates).
TEST_CASE("the ratio at the break rises by what tau2 says, every type, 200 times",
          "[study][statistics][.slow][!shouldfail]") {
  for (const std::string& type : list_aircraft_types()) {
    const EntryRateStudy study = fly(type, 200);
    CAPTURE(type, study.break_rise.value, study.break_rise.standard_error, study.run_on_rise.value,
            study.expected_rise.value, study.expected_interval.lower, study.expected_interval.upper);
    CHECK(agree(study.break_rise, study.expected_rise));
  }
}
