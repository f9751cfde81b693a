#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "sim/reduction/combine_sorties.hpp"
#include "sim/reduction/reduce.hpp"
#include "sim/reduction/repeats.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

SetPoint steady(const std::string& name, std::size_t card_point, double ratio, double target_kt) {
  SetPoint p;
  p.name = name;
  p.card_point = card_point;
  p.ratio = ratio;
  p.speed_kt = p.target_kt = target_kt;
  p.slope_per_kt = -0.02;
  p.windows.resize(1);
  p.spot = p.window_mean = p.lift_corrected = {ratio, 0.05, 0.01, 10.0};
  p.budget = {{"scatter of the record", 'A', 0.03, 9.0, "", Shared::record},
              {"mass entered", 'B', 0.02, 1e9, "", Shared::sortie},
              {"probe zero", 'B', 0.04, 1e9, "", Shared::installation}};
  return p;
}

SetPoints one_sortie(double approach, double warning, double mass_kg) {
  SetPointSet set;
  set.mass_kg = mass_kg;
  const double scale = std::sqrt(mass_kg / 600.0);
  set.points = {steady("approach", 1, approach, 60.0 * scale), steady("warning", 2, warning, 50.0 * scale)};
  return {"Card", "Aeroplane", {set}, {}};
}

double u_of(const SetPoint& p, const std::string& line) {
  for (const BudgetLine& l : p.budget)
    if (l.name == line) return l.u_ratio;
  return 0.0;
}

const std::vector<std::string> kNames = {"monday", "tuesday", "wednesday", "thursday"};

}  // namespace

TEST_CASE("sorties that agree share what is their own and keep what the instruments have", "[reduction]") {
  std::vector<SetPoints> days;
  for (int k = 0; k < 4; ++k) days.push_back(one_sortie(0.20, 0.50, 600.0 - 20.0 * k));
  const SetPoints all = combine_sorties(days, kNames, {});
  const SetPoint& p = all.sets[0].points[0];
  CHECK(p.ratio == Approx(0.20));
  CHECK(u_of(p, "scatter of the record") == Approx(0.03 / 2.0));
  CHECK(u_of(p, "mass entered") == Approx(0.02 / 2.0));
  CHECK(u_of(p, "probe zero") == Approx(0.04));
  CHECK(p.u == Approx(std::sqrt(0.015 * 0.015 + 0.01 * 0.01 + 0.04 * 0.04)));
  CHECK(p.windows.size() == 4);
  CHECK(p.windows.back().sortie == 4);
  // Four lines of 9 degrees of freedom and equal weight make one of 36 (Welch and Satterthwaite).
  CHECK(p.budget[0].dof == Approx(36.0));
  CHECK(all.sets[0].order_ok);
}

TEST_CASE("sorties are weighted by what is their own, and more scatter than they state is believed",
          "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.32, 0.50, 600.0)};
  for (BudgetLine& line : days[1].sets[0].points[0].budget)
    if (line.shared != Shared::installation) line.u_ratio *= 2.0;
  const SetPoint p = combine_sorties(days, {"a", "b"}, {}).sets[0].points[0];
  // Weights 4 to 1; own u 0.0361 and 0.0721: chi2 = 0.024^2/0.0013 + 0.096^2/0.0052 = 2.215, Birge ratio 1.488.
  CHECK(p.ratio == Approx(0.8 * 0.20 + 0.2 * 0.32));
  const double u_internal = std::sqrt(0.0013 * 0.0052 / (0.0013 + 0.0052));
  CHECK(u_of(p, "scatter between sorties") == Approx(u_internal * std::sqrt(2.2153846 - 1.0)));
}

TEST_CASE("a target that a flap limit has moved is moved back along the slope", "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.20, 0.50, 600.0)};
  SetPoint& cut = days[1].sets[0].points[0];
  cut.target_kt = cut.speed_kt = 57.0;  // 3 kt slower than the card's 60
  cut.ratio = 0.26;                     // and reads 3 kt x 0.02 higher
  const SetPoint p = combine_sorties(days, {"a", "b"}, {}).sets[0].points[0];
  CHECK(p.ratio == Approx(0.20).margin(1e-12));
  CHECK(u_of(p, "moved to another target") > 0.0);
  CHECK(p.flags.size() == 1);
}

TEST_CASE("a point that one sortie lacks comes from the others", "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.21, 0.50, 580.0)};
  days[0].sets[0].points[0].ratio = kNone;
  days[0].sets[0].order_ok = false;
  days[0].sets[0].order_notes = {"approach is missing"};
  const SetPoints all = combine_sorties(days, {"a", "b"}, {});
  CHECK(all.sets[0].points[0].ratio == Approx(0.21));
  CHECK(all.sets[0].order_ok);
  CHECK(all.sets[0].order_notes.empty());
}

