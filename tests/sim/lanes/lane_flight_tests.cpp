// A sortie in a lane is the sortie alone: every row of its log and its truth, with the hash of the whole state each second.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"
#include "sim/lanes/lane_flight.hpp"
#include "sim/study/sensitivity/sensitivity_inputs.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

/// Keeps rows as they would be printed.
class TextSink : public SortieSink {
 public:
  void row(const LogRow& log, const TruthRow& truth) override {
    for (const std::string& field : log_fields(log)) text_ += field + ",";
    for (const std::string& field : truth_fields(truth)) text_ += field + ",";
    text_ += "\n";
    if (++rows_ == throws_at) throw std::runtime_error("no room for this row");
  }
  const std::string& text() const { return text_; }
  int throws_at = -1;

 private:
  std::string text_;
  int rows_ = 0;
};

struct Flown {
  std::string text, failure;
  SortieOutcome outcome;
};

/// Brings a list of sorties to the lanes.
class List : public LaneCrew {
 public:
  explicit List(const std::vector<SortieConfig>& configs)
      : flown(configs.size()), sinks(configs.size()), configs_(configs) {}

  SeatedSortie next() override {
    if (next_ == configs_.size()) return {};
    const std::size_t k = next_++;
    // Neighbours that may share what is known do.
    if (!known_ || !serves(*known_, configs_[k])) known_ = known_aircraft(configs_[k]);
    return {k, std::make_unique<Sortie>(configs_[k], known_), &sinks[k]};
  }
  void ended(SeatedSortie& seated, const std::string& failure) override {
    flown[seated.number] = {sinks[seated.number].text(), failure, seated.sortie->outcome()};
  }

  std::vector<Flown> flown;
  std::vector<TextSink> sinks;

 private:
  const std::vector<SortieConfig>& configs_;
  std::size_t next_ = 0;
  std::shared_ptr<const KnownAircraft> known_;
};

Flown alone(const SortieConfig& config) {
  Sortie sortie(config);
  TextSink sink;
  while (sortie.tick(sink)) {
  }
  return {sink.text(), "", sortie.outcome()};
}

/// Sorties of different lengths, so that lanes are taken over at different moments.
std::vector<SortieConfig> some(const SortieConfig& base, int count) {
  std::vector<SortieConfig> all;
  for (int k = 0; k < count; ++k) {
    all.push_back(base);
    all.back().seed = 0x100000000ull * static_cast<std::uint64_t>(k % 3) + static_cast<std::uint64_t>(k);
    all.back().longest_s = 4.0 + 1.7 * (k % 5);
    all.back().smooth_twin = false;
  }
  return all;
}

void same_as_alone(const LaneKernel& kernel, const std::vector<SortieConfig>& configs) {
  List list(configs);
  fly_in_lanes(kernel, list);
  for (std::size_t k = 0; k < configs.size(); ++k) {
    const Flown expected = alone(configs[k]);
    INFO(kernel.name << ", sortie " << k);
    REQUIRE(expected.text.size() > 1000);
    // Not compared by the framework: it would print both.
    REQUIRE((list.flown[k].text == expected.text));
    REQUIRE(list.flown[k].outcome.failure == expected.outcome.failure);
    REQUIRE(list.flown[k].outcome.ended_s == expected.outcome.ended_s);
    REQUIRE(list.flown[k].outcome.events.size() == expected.outcome.events.size());
  }
}

SortieConfig in_air(const std::string& name) {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.air = study_test::air(name);
  return config;
}

}  // namespace

TEST_CASE("the processor has the scalar kernel, and the widest one is chosen", "[lanes]") {
  const std::vector<LaneKernel> kernels = lane_kernels();
  REQUIRE(!kernels.empty());
  CHECK(std::string(kernels.front().name) == "scalar");
  CHECK(kernels.front().lanes == 1);
  for (std::size_t k = 1; k < kernels.size(); ++k) CHECK(kernels[k].lanes > kernels[k - 1].lanes);
}

TEST_CASE("in every kernel a sortie in turbulence goes as it goes alone", "[lanes]") {
  for (const LaneKernel& kernel : lane_kernels()) same_as_alone(kernel, some(in_air("moderate"), 11));
}

TEST_CASE("air that lanes cannot make is brought to them: thermals, discrete gusts, other spectra",
          "[lanes]") {
  const LaneKernel kernel = lane_kernels().back();
  same_as_alone(kernel, some(in_air("day"), 5));
  SortieConfig gusts = in_air("light");
  gusts.air.turbulence = TurbulenceModel::kVonKarman;
  DiscreteGust gust;
  gust.start_s = 2.0;
  gust.length_m = 80.0;
  gust.peak_mps = {0.0, 1.0, 4.0};
  gusts.air.gusts = {gust};
  same_as_alone(kernel, some(gusts, 5));
}

