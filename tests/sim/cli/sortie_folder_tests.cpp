// What rehearse writes, and what can be made again from it. One sortie serves most cases: flying is what
// takes time.
#include <sys/wait.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <nlohmann/json.hpp>
#include <thread>

#include "tests/sim/cli/least_card.hpp"
#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {
namespace {

using Json = nlohmann::json;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t from = 0, to = 0; (to = text.find('\n', from)) != std::string::npos; from = to + 1)
    lines.push_back(text.substr(from, to - from));
  return lines;
}

}  // namespace

TEST_CASE(
    "a rehearsed sortie folder holds what was flown, reduces to the same bytes and debriefs to the same page",
    "[cli]") {
  const Folder folder;
  put(folder / "least.toml", kLeastCard);
  const std::string options = "rehearse --card least.toml --load 'front seat=80' --out ";
  const Result flown = run(folder, options + "first");
  INFO(flown.err);
  REQUIRE(answered(flown.status));
  CHECK(flown.err.empty());  // no progress into a pipe
  for (const char* word :
       {"approach", "warning", "stall", "Verdict:", "Reason:", "Caution:", "debrief.html"}) {
    INFO("missing in the table: " << word);
    CHECK(flown.out.find(word) != std::string::npos);
  }
  const fs::path first = folder / "first";
  const Json sortie = Json::parse(text_of(first / "sortie.json"));
  CHECK(sortie.at("format") == "stallwright-sortie-1");
  CHECK(sortie.at("aircraft").at("key") == "marram");
  CHECK(sortie.at("card").at("key") == "least");
  CHECK(sortie.at("air").at("name") == "calm");
  CHECK(sortie.at("air").at("sigma_kt") == 0.0);
  CHECK(sortie.at("pilot") == "current");
  CHECK(sortie.at("sensors") == "standard");
  CHECK(sortie.at("seed") == 1);
  CHECK(sortie.at("loading").at(0) == Json{{"station", "front seat"}, {"kg", 80.0}});
  // 365 kg empty, 80 + 75 kg of people, 2 x 20 kg of fuel.
  CHECK(sortie.at("mass").at("true_kg").get<double>() == Approx(560.0));
  CHECK(sortie.at("mass").at("stated_kg").get<double>() != 560.0);  // the pilot weighs as the grade allows
  CHECK(sortie.at("ended").at("finished") == true);
  CHECK(sortie.at("points").size() == 3);
  CHECK(text_of(first / "card.toml") == kLeastCard);

  const Json judgement = Json::parse(text_of(first / "judgement.json"));
  CHECK((flown.status == 0) == (judgement.at("verdict") == "keep"));
  CHECK_FALSE(judgement.at("reason").get<std::string>().empty());
  for (const char* key : {"true_ratio", "true_speed_kt", "error_ratio", "error_deg", "error_kt"})
    CHECK(judgement.at("sets").at(0).at("points").at(0).contains(key));
  const std::string set_points = text_of(first / "set-points.json");
  CHECK(set_points.find("true_") == std::string::npos);
  CHECK(set_points.find("error_") == std::string::npos);
  for (const char* key :
       {"name", "ratio", "u", "dof", "interval_95", "speed_kt", "budget", "flags", "readings"})
    CHECK(Json::parse(set_points).at("sets").at(0).at("points").at(0).contains(key));

  SECTION("reduce works from the log and the card alone, to the same numbers") {
    fs::create_directory(folder / "stranger");
    fs::copy(first / "log.csv", folder / "stranger/log.csv");
    const Result reduced =
        run(folder, "reduce stranger/log.csv --card least.toml --out stranger/points.json");
    INFO(reduced.err);
    CHECK(answered(reduced.status));
    // But for the aeroplane's name, which no log holds.
    Json alone = Json::parse(text_of(folder / "stranger/points.json")), beside = Json::parse(set_points);
    CHECK(alone.at("aircraft") == "");
    CHECK(beside.at("aircraft") == "Marram");
    alone.erase("aircraft");
    beside.erase("aircraft");
    CHECK(alone == beside);
    const std::string before = folder.listing();
    CHECK(run(folder, "reduce first --json").out == set_points);
    CHECK(run(folder, "reduce first").out.find("approach") != std::string::npos);
    CHECK(folder.listing() == before);  // without --out nothing is written
    // A sortie given twice is no second sortie, and no file that is read is written over.
    for (const std::string& slip :
         {std::string("reduce first first"), std::string("reduce first --out first/log.csv"),
          std::string("reduce first --out nowhere/points.json")}) {
      const Result refused = run(folder, slip);
      INFO(slip << ": " << refused.err);
      CHECK(refused.status == 2);
      CHECK(refused.err_lines() == 1);
    }
    CHECK(folder.listing() == before);
    // Better instruments leave another budget: the option is not idle.
    CHECK(run(folder, "reduce first --sensors ideal --json").out != set_points);
  }
  SECTION("debrief makes its files again, byte for byte") {
    const std::string page = text_of(first / "debrief.html"), answer = text_of(first / "judgement.json");
    fs::remove(first / "debrief.html");
    put(first / "judgement.json", "old");
    const Result again = run(folder, "debrief first");
    INFO(again.err);
    CHECK(again.status == flown.status);
    CHECK(again.out == flown.out);
    CHECK(text_of(first / "debrief.html") == page);
    CHECK(text_of(first / "judgement.json") == answer);
    Json printed = Json::parse(run(folder, "debrief first --json").out);
    CHECK(printed.at("folder") == "first");
    printed.erase("folder");
    CHECK(printed == Json::parse(answer));
  }
  SECTION("a spoilt folder is refused and left alone") {
    const std::string good = text_of(first / "sortie.json");
    for (const std::string& bad :
         {std::string(3u << 20, '\0'), good.substr(0, good.size() / 2), std::string("[]"),
          Json(Json::parse(good)).patch({{{"op", "replace"}, {"path", "/seed"}, {"value", -1}}}).dump(),
          Json(Json::parse(good))
              .patch({{{"op", "replace"}, {"path", "/loading/0/kg"}, {"value", 1e9}}})
              .dump(),
          Json(Json::parse(good)).patch({{{"op", "remove"}, {"path", "/ended"}}}).dump()}) {
      put(first / "sortie.json", bad);
      put(first / "judgement.json", "old");
      const Result result = run(folder, "debrief first");
      INFO(result.err);
      CHECK(result.status == 2);
      CHECK(result.err_lines() == 1);
      CHECK(result.err.find("sortie.json") != std::string::npos);
      CHECK(text_of(first / "judgement.json") == "old");
    }
  }
  SECTION("the same seed writes the same log and truth, another seed another log") {
    CHECK(answered(run(folder, options + "second").status));
    CHECK(answered(run(folder, options + "third --seed 2").status));
    for (const char* file : {"log.csv", "truth.csv"})
      CHECK(text_of(first / file) == text_of(folder / "second" / file));
    CHECK(text_of(first / "log.csv") != text_of(folder / "third/log.csv"));
  }
  SECTION("the three copied files are enough to fly it again") {
    CHECK(answered(run(folder,
                       "rehearse --aircraft first/aircraft.toml --card first/card.toml --air first/air.toml "
                       "--load 'front seat=80' --out again")
                       .status));
    CHECK(text_of(first / "log.csv") == text_of(folder / "again/log.csv"));
  }
}

