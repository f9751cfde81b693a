#include <catch2/catch.hpp>

#include "render/view/debrief_view.hpp"
#include "tests/render/view/flown_sortie.hpp"
#include "tests/sim/report/judged_sample.hpp"

using namespace stallwright;
using namespace stallwright::view;

namespace {

Debrief made_up() {
  Debrief debrief;
  debrief.page = sample::debrief();
  debrief.flown.config.card.points.resize(4);
  return debrief;
}

/// The same with a warning of this error in its first set.
Debrief with_warning(double error_kt, const ErrorSplit& split) {
  Debrief debrief = made_up();
  JudgedPoint warning = sample::judged(sample::set_point("warning", false, 0.5));
  warning.error_kt = error_kt;
  warning.split = split;
  warning.margin_kt = 6.1;
  warning.true_margin_kt = 7.4;
  auto& points = debrief.page.judgement.sets[0].points;
  points.insert(points.begin() + 1, warning);
  debrief.page.judgement.sets.pop_back();
  return debrief;
}

}  // namespace

TEST_CASE("the first line says how late the warning is, the second what made it so", "[view][debrief_view]") {
  const DebriefView v = debrief_view(with_warning(-1.3, {-0.1, -0.2, -1.1, 0.0, 0.1}), {});
  CHECK(v.headline == "Your warning is 1.3 kt late.");
  CHECK(v.because.find("Most of it from the hold.") == 0);
  CHECK(v.because.find("6.1 kt above the stall; taught without error, 7.4 kt") != std::string::npos);
}

TEST_CASE("words follow the sign of the error and the name of the set point", "[view][debrief_view]") {
  CHECK(off_words("warning", -1.26) == "1.3 kt late");
  CHECK(off_words("warning", 0.4) == "0.4 kt early");
  CHECK(off_words("approach", -0.4) == "0.4 kt slow");
  CHECK(off_words("stall", 0.4) == "0.4 kt fast");
  CHECK(off_words("warning", 0.04) == "right to 0.1 kt");
  CHECK(off_words("warning", kNone) == "not known");
}

TEST_CASE("the reason names the largest part, two alike, or two that cancel", "[view][debrief_view]") {
  CHECK(why_words({0.1, -0.2, -1.1, kNone, 0.1}) == "most of it from the hold");
  CHECK(why_words({0.1, -0.2, kNone, -1.1, 0.1}) == "most of it from the entry rate");
  CHECK(why_words({0.6, 0.55, 0.0, kNone, 0.0}) == "from instruments and air alike");
  CHECK(why_words({0.9, -0.8, 0.0, kNone, 0.0}) == "instruments and air partly cancel");
  CHECK(why_words({0.01, -0.02, 0.0, kNone, 0.0}).empty());
}

TEST_CASE("a flight without a warning says so instead of a number", "[view][debrief_view]") {
  CHECK(debrief_view(made_up(), {}).headline == "No warning was taught on this flight.");
}

TEST_CASE("of two warnings the later one is told of, with its flaps", "[view][debrief_view]") {
  Debrief debrief = with_warning(-0.3, {-0.3, 0.0, 0.0, 0.0, 0.0});
  JudgedSet flapped = debrief.page.judgement.sets[0];
  flapped.flap_deg = 20.0;
  flapped.points[1].error_kt = -2.0;
  debrief.page.judgement.sets.push_back(flapped);
  CHECK(debrief_view(debrief, {}).headline == "Your warning, flaps 20\u00b0, is 2.0 kt late.");
}

TEST_CASE("the parts of a point add up to its error", "[view][debrief_view]") {
  const DebriefView v = debrief_view(with_warning(-1.3, {-0.1, -0.2, -1.1, 0.0, 0.1}), {});
  double sum = 0.0;
  for (const double part : v.sets[0].points[1].part_kt)
    if (std::isfinite(part)) sum += part;
  CHECK(sum == Approx(v.sets[0].points[1].error_kt));
}

TEST_CASE("one wild part does not flatten all other bars", "[view][debrief_view]") {
  Debrief debrief = with_warning(-40.0, {-0.1, -0.2, -39.8, 0.0, 0.1});
  CHECK(debrief_view(debrief, {}).part_span_kt < 5.0);
}

TEST_CASE("a flight in which some mass stalls unwarned is not hidden behind another's margin",
          "[view][debrief_view]") {
  Debrief debrief = made_up();
  debrief.page.protection.rows = {
      {0.0, 0.0, PowerRule::idle, 30.0, false, 450.0, kNone, 32.4, kNone, true, "stalls before the warning"},
      {0.0, 0.0, PowerRule::idle, 30.0, true, 600.0, 44.0, 39.8, 4.2, true, ""}};
  const DebriefView v = debrief_view(debrief, {});
  REQUIRE(v.guard.size() == 1);
  CHECK(v.guard[0].unwarned[1]);
  CHECK_FALSE(v.guard[0].unwarned[0]);
  CHECK(v.guard[0].in_use[1]);
  CHECK_FALSE(v.guard[0].in_use[2]);
}

TEST_CASE("the flight over time holds every column that was logged, and marks the break",
          "[view][debrief_view]") {
  const DebriefView v = debrief_view(made_up(), {});
  REQUIRE(v.flight.panels.size() >= 3);
  CHECK(v.flight.panels[0].name == "Airspeed");
  CHECK(v.flight.panels[0].unit == "kt");
  for (const Panel& panel : v.flight.panels)
    for (const Trace& trace : panel.traces) CHECK(trace.values.size() == v.flight.t_s.size());
  CHECK(v.made_by.find("Seed 4711, light air") == 0);
}

TEST_CASE("a flight that ended before its card still has a debrief", "[view][debrief_view]") {
  const view_test::Flown flown;
  const DebriefView v = open_debrief(flown.sortie);
  CHECK(v.verdict.find("Fly again") == 0);
  CHECK(v.headline == "No warning was taught on this flight.");
  REQUIRE_FALSE(v.records.empty());
  CHECK(v.records[0].point == "fast reference");
  CHECK(v.records[0].speed_rms_kt < 10.0);
  CHECK(v.flight.t_s.size() > 1900);
}
