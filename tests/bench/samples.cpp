#include "tests/bench/samples.hpp"

#include "aircraft/type_file.hpp"
#include "sim/air/air_library.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::bench {
namespace {

constexpr int kEvery_ticks = 50;

/// Takes no rows.
class NoRows : public SortieSink {
 public:
  bool wants(const Marks& /*marks*/, double /*attached_root*/) override { return false; }
  void row(const LogRow& /*log*/, const TruthRow& /*truth*/) override {}
};

LaneGroup<double> lane_of(Sortie& sortie) {
  const Sortie::Aboard a = sortie.aboard();
  LaneGroup<double> lane{};
  lane.flight = sortie.flight();
  lane.air = sortie.air();
  lane.turbulence = std::get<DrydenState<double>>(a.turbulence);
  lane.shake = a.shake;
  lane.key = random::noise_key(a.key);
  lane.tick = static_cast<double>(std::lround(sortie.time_s() / kTick_s));
  lane.controls = sortie.controls();
  lane.errors = a.errors;
  lane.grade = a.grade;
  lane.instruments = a.instruments;
  lane.slope =
      flight_derivative(a.known.aircraft, lane.flight, lane.controls, lane.air).rate;  // of first_step
  return lane;
}

}  // namespace

SortieConfig usual_sortie(const std::string& card) {
  SortieConfig config;
  config.type = load_aircraft_type(find_aircraft_file("marram"));
  config.loading = default_loading(config.type);
  config.card = load_test_card(find_card_file(card));
  config.air = find_air("light").preset;
  config.pilot = pilot_grade("current");
  config.instruments = instrument_grade("standard");
  config.smooth_twin = false;
  return config;
}

Samples samples(std::size_t count) {
  Samples out;
  SortieConfig config = usual_sortie("short");
  out.known = known_aircraft(config);
  NoRows none;
  for (config.seed = 1; out.aeroplanes.size() < count; ++config.seed) {
    Sortie sortie(config, out.known);
    out.air = sortie.aboard().air;
    for (int tick = 1; out.aeroplanes.size() < count && sortie.tick(none); ++tick)
      if (tick % kEvery_ticks == 0) out.aeroplanes.push_back(lane_of(sortie));
  }
  return out;
}

}  // namespace stallwright::bench
