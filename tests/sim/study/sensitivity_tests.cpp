// Everything varied at once: from a point of the sample to a sortie, and from sorties to the table.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "sim/study/map/fly_map.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

const std::vector<double> kLowest(7, 0.0), kHighest(7, 1.0);

SensitivityRanges ranges() {
  SensitivityRanges out;
  out.roughest_mps = 1.5;
  out.loading_names = {"one", "two"};
  const Loading usual = study_test::sortie("marram", "current", "standard").loading;
  Loading less = usual;
  less.kg.front() *= 0.9;
  out.loadings = {less, usual};
  return out;
}

MapSetup setup(int base_points) {
  MapSetup out;
  out.base = study_test::sortie("marram", "current", "standard");
  out.base.card.points.resize(1);  // a single steady point
  out.recipe.name = "Small";
  out.recipe.sorties = 2;
  out.recipe.airs = {{"light", study_test::air("light"), "light"}};
  out.recipe.pilots = {"current"};
  out.recipe.sobol_base = base_points;
  return out;
}

/// A folder of the test's own, empty, away at its end.
struct Folder {
  std::filesystem::path path = std::filesystem::temp_directory_path() / "stallwright-sensitivity-test";
  Folder() { std::filesystem::remove_all(path); }
  ~Folder() { std::filesystem::remove_all(path); }
};

}  // namespace

TEST_CASE("the ends of each sensitivity input are what its words say", "[study][sobol]") {
  const SortieConfig base = study_test::sortie("marram", "current", "standard");
  const SortieConfig low = sensitivity_sortie(base, ranges(), kLowest);
  const SortieConfig high = sensitivity_sortie(base, ranges(), kHighest);
  CHECK(low.air.sigma_mps == 0.0);
  CHECK(high.air.sigma_mps == 1.5);
  CHECK(low.pilot.scan_s == pilot_grade("sharp").scan_s);
  CHECK(high.pilot.scan_s == pilot_grade("rusty").scan_s);
  CHECK(low.instruments.pressure_noise_pa == 0.0);
  CHECK(low.instruments.acceleration_lag_s == 0.0);
  CHECK(high.instruments.pressure_noise_pa == standard_instruments().pressure_noise_pa);
  CHECK(low.card.points.back().entry_rate_ktps == 0.5);
  CHECK(high.card.points.back().entry_rate_ktps == 2.0);
  CHECK(low.loading == ranges().loadings[0]);
  CHECK(high.loading == ranges().loadings[1]);
  CHECK(record_share_at(kLowest) == 0.25);
  CHECK(record_share_at(kHighest) == 1.0);
  CHECK(low.seed == 1);
  CHECK(high.seed != low.seed);
}

TEST_CASE("hands half way between two rows are those of the grade between them", "[study][crew]") {
  CHECK(pilot_grade_at(0.5).delay_s == pilot_grade("sharp-current").delay_s);
  CHECK(pilot_grade_at(1.5).early_release == pilot_grade("current-rusty").early_release);
  CHECK(pilot_grade_at(1.0).name == "current");
  CHECK(pilot_grade_at(7.0).name == "rusty");
  CHECK(pilot_grade_at(0.25).delay_s == Approx(0.75 * 0.18 + 0.25 * 0.23));
}

TEST_CASE("sorties of one loading are flown one after the other, each point once", "[study][sobol]") {
  const SaltelliSample sample = saltelli_sample(kSensitivityInputs, 8, 3);
  const std::vector<std::size_t> order = flying_order(sample, 3);
  std::size_t changes = 0;
  for (std::size_t k = 1; k < order.size(); ++k)
    changes += loading_at(sample.points[order[k]], 3) != loading_at(sample.points[order[k - 1]], 3);
  CHECK(changes == 2);
  std::vector<std::size_t> sorted = order;
  std::sort(sorted.begin(), sorted.end());
  for (std::size_t k = 0; k < sorted.size(); ++k) CHECK(sorted[k] == k);
}

TEST_CASE("indices follow the input that alone moves the error, in whatever order it was flown",
          "[study][sobol]") {
  MapPlan plan = map_plan(setup(64), "recipe.toml");
  std::vector<SortieNumbers> sorties;
  for (const std::vector<double>& point : plan.sensitivity.points) {
    SortieNumbers numbers;
    numbers.lines.resize(plan.map.lines.size());
    numbers.lines[0].found = true;
    numbers.lines[0].error_kt = -point[static_cast<std::size_t>(SensitivityInput::mass)];
    sorties.push_back(numbers);
  }
  sorties[3].failure = "the ground";
  summarise_sensitivity(plan.map, sorties);
  const Sensitivity& out = plan.map.sensitivity;
  CHECK(out.cell.failed == 1);
  CHECK(out.indices[1].empty());  // not of whole records
  REQUIRE(out.indices[0].size() == out.inputs.size());
  for (std::size_t i = 0; i < out.inputs.size(); ++i) {
    INFO(out.inputs[i].name);
    CHECK(std::abs(out.indices[0][i].total - (out.inputs[i].name == "mass" ? 1.0 : 0.0)) < 0.25);
    CHECK(std::abs(out.indices[0][i].first - (out.inputs[i].name == "mass" ? 1.0 : 0.0)) < 0.35);
  }
}

TEST_CASE("a study with Sobol indices is read back from its plan and its blocks", "[study][sobol]") {
  const Folder folder;
  MapPlan plan = map_plan(setup(2), "recipe.toml");
  MapOrder order;
  order.folder = folder.path;
  order.threads = 2;
  const MapRun run = fly_map(plan, order);
  CHECK(run.sorties == 2 + 2 * 9);
  write_tables(folder.path, plan.map);
  REQUIRE(plan.map.sensitivity.indices[0].size() == 7);
  CHECK(plan.map.sensitivity.indices[0][0].used == 2);
  StudyMap again = read_plan(folder.path / kPlanFile);
  CHECK(again.sensitivity.seeds == plan.map.sensitivity.seeds);
  read_results(folder.path, again);
  CHECK(map_to_json(again) == map_to_json(plan.map));
  CHECK(map_to_json(again).find("\"first_order\"") != std::string::npos);
  CHECK(map_plan(setup(0), "recipe.toml").map.identity != plan.map.identity);
}

TEST_CASE("a number of sorties that is asked for is a limit to the base points too", "[study][sobol]") {
  MapSetup small = setup(64);
  small.sorties = 4;
  CHECK(map_plan(small, "recipe.toml").map.sensitivity.base == 4);
}
