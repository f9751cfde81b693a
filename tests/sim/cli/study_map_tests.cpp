// `stallwright study` and `study merge`: the same bytes whoever flies which part, and nothing lost when it is stopped.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sim/cli/study_place_text.hpp"
#include "tests/sim/cli/refused.hpp"
#include "tests/sim/cli/tiny_study.hpp"
#include "tests/sim/study/made_up_map.hpp"

namespace stallwright::cli_test {
namespace {

int blocks_in(const fs::path& study) {
  int count = 0;
  for (const auto& entry : fs::directory_iterator(study / "sorties"))
    count += entry.path().extension() == ".csv" ? 1 : 0;
  return count;
}

/// Begins a study on one thread, and sends a signal when the first block is there. The exit status.
int interrupted(const Folder& folder, const std::string& signal) {
  put(folder / "cut.sh", "'" STALLWRIGHT_PROGRAM "' " + kStudy +
                             " --threads 1 --out cut 2>err >out &\npid=$!\nfor i in $(seq 3000); do "
                             "ls cut/sorties/*.csv >ls.out 2>&1 && break; sleep 0.01; done\nkill -" +
                             signal + " $pid\nwait $pid\n");
  const int status = std::system(("cd '" + folder.path().string() + "' && bash cut.sh 2>bash.err").c_str());
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

TEST_CASE("a study is the same byte for byte on one thread, on three, and merged from two shards",
          "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  const Result one = run(folder, kStudy + " --threads 1 --out one");
  REQUIRE(one.status == 0);
  CHECK(one.err.empty());
  CHECK(one.out.find("RMS error of the warning, kt") != std::string::npos);
  REQUIRE(run(folder, kStudy + " --threads 3 --out three").status == 0);
  CHECK(contents(folder / "three") == contents(folder / "one"));

  const Result first = run(folder, kStudy + " --out part-1 --shard 1/2");
  CHECK(first.status == 0);
  CHECK(first.out == "Shard 1 of 2: 3 blocks in part-1. Tables come with `stallwright study merge`.\n");
  CHECK_FALSE(fs::exists(folder / "part-1/study.csv"));
  refused(folder, "study merge part-1 --out whole",
          {"02-calm-current-0001.csv", "04-light-current-0001.csv"});
  REQUIRE(run(folder, kStudy + " --out part-2 --shard 2/2").status == 0);
  refused(folder, "study merge part-1 part-2 part-1 --out whole",
          {"01-calm-sharp-0001.csv", "once", "part-1"});
  refused(folder, "study merge part-1 part-2 --out part-1", {"part-1"});
  refused(folder, "study merge part-1 part-3 --out whole", {"part-3/study-plan.json", "no such file"});
  const Result merged = run(folder, "study merge part-2 part-1 --out whole");
  CHECK(merged.status == 0);
  CHECK(merged.out == one.out);
  CHECK(contents(folder / "whole") == contents(folder / "one"));
  refused(folder, "study merge part-1 part-2 --out whole", {"whole", "new or empty"});

  // Nothing is flown again, and without --out the answer is the same and nothing stays.
  const Result again = run(folder, kStudy + " --out one --json");
  CHECK(again.err == "stallwright: 5 blocks of 5 there before, kept\n");
  CHECK(again.out == text_of(folder / "one/study.json"));
  const std::string before = folder.listing();
  CHECK(run(folder, kStudy).out == one.out);
  CHECK(folder.listing() == before);
}

TEST_CASE("a study that is stopped or killed keeps its finished blocks and goes on to the same bytes",
          "[cli][study]") {
  const Folder whole;
  put_inputs(whole);
  REQUIRE(run(whole, kStudy + " --out cut").status == 0);
  for (const std::string signal : {"INT", "KILL"}) {
    INFO(signal);
    const Folder folder;
    put_inputs(folder);
    CHECK(interrupted(folder, signal) == (signal == "INT" ? 130 : 137));
    const int kept = blocks_in(folder / "cut");
    CHECK(kept >= 1);
    CHECK(kept < 5);
    CHECK_FALSE(fs::exists(folder / "cut/study.csv"));
    const std::string said = text_of(folder / "err");
    if (signal == "INT")
      CHECK(said == "stallwright: stopped; " + std::to_string(kept) + (kept == 1 ? " block" : " blocks") +
                        " of 5 are kept in cut, the same command goes on from there\n");
    else
      CHECK(said.empty());
    const Result rest = run(folder, kStudy + " --out cut");
    CHECK(rest.status == 0);
    CHECK(rest.err.find(" of 5 there before, kept") != std::string::npos);
    CHECK(contents(folder / "cut") == contents(whole / "cut"));
  }
}

TEST_CASE("a block of another study is refused, a damaged one is flown again", "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  const std::string brief = kStudy + " --shard 1/5 --out ";
  REQUIRE(run(folder, brief + "mine").status == 0);
  REQUIRE(run(folder, brief + "other --seed 7").status == 0);
  refused(folder, brief + "mine --seed 7", {"study-plan.json", "another"});
  refused(folder, "study merge mine other --out whole", {"study-plan.json", "another"});
  const std::string name = "sorties/01-calm-sharp-0001.csv", whole = text_of(folder / ("mine/" + name));
  put(folder / ("mine/" + name), text_of(folder / ("other/" + name)));
  refused(folder, brief + "mine", {name, "expected sorties of study"});
  for (const std::size_t left : {whole.size() / 2, whole.find('\n') + 9}) {  // the latter within the identity
    INFO("cut after byte " << left << " of " << whole.size());
    put(folder / ("mine/" + name), whole.substr(0, left));
    const Result again = run(folder, brief + "mine");
    CHECK(again.status == 0);
    CHECK(again.err == "stallwright: 1 block damaged, flown again\n");
    CHECK(text_of(folder / ("mine/" + name)) == whole);
  }
}

TEST_CASE("a start that was killed before its plan was whole is gone on with", "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  const std::string brief = kStudy + " --shard 1/5 --out ";
  fs::create_directories(folder / "begun/sorties");
  refused(folder, "study merge begun --out whole", {"study-plan.json"});
  put(folder / "begun/.stallwright-4711-0", "{ \"form");
  put(folder / "begun/sorties/.stallwright-4711-1", "");
  CHECK(run(folder, brief + "begun").status == 0);
  CHECK(fs::exists(folder / "begun/sorties/01-calm-sharp-0001.csv"));
  for (const char* mine :
       {"mine/sorties/mine.txt", "mine/.stallwright-notes", "mine/sorties/sorties/mine.txt"}) {
    fs::remove_all(folder / "mine");
    fs::create_directories((folder / mine).parent_path());
    put(folder / mine, "mine");
    refused(folder, brief + "mine", {"mine", "new or empty"});
  }
}

TEST_CASE("a rehearsal is placed on the map by its own hold and gusts", "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  REQUIRE(run(folder, kStudy + " --out map").status == 0);
  REQUIRE(run(folder, "rehearse --card least.toml --air light --seed 1 --out sortie").status < 2);
  const Result words = run(folder, "study place sortie --study map");
  INFO(words.out << words.err);
  CHECK(words.status == 0);
  CHECK(words.out.rfind("You are here: ", 0) == 0);
  CHECK(words.out.find("Not as on the map") == std::string::npos);
  CHECK(words.out.find(" kt at the approach, ") != std::string::npos);
  // The sortie with this seed is one of the map's, so its numbers are those of its row there.
  const auto json = nlohmann::json::parse(run(folder, "study place sortie --study map --json").out);
  const std::string block = text_of(folder / "map/sorties/04-light-current-0001.csv");
  const std::string row = block.substr(block.find('\n') + 1);
  CHECK(row.find("," + json["hold_rms_kt"].dump() + "," + json["gust_rms_mps"].dump() + ",") !=
        std::string::npos);

  fs::remove(folder / "sortie/truth.csv");
  const Result unknown = run(folder, "study place sortie --study map");
  CHECK(unknown.out.find("truth.csv is missing") != std::string::npos);
  CHECK(unknown.out.find("at light") != std::string::npos);
  refused(folder, "study place sortie --study sortie", {"study-plan.json"});
  refused(folder, "study place map --study map", {"sortie.json"});
  refused(folder, "study place sortie", {"--study"});
  fs::remove(folder / "map/sorties/04-light-current-0001.csv");
  refused(folder, "study place sortie --study map", {"04-light-current-0001.csv"});
}

TEST_CASE("a sortie unlike those of the study is placed with a word about it, or not at all",
          "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  REQUIRE(run(folder, kStudy + " --out map").status == 0);
  const std::string rehearse = "rehearse --card least.toml --air light --seed 1 --out ";
  REQUIRE(run(folder, rehearse + "ideal --sensors ideal").status < 2);
  refused(folder, "study place ideal --study map", {"standard sensors", "ideal sensors"});
  REQUIRE(run(folder, rehearse + "other --load bags=10 --airframe-seed 7").status < 2);
  const Result other = run(folder, "study place other --study map");
  INFO(other.out << other.err);
  CHECK(other.status == 0);
  CHECK(other.out.find(
            "\nNot as on the map: mass and balance 575 kg at 0.402 m aft of the datum in this sortie, "
            "565 kg at\n                   0.384 m aft of the datum in the study.\n") != std::string::npos);
  CHECK(other.out.find("\nNot as on the map: airframe 7 in this sortie, 1 in the study.\n") !=
        std::string::npos);
  const auto json = nlohmann::json::parse(run(folder, "study place other --study map --json").out);
  REQUIRE(json["unlike"].size() == 2);
  CHECK(json["unlike"][1] == nlohmann::json{{"what", "airframe"}, {"sortie", "7"}, {"study", "1"}});
}

namespace {

/// Current hands hold within 1 kt and rusty ones within 2; still air is not quite still.
StudyMap map_with_hold() {
  StudyMap map = study_test::made_up_map();
  for (MapCell& cell : map.cells) {
    cell.hold_rms_kt = cell.hand == 0 ? 1.0 : 2.0;
    if (map.airs[cell.air].name == "calm") cell.gust_rms_mps = 0.1;
  }
  return map;
}

StudyMap map_of_light_air() {
  StudyMap map = map_with_hold();
  map.cells = {map.cell(2, 0), map.cell(2, 1)};
  for (MapCell& cell : map.cells) cell.air = 0;
  map.airs = {map.airs[2]};
  return map;
}

std::string words(const StudyMap& map, double hold_kt, double gust_mps) {
  const RecordRms own{hold_kt, gust_mps};
  return cli::place_text(map, {own, place_on_map(map, own), "", {}});
}

const std::string kGuess =
    "Straight lines between the cells; one sortie's few records scatter, so take the place for a guess.\n";

}  // namespace

TEST_CASE("beyond the ends of a map a sortie is told so, and given the last cell", "[cli][study]") {
  CHECK(words(map_with_hold(), 3.0, 2.0) ==
        "You are here: rougher than moderate, less steady than rusty: expect at least \u00b13.2 kt at the "
        "warning,\n"
        "              \u00b14.0 kt at the stall (RMS).\n"
        "Air:  gusts of 2.00 m/s rms in the steady records; the map has moderate 1.50\n"
        "Hold: 3.00 kt rms of airspeed less target; in this air the map has rusty 2.00\n" +
            kGuess);
  CHECK(words(map_with_hold(), 0.5, 0.05) ==
        "You are here: smoother than calm, steadier than current: expect \u00b10.5 kt at the warning, "
        "\u00b10.6 kt at\n"
        "              the stall (RMS).\n"
        "Air:  gusts of 0.05 m/s rms in the steady records; the map has calm 0.10\n"
        "Hold: 0.50 kt rms of airspeed less target; in this air the map has current 1.00\n" +
            kGuess);
  CHECK(words(map_with_hold(), 1.5, 1.2) ==
        "You are here: between light and moderate, between current and rusty: expect \u00b12.6 kt at the "
        "warning,\n"
        "              \u00b13.2 kt at the stall (RMS).\n"
        "Air:  gusts of 1.20 m/s rms in the steady records; the map has light 0.75 and moderate 1.50\n"
        "Hold: 1.50 kt rms of airspeed less target; in this air the map has current 1.00 and rusty 2.00\n" +
            kGuess);
}

TEST_CASE("on a map of one air rougher is told from smoother by that air's own gusts", "[cli][study]") {
  CHECK(words(map_of_light_air(), 1.5, 1.35) ==
        "You are here: rougher than light, between current and rusty: expect at least \u00b11.8 kt at the "
        "warning,\n"
        "              \u00b12.2 kt at the stall (RMS).\n"
        "Air:  gusts of 1.35 m/s rms in the steady records; the map has light 0.75\n"
        "Hold: 1.50 kt rms of airspeed less target; in this air the map has current 1.00 and rusty 2.00\n" +
            kGuess);
  CHECK(words(map_of_light_air(), 1.0, 0.5) ==
        "You are here: smoother than light, at current: expect \u00b11.7 kt at the warning, \u00b12.1 kt at "
        "the stall\n"
        "              (RMS).\n"
        "Air:  gusts of 0.50 m/s rms in the steady records; the map has light 0.75\n"
        "Hold: 1.00 kt rms of airspeed less target; in this air the map has current 1.00 and rusty 2.00\n" +
            kGuess);
  CHECK(words(map_of_light_air(), 2.0, 0.75)
            .rfind("You are here: at light, at rusty: expect \u00b11.9 kt at the", 0) == 0);
}

TEST_CASE("set points that the map has no number of are not told, what is unlike the map is",
          "[cli][study]") {
  StudyMap map = map_of_light_air();
  for (MapCell& cell : map.cells) cell.lines[0].rms_error_kt = {};
  CHECK(words(map, 1.0, 0.75) ==
        "You are here: at light, at current: expect \u00b12.1 kt at the stall (RMS).\n"
        "Air:  gusts of 0.75 m/s rms in the steady records; the map has light 0.75\n"
        "Hold: 1.00 kt rms of airspeed less target; in this air the map has current 1.00 and rusty 2.00\n" +
            kGuess);
  for (MapCell& cell : map.cells) cell.lines[2].rms_error_kt = {};
  const RecordRms own{1.0, kNone};
  const cli::PlacedSortie sortie{own, place_in_air(map, 0, 1.0), "light", {{"airframe", "7", "1"}}};
  CHECK(cli::place_text(map, sortie) ==
        "You are here: at light, at current: the map has no set point there.\n"
        "Not as on the map: airframe 7 in this sortie, 1 in the study.\n"
        "Air:  truth.csv is missing, so its gusts are not known: taken by name, light\n"
        "Hold: 1.00 kt rms of airspeed less target; in this air the map has current 1.00 and rusty 2.00\n" +
            kGuess);
}

TEST_CASE("a study that cannot be is refused before anything is flown or written", "[cli][study]") {
  const Folder folder;
  put_inputs(folder);
  put(folder / "bad.toml", "format = \"stallwright-recipe-1\"\n");
  put(folder / "file", "mine");
  fs::create_directory(folder / "full");
  put(folder / "full/mine.txt", "mine");
  refused(folder, "study --recipe bad.toml --out out", {"bad.toml:1", "map", "expected"});
  refused(folder, "study --recipe missing.toml --out out", {"missing.toml"});
  refused(folder, "study --recipe hour --out out", {"air-and-hands, hours", "perhaps hours"});
  refused(folder, kStudy + " --out file", {"file"});
  refused(folder, kStudy + " --out full", {"full", "new or empty"});
  refused(folder, kStudy + " --out no/where", {"no/where"});
  refused(folder, kStudy + " --out ''", {"--out"});
  for (const char* shard : {"0/2", "3/2", "1", "1/", "1/2/3", "x/2", "-1/2"})
    refused(folder, kStudy + " --out out --shard " + shard, {"--shard: expected K/N", shard});
  refused(folder, kStudy + " --shard 1/2", {"--shard", "--out"});
  refused(folder, kStudy + " --sorties 1", {"--sorties"});
  refused(folder, kStudy + " --seed -1", {"--seed"});
  refused(folder, kStudy + " --sensors good", {"ideal", "standard"});
  refused(folder, "study --card verify --out out", {"verify.toml", "teaches"});
  refused(folder, "study intervals --air clam", {"perhaps calm"});
  refused(folder, "study merge full --out out", {"study-plan.json"});
  refused(folder, "study merge --out out", {"DIR"});
}

}  // namespace stallwright::cli_test
