// The logbook against folders made up for it: whole, broken, many.
#include <catch2/catch.hpp>
#include <chrono>
#include <fstream>

#include "render/view/logbook_view.hpp"
#include "tests/sim/sortie/card_text.hpp"

using namespace stallwright;
using namespace stallwright::view;
namespace fs = std::filesystem;

namespace {

void put(const fs::path& file, const std::string& text) {
  fs::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary) << text;
}

/// When the folder's flight ended, in minutes after some moment.
void date(const fs::path& folder, int minutes) {
  const auto moment = fs::file_time_type::clock::now() - std::chrono::hours(1000);
  fs::last_write_time(folder / "sortie.json", moment + std::chrono::minutes(minutes));
}

std::string sortie_text(const std::string& air, bool ended = true) {
  return R"({"format": "stallwright-sortie-1", "aircraft": {"name": "Marram"}, "card": {"name": "Short card"},
    "air": {"name": ")" +
         air + R"("}, "pilot": "current", "seed": 7, "ended": )" + (ended ? "{\"finished\": true}" : "null") +
         "}";
}

constexpr const char* kJudged = R"({"format": "stallwright-judgement-1", "verdict": "fly_again",
  "fly_again": ["approach", "stall"], "sets": [
    {"points": [{"name": "approach", "ratio": 0.1, "error_kt": 2.5, "budget": [{"name": "x"}]},
                {"name": "warning", "ratio": 0.2, "error_kt": 0.4}]},
    {"points": [{"name": "warning", "ratio": 0.2, "error_kt": -1.3}, {"name": "stall", "error_kt": null}]}]})";

/// A log with one record that is held this far off, and a first attempt that was broken off far away.
std::string log_text(double off_kt) {
  std::string text =
      "t_s,point,repeat,attempt,recording,forced,in_band,tone,phase,target_kt,mass_kg,ias_kt\n";
  const auto rows = [&](int attempt, int recording, double ias_kt) {
    for (int i = 0; i < 100; ++i)
      text += "0,1,1," + std::to_string(attempt) + "," + std::to_string(recording) + ",0,1,0,record,62,500," +
              std::to_string(ias_kt) + "\n";
  };
  rows(1, 1, 90.0);
  rows(1, 0, 30.0);
  rows(2, 0, 30.0);
  rows(2, 1, 62.0 + off_kt);
  rows(2, 0, 30.0);
  return text;
}

}  // namespace

TEST_CASE("a flight's line tells what its small files tell", "[view][logbook]") {
  const card_text::Folder folder;
  const fs::path one = folder.path() / "one";
  put(one / "sortie.json", sortie_text("light"));
  put(one / "judgement.json", kJudged);
  put(one / "who.json", R"({"format": "stallwright-who-1", "names": ["R. Ashdown"], "date": "1 May"})");
  const Logbook book = read_logbook(folder.path());
  REQUIRE(book.lines.size() == 1);
  const LogbookLine& line = book.lines[0];
  CHECK(line.problem.empty());
  CHECK(line.who == "R. Ashdown");
  CHECK(line.when == "1 May");
  CHECK(line.when_given);
  CHECK(line.aircraft == "Marram");
  CHECK(line.air == "light");
  CHECK(line.seed == 7);
  CHECK(line.outcome == "fly again: approach, stall");
  CHECK(line.warning_error_kt == -1.3);
  CHECK(line.largest_error_kt == 2.5);
  REQUIRE(taught_offers(book).size() == 1);
  CHECK(taught_offers(book)[0].aircraft == "Marram");
}

TEST_CASE("without a date given the time of writing stands, and the newest comes first", "[view][logbook]") {
  const card_text::Folder folder;
  for (int k = 0; k < 3; ++k) {
    const fs::path flight = folder.path() / ("flight-" + std::to_string(k));
    put(flight / "sortie.json", sortie_text("calm"));
    date(flight, k == 1 ? 50 : k);
  }
  const Logbook book = read_logbook(folder.path());
  REQUIRE(book.lines.size() == 3);
  CHECK(book.lines[0].name == "flight-1");
  CHECK(book.lines[1].name == "flight-2");
  CHECK_FALSE(book.lines[0].when_given);
  CHECK(book.lines[0].when.size() == std::string("2026-05-01 10:00").size());
  CHECK(book.lines[0].outcome == "not debriefed yet");
  CHECK(taught_offers(book).empty());
}

