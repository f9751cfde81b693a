// Logs as recorders leave them: what is taken and said, and what is refused.
#include <catch2/catch.hpp>

#include "aircraft/input_error.hpp"
#include "sim/reduction/resample.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/reduction/foreign_log.hpp"

using namespace stallwright;
using namespace stallwright::own_log_test;

namespace {

const TestCard& card() {
  static const TestCard kCard = load_test_card(find_card_file("short"));
  return kCard;
}

const std::string kMap =
    "format = \"stallwright-columns-1\"\n[column.time]\nname = \"t\"\nunit = \"s\"\n[column.airspeed]\nname "
    "= "
    "\"ias\"\nunit = \"kt\"\n[column.probe_ratio]\nname = \"ratio\"\n[constants]\nmass_kg = 600\n";

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  return text.replace(text.find(what), what.size(), with);
}

OwnLog log_of(const std::string& text, const std::string& map = kMap) {
  return parse_own_log(text, "f.csv", map_of(map, card()));
}

/// Rows every 0.1 s whose ratio is a thousandth of the time.
std::string rows(double from_s, double to_s, const std::string& ending = "\n") {
  std::string text;
  for (double t = from_s; t < to_s - 1e-9; t += 0.1)
    text += digits(t, 2) + ",60.0," + digits(t / 1000.0, 6) + ending;
  return text;
}
const std::string kHead = "t,ias,ratio\n";

bool warned(const OwnLog& log, const std::string& words) {
  return std::any_of(log.warnings.begin(), log.warnings.end(),
                     [&](const std::string& text) { return text.find(words) != std::string::npos; });
}

/// The same rows as the tidy log has.
void same_rows(const OwnLog& log, const OwnLog& tidy) {
  REQUIRE(log.rows.size() == tidy.rows.size());
  for (std::size_t i = 0; i < log.rows.size(); ++i) {
    REQUIRE_THAT(log.rows[i].t_s, Catch::WithinAbs(tidy.rows[i].t_s, 1e-9));
    REQUIRE_THAT(log.rows[i].ratio, Catch::WithinAbs(tidy.rows[i].ratio, 1e-9));
  }
}

void refused(const std::string& text, const std::vector<std::string>& words, const std::string& map = kMap) {
  try {
    log_of(text, map);
    FAIL("taken: " << text.substr(0, 60));
  } catch (const InputError& error) {
    const std::string message = error.what();
    INFO(message);
    CHECK(message.find('\n') == std::string::npos);
    for (const std::string& word : words) {
      INFO("expected to read: " << word);
      CHECK(message.find(word) != std::string::npos);
    }
  }
}

}  // namespace

TEST_CASE(
    "line ends, a byte-order mark, quotes, a trailing separator and a missing last line end change nothing",
    "[reduction][own-log]") {
  const OwnLog tidy = log_of(kHead + rows(0, 5));
  REQUIRE(tidy.rows.size() == 246);  // 49 intervals of five rows, and one
  same_rows(log_of("\xEF\xBB\xBFt,ias,ratio\r\n" + rows(0, 5, "\r\n")), tidy);
  same_rows(log_of("t,ias,ratio,\n" + rows(0, 5, ",\n")), tidy);
  same_rows(log_of(kHead + rows(0, 5, ",\n")), tidy);
  std::string text = kHead + rows(0, 5);
  text.pop_back();
  same_rows(log_of(text), tidy);
  same_rows(log_of("\"t\",\"ias\",\"ratio\"\n" + rows(0, 4.9) + "\"4.90\",\" 60.0 \",\"0.0049\"\n"), tidy);
  same_rows(log_of("x\ny,y,\"\n" + kHead + rows(0, 5),
                   replaced(kMap, "[column.time]", "[log]\nheader_line = 3\n[column.time]")),
            tidy);
  same_rows(log_of(kHead + "s,kt,-\n" + rows(0, 5),
                   replaced(kMap, "[column.time]", "[log]\ndata_line = 3\n[column.time]")),
            tidy);
}