TEST_CASE("sorties that differ in loading or spectra never share the lanes, and each goes as it goes alone",
          "[lanes]") {
  SortieConfig heavy = in_air("light");
  heavy.loading = loading_for(heavy.type, 1.04 * mass_properties(heavy.type, heavy.loading).mass_kg,
                              mass_properties(heavy.type, heavy.loading).cg.x_aft_m);
  std::vector<SortieConfig> mixed;
  for (const SortieConfig& config : some(in_air("light"), 3)) mixed.push_back(config);
  for (const SortieConfig& config : some(heavy, 2)) mixed.push_back(config);
  for (const SortieConfig& config : some(in_air("calm"), 2)) mixed.push_back(config);
  same_as_alone(lane_kernels().back(), mixed);
}

namespace {

/// A kernel that counts its ticks.
LaneKernel counted;
int ticks_counted = 0;
LaneKernel counting(const LaneKernel& kernel) {
  counted = kernel;
  ticks_counted = 0;
  LaneKernel counter = kernel;
  counter.observe = [](const LaneScene& scene, double* group) {
    ++ticks_counted;
    counted.observe(scene, group);
  };
  return counter;
}

}  // namespace

TEST_CASE(
    "sorties in Dryden air of different strength and with different sensors share the lanes, each as it goes "
    "alone",
    "[lanes]") {
  SortieConfig base = in_air("calm");
  base.air.severity.reset();
  std::vector<SortieConfig> mixed = some(base, 8);
  for (std::size_t k = 0; k < mixed.size(); ++k) {
    mixed[k].air.name = "strength " + std::to_string(k);
    mixed[k].air.sigma_mps = 0.3 * static_cast<double>(k);
    if (k % 3 == 0) mixed[k].instruments = instrument_grade("ideal");
    if (k % 3 == 1) mixed[k].instruments = scaled_errors(instrument_grade("standard"), 0.37);
    mixed[k].longest_s = 6.0;
  }
  for (const LaneKernel& kernel : lane_kernels()) {
    same_as_alone(counting(kernel), mixed);
    const int rounds = (8 + kernel.lanes - 1) / kernel.lanes;
    INFO(kernel.name);
    CHECK(std::abs(ticks_counted - rounds * 300) <= 2 * rounds);
  }
}

TEST_CASE("a sortie whose rows cannot be taken ends alone", "[lanes]") {
  const std::vector<SortieConfig> configs = some(in_air("light"), 4);
  List list(configs);
  list.sinks[1].throws_at = 20;
  fly_in_lanes(lane_kernels().back(), list);
  CHECK(list.flown[1].failure == "no room for this row");
  for (const std::size_t k : {0u, 2u, 3u}) CHECK((list.flown[k].text == alone(configs[k]).text));
}

TEST_CASE("a kernel tells a number that is not finite", "[lanes]") {
  for (const LaneKernel& kernel : lane_kernels()) {
    const SortieConfig config = in_air("calm");
    const Sortie sortie(config);
    const Sortie::Aboard a = sortie.aboard();
    const LaneScene scene{&a.known.aircraft, &a.air, true};
    LaneGroup<double> one{};
    one.flight = const_cast<Sortie&>(sortie).flight();
    one.controls = sortie.controls();
    const auto from = std::bit_cast<std::array<double, sizeof one / sizeof(double)>>(one);
    const auto lanes = static_cast<std::size_t>(kernel.lanes);
    std::vector<double> memory(from.size() * lanes + 8);
    double* group = memory.data();
    while (reinterpret_cast<std::uintptr_t>(group) % 64 != 0) ++group;
    for (std::size_t k = 0; k < from.size(); ++k)
      for (std::size_t lane = 0; lane < lanes; ++lane) group[k * lanes + lane] = from[k];
    const std::size_t north = offsetof(LaneGroup<double>, flight) / sizeof(double);
    group[north * lanes] = std::numeric_limits<double>::infinity();  // of the first lane
    kernel.observe(scene, group);
    kernel.first_step(scene, group);
    kernel.second_step(scene, group);
    const std::size_t unsound = offsetof(LaneGroup<double>, unsound) / sizeof(double);
    INFO(kernel.name);
    CHECK(std::isnan(group[unsound * lanes]));
    if (lanes > 1) CHECK(group[unsound * lanes + 1] == 0.0);
  }
}

TEST_CASE("a kernel may be named, and a name that the processor has not is refused", "[lanes]") {
  ::setenv("STALLWRIGHT_LANES", "scalar", 1);
  CHECK(chosen_lane_kernel().lanes == 1);
  ::setenv("STALLWRIGHT_LANES", "hexadecimal", 1);
  CHECK_THROWS_AS(chosen_lane_kernel(), InputError);
  ::unsetenv("STALLWRIGHT_LANES");
  CHECK(chosen_lane_kernel().lanes == lane_kernels().back().lanes);
}
