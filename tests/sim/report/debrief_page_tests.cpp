#include <catch2/catch.hpp>
#include <regex>

#include "sim/report/debrief_page.hpp"
#include "sim/report/verdict_text.hpp"
#include "tests/sim/report/judged_sample.hpp"
#include "tests/sim/report/page_checks.hpp"

using namespace stallwright;
using namespace stallwright::page_checks;
using Catch::Matchers::Contains;

TEST_CASE("the tag check of these tests sees a broken page", "[report][page]") {
  CHECK(imbalance("<a><b/>x</a>").empty());
  CHECK_FALSE(imbalance("<a><b>x</a>").empty());
  CHECK_FALSE(imbalance("<a>").empty());
  CHECK_FALSE(imbalance("</a>").empty());
  CHECK_FALSE(imbalance("<a <b>").empty());
}

TEST_CASE("the debrief is one well-formed page that loads nothing and runs nothing", "[report][page]") {
  const std::string page = debrief_page(sample::debrief());
  CHECK(page.starts_with("<!DOCTYPE html>"));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  CHECK_FALSE(has_bare_ampersand(page));
  CHECK_THAT(page, Contains("<meta charset=\"utf-8\"/>") && Contains("size: A4") &&
                       Contains("font: 14px/1.45 B612"));
  CHECK_THAT(page, !Contains("<script") && !Contains("src=") && !Contains("href=") && !Contains("url(") &&
                       !Contains("@import"));
  CHECK(count_of(page, "http") == count_of(page, "xmlns=\"http://www.w3.org/2000/svg\""));
}

TEST_CASE("the same sortie gives the same page, byte for byte", "[report][page]") {
  CHECK(debrief_page(sample::debrief()) == debrief_page(sample::debrief()));
}

TEST_CASE("the debrief says what was flown, the verdict, its reason and what comes next", "[report][page]") {
  const std::string words = words_of(debrief_page(sample::debrief()));
  for (const char* part :
       {"Marram (invented)", "short card", "1.6 kt", "current", "standard", "4711", "572 kg",
        "Fly again: stall.", "Reason: the stall with flaps 30 was given up", "What to do next",
        "Flaps 30\u00b0, stall: no set point came of it; given up.", "line 7 was cut short"})
    CHECK_THAT(words, Contains(part));
}

TEST_CASE("the debrief carries every caution", "[report][page]") {
  const std::string words = words_of(debrief_page(sample::debrief()));
  for (const char* part : {"Stalls kill", "rehearsal only", "flight manual", "local rules",
                           "qualified instructor", "invented", "not an approved training device"})
    CHECK_THAT(words, Contains(part));
}

TEST_CASE("every picture of the debrief says which seed and air made it", "[report][page]") {
  const std::string page = debrief_page(sample::debrief());
  const std::size_t figures = count_of(page, "<figure>");
  CHECK(figures == 8);  // two sets twice, the split of one of them, the flight, two records
  CHECK(count_of(page, "Seed 4711, light air (\u03c3 1.6 kt)") == figures);
  for (const char* axis : {"probe ratio (no unit)", "speed at 1 g, kt", "error, kt", "Indicated airspeed, kt",
                           "Indicated altitude, ft", "Angle of attack, \u00b0 (truth)", ">t, s<"})
    CHECK_THAT(page, Contains(axis));
}

TEST_CASE("the debrief names the dominant part of a budget, and type A alone beside it", "[report][page]") {
  CHECK_THAT(words_of(debrief_page(sample::debrief())),
             Contains("(94 % of the variance)") && Contains("Type A alone 0.0010"));
  CHECK_THAT(debrief_page(sample::debrief()), Contains("Largest: <strong>probe offset</strong>"));
}

TEST_CASE("events, dangers and counts are on the debrief", "[report][page]") {
  const std::string words = words_of(debrief_page(sample::debrief()));
  CHECK_THAT(words, Contains("\u2715 unintended stall") && Contains("wing dropped") && Contains("1 (1)"));
  DebriefInput quiet = sample::debrief();
  quiet.summary.events.clear();
  CHECK_THAT(words_of(debrief_page(quiet)), Contains("Nothing out of the ordinary"));
}