TEST_CASE("semicolons with decimal commas read as the same numbers", "[reduction][own-log]") {
  std::string text = kHead + rows(0, 5);
  std::replace(text.begin(), text.end(), ',', ';');
  std::replace(text.begin(), text.end(), '.', ',');
  same_rows(log_of(text, replaced(kMap, "[column.time]",
                                  "[log]\nseparator = \"semicolon\"\ndecimal_comma = true\n[column.time]")),
            log_of(kHead + rows(0, 5)));
}

TEST_CASE("empty fields, blank lines, a header again and a few ragged lines are passed over and counted",
          "[reduction][own-log]") {
  const OwnLog tidy = log_of(kHead + rows(0, 10));
  std::string text = kHead + rows(0, 10);
  text = replaced(text, "5.00,60.0,0.005000", "5.00,60.0,");
  text = replaced(text, "6.00,60.0,0.006000", "6.00,60.0,---");
  text = replaced(text, "7.00,", "\n\n7.00,");
  text = replaced(text, "8.00,", kHead + "8.00,");
  text = replaced(text, "9.00,", "lost power,\n9.00,");
  const OwnLog log = log_of(text);
  same_rows(log, tidy);  // the ratio is a straight line, so what is bridged is what was there
  CHECK(warned(log, "column ratio: 2 empty fields"));
  CHECK(warned(log, "2 blank lines"));
  CHECK(warned(log, "the header comes again 1 time"));
  CHECK(warned(log, "1 line passed over for another number of fields, the first is line 9"));
}

TEST_CASE("a last line cut short is dropped and said", "[reduction][own-log]") {
  const OwnLog log = log_of(kHead + rows(0, 5) + "5.0,6");
  same_rows(log, log_of(kHead + rows(0, 5)));
  CHECK(warned(log, "f.csv:52: the file breaks off here"));
}

TEST_CASE("rows with a repeated or backward time are left out and counted", "[reduction][own-log]") {
  std::string text = kHead + rows(0, 10);
  text = replaced(text, "3.10,", "3.00,60.0,9\n3.10,");
  text = replaced(text, "6.00,", "4.50,60.0,9\n4.60,60.0,9\n6.00,");
  const OwnLog log = log_of(text);
  same_rows(log, log_of(kHead + rows(0, 10)));
  CHECK(warned(log, "1 rows left out whose time repeats"));
  CHECK(warned(log, "2 rows left out whose time runs backwards"));
}

TEST_CASE("a gap is left open, and a record across it is left out with a warning", "[reduction][own-log]") {
  OwnLog log = log_of(kHead + rows(0, 10) + rows(14, 40));
  CHECK(warned(log, "1 gap, of 4.1 s"));
  for (const LogRow& row : log.rows) CHECK((row.t_s < 9.91 || row.t_s > 13.99));
  const ColumnMap map = map_of(kMap + "[[target]]\npoint = \"approach\"\nspeed_kt = 60\n", card());
  mark_records({{1, 1, 5.0, 20.0}, {1, 2, 20.0, 35.0}}, map, card(), log);
  CHECK(warned(log, "approach from 5 s: left out, the log has a gap in it"));
  const auto records = find_records(log.rows);
  REQUIRE(records.size() == 1);
  CHECK(records[0].repeat == 2);
}

TEST_CASE("a recorder that begins anew at zero is counted on, and no row is made between",
          "[reduction][own-log]") {
  const OwnLog log = log_of(kHead + rows(0, 20) + rows(0, 20));
  CHECK(warned(log, "f.csv:202: time falls from 19.9 to 0 s: the recorder began anew"));
  CHECK(warned(log, "counted on from 20 s"));
  CHECK_THAT(log.rows.back().t_s, Catch::WithinAbs(39.9, 1e-6));
  const std::size_t second = row_at(log, 20.0);
  CHECK(log.rows[second].ratio == 0.0);
  CHECK_THAT(log.rows[second - 1].ratio, Catch::WithinAbs(0.0199, 1e-9));
  CHECK_FALSE(unbroken(log, second - 1, second + 1));
}

