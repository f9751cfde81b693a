// A flight reduced from its own log, and from the same log in the shape of a stranger's recorder.
#include <catch2/catch.hpp>

#include "sim/random/philox.hpp"
#include "sim/reduction/series.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "tests/sim/reduction/foreign_log.hpp"

using namespace stallwright;
using namespace stallwright::own_log_test;

namespace {

const BudgetLine* line_of(const SetPoint& point, const std::string& name) {
  for (const BudgetLine& line : point.budget)
    if (line.name == name) return &line;
  return nullptr;
}

bool says(const std::vector<std::string>& texts, const std::string& words) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(words) != std::string::npos; });
}

double width(const SetPoint& point) { return point.interval_high - point.interval_low; }

/// Every point within so much ratio of the other's.
void same_points(const SetPoints& got, const SetPoints& wanted, double steady, double stall) {
  REQUIRE(got.sets.size() == wanted.sets.size());
  REQUIRE(got.sets[0].points.size() == wanted.sets[0].points.size());
  for (std::size_t k = 0; k < wanted.sets[0].points.size(); ++k) {
    const SetPoint &a = got.sets[0].points[k], &b = wanted.sets[0].points[k];
    CAPTURE(b.name, a.ratio, b.ratio, a.u, b.u, a.speed_kt, b.speed_kt);
    REQUIRE(b.found());
    CHECK(a.name == b.name);
    CHECK_THAT(a.ratio, Catch::WithinAbs(b.ratio, b.is_stall ? stall : steady));
    CHECK_THAT(a.u, Catch::WithinRel(b.u, 0.1));
  }
}

}  // namespace

TEST_CASE(
    "a log at 50 Hz in foreign units with other signs and a clock past midnight gives the same set points",
    "[reduction][own-log]") {
  const Flown flown = fly("standard", 3);
  const auto columns = foreign_columns();
  const SetPoints got = reduce_foreign(flown, foreign_text(flown.rows, columns),
                                       map_text(columns) + target_text(flown, true) + record_text(flown));
  // The same samples: what is left is the last printed digit of each column, 1e-5 of a ratio at most. In a stall the
  // buffet shakes lift about its maximum, and a last digit may decide which sample is the greatest and so where the fit
  // begins: a fifth of the point's standard uncertainty, 0.04.
  same_points(got, reduce(flown.rows, flown.card, flown.instruments), 2e-5, 8e-3);
  CHECK(says(got.warnings, "midnight"));
}

TEST_CASE("a log at 20 Hz gives the set points of the log at 50 Hz within what its fewer samples leave open",
          "[reduction][own-log]") {
  const Flown flown = fly("standard", 5);
  const auto columns = foreign_columns();
  const SetPoints got = reduce_foreign(flown, foreign_text(thinned(flown.rows, 20.0), columns),
                                       map_text(columns) + target_text(flown, true) + record_text(flown));
  // A sample of the pressures scatters by 1e-3 of ratio, the mean over 300 samples instead of 750 by 6e-5; the slope
  // of the set moves a little too. 1e-3 is a thirtieth of a knot. A stall's maximum is flat: a tenth of a knot, a fifth of its
  // standard uncertainty.
  same_points(got, reduce(flown.rows, flown.card, flown.instruments), 1e-3, 8e-3);
  CHECK(says(got.warnings, "in straight lines"));
}

TEST_CASE("without accelerations the intervals are wider and the budget, the flags and the warnings say why",
          "[reduction][own-log]") {
  const Flown flown = fly("standard", 3);
  const auto columns = without(foreign_columns(), {"Az", "Ax", "Ay"});
  const SetPoints got = reduce_foreign(flown, foreign_text(flown.rows, columns),
                                       map_text(columns) + target_text(flown, true) + record_text(flown));
  const SetPoints whole = reduce(flown.rows, flown.card, flown.instruments);
  CHECK(says(got.warnings, "no acceleration in the log"));
  for (std::size_t k = 0; k < 4; ++k) {
    const SetPoint &lacking = got.sets[0].points[k], &all = whole.sets[0].points[k];
    CAPTURE(all.name, lacking.ratio, all.ratio, lacking.u, all.u);
    REQUIRE(lacking.found());
    CHECK(width(lacking) > width(all));
    CHECK(says(lacking.flags, "load factor taken as 1"));
    CHECK(says(lacking.flags, "maximum lift not seen") == lacking.is_stall);
    // Wide enough for what came of it.
    CHECK(std::abs(lacking.ratio - all.ratio) < 0.5 * width(lacking));
    const BudgetLine* line =
        line_of(lacking, lacking.is_stall ? "maximum lift unseen" : "load factor taken as 1");
    REQUIRE(line != nullptr);
    CHECK(line->u_ratio > 0.0);
    CHECK(line_of(lacking, "acceleration bias") == nullptr);
  }
  // 0.03 g, rectangular, of the lift that the slope turns into ratio: u = |b x| 0.03/sqrt(3).
  const SetPoint& approach = got.sets[0].points[1];
  const double bx = std::abs(approach.slope_per_kt) * approach.target_kt / 2.0;
  CHECK_THAT(line_of(approach, "load factor taken as 1")->u_ratio,
             Catch::WithinRel(bx * 0.03 / std::sqrt(3.0), 0.02));
}

