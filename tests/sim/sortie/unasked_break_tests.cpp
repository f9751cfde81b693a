#include <algorithm>
#include <catch2/catch.hpp>

#include "aircraft/math/units.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

// In moderate turbulence a gust pitches the nose down by 4 deg every minute or so. What is called an unintended stall
// must have had the wing near its limit, or the verdict to wait for better air would rest on bumps.
TEST_CASE("what is called an unintended stall in rough air had the wing near its stalling angle") {
  const std::string type = GENERATE("marram", "sarsen", "tarnfell");
  SortieConfig config = study_test::sortie(type, "current", "standard");
  config.card.points = {config.card.points[2]};
  config.air = study_test::air("moderate");
  const std::vector<TrueSet> truth = [&] {
    SortieConfig whole = study_test::sortie(type, "current", "standard");
    return find_truth(make_aircraft(whole.type, whole.loading, whole.airframe_seed), whole.card,
                      working_air(whole.card, whole.air.day));
  }();
  const double stall_deg = truth.at(0).points.back().at.alpha_rad / math::kDegree;
  int called = 0;
  double held_s = 0.0;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    config.seed = seed;
    MemorySink rows;
    const SortieOutcome outcome = fly_sortie(config, rows);
    held_s += outcome.ended_s;
    for (const Event& event : outcome.events) {
      if (event.kind != "unintended stall") continue;
      ++called;
      double most_deg = 0.0;
      for (const TruthRow& row : rows.truth)
        if (row.t_s <= event.time_s && row.t_s > event.time_s - 2.5)
          most_deg = std::max(most_deg, row.alpha_deg);
      INFO(type << " seed " << seed << " at " << event.time_s << " s");
      CHECK(most_deg > stall_deg - 4.0);
    }
  }
  INFO(called << " calls in " << held_s << " s");
  CHECK(called < held_s / 60.0);
}
