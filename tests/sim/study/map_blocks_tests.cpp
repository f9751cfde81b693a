#include <catch2/catch.hpp>
#include <cmath>
#include <set>
#include <thread>

#include "aircraft/input_error.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/study/map/blocks.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/map/study_folder.hpp"
#include "tests/sim/cli/run_program.hpp"
#include "tests/sim/study/map_setup.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;
using cli_test::Folder;

/// Numbers that are hard to print, and things that do not exist.
std::vector<SortieNumbers> awkward(const StudyMap& map, int count) {
  std::vector<SortieNumbers> numbers;
  for (int k = 0; k < count; ++k) numbers.push_back(study_test::made_up(map, 0.1 * k - 1.0 / 3.0));
  numbers[0].lines[0].error_kt = 4.9406564584124654e-324;
  numbers[0].lines[1].error_kt = -0.1 - 0.2;
  numbers[1].failure = "met \"the ground\", alas; at 3,000 ft";
  numbers[1].verdict.reset();
  numbers[1].out_of_order.reset();
  numbers[1].hold_rms_kt = kNone;
  numbers[1].lines[2] = {};
  return numbers;
}

}  // namespace

TEST_CASE("blocks hold fifty sorties of one cell, the last one what is left", "[study][map]") {
  const StudyMap map = study_test::small_plan(120).map;
  const std::vector<Block> blocks = blocks_of(map);
  REQUIRE(blocks.size() == 15);
  CHECK(blocks[0].sorties == 50);
  CHECK(blocks[1].first == 50);
  CHECK(blocks[2].sorties == 20);
  CHECK(blocks[3].cell == 1);
  CHECK(blocks[0].name == "01-calm-sharp-0001.csv");
  CHECK(blocks[14].name == "05-rough-very-sharp-entry-rate-2-kt-s-0003.csv");
  std::set<std::string> names;
  for (const Block& block : blocks) names.insert(block.name);
  CHECK(names.size() == blocks.size());
}

TEST_CASE("a block reads back as it was written, to the last bit", "[study][map]") {
  const StudyMap map = study_test::small_plan(4).map;
  const Block block = blocks_of(map).at(2);
  const std::vector<SortieNumbers> numbers = awkward(map, 4);
  const Folder folder;
  write_whole_file(folder / "block.csv", block_text(map, block, numbers));
  const std::vector<SortieNumbers> read = read_block(folder / "block.csv", map, block);
  CHECK(block_text(map, block, read) == block_text(map, block, numbers));
  CHECK(read.at(0).lines[0].error_kt == numbers[0].lines[0].error_kt);
  CHECK(read.at(0).lines[1].error_kt == numbers[0].lines[1].error_kt);
  CHECK(read.at(1).failure == numbers[1].failure);
  CHECK_FALSE(read.at(1).verdict);
  CHECK_FALSE(read.at(1).out_of_order);
  CHECK(std::isnan(read.at(1).hold_rms_kt));
  CHECK_FALSE(read.at(1).lines[2].found);
  CHECK(read.at(2).verdict == Verdict::keep);
  CHECK(block_identity(folder / "block.csv") == map.identity);
}

TEST_CASE("a file that is not this block of this study is refused", "[study][map]") {
  const StudyMap map = study_test::small_plan(4).map;
  const std::vector<Block> blocks = blocks_of(map);
  const std::string text = block_text(map, blocks[0], awkward(map, 4));
  const Folder folder;
  const auto complaint = [&](const std::string& put, const StudyMap& of, const Block& block) -> std::string {
    write_whole_file(folder / "block.csv", put);
    try {
      read_block(folder / "block.csv", of, block);
    } catch (const InputError& e) {
      return e.what();
    }
    return "";
  };
  CHECK(complaint(text, map, blocks[0]).empty());
  CHECK_THAT(complaint(text, map, blocks[1]), Catch::Contains("cell 02-calm-rusty"));
  StudyMap other = map;
  other.identity = "0123456789abcdef";
  CHECK_THAT(complaint(text, other, blocks[0]), Catch::Contains("0123456789abcdef"));
  other = map;
  other.first_seed = 2;
  CHECK_THAT(complaint(text, other, blocks[0]), Catch::Contains("seed 2"));
  CHECK_THAT(complaint(text.substr(0, text.rfind('\n', text.size() - 2) + 1), map, blocks[0]),
             Catch::Contains("4 sorties"));
  CHECK_FALSE(complaint(text.substr(0, text.size() / 2), map, blocks[0]).empty());
}

TEST_CASE("a block with a set point found and no error or half-width is flown again", "[study][map]") {
  const StudyMap map = study_test::small_plan(4).map;
  const Block block = blocks_of(map).front();
  const Folder folder;
  prepare_study_folder(folder.path(), map);
  const auto is_missing = [&](double error_kt, double half_width_kt) {
    std::vector<SortieNumbers> numbers = awkward(map, 4);
    numbers[3].lines[1].error_kt = error_kt;
    numbers[3].lines[1].half_width_kt = half_width_kt;
    write_whole_file(block_file(folder.path(), block), block_text(map, block, numbers));
    return !missing_blocks(folder.path(), map, {block}).empty();
  };
  CHECK_FALSE(is_missing(-1.5, 0.5));
  CHECK(is_missing(kNone, 0.5));
  CHECK_THROWS_WITH(
      read_block(block_file(folder.path(), block), map, block),
      Catch::Contains("fast_reference_flap0_7.5s_found of seed 4") && Catch::Contains("half-width"));
  CHECK(is_missing(-1.5, kNone));
}