TEST_CASE("without a mass that of the targets stands in with a wider budget", "[reduction][own-log]") {
  const Flown flown = fly("standard", 3);
  const auto columns = without(foreign_columns(), {"Weight"});
  const std::string log = foreign_text(flown.rows, columns), records = record_text(flown);
  const SetPoints got = reduce_foreign(flown, log, map_text(columns) + target_text(flown, true) + records);
  const SetPoints whole = reduce(flown.rows, flown.card, flown.instruments);
  CHECK(says(got.warnings, "no mass"));
  for (std::size_t k = 0; k < 3; ++k) {
    const SetPoint& point = got.sets[0].points[k];
    CHECK(width(point) > width(whole.sets[0].points[k]));
    REQUIRE(line_of(point, "mass assumed") != nullptr);
    CHECK(says(point.flags, "mass assumed"));
  }
  CHECK_THROWS_WITH(reduce_foreign(flown, log, map_text(columns) + target_text(flown, false) + records),
                    Catch::Contains("expected the mass"));
}

TEST_CASE("without pitch the break is found from the lift, and without both it is taken from the map",
          "[reduction][own-log]") {
  const Flown flown = fly("standard", 3);
  const SetPoint whole = reduce(flown.rows, flown.card, flown.instruments).sets[0].points[3];
  const auto no_pitch = without(foreign_columns(), {"Nose", "q", "Elevator"});
  const SetPoint lift = reduce_foreign(flown, foreign_text(flown.rows, no_pitch),
                                       map_text(no_pitch) + target_text(flown, true) + record_text(flown))
                            .sets[0]
                            .points[3];
  REQUIRE(lift.found());
  CHECK(says(lift.flags, "break found from lift alone"));
  // With pitch a break is dated back to where the nose began to fall; lift tells it only when it is lost.
  CHECK_THAT(lift.windows[0].break_s - kLogBegins_s, Catch::WithinAbs(whole.windows[0].break_s, 3.0));
  CHECK(std::abs(lift.ratio - whole.ratio) < 2.0 * whole.u);

  const auto neither = without(no_pitch, {"Az", "Ax", "Ay"});
  const std::string log = foreign_text(flown.rows, neither);
  const std::string map = map_text(neither) + target_text(flown, true) + record_text(flown);
  const SetPoints none = reduce_foreign(flown, log, map);
  CHECK_FALSE(none.sets[0].points[3].found());
  CHECK(says(none.warnings, "a break has to be given"));
  const SetPoint given =
      reduce_foreign(flown, log, map + "break = \"" + clock(whole.windows[0].break_s) + "\"\n")
          .sets[0]
          .points[3];
  CHECK(given.found());
  CHECK(says(given.flags, "break as given"));
  CHECK(std::abs(given.ratio - whole.ratio) < given.interval_high - given.ratio);
}

TEST_CASE("marks in the log make the same records as their times do", "[reduction][own-log]") {
  const Flown flown = fly("standard", 3);
  const auto times = foreign_columns();
  auto numbers = times, flags = times;
  numbers.push_back({"Event", table_of("mark", "Event", "means = \"point\"\n"),
                     [](const LogRow& r) { return r.recording ? std::to_string(r.point) : std::string(); }});
  flags.push_back({"Event", table_of("mark", "Event", "means = \"recording\"\n"),
                   [](const LogRow& r) { return std::to_string(7 * r.recording); }});
  const SetPoints wanted = reduce_foreign(flown, foreign_text(flown.rows, times),
                                          map_text(times) + target_text(flown, true) + record_text(flown));
  for (const auto& columns : {numbers, flags}) {
    const ColumnMap map = map_of(map_text(columns) + target_text(flown, true), flown.card);
    const OwnLog log = parse_own_log(foreign_text(flown.rows, columns), "flight.csv", map);
    const auto records = marked_records(map, flown.card, log);
    REQUIRE(records.size() == 4);
    same_points(reduce_own_log(log, records, map, flown.card, flown.instruments), wanted, 1e-9, 1e-9);
  }
}

TEST_CASE("the windows of the steady points of a calm flight are found within a second",
          "[reduction][own-log]") {
  for (const std::uint64_t seed : {1u, 2u, 3u, 4u, 5u, 6u}) {
    const Flown flown = fly("standard", seed);
    const auto columns = foreign_columns();
    const ColumnMap map = map_of(map_text(columns) + target_text(flown, true), flown.card);
    const OwnLog log = parse_own_log(foreign_text(thinned(flown.rows, 10.0), columns), "flight.csv", map);
    const auto found = find_records_by_flight(map, flown.card, log);
    const auto flown_records = find_records(flown.rows);
    REQUIRE(found.size() == flown_records.size());
    for (std::size_t k = 0; k < found.size(); ++k) {
      const double begin_s = flown.rows[flown_records[k].begin].t_s + kLogBegins_s,
                   end_s = flown.rows[flown_records[k].end - 1].t_s + kLogBegins_s;
      CAPTURE(seed, flown.card.points[found[k].point].name, found[k].begin_s, begin_s, found[k].end_s, end_s);
      CHECK(found[k].point == flown_records[k].point);
      // A stall's begins where the pilot's hand shows in the speed, and ends after its lowest.
      const double within_s = flown.card.points[found[k].point].is_stall() ? 4.0 : 1.0;
      CHECK_THAT(found[k].begin_s, Catch::WithinAbs(begin_s, within_s));
      CHECK_THAT(found[k].end_s, Catch::WithinAbs(end_s, within_s));
    }
    // The record of a stall reaches far enough to show its break.
    const SetPoints got = reduce_own_log(log, found, map, flown.card, flown.instruments);
    CHECK(got.sets[0].points[3].found());
  }
}

