#include <catch2/catch.hpp>
#include <cmath>

#include "sim/lanes/lane_group.hpp"
#include "sim/study/map/sortie_numbers.hpp"
#include "sim/truth/record_gust.hpp"
#include "tests/sim/study/study_setup.hpp"

namespace stallwright {
namespace {

std::vector<TrueSet> truth_of(const SortieConfig& config) {
  return find_truth(make_aircraft(config.type, config.loading, config.airframe_seed), config.card,
                    working_air(config.card, config.air.day));
}

SortieNumbers flown_many(const SortieConfig& config, const std::vector<TrueSet>& truth) {
  SortieNumbers numbers;
  fly_many(
      1, 1, [&](std::size_t) { return config; },
      [&](std::size_t, EndedSortie& ended) { numbers = sortie_numbers(ended, config, truth); });
  return numbers;
}

bool same(double a, double b) { return a == b || (std::isnan(a) && std::isnan(b)); }

}  // namespace

TEST_CASE("a map's numbers of the whole records are exactly those of a rehearsal with the same seed",
          "[study]") {
  for (const char* air : {"light", "moderate"}) {
    SortieConfig config = study_test::sortie("marram", "current-rusty", "standard");
    config.air = study_test::air(air);
    config.seed = 3;
    const std::vector<TrueSet> truth = truth_of(config);
    MemorySink rows;
    const StudySortie rehearsed = fly_and_judge(config, truth, rows);
    const RecordRms rms = record_rms(rows.log, rows.truth, config.card);
    const SortieNumbers numbers = flown_many(config, truth);

    CHECK(numbers.failure == rehearsed.failure);
    CHECK(numbers.hold_rms_kt == rms.hold_kt);
    CHECK(numbers.gust_rms_mps == rms.gust_mps);
    CHECK(rms.gust_mps > 0.2);
    const std::vector<WindowLine> lines = window_lines(config.card);
    REQUIRE(numbers.lines.size() == lines.size());
    int compared = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].share != 1.0) continue;
      INFO(air << ", " << lines[i].name);
      const JudgedPoint* p = point_of(lines[i], rehearsed.judgement);
      REQUIRE(numbers.lines[i].found == (p != nullptr));
      if (p == nullptr) continue;
      CHECK(numbers.lines[i].error_kt == p->error_kt);
      CHECK(numbers.lines[i].half_width_kt == p->expanded_kt);
      CHECK(numbers.lines[i].covered == p->covered);
      if (lines[i].name == "warning") CHECK(numbers.warning_margin_kt == p->margin_kt);
      ++compared;
    }
    CHECK(compared >= 3);
  }
}

TEST_CASE("a map's numbers of the shorter windows are those of the coverage study", "[study]") {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.air = study_test::air("light");
  const std::vector<TrueSet> truth = truth_of(config);
  const std::vector<WindowValue> windows = fly_windows(config, truth);
  const SortieNumbers numbers = flown_many(config, truth);
  REQUIRE(numbers.lines.size() == windows.size());
  for (std::size_t i = 0; i < windows.size(); ++i) {
    CHECK(numbers.lines[i].found == windows[i].found);
    CHECK(same(numbers.lines[i].error_kt, windows[i].error_kt));
    CHECK(same(numbers.lines[i].half_width_kt, windows[i].half_width_kt));
  }
}

TEST_CASE("a sortie that cannot be begun is a failure with its text and no numbers", "[study]") {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  const std::vector<TrueSet> truth = truth_of(config);
  config.card.working_height_ft = 60000.0;
  const SortieNumbers numbers = flown_many(config, truth);
  CHECK_FALSE(numbers.failure.empty());
  CHECK(std::isnan(numbers.hold_rms_kt));
  for (const LineNumbers& line : numbers.lines) CHECK_FALSE(line.found);
}

TEST_CASE("of sorties flown many at once the same is known as of each alone", "[study]") {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.air = study_test::air("moderate");
  const std::vector<TrueSet> truth = truth_of(config);
  const std::vector<StudySortie> many = fly_sorties(config, truth, 2, 3, 1, {});
  for (const StudySortie& flown : many) {
    config.seed = flown.seed;
    MemorySink rows;
    const StudySortie alone = fly_and_judge(config, truth, rows);
    CHECK(flown.failure == alone.failure);
    CHECK(flown.wing_stalled == alone.wing_stalled);
    CHECK(flown.judgement.verdict == alone.judgement.verdict);
    for (std::size_t k = 0; k < alone.tallies.size(); ++k)
      CHECK(flown.tallies[k].flagged == alone.tallies[k].flagged);
  }
  REQUIRE(many.size() == 2);
}

TEST_CASE("a wing that stalls while a steady point is held is kept, rows or none", "[study]") {
  const TestCard card = study_test::sortie("marram", "current", "standard").card;
  REQUIRE(card.points.back().is_stall());
  const auto told = [&](int point, Phase phase, double attached_root) {
    RecordSink sink;
    Marks marks;
    marks.point = point;
    marks.phase = phase;
    CHECK_FALSE(sink.wants(marks, attached_root));
    return sink.wing_stalled_at(card);
  };
  CHECK(told(2, Phase::settle, 0.49)[1]);
  CHECK_FALSE(told(2, Phase::settle, 0.49)[0]);
  CHECK_FALSE(told(2, Phase::settle, 0.51)[1]);
  CHECK_FALSE(told(2, Phase::recover, 0.1)[1]);
  CHECK_FALSE(told(static_cast<int>(card.points.size()), Phase::settle, 0.1).back());
}

TEST_CASE("after a stop no sortie is begun and those under way are dropped", "[study]") {
  const SortieConfig config = study_test::sortie("marram", "sharp", "ideal");
  std::atomic<bool> stop{false};
  int begun = 0, done = 0;
  fly_many(
      40, 1,
      [&](std::size_t k) {
        ++begun;
        SortieConfig brief = config;
        brief.longest_s = 1.0 + 0.1 * static_cast<double>(k);
        return brief;
      },
      [&](std::size_t k, EndedSortie& ended) {
        CHECK(k == 0);
        ++done;
        CHECK(ended.failure.find("not finished within") != std::string::npos);
        stop = true;
      },
      &stop);
  CHECK(begun <= 1 + chosen_lane_kernel().lanes);
  CHECK(done == 1);
}

}  // namespace stallwright