TEST_CASE("speeds and flaps of a combined set are those of one mass, whichever sortie has what",
          "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.20, 0.50, 450.0)};
  days[0].sets[0].points[0].ratio = kNone;
  const SetPointSet set = combine_sorties(days, {"a", "b"}, {}).sets[0];
  CHECK(set.mass_kg == 600.0);
  // Taught at 450 kg and 52.0 kt; at 600 kg that is 60 kt.
  CHECK(set.points[0].target_kt == Approx(60.0));
  CHECK(set.points[0].speed_kt == Approx(60.0));
  // A set of which the first sortie has nothing is that of the second.
  days[0].sets[0].flap_deg = 0.0;
  days[0].sets[0].mass_kg = kNone;
  days[0].sets[0].points[1].ratio = kNone;
  days[1].sets[0].flap_deg = 35.0;
  const SetPointSet second = combine_sorties(days, {"a", "b"}, {}).sets[0];
  CHECK(second.flap_deg == 35.0);
  CHECK(second.mass_kg == 450.0);
}

TEST_CASE("sorties of other cards or aeroplanes are not combined", "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.20, 0.50, 600.0)};
  SECTION("another card") { days[1].card = "Other card"; }
  SECTION("another aeroplane") { days[1].aircraft = "Other aeroplane"; }
  SECTION("other flaps") { days[1].sets[0].flap_deg = 35.0; }
  SECTION("other names") { days[1].sets[0].points[0].name = "another"; }
  SECTION("other points") { days[1].sets[0].points.pop_back(); }
  CHECK_THROWS_AS(combine_sorties(days, {"a", "b"}, {}), InputError);
}

TEST_CASE("so many records are wanted that the interval comes under the limit, and no fewer", "[reduction]") {
  const SetPoint p = steady("approach", 1, 0.2, 60.0);
  const double kt_per_ratio = 50.0;
  const double now = half_width_with(p, 1) * kt_per_ratio, two = half_width_with(p, 2) * kt_per_ratio,
               five = half_width_with(p, 5) * kt_per_ratio;
  CHECK(two < now);
  // By hand, 2 records: u^2 = 0.03^2/2 + 0.02^2 + 0.04^2 = 0.00245, dof = 0.00245^2/(0.00045^2/18) = 534.
  CHECK(two == Approx(coverage_factor(0.95, 533.6) * std::sqrt(0.00245) * kt_per_ratio).epsilon(1e-4));
  CHECK(repeats_wanted(p, now + 0.001, kt_per_ratio).done);
  CHECK(repeats_wanted(p, five + 0.001, kt_per_ratio).records == 5);
  CHECK(repeats_wanted(p, five - 0.001, kt_per_ratio).records == 6);
  // Mass and instruments alone: 1.96 sqrt(0.02^2 + 0.04^2).
  const RepeatsWanted never = repeats_wanted(p, 3.0, kt_per_ratio);
  CHECK(never.records == 0);
  CHECK(never.half_width_kt == Approx(1.95996 * std::sqrt(0.002) * kt_per_ratio).epsilon(1e-4));
}

TEST_CASE("sorties with the same instruments, on days of other mass, combine to less than one alone",
          "[reduction][truth]") {
  // The error that remains is the instruments' own, the same in both: what combining cannot take away.
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.air = study_test::air("light");
  config.instrument_seed = 11;
  std::vector<SetPoints> days;
  std::vector<std::string> names;
  std::vector<double> position_error;
  for (std::uint64_t seed : {21u, 22u}) {
    config.seed = seed;
    if (seed == 22) config.loading.kg[1] = 0.0;  // alone
    MemorySink rows;
    const SortieOutcome outcome = fly_sortie(config, rows);
    REQUIRE(outcome.finished);
    position_error.push_back(outcome.errors.position_error_share);
    days.push_back(reduce(rows.log, config.card, config.instruments));
    names.push_back("day " + std::to_string(seed));
  }
  CHECK(position_error[0] == position_error[1]);
  CHECK(std::abs(days[0].sets[0].mass_kg - days[1].sets[0].mass_kg) > 50.0);
  const SetPoints all = combine_sorties(days, names, config.card);
  for (std::size_t k = 0; k < all.sets[0].points.size(); ++k) {
    const SetPoint &both = all.sets[0].points[k], &first = days[0].sets[0].points[k],
                   &second = days[1].sets[0].points[k];
    INFO(both.name);
    // Scatter between the days beyond what each states is believed on top.
    const double scatter = u_of(both, "scatter between sorties");
    CHECK(std::sqrt(both.u * both.u - scatter * scatter) < std::max(first.u, second.u));
    CHECK(u_of(both, "probe zero") > 0.9 * std::min(u_of(first, "probe zero"), u_of(second, "probe zero")));
    CHECK(both.ratio >= std::min(first.ratio, second.ratio) - 0.02);
    CHECK(both.ratio <= std::max(first.ratio, second.ratio) + 0.02);
  }
}

TEST_CASE("scatter between sorties falls with more of them, as a record's own does", "[reduction]") {
  std::vector<SetPoints> days = {one_sortie(0.20, 0.50, 600.0), one_sortie(0.40, 0.50, 600.0)};
  const SetPoint p = combine_sorties(days, {"a", "b"}, {}).sets[0].points[0];
  REQUIRE(u_of(p, "scatter between sorties") > 0.0);
  // What no repeat brings down is less than what there is now.
  const RepeatsWanted never = repeats_wanted(p, 0.1, 50.0);
  CHECK(never.records == 0);
  CHECK(never.half_width_kt < half_width_with(p, 2) * 50.0);
}