TEST_CASE("a record by the windows that were found covers the set points of the true windows",
          "[reduction][own-log]") {
  const Flown flown = fly("standard", 4);
  const auto columns = foreign_columns();
  const ColumnMap map = map_of(map_text(columns) + target_text(flown, true), flown.card);
  const OwnLog log = parse_own_log(foreign_text(flown.rows, columns), "flight.csv", map);
  const auto found = find_records_by_flight(map, flown.card, log);
  const SetPoints got = reduce_own_log(log, found, map, flown.card, flown.instruments);
  const SetPoints wanted = reduce(flown.rows, flown.card, flown.instruments);
  for (std::size_t k = 0; k < 4; ++k) {
    const SetPoint &a = got.sets[0].points[k], &b = wanted.sets[0].points[k];
    CAPTURE(b.name, a.ratio, b.ratio, a.u, b.u);
    CHECK(std::abs(a.ratio - b.ratio) < b.interval_high - b.ratio);
  }
  // And the list that is written reads back as the same records.
  const ColumnMap edited =
      map_of(map_text(columns) + target_text(flown, true) + records_toml(found, flown.card, log), flown.card);
  const auto again = given_records(edited, flown.card, log);
  REQUIRE(again.size() == found.size());
  for (std::size_t k = 0; k < found.size(); ++k) {
    CHECK(again[k].point == found[k].point);
    CHECK_THAT(again[k].begin_s, Catch::WithinAbs(found[k].begin_s, 0.0051));
    CHECK_THAT(again[k].end_s, Catch::WithinAbs(found[k].end_s, 0.0051));
  }
}

TEST_CASE("five samples a second put at fifty do not make the mean look better known than it is",
          "[reduction][own-log][statistics]") {
  const Flown flown = fly("ideal", 1);
  const auto columns = without(foreign_columns(), {"AOA dP"});
  auto noisy = columns;
  double noise = 0.0;
  noisy.push_back(
      {"Ratio", table_of("probe_ratio", "Ratio", ""), [&](const LogRow&) { return digits(noise, 6); }});
  const ColumnMap map = map_of(map_text(noisy), flown.card);
  // Fifteen seconds of white noise at 5 Hz, 75 samples, again and again, on any rows of the flight.
  std::vector<LogRow> rows = thinned(flown.rows, 5.0);
  rows.resize(75);
  double honest = 0.0, even = 0.0, scatter = 0.0;
  int covered = 0;
  constexpr int kTrials = 200;
  for (int trial = 0; trial < kTrials; ++trial) {
    std::vector<double> samples;
    std::string text = foreign_text({}, noisy);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      noise = random::normal(random::Stream{11, static_cast<std::uint32_t>(trial)}, i);
      samples.push_back(noise);
      std::vector<std::string> fields;
      for (const ForeignColumn& column : noisy) fields.push_back(column.text(rows[i]));
      text += joined(fields) + "\n";
    }
    const OwnLog log = parse_own_log(text, "flight.csv", map);
    REQUIRE(log.rows.size() >= 730);
    std::vector<double> ratio;
    for (const LogRow& row : log.rows) ratio.push_back(row.ratio);
    const CorrelatedMean by_samples = correlated_mean(samples), by_rows = correlated_mean(ratio);
    honest += by_samples.standard_uncertainty / kTrials;
    even += by_rows.standard_uncertainty / kTrials;
    if (std::abs(by_rows.mean) <= coverage_factor(0.95, by_rows.dof) * by_rows.standard_uncertainty)
      ++covered;
    scatter += mean(ratio) * mean(ratio) / kTrials;
  }
  CAPTURE(honest, even, std::sqrt(scatter), covered);
  // Known exactly: a mean of 75. Both estimates lie above it by what chance adds to the lags they sum, a little less
  // where lags are finer.
  CHECK(even > 1.0 / std::sqrt(75.0));
  CHECK(even > 0.95 * honest);
  // 95 % intervals: of 200, fewer than 181 would hold the mean once in a thousand times.
  CHECK(covered >= 181);
  // And it is what the means of the trials scatter by; the root of 200 squares is itself known to 5 %.
  CHECK(even > 0.9 * std::sqrt(scatter));
  CHECK(even < 1.4 * std::sqrt(scatter));
}