TEST_CASE("a number that does not exist never shows as nan, inf or null", "[report][page]") {
  const std::regex bad("(nan|inf|null)\\b", std::regex::icase);
  DebriefInput input = sample::debrief();
  CHECK_FALSE(std::regex_search(debrief_page(input), bad));
  input.history = {};
  input.summary = {};
  for (JudgedSet& set : input.judgement.sets)
    for (JudgedPoint& point : set.points) {
      JudgedPoint blank;
      blank.measured.name = point.measured.name;
      blank.measured.budget = point.measured.budget;
      point = blank;
    }
  const std::string page = debrief_page(input);
  CHECK_FALSE(std::regex_search(page, bad));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  input.judgement = {};
  CHECK_THAT(imbalance(debrief_page(input)), Catch::Equals(""));
}

TEST_CASE("columns of truth that are missing or full of gaps do not break the page", "[report][page]") {
  DebriefInput input = sample::debrief();
  input.history.alpha_deg.clear();
  input.history.true_speed_kt.clear();
  CHECK_THAT(debrief_page(input), !Contains("Angle of attack"));
  input.history.ratio.assign(input.history.t_s.size(), kNone);
  input.history.ias_kt[5] = INFINITY;
  CHECK_THAT(imbalance(debrief_page(input)), Catch::Equals(""));
}

TEST_CASE("hostile names come out as text", "[report][page]") {
  const std::string hostile = "</title><script>alert('x')</script>&\"\x1b[2J" + std::string(300, 'W');
  DebriefInput input = sample::debrief();
  for (std::string* text :
       {&input.summary.aircraft, &input.summary.card, &input.summary.air, &input.summary.pilot,
        &input.summary.loading, &input.summary.sensors, &input.judgement.reason,
        &input.summary.events[0].text, &input.summary.counts[0].point, &input.history.windows[0].name,
        &input.judgement.sets[0].points[0].measured.name,
        &input.judgement.sets[0].points[0].measured.flags[0],
        &input.judgement.sets[0].points[0].measured.budget[0].name,
        &input.judgement.sets[0].points[0].readings[0].name, &input.set_points.warnings[0]})
    *text = hostile;
  const std::string page = debrief_page(input);
  CHECK_THAT(page, !Contains("<script>") && !Contains("\x1b"));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  CHECK_FALSE(has_bare_ampersand(page));
}

TEST_CASE("a point out of order is called so, one too close or missing is told apart", "[report][text]") {
  JudgedSet set = sample::judgement().sets[0];
  CHECK(order_word(set, 0) == "yes");
  set.order_ok = false;
  CHECK(order_word(set, 0) == "too close");
  set.points[1].measured.ratio = 0.2;
  CHECK(order_word(set, 0) == "NO");
  CHECK(order_word(set, 1) == "NO");
  set.points[1].measured.ratio = kNone;
  CHECK(order_word(set, 0) == "incomplete");
  CHECK(order_word(set, 1) == "not found");
}

TEST_CASE("a warning that would come late is said in words", "[report][text]") {
  DebriefInput input = sample::debrief();
  JudgedPoint& point = input.judgement.sets[0].points[0];
  point.measured.name = "warning";
  point.error_kt = -2.3;
  CHECK_THAT(words_of(debrief_page(input)), Contains("2.3 kt later than it should"));
  point.error_kt = 2.3;
  CHECK_THAT(words_of(debrief_page(input)), !Contains("later than it should"));
}

TEST_CASE("the debrief takes every error apart, and says why where the remainder is large",
          "[report][page]") {
  DebriefInput input = sample::debrief();
  const std::string small = words_of(debrief_page(input));
  for (const char* part : {"What the errors are made of", "sensors", "air", "hold", "entry rate", "remainder",
                           "error, their sum", "adopted, kt", "plain, kt"})
    CHECK_THAT(small, Contains(part));
  // The sample's remainders are a quarter of the largest part.
  CHECK_THAT(small, Contains("more than a fifth of the largest part at: approach, stall."));
  for (JudgedSet& set : input.judgement.sets)
    for (JudgedPoint& point : set.points) point.split.remainder_kt *= 0.2;
  CHECK_THAT(words_of(debrief_page(input)), !Contains("more than a fifth"));
  for (JudgedSet& set : input.judgement.sets)
    for (JudgedPoint& point : set.points) point.split = {};
  CHECK_THAT(words_of(debrief_page(input)), !Contains("What the errors are made of"));
}
