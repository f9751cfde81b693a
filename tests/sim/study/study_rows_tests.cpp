// Adding up: made-up sorties whose sums are known, and real ones on one thread and on two.
#include <atomic>
#include <catch2/catch.hpp>
#include <stdexcept>

#include "sim/cli/study_report.hpp"
#include "sim/study/criteria.hpp"
#include "sim/threads/parallel.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

/// One steady set point (the card's first) with an error in ratio, known to u_A = 0.01 and u_B = 0.03; 10 kt
/// to the ratio.
StudySortie made_up(double error_ratio) {
  JudgedPoint p;
  p.measured.name = "fast reference";
  p.measured.ratio = error_ratio;
  p.measured.budget = {{"scatter", 'A', 0.01, 1e9, ""}, {"probe zero", 'B', 0.03, 1e9, ""}};
  p.error_ratio = error_ratio;
  p.error_kt = 10.0 * error_ratio;
  p.expanded_kt = 0.62;
  p.covered = std::abs(error_ratio) < 1.96 * std::hypot(0.01, 0.03);
  p.readings = {
      {"spot", 0, 0, 0, 0, 3.0}, {"window_mean", 0, 0, 0, 0, -2.0}, {"lift_corrected", 0, 0, 0, 0, 0.0}};
  StudySortie s;
  s.tallies.resize(4);
  s.wing_stalled.resize(4, false);
  s.judgement.sets.resize(1);
  s.judgement.sets.front().points = {p};
  return s;
}

StudyRow first_row(const std::vector<StudySortie>& sorties) {
  const SortieConfig base = study_test::sortie("marram", "sharp", "ideal");
  return study_rows(base.card, base.type, sorties).at(0);
}

StudyRow row_with(int covered, int found) {
  StudyRow row;
  row.name = "approach";
  row.sorties = row.found = found;
  row.covered = covered;
  if (found > 0) row.coverage_interval = clopper_pearson(covered, found);
  return row;
}

}  // namespace

TEST_CASE("a row has the mean, root mean square and largest of its errors", "[study]") {
  const StudyRow row = first_row({made_up(0.03), made_up(-0.05), made_up(0.08)});
  CHECK(row.found == 3);
  CHECK(row.mean_error_kt == Approx(0.2));
  CHECK(row.rms_error_kt == Approx(std::sqrt((0.09 + 0.25 + 0.64) / 3.0)));
  CHECK(row.largest_error_kt == Approx(0.8));
  CHECK(row.mean_expanded_kt == Approx(0.62));
  CHECK(row.other_names[1] == "window_mean");
  CHECK(row.other_rms_kt[0] == Approx(3.0));
  CHECK(row.other_rms_kt[1] == Approx(2.0));
}

TEST_CASE(
    "coverage is that of the adopted interval, of Type A alone, and of what is left without a component",
    "[study]") {
  // Limits: all 0.0620, Type A 0.0196, without scatter 0.0588.
  const StudyRow row = first_row({made_up(0.01), made_up(-0.05), made_up(0.06), made_up(0.07)});
  CHECK(row.covered == 3);
  CHECK(row.covered_type_a == 1);
  CHECK(row.coverage_interval.lower == Approx(clopper_pearson(3, 4).lower));
  CHECK(row.dominant.name == "probe zero");
  CHECK(row.dominant.variance_share == Approx(0.9));
  CHECK(row.dominant.coverage_without == Approx(0.25));
  // The probe's zero is drawn as stated: an interval that is too wide is so through the scatter.
  CHECK(row.surplus.name == "scatter");
  CHECK(row.surplus.coverage_without == Approx(0.5));
}

TEST_CASE("sorties without the set point are missing, not forgotten", "[study]") {
  StudySortie failed = made_up(0.0);
  failed.judgement.sets.clear();
  failed.failure = "the aeroplane met the ground";
  StudySortie not_found = made_up(0.0);
  not_found.judgement.sets.front().points.front().measured.ratio = kNone;
  const StudyRow row = first_row({made_up(0.01), failed, not_found});
  CHECK(row.sorties == 3);
  CHECK(row.found == 1);
  CHECK(row.missing() == 2);
  CHECK(row.coverage() == 1.0);
}

TEST_CASE("what went wrong is counted by how often and by sorties", "[study]") {
  StudySortie a = made_up(0.0), b = made_up(0.0);
  a.tallies[0].timeouts = 3;
  a.tallies[0].forced = 1;
  b.tallies[0].unintended_stalls = 2;
  b.tallies[3].no_break = 1;
  b.wing_stalled[0] = true;
  const SortieConfig base = study_test::sortie("marram", "sharp", "ideal");
  const std::vector<StudyRow> rows = study_rows(base.card, base.type, {a, b, made_up(0.0)});
  CHECK(rows[0].timed_out == 1);
  CHECK(rows[0].total.timeouts == 3);
  CHECK(rows[0].forced == 1);
  CHECK(rows[0].unintended_stalls == 1);
  CHECK(rows[0].total.unintended_stalls == 2);
  CHECK(rows[0].wing_stalled == 1);
  CHECK(rows[3].is_stall);
  CHECK(rows[3].no_break == 1);
}

TEST_CASE("90 to 99 % holds, less does not, more is wide, and stalls and rough slow flight are not asked",
          "[study]") {
  const AirPreset calm = study_test::air("calm"), moderate = study_test::air("moderate");
  CHECK(coverage_call(row_with(179, 200), calm) == CoverageCall::below);
  CHECK(coverage_call(row_with(180, 200), calm) == CoverageCall::holds);
  CHECK(coverage_call(row_with(198, 200), calm) == CoverageCall::holds);
  CHECK(coverage_call(row_with(199, 200), calm) == CoverageCall::conservative);
  CHECK(coverage_call(row_with(0, 0), calm) == CoverageCall::none_found);
  StudyRow warning = row_with(100, 200);
  warning.name = "warning";
  CHECK(coverage_call(warning, calm) == CoverageCall::below);
  CHECK(coverage_call(warning, moderate) == CoverageCall::not_asked);
  CHECK(coverage_call(row_with(100, 200), moderate) == CoverageCall::below);
}