TEST_CASE("what is broken becomes one line with its reason", "[view][logbook]") {
  const card_text::Folder folder;
  put(folder.path() / "a-cut" / "sortie.json", "{\"format\": \"stallw");
  put(folder.path() / "b-other" / "sortie.json", "{\"format\": 3, \"sets\": 7}");
  put(folder.path() / "c-list" / "sortie.json", "[1, 2]");
  put(folder.path() / "d-none" / "log.csv", "");
  put(folder.path() / "e-who" / "sortie.json", sortie_text("calm"));
  put(folder.path() / "e-who" / "who.json", "{}");
  put(folder.path() / "f-odd" / "sortie.json", sortie_text("calm", false));
  put(folder.path() / "f-odd" / "judgement.json", R"({"verdict": 4, "sets": "none", "fly_again": 1})");
  put(folder.path() / "not-a-sortie" / "notes.txt", "");
  put(folder.path() / "a-file.txt", "");
  const Logbook book = read_logbook(folder.path());
  REQUIRE(book.lines.size() == 6);
  for (const LogbookLine& line : book.lines) {
    CAPTURE(line.name, line.problem);
    CHECK(line.problem.empty() == (line.name == "f-odd"));
    CHECK(line.problem.find('\n') == std::string::npos);
    if (line.name == "f-odd") CHECK(line.outcome == "cut off in the air");
  }
}

TEST_CASE("a folder that is not there is an empty logbook", "[view][logbook]") {
  CHECK(read_logbook("/nowhere/at/all").lines.empty());
}

TEST_CASE("the hold comes from the last attempt of each record, once", "[view][logbook]") {
  const card_text::Folder folder;
  const fs::path one = folder.path() / "one";
  put(one / "sortie.json", sortie_text("calm"));
  put(one / "log.csv", log_text(1.5));
  Logbook book = read_logbook(folder.path());
  CHECK_FALSE(book.lines[0].hold_looked_up);
  REQUIRE(look_up_next_hold(book));
  CHECK(book.lines[0].hold_rms_kt == Approx(1.5));
  CHECK_FALSE(look_up_next_hold(book));
  // Taken over, although the log has gone since.
  fs::remove(one / "log.csv");
  CHECK(read_logbook(folder.path(), book).lines[0].hold_rms_kt == Approx(1.5));
  date(one, 5);
  CHECK_FALSE(read_logbook(folder.path(), book).lines[0].hold_looked_up);
}

TEST_CASE("a log cut short in a line, or none at all, gives what whole lines give", "[view][logbook]") {
  const card_text::Folder folder;
  std::string text = log_text(1.5);
  put(folder.path() / "log.csv", text + "0,1,1,2,1,0,1,0,record,62,500,9");
  CHECK(hold_of_log(folder.path() / "log.csv") == Approx(1.5));
  put(folder.path() / "log.csv", text + "0,1,1,2,x\n");
  CHECK(hold_of_log(folder.path() / "log.csv") == Approx(1.5));
  put(folder.path() / "log.csv", "point,repeat\n1,2\n");
  CHECK(std::isnan(hold_of_log(folder.path() / "log.csv")));
  CHECK(std::isnan(hold_of_log(folder.path() / "none.csv")));
}

TEST_CASE("a thousand flights are read", "[view][logbook]") {
  const card_text::Folder folder;
  for (int k = 0; k < 1000; ++k) {
    const fs::path flight = folder.path() / std::to_string(k);
    put(flight / "sortie.json", sortie_text("calm"));
    put(flight / "judgement.json", kJudged);
  }
  CHECK(read_logbook(folder.path()).lines.size() == 1000);
}
