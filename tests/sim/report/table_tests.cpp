#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "sim/report/table.hpp"
#include "tests/sim/report/judged_sample.hpp"

using namespace stallwright;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// Letters, not bytes.
std::size_t width(const std::string& line) {
  return static_cast<std::size_t>(
      std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string table() { return result_table(sample::judgement(), sample::debrief().summary); }

std::string line_with(const std::string& text, const std::string& part) {
  for (const std::string& line : lines_of(text))
    if (line.find(part) != std::string::npos) return line;
  return "";
}

}  // namespace

TEST_CASE("the table shows ratio with expanded uncertainty, truth, both errors and the order",
          "[report][table]") {
  const std::string line = line_with(table(), "  approach ");
  CHECK_THAT(line, Contains("0.3010 \u00b1 0.0085") && Contains("0.8500") && Contains("+0.05") &&
                       Contains("-0.20") && Contains("yes"));
  CHECK_THAT(table(), Contains("Flaps up, 572 kg") && Contains("Flaps 30\u00b0"));
}

TEST_CASE("under the table stand verdict, reason and caution", "[report][table]") {
  const auto lines = lines_of(table());
  CHECK_THAT(line_with(table(), "Verdict:"), Contains("Fly again: stall."));
  CHECK_THAT(line_with(table(), "Reason:"), Contains("the stall with flaps 30 was given up"));
  CHECK_THAT(line_with(table(), "Caution:"), Contains("Stalls kill."));
  CHECK(lines.front() ==
        "Marram (invented), short card. Seed 4711, light air (\u03c3 1.6 kt), current pilot, standard "
        "sensors.");
}

TEST_CASE("columns of the table line up, also beside a point that was not found", "[report][table]") {
  const std::string heading = line_with(table(), "in order?");
  const auto end_of = [](const std::string& line, const std::string& part) {
    return width(line.substr(0, line.find(part))) + width(part);
  };
  CHECK(end_of(line_with(table(), "  approach "), "-0.20") == end_of(heading, "error, kt"));
  CHECK(end_of(line_with(table(), "  approach "), "0.0085") == end_of(heading, "ratio"));
  const std::string missing = line_with(table(), "not found");
  CHECK(width(missing.substr(0, missing.find("not found"))) == heading.find("in order?"));
  CHECK_THAT(missing, Contains("\u2013") && !Contains("nan"));
}

TEST_CASE("the table keeps to 100 columns whatever the names, and does not steer the terminal",
          "[report][table]") {
  Judgement judgement = sample::judgement();
  SortieSummary summary = sample::debrief().summary;
  judgement.sets[0].points[0].measured.name = std::string(300, 'n') + "\x1b[2J";
  judgement.sets[0].points[1].measured.name = "\x1b]0;x\x07\u009b31m";
  judgement.reason =
      std::string(250, 'r') + " and more words, \r\n and more, until the line is full and another one begins";
  summary.card = "card\nwith\tbreaks " + std::string(400, 'c');
  for (const std::string& line : lines_of(result_table(judgement, summary))) {
    CAPTURE(line);
    CHECK(width(line) <= 100);
    CHECK(line.find_first_of("\x1b\x07\r\t") == std::string::npos);
    CHECK(line.find("\u009b") == std::string::npos);
  }
}