TEST_CASE("a clock of whole seconds is spread over the rows of each", "[reduction][own-log]") {
  std::string text = kHead;
  // It begins in the middle of a second, as logs do.
  for (int i = 5; i < 95; ++i)
    text += "23:59:5" + std::to_string(i / 10) + ",60.0," + digits(i / 1000.0, 4) + "\n";
  for (int i = 100; i < 195; ++i)
    text += "00:00:0" + std::to_string(i / 10 - 10) + ",60.0," + digits(i / 1000.0, 4) + "\n";
  const OwnLog log = log_of(text, replaced(kMap, "unit = \"s\"", "unit = \"clock\""));
  CHECK(warned(log, "ticks more slowly than its rows come"));
  CHECK(warned(log, "midnight"));
  // A thousandth for each tenth of a second since 23:59:50.
  for (const LogRow& row : log.rows)
    if (row.t_s < 86399.0) CHECK_THAT(row.ratio, Catch::WithinAbs((row.t_s - 86390.0) / 100.0, 1.1e-3));
  CHECK_THAT(log.rows.front().t_s, Catch::WithinAbs(86390.5, 1e-6));
}

TEST_CASE("an hour of taxi with a dead probe does not disturb what follows", "[reduction][own-log]") {
  std::string text = kHead;
  for (int i = 0; i < 36000; ++i)
    text += digits(-3600.0 + i * 0.1, 2) + "," + digits(5.0 + i % 7, 1) + "," +
            digits(i % 2 ? 1e4 : -1e4, 1) + "\n";
  const OwnLog log = log_of(text + rows(0, 20));
  const std::size_t from = row_at(log, 0.0);
  CHECK(log.rows[from - 500].ratio == 0.0);  // no pressure, no ratio
  CHECK_THAT(log.rows[from + 500].ratio, Catch::WithinAbs(0.01, 1e-9));
}

TEST_CASE("a log at 100 Hz is put at 50 Hz, and one at 1 Hz is taken too", "[reduction][own-log]") {
  const auto at_rate = [](double step_s) {
    std::string text = kHead;
    for (int i = 0; i * step_s <= 20.0; ++i)
      text += digits(i * step_s, 2) + ",60.0," + digits(i * step_s / 1000.0, 6) + "\n";
    return log_of(text);
  };
  for (const double step_s : {0.01, 0.02, 0.5, 1.0}) {
    const OwnLog log = at_rate(step_s);
    CAPTURE(step_s);
    REQUIRE(log.rows.size() == 1001);
    for (std::size_t i = 0; i < log.rows.size(); i += 100)
      CHECK_THAT(log.rows[i].ratio, Catch::WithinAbs(log.rows[i].t_s / 1000.0, 1e-6));
    CHECK(warned(log, "straight lines") == (step_s != 0.02));
  }
  CHECK(warned(at_rate(2.0), "more slowly than once a second"));
}

