// Each sentence of what to work on appears for a flight made up to earn it, and for no other.
#include <catch2/catch.hpp>

#include "render/view/work_on.hpp"

using namespace stallwright;
using namespace stallwright::view;

namespace {

/// A steady record flown well inside every band.
HoldFigures steady() {
  HoldFigures r;
  r.point = "approach";
  r.target_kt = 62.0;
  r.speed_rms_kt = 0.4;
  r.speed_mean_kt = 0.1;
  r.bank_rms_deg = 1.0;
  r.slip_rms_g = 0.01;
  r.slip_mean_g = 0.0;
  return r;
}

HoldFigures stall() {
  HoldFigures r = steady();
  r.point = "stall";
  r.is_stall = true;
  r.target_kt = r.speed_rms_kt = r.speed_mean_kt = kNone;
  r.entry_rate_ktps = 1.1;
  r.entry_wanted_ktps = 1.0;
  return r;
}

PointCount count() {
  PointCount c;
  c.point = "approach";
  c.records_wanted = c.records = c.attempts = 1;
  return c;
}

WorkInput good() { return {{steady(), stall()}, {count()}, {}, 0.0}; }

const WorkItem* item(const std::vector<WorkItem>& items, const std::string& what) {
  for (const WorkItem& i : items)
    if (i.what == what) return &i;
  return nullptr;
}

}  // namespace

TEST_CASE("a flight inside half of every band has nothing to work on", "[view][work_on]") {
  const auto items = work_on(good());
  REQUIRE(items.size() == 1);
  CHECK(items[0].what == "Nothing stands out");
}

TEST_CASE("a flight without a record is told so and not praised", "[view][work_on]") {
  const auto items = work_on({});
  REQUIRE(items.size() == 1);
  CHECK(items[0].what == "No record");
}

TEST_CASE("a count that is not nothing is named with its point, and alone", "[view][work_on]") {
  struct Row {
    int PointCount::*count;
    const char* what;
    bool danger;
  };
  const Row rows[] = {{&PointCount::unintended_stalls, "Stalls nobody asked for", true},
                      {&PointCount::knocked_off, "Knocked off", true},
                      {&PointCount::forced, "Recorded off condition", false},
                      {&PointCount::left_band, "Left a band", false},
                      {&PointCount::given_up, "Given up", false},
                      {&PointCount::timeouts, "Slow to settle", false}};
  for (const Row& row : rows) {
    CAPTURE(row.what);
    WorkInput input = good();
    input.counts[0].*row.count = 2;
    const auto items = work_on(input);
    REQUIRE(items.size() == 1);
    CHECK(items[0].what == row.what);
    CHECK(items[0].danger == row.danger);
    CHECK(items[0].sentence.find(" twice") != std::string::npos);
    CHECK(items[0].sentence.find(", at approach") != std::string::npos);
  }
}

TEST_CASE("speed that wanders beyond half of the narrower band is named with its numbers",
          "[view][work_on]") {
  WorkInput input = good();
  input.records[0].bands.speed_low_kt = 2.0;
  input.records[0].speed_rms_kt = 0.9;
  CHECK(item(work_on(input), "Speed hold") == nullptr);
  input.records[0].speed_rms_kt = 1.4;
  const auto items = work_on(input);
  REQUIRE(item(items, "Speed hold") != nullptr);
  CHECK(item(items, "Speed hold")->sentence.find("1.4 kt (rms) about 62 kt; the band is 2.0 kt") !=
        std::string::npos);
}

TEST_CASE("a steady offset of the speed is told with its side", "[view][work_on]") {
  WorkInput input = good();
  input.records[0].speed_mean_kt = -0.9;
  const auto slow = work_on(input);
  REQUIRE(item(slow, "Speed off to one side") != nullptr);
  CHECK(item(slow, "Speed off to one side")->sentence.find("0.9 kt too slow") != std::string::npos);
  input.records[0].speed_mean_kt = 0.9;
  const auto fast = work_on(input);
  CHECK(item(fast, "Speed off to one side")->sentence.find("0.9 kt too fast") != std::string::npos);
}

TEST_CASE("bank beyond half of its band is named, and only then", "[view][work_on]") {
  WorkInput input = good();
  input.records[0].bank_rms_deg = 2.4;
  CHECK(item(work_on(input), "Bank") == nullptr);
  input.records[0].bank_rms_deg = 2.6;
  CHECK(item(work_on(input), "Bank") != nullptr);
}

TEST_CASE("a ball that lies out names the pedal on its own side", "[view][work_on]") {
  WorkInput input = good();
  input.records[0].slip_rms_g = 0.05;
  input.records[0].slip_mean_g = 0.04;
  const auto items = work_on(input);
  REQUIRE(item(items, "Ball") != nullptr);
  CHECK(item(items, "Ball")->sentence.find("Press the right pedal") != std::string::npos);
  input.records[0].slip_mean_g = -0.04;
  const auto other = work_on(input);
  CHECK(item(other, "Ball")->sentence.find("Press the left pedal") != std::string::npos);
}

TEST_CASE("an entry rate outside its band is told with what the card asks", "[view][work_on]") {
  WorkInput input = good();
  input.records[1].entry_rate_ktps = 1.45;
  CHECK(item(work_on(input), "Entry rate") == nullptr);
  input.records[1].entry_rate_ktps = 2.2;
  const auto items = work_on(input);
  REQUIRE(item(items, "Entry rate") != nullptr);
  CHECK(item(items, "Entry rate")->sentence.find("2.2 kt/s; the card asks for 1.0") != std::string::npos);
}

TEST_CASE("a stick let go before the break is told, and a stall that merely did not come is not",
          "[view][work_on]") {
  WorkInput input = good();
  input.events = {{30.0, "no break", "stall", "no break within the time-out", false}};
  CHECK(item(work_on(input), "Let go before the break") == nullptr);
  input.events.push_back({60.0, "no break", "stall", "stick released before the break", false});
  const auto items = work_on(input);
  REQUIRE(item(items, "Let go before the break") != nullptr);
  CHECK(item(items, "Let go before the break")->sentence.find(" once.") != std::string::npos);
}

TEST_CASE("safety stands before hands, and hands before time lost", "[view][work_on]") {
  WorkInput input = good();
  input.counts[0].timeouts = 1;
  input.counts[0].unintended_stalls = 1;
  input.records[0].bank_rms_deg = 4.0;
  const auto items = work_on(input);
  REQUIRE(items.size() == 3);
  CHECK(items[0].what == "Stalls nobody asked for");
  CHECK(items[1].what == "Bank");
  CHECK(items[2].what == "Slow to settle");
}