TEST_CASE("a block cut within the identity of its first row has none, and is flown again", "[study][map]") {
  const StudyMap map = study_test::small_plan(4).map;
  const Block block = blocks_of(map).front();
  const std::string text = block_text(map, block, awkward(map, 4));
  const std::size_t row = text.find('\n') + 1;
  const Folder folder;
  prepare_study_folder(folder.path(), map);
  const fs::path file = block_file(folder.path(), block);
  for (const std::size_t left : {row, row + 1, row + 15, row + 16}) {
    INFO("cut after byte " << left << " of " << text.size() << ", the row begins at " << row);
    write_whole_file(file, text.substr(0, left));
    CHECK(block_identity(file).empty());
    CHECK_NOTHROW(require_same_study(folder.path(), map));
    CHECK(missing_blocks(folder.path(), map, {block}).size() == 1);
  }
  write_whole_file(file, text.substr(0, row + 17));
  CHECK(block_identity(file) == map.identity);
  write_whole_file(file, text.substr(0, row) + "0123456789abcdef0," + text.substr(row + 17));
  CHECK(block_identity(file).empty());
  write_whole_file(file, text.substr(0, row) + "0123456789abcdef" + text.substr(row + 16));
  CHECK_THROWS_WITH(require_same_study(folder.path(), map), Catch::Contains("those of 0123456789abcdef"));
}

TEST_CASE("shards that begin at once in one new folder all find their study there", "[study][map]") {
  const StudyMap map = study_test::small_plan(4).map;
  const Folder folder;
  for (int round = 0; round < 50; ++round) {
    const fs::path shared = folder / std::to_string(round);
    std::vector<std::string> refused(4);
    std::vector<std::thread> shards;
    for (std::string& told : refused)
      shards.emplace_back([&map, &shared, &told] {
        try {
          prepare_study_folder(shared, map);
        } catch (const std::exception& e) {
          told = e.what();
        }
      });
    for (std::thread& shard : shards) shard.join();
    CHECK(refused == std::vector<std::string>(4));
    CHECK(cli_test::text_of(shared / kPlanFile) == plan_to_json(map));
    CHECK(fs::is_empty(shared / kSortiesFolder));
  }
}

TEST_CASE("the identity of a study changes with everything that decides what is flown", "[study][map]") {
  MapSetup setup;
  setup.base = study_test::sortie("marram", "current", "standard");
  setup.recipe.airs = {{"calm", study_test::air("calm"), "calm"}};
  setup.recipe.pilots = {"sharp"};
  setup.sorties = 3;
  const auto identity = [](const MapSetup& of) { return map_plan(of, "x.toml").map.identity; };
  std::set<std::string> seen{identity(setup)};
  CHECK(identity(setup) == *seen.begin());
  const auto changed = [&](auto change) {
    MapSetup other = setup;
    change(other);
    return seen.insert(identity(other)).second;
  };
  CHECK(changed([](MapSetup& s) { s.sorties = 4; }));
  CHECK(changed([](MapSetup& s) { s.first_seed = 2; }));
  CHECK(changed([](MapSetup& s) { s.base.airframe_seed = 2; }));
  CHECK(changed([](MapSetup& s) { s.base.loading.kg[0] += 1.0; }));
  CHECK(changed([](MapSetup& s) { s.base.instruments = ideal_instruments(); }));
  CHECK(changed([](MapSetup& s) { s.recipe.airs[0].source = "other"; }));
  CHECK(changed([](MapSetup& s) { s.recipe.pilots = {"rusty"}; }));
  CHECK(changed([](MapSetup& s) { s.aircraft_text = "#"; }));
  CHECK(changed([](MapSetup& s) { s.card_text = "#"; }));
}

TEST_CASE("the plan of a study reads back whole", "[study][map]") {
  const SortieConfig setup = study_test::sortie("marram", "current", "standard");
  StudyMap map = study_test::small_plan(7).map;
  map.first_seed = 18446744073709551000u;
  const Folder folder;
  write_whole_file(folder / "plan.json", plan_to_json(map));
  const StudyMap read = read_plan(folder / "plan.json");
  CHECK(plan_to_json(read) == plan_to_json(map));
  CHECK(read.first_seed == map.first_seed);
  const MassProperties mass = mass_properties(setup.type, setup.loading);
  CHECK(read.mass_kg == mass.mass_kg);
  CHECK(read.cg_aft_m == mass.cg.x_aft_m);
  CHECK(read.varied.at(0).value == "2 kt/s");
  CHECK(std::isnan(read.lines.back().window_s));
  write_whole_file(folder / "plan.json", "{\"format\": \"something else\"}");
  CHECK_THROWS_AS(read_plan(folder / "plan.json"), InputError);
}

}  // namespace stallwright