TEST_CASE("what cannot be read is refused with line, column, expected and found", "[reduction][own-log]") {
  const std::string good = kHead + rows(0, 5);
  refused(replaced(good, "2.00,60.0,", "2.00,sixty,"),
          {"f.csv:22: column ias: expected a number, found 'sixty'"});
  refused(replaced(good, "2.00,60.0,", "2.00,900,"),
          {"f.csv:22: column ias: expected a number from -20 to 500 kt, found '900'"});
  refused(replaced(good, "2.00,60.0,", "2.00,inf,"), {"f.csv:22: column ias: expected a number", "'inf'"});
  refused(replaced(good, "2.00,60.0", "two,60.0"), {"f.csv:22: column t: expected a number, found 'two'"});
  refused(replaced(good, "2.00,60.0,", "2.00,\"60.0,"), {"f.csv:22: expected a closing quote"});
  refused(replaced(good, "ias", "iaz"), {"f.csv:1: column ias", "column.airspeed", "found none", "'iaz'"});
  refused(replaced(good, "t,ias", "ias,ias"), {"f.csv:1: column t"});
  refused(replaced(good, "t,ias,ratio", "t,ias,ias"), {"f.csv:1: column ias: expected once"});
  refused(replaced(good, "t,ias,ratio\n", "t,ias,ratio,more\n"),
          {"f.csv:2: expected 4 fields, found 3", "50 lines"});
  refused("", {"empty file"});
  refused(kHead, {"f.csv:1", "two or more rows"});
  refused(std::string(100, '\0'), {"NUL"});
  refused("a\nb\n", {"line 9", "the end of the file"},
          replaced(kMap, "[column.time]", "[log]\nheader_line = 9\n[column.time]"));
  refused(good, {"f.csv:2: column t: expected a time of day hh:mm:ss, found '0.00'"},
          replaced(kMap, "unit = \"s\"", "unit = \"clock\""));
  refused(kHead + "1,60,1\n1,60,1\n", {"expected times that rise"});
}

TEST_CASE("an airspeed that never moves is refused as a dead channel", "[reduction][own-log]") {
  const ColumnMap map = map_of(kMap +
                                   "[[target]]\npoint = \"approach\"\nspeed_kt = 60\n[[record]]\npoint = "
                                   "\"approach\"\nbegin_s = 1\nend_s = 9\n",
                               card());
  const OwnLog log = parse_own_log(kHead + rows(0, 10), "f.csv", map);
  CHECK_THROWS_WITH(reduce_own_log(log, given_records(map, card(), log), map, card(), standard_instruments()),
                    Catch::Contains("f.csv: expected an airspeed that changes"));
}

TEST_CASE("a recorder that takes gravity away is found out", "[reduction][own-log]") {
  const std::string map =
      kMap +
      "[column.normal]\nname = \"az\"\nunit = \"g\"\n[[target]]\npoint = \"approach\"\nspeed_kt "
      "= 60\n[[record]]\npoint = \"approach\"\nbegin_s = 1\nend_s = 9\n";
  std::string text = "t,ias,ratio,az\n";
  for (int i = 0; i < 100; ++i)
    text += digits(i * 0.1, 1) + "," + digits(60.0 + 0.1 * (i % 3), 1) + ",0.1,0.01\n";
  const auto reduced = [&](const std::string& words) {
    const ColumnMap columns = map_of(words, card());
    const OwnLog log = parse_own_log(text, "f.csv", columns);
    return reduce_own_log(log, given_records(columns, card(), log), columns, card(), standard_instruments());
  };
  CHECK_THROWS_WITH(reduced(map), Catch::Contains("load factor of about 1") && Catch::Contains("0.01"));
  CHECK_NOTHROW(reduced(replaced(map, "unit = \"g\"", "unit = \"g\"\noffset = 1")));
}

TEST_CASE("time in another unit is refused instead of filled up", "[reduction][own-log]") {
  // Milliseconds taken for seconds: rows every 100 s.
  std::string text = kHead;
  for (int k = 0; k < 50; ++k) text += std::to_string(100 * k) + ",60.0,0.1\n";
  refused(text, {"f.csv", "column of time", "another unit"});
}

TEST_CASE("a take-off before the log began still burns fuel", "[reduction][own-log]") {
  std::string map = replaced(kMap, "unit = \"s\"", "unit = \"clock\"");
  map = replaced(map, "mass_kg = 600", "take_off_mass_kg = 575\nfuel_kg_per_h = 14\ntake_off = \"09:30:00\"");
  std::string text = kHead;
  for (int k = 0; k < 50; ++k)
    text += "10:00:" + std::string(k < 10 ? "0" : "") + std::to_string(k) + ",60.0,0.1\n";
  const OwnLog log = log_of(text, map);
  // Half an hour at 14 kg/h.
  CHECK_THAT(log.rows.front().mass_kg, Catch::WithinAbs(568.0, 0.05));
}
