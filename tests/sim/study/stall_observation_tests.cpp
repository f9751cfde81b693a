// The figures of one stall, from a flight made up so that they are known.
#include <catch2/catch.hpp>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/study/entry_rate.hpp"

using namespace stallwright;

namespace {

constexpr double kBreak_s = 10.0;

/// The angle rises at 2 deg/s until 9 s and at 5 deg/s from there; the root's flow leaves it at 0.25/s
/// from 8.2 s, so that it is at 0.8 at 9 s; the probe reads 0.1 for a degree; 40 kt all along.
std::vector<TruthRow> made_up_truth() {
  std::vector<TruthRow> rows;
  for (int i = 0; i <= 600; ++i) {
    TruthRow row;
    row.t_s = i / 50.0;
    row.alpha_deg = 2.0 * std::min(row.t_s, 9.0) + 5.0 * std::max(0.0, row.t_s - 9.0);
    row.attached_root = std::clamp(1.0 - 0.25 * (row.t_s - 8.2), 0.0, 1.0);
    row.static_ratio = 0.1 * row.alpha_deg;
    row.tas_kt = 40.0;
    rows.push_back(row);
  }
  return rows;
}

StudySortie made_up_sortie(double break_s) {
  JudgedPoint stall;
  stall.measured.name = "stall";
  stall.measured.is_stall = true;
  stall.measured.ratio = 1.5;
  stall.measured.at_break.ratio = 2.3;
  RecordWindow window;
  window.broke = true;
  window.break_s = break_s;
  window.entry_rate_ktps = 1.1;
  stall.measured.windows = {window};
  stall.error_kt = -0.2;
  StudySortie sortie;
  sortie.judgement.sets.resize(1);
  sortie.judgement.sets.front().points = {stall};
  return sortie;
}

}  // namespace

TEST_CASE("the rate of angle is that of the last delay before the wing lets go", "[study]") {
  const double delay_m = 0.5 * 40.0 * kKnot;  // half a second
  const StallObservation seen = observe_stall(made_up_sortie(kBreak_s), made_up_truth(), delay_m);
  REQUIRE(seen.found);
  CHECK(seen.alpha_rate_radps / math::kDegree == Approx(2.0).margin(0.01));
  CHECK(seen.tau2_s == Approx(0.5));
  CHECK(seen.delay_rad() / math::kDegree == Approx(1.0).margin(0.005));
  CHECK(seen.ratio_per_rad * math::kDegree == Approx(0.1));
  CHECK(seen.let_go_before_s == Approx(1.0).margin(0.041));
  CHECK(seen.let_go_ratio == Approx(1.8).margin(0.005));
  CHECK(seen.let_go_rad / math::kDegree == Approx(18.0).margin(0.05));
  CHECK(seen.run_on_ratio() == Approx(0.5).margin(0.005));
  CHECK(seen.attached_root == Approx(0.55).margin(0.001));
  CHECK(seen.max_lift_error_kt == -0.2);
}

TEST_CASE("a break on an attached wing is seen as such, and takes the rate before it", "[study]") {
  const StallObservation seen = observe_stall(made_up_sortie(8.5), made_up_truth(), 0.5 * 40.0 * kKnot);
  REQUIRE(seen.found);
  CHECK(seen.attached_root > kAttached);
  CHECK_FALSE(std::isfinite(seen.let_go_ratio));
  CHECK(seen.alpha_rate_radps / math::kDegree == Approx(2.0).margin(0.01));
}

TEST_CASE("a sortie without a break gives no observation", "[study]") {
  StudySortie sortie = made_up_sortie(kBreak_s);
  sortie.judgement.sets.front().points.front().measured.windows.front().broke = false;
  CHECK_FALSE(observe_stall(sortie, made_up_truth(), 1.0).found);
  CHECK_FALSE(observe_stall(StudySortie{}, made_up_truth(), 1.0).found);
}

TEST_CASE("means carry their standard errors, and agree when they differ by less than chance does",
          "[study]") {
  // 1, 2, 3, 4: sd sqrt(5/3), standard error half of it.
  const SampleMean m = sample_mean({1.0, 2.0, 3.0, 4.0});
  CHECK(m.value == Approx(2.5));
  CHECK(m.standard_error == Approx(std::sqrt(5.0 / 3.0) / 2.0));
  CHECK_FALSE(std::isfinite(sample_mean({1.0}).value));
  const SampleMean d = difference({3.0, 0.3, 10}, {1.0, 0.4, 12});
  CHECK(d.value == Approx(2.0));
  CHECK(d.standard_error == Approx(0.5));
  CHECK(d.count == 22);
  CHECK(agree({1.0, 0.3, 40}, {1.9, 0.4, 40}));        // 1.8 standard errors
  CHECK_FALSE(agree({1.0, 0.3, 40}, {2.1, 0.4, 40}));  // 2.2
}
