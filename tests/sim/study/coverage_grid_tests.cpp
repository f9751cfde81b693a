// The parts of the coverage study, on a few sorties.
#include <catch2/catch.hpp>

#include "sim/reduction/reduce.hpp"
#include "sim/study/coverage_grid.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

std::vector<TrueSet> truth_of(const SortieConfig& config) {
  const Aircraft aircraft = make_aircraft(config.type, config.loading, config.airframe_seed);
  return find_truth(aircraft, config.card, working_air(config.card, config.air.day));
}

double slow_part(const SetPoint& point) {
  for (const BudgetLine& line : point.budget)
    if (line.name == "unsteady air and power") return line.u_ratio;
  return kNone;
}

/// Bits and all; none equals none.
std::uint64_t hash_of(const std::vector<std::vector<WindowValue>>& sorties) {
  std::uint64_t hash = kHashSeed;
  for (const std::vector<WindowValue>& values : sorties) hash = hash_values(hash, values);
  return hash;
}

}  // namespace

TEST_CASE("a short card has three windows of each steady point and one line of its stall", "[study]") {
  const std::vector<WindowLine> lines = window_lines(study_test::sortie("marram", "sharp", "standard").card);
  REQUIRE(lines.size() == 10);
  CHECK(lines[0].name == "fast reference");
  CHECK(lines[0].window_s == 15.0);
  CHECK(lines[1].window_s == 7.5);
  CHECK(lines[2].window_s == 3.75);
  CHECK(lines[8].name == "warning");
  CHECK(lines[9].is_stall);
}

TEST_CASE("windows are nested: the half window is the first half of the rows of the same record", "[study]") {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.air = study_test::air("light");
  config.smooth_twin = false;
  MemorySink flown;
  fly_sortie(config, flown);
  const std::vector<Record> whole = find_records(flown.log);
  std::vector<LogRow> halved = flown.log;
  cut_records(halved, config.card, 0.5);
  const std::vector<Record> half = find_records(halved);
  REQUIRE(whole.size() == 4);
  REQUIRE(half.size() == whole.size());
  for (std::size_t i = 0; i < whole.size(); ++i) {
    CHECK(half[i].begin == whole[i].begin);
    CHECK(half[i].point == whole[i].point);
    CHECK(half[i].attempt == whole[i].attempt);
    const std::size_t rows = whole[i].end - whole[i].begin;
    CHECK(half[i].end - half[i].begin == (config.card.points[whole[i].point].is_steady() ? rows / 2 : rows));
  }

  // The values are those of reducing so, each against the same truth; and a half is too short to show what moves slowly.
  const std::vector<TrueSet> truth = truth_of(config);
  const std::vector<WindowValue> values = fly_windows(config, truth);
  const SetPoints of_whole = reduce(flown.log, config.card, config.instruments);
  const SetPoints of_half = reduce(halved, config.card, config.instruments);
  const std::vector<WindowLine> lines = window_lines(config.card);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    REQUIRE(values[i].found);
    if (lines[i].share == 0.25) continue;
    for (const SetPoint& point : (lines[i].share == 1.0 ? of_whole : of_half).sets[0].points) {
      if (point.name != lines[i].name) continue;
      const KnotsMap& map = truth[0].map;
      CHECK(values[i].half_width_kt ==
            0.5 * std::abs(map.speed_kt(point.interval_high) - map.speed_kt(point.interval_low)));
      if (!point.is_stall) CHECK((slow_part(point) > 0.0) == (lines[i].share == 1.0));
    }
  }
}

TEST_CASE("sorties of a coverage cell do not depend on the number of threads, and do on the seed",
          "[study]") {
  const SortieConfig config = study_test::sortie("marram", "sharp", "standard");
  const std::vector<TrueSet> truth = truth_of(config);
  const auto alone = fly_window_sorties(config, truth, 5, 3, 1);
  REQUIRE(alone.size() == 3);
  CHECK(hash_of(alone) == hash_of(fly_window_sorties(config, truth, 5, 3, 3)));
  CHECK(hash_of({alone[1]}) == hash_of(fly_window_sorties(config, truth, 6, 1, 1)));
  CHECK(hash_of({alone[0]}) != hash_of({alone[1]}));
}

TEST_CASE("the hash of a cell changes with one bit of one value, and goes on from sortie to sortie",
          "[study]") {
  // The standard's own test vectors of 64-bit FNV-1a.
  CHECK(hash_text(hash_bytes(kHashSeed, "")) == "cbf29ce484222325");
  CHECK(hash_text(hash_bytes(kHashSeed, "a")) == "af63dc4c8601ec8c");
  CHECK(hash_text(hash_bytes(kHashSeed, "foobar")) == "85944171f73967e8");

  const std::vector<WindowValue> values{{true, true, 0.25, 1.5}, {true, false, -2.0, 1.0}};
  const std::uint64_t hash = hash_values(kHashSeed, values);
  const auto changed = [&](auto change) {
    std::vector<WindowValue> other = values;
    change(other);
    return hash_values(kHashSeed, other) != hash;
  };
  CHECK(changed([](auto& v) { v[1].error_kt = std::nextafter(v[1].error_kt, 0.0); }));
  CHECK(changed([](auto& v) { v[0].half_width_kt = std::nextafter(v[0].half_width_kt, 0.0); }));
  CHECK(changed([](auto& v) { v[1].covered = true; }));
  CHECK(changed([](auto& v) { std::swap(v[0], v[1]); }));
  CHECK(hash_values(hash_values(kHashSeed, {values[0]}), {values[1]}) == hash);
}

TEST_CASE("a tally counts what was found, and its share is held by the binomial interval", "[study]") {
  CoverageTally tally;
  for (const WindowValue& v :
       {WindowValue{true, true, 3.0, 5.0}, WindowValue{}, WindowValue{true, false, -4.0, 1.0}})
    tally.add(v);
  CHECK(tally.found == 2);
  CHECK(tally.share() == 0.5);
  CHECK_THAT(tally.rms_error_kt(), Catch::WithinRel(std::sqrt(12.5), 1e-15));
  CHECK(tally.mean_half_width_kt() == 3.0);

  // Of 400: the ends are the last whose interval still meets 0.93 to 0.97.
  const Interval asked = shares_within(400);
  const auto at = [](double share) { return static_cast<int>(std::lround(400 * share)); };
  CHECK(clopper_pearson(at(asked.lower), 400).upper >= 0.93);
  CHECK(clopper_pearson(at(asked.lower) - 1, 400).upper < 0.93);
  CHECK(clopper_pearson(at(asked.upper), 400).lower <= 0.97);
  CHECK(clopper_pearson(at(asked.upper) + 1, 400).lower > 0.97);
}

TEST_CASE("the ground of an interval is named without looking at its outcome", "[study]") {
  const std::vector<WindowLine> lines = window_lines(study_test::sortie("marram", "sharp", "standard").card);
  CHECK(coverage_ground(lines[0], study_test::air("light")) == CoverageGround::holds);
  CHECK(coverage_ground(lines[1], study_test::air("light")) == CoverageGround::short_window);
  CHECK(coverage_ground(lines[0], study_test::air("moderate")) == CoverageGround::unmatched_air);
  CHECK(coverage_ground(lines[0], study_test::air("day")) == CoverageGround::unmatched_air);
  CHECK(coverage_ground(lines[9], study_test::air("calm")) == CoverageGround::stall_entry);
}