TEST_CASE("a sortie that is killed in flight leaves whole lines to the last second, and they reduce",
          "[cli]") {
  const Folder folder;
  const std::string out = (folder / "out").string(), log = out + "/log.csv";
  const pid_t child = ::fork();
  if (child == 0) {
    ::execl(STALLWRIGHT_PROGRAM, "stallwright", "rehearse", "--card", "thorough", "--out", out.c_str(),
            nullptr);
    ::_exit(99);
  }
  REQUIRE(child > 0);
  std::error_code error;
  // Long enough for some seconds of flight, far too short for the thorough card.
  for (int tries = 0; tries < 3000; ++tries) {
    if (fs::file_size(log, error) > 100000 && !error) break;
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  ::kill(child, SIGKILL);
  int status = 0;
  ::waitpid(child, &status, 0);
  REQUIRE(WIFSIGNALED(status));

  for (const char* name : {"log.csv", "truth.csv"}) {
    const std::string text = text_of(fs::path(out) / name);
    REQUIRE(text.back() == '\n');
    const std::vector<std::string> lines = lines_of(text);
    const auto commas = std::count(lines.front().begin(), lines.front().end(), ',');
    for (const std::string& line : lines) REQUIRE(std::count(line.begin(), line.end(), ',') == commas);
    CHECK((lines.size() - 1) % 50 == 0);  // whole seconds of 50 rows
  }
  CHECK(Json::parse(text_of(fs::path(out) / "sortie.json")).at("ended").is_null());
  CHECK_FALSE(fs::exists(fs::path(out) / "set-points.json"));
  const Result reduced = run(folder, "reduce out");
  INFO(reduced.err);
  CHECK(reduced.status == 1);  // nothing was recorded yet: no set points
  const Result debriefed = run(folder, "debrief out");
  INFO(debriefed.err);
  CHECK(debriefed.status == 1);
  CHECK(debriefed.out.find("cut off") != std::string::npos);
}

TEST_CASE("the usual folder takes the next free number", "[cli]") {
  const Folder folder;
  put(folder / "least.toml", kLeastCard);
  fs::create_directories(folder / "sorties/least-marram-calm-seed1");
  put(folder / "sorties/least-marram-calm-seed1/mine.txt", "mine");
  const Result flown = run(folder, "rehearse --card least.toml --json");
  INFO(flown.err);
  REQUIRE(answered(flown.status));
  const Json answer = Json::parse(flown.out);
  CHECK(answer.at("folder") == "sorties/least-marram-calm-seed1-2");
  CHECK(fs::exists(folder / "sorties/least-marram-calm-seed1-2/debrief.html"));
}

}  // namespace stallwright::cli_test