TEST_CASE("a share of few sorties is below only when it refutes 95 %, one of 200 always says enough",
          "[study]") {
  const AirPreset calm = study_test::air("calm");
  CHECK(coverage_call(row_with(17, 20), calm) == CoverageCall::holds);
  CHECK(coverage_call(row_with(16, 20), calm) == CoverageCall::below);
  CHECK(coverage_call(row_with(1, 2), calm) == CoverageCall::holds);
  CHECK(coverage_call(row_with(0, 2), calm) == CoverageCall::below);
  // From 100 sorties on whatever is under 90 % refutes 95 %, and nothing else is below.
  for (const int found : {100, 150, 199, 200, 400})
    for (int covered = 8 * found / 10; covered <= found; ++covered) {
      CAPTURE(covered, found);
      CHECK((coverage_call(row_with(covered, found), calm) == CoverageCall::below) ==
            (10 * covered < 9 * found));
    }
}

TEST_CASE("the criterion of coverage says what it asks, and which share broke it", "[study]") {
  Study study;
  study.airs.resize(1);
  study.airs[0].air = study_test::air("calm");
  study.airs[0].rows = {row_with(17, 20), row_with(16, 20), row_with(0, 0)};
  const Criterion coverage = study_criteria(study).at(0);
  CHECK_FALSE(coverage.holds);
  CHECK(coverage.text ==
        "95 % intervals hold the truth in 90 % of sorties or more, or the share has 95 % within its own 95 % "
        "interval: 1 of 3 points; Calm, approach, flaps 0\u00b0: 80 % of 20; Calm, approach, flaps 0\u00b0: "
        "none "
        "found");
  study.airs[0].rows.resize(1);
  CHECK(study_criteria(study).at(0).holds);
}

TEST_CASE("criteria fail for a mean that does not rise, a stall without a wait, and a card not finished",
          "[study]") {
  const auto holding = [](double light_rms, int waits, int failed, int true_waits = 1) {
    Study study;
    for (const char* name : {"light", "calm"}) {  // in any order
      StudyAir air;
      air.air = study_test::air(name);
      air.rows = {row_with(19, 20)};
      air.rows.front().other_rms_kt[1] = name[0] == 'c' ? 0.5 : light_rms;
      air.sorties.resize(20);
      study.airs.push_back(air);
    }
    study.airs[0].unintended_stall_sorties = 2;
    study.airs[0].of_them_wait = waits;
    study.airs[0].wing_stalled_sorties = 1;
    study.airs[0].of_those_wait = true_waits;
    study.airs[0].failed = failed;
    std::string pattern;
    for (const Criterion& c : study_criteria(study)) pattern += c.holds ? 'y' : 'n';
    return pattern;
  };
  CHECK(holding(0.6, 2, 0) == "yyyy");
  CHECK(holding(0.5, 2, 0) == "ynyy");
  CHECK(holding(0.6, 1, 0) == "yyny");
  CHECK(holding(0.6, 2, 1) == "yyyn");
  CHECK(holding(0.6, 2, 0, 0) == "yyny");
}

TEST_CASE("the wing has stalled where half of the root's flow is gone while a steady point is held",
          "[study]") {
  const TestCard card = study_test::sortie("marram", "sharp", "ideal").card;
  const auto stalled = [&](int point, const std::string& phase, double attached) {
    LogRow log;
    log.point = point;
    log.phase = phase;
    TruthRow truth;
    truth.attached_root = attached;
    return wing_stalled_at(card, {log}, {truth});
  };
  CHECK(stalled(3, "record", 0.49) == std::vector<bool>{false, false, true, false});
  CHECK(stalled(3, "settle", 0.49)[2]);
  CHECK_FALSE(stalled(3, "record", 0.51)[2]);
  CHECK_FALSE(stalled(3, "recover", 0.1)[2]);
  CHECK_FALSE(stalled(4, "slow", 0.1)[3]);
}

TEST_CASE("every index is served once, and an exception comes through", "[study]") {
  std::vector<int> served(100, 0);
  for_each_index(100, 3, [&](int k) { ++served[static_cast<std::size_t>(k)]; });
  CHECK(served == std::vector<int>(100, 1));
  for_each_index(0, 3, [](int) { throw std::runtime_error("never"); });
  CHECK_THROWS_WITH(for_each_index(5, 2,
                                   [](int k) {
                                     if (k == 3) throw std::runtime_error("three");
                                   }),
                    "three");
}

TEST_CASE("a study does not depend on the number of threads", "[study][statistics]") {
  StudyConfig config =
      study_test::study(study_test::sortie("marram", "current", "standard"), {"calm", "light"}, 3);
  const Study one = run_study(config);
  config.threads = 2;
  std::atomic<int> told = 0;
  const Study two = run_study(config, [&](int, int) { ++told; });
  CHECK(told == 6);
  CHECK(cli::study_json(one) == cli::study_json(two));
  // And seeds make a difference: nobody flies the same sortie over and over.
  const auto& sorties = two.airs.front().sorties;
  CHECK(sorties[0].judgement.sets.at(0).points.at(0).measured.ratio !=
        sorties[1].judgement.sets.at(0).points.at(0).measured.ratio);
}
