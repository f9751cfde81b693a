// What an air preset's choice of spectra and its gusts do to a flight.
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

SortieConfig short_flight(double longest_s) {
  SortieConfig c = study_test::sortie("marram", "sharp", "ideal");
  c.air.severity = Severity::kLight;
  c.longest_s = longest_s;
  return c;
}

double strength(const TruthRow& r) {  // the card begins with clearing turns: body axes are banked
  return std::sqrt(r.gust_forward_mps * r.gust_forward_mps + r.gust_right_mps * r.gust_right_mps +
                   r.gust_down_mps * r.gust_down_mps);
}

MemorySink flown(const SortieConfig& config) {
  MemorySink sink;
  fly_sortie(config, sink);
  return sink;
}

}  // namespace

TEST_CASE("a sortie in von Karman's air flies in other gusts of like strength, the same each time",
          "[sortie][gust]") {
  SortieConfig c = short_flight(120.0);
  const MemorySink dryden = flown(c);
  c.air.turbulence = TurbulenceModel::kVonKarman;
  const MemorySink karman = flown(c), again = flown(c);
  REQUIRE(karman.truth.size() == dryden.truth.size());
  double squares[2] = {};
  bool same = true;
  for (std::size_t i = 0; i < karman.truth.size(); ++i) {
    squares[0] += std::pow(dryden.truth[i].gust_down_mps, 2);
    squares[1] += std::pow(karman.truth[i].gust_down_mps, 2);
    same = same && karman.truth[i].state_hash == again.truth[i].state_hash;
  }
  CHECK(same);
  // It begins in the gust that this model's own start draws.
  const VonKarmanParams<double> params{turbulence_scales(c.air.intensity(), c.card.working_height_ft * kFoot),
                                       make_aircraft(c.type, c.loading, c.airframe_seed).span_m};
  const auto first = gust(params, stationary_start(params, von_karman_noise({c.seed, c.sortie}, 0, true)));
  CHECK(karman.truth[0].gust_down_mps == Approx(first.v_B_mps.z).margin(1e-4));
  CHECK(karman.truth[0].gust_forward_mps == Approx(first.v_B_mps.x).margin(1e-4));
  CHECK(karman.truth[50].gust_down_mps != dryden.truth[50].gust_down_mps);
  CHECK(squares[1] / squares[0] > 0.25);
  CHECK(squares[1] / squares[0] < 4.0);
}

TEST_CASE("a gust of the preset is met at its time, ends with its length, and adds load", "[sortie][gust]") {
  SortieConfig c = short_flight(20.0);
  c.air.severity = Severity::kCalm;
  const MemorySink still = flown(c);
  c.air.gusts = {{GustShape::kOneMinusCosine, 10.0, 40.0, {0.0, 0.0, 3.0}}};
  const MemorySink struck = flown(c);
  double most = 0.0, load = 0.0, speed = 0.0, last = 0.0;
  for (std::size_t i = 0; i < struck.truth.size(); ++i) {
    const TruthRow& row = struck.truth[i];
    if (row.t_s <= 10.0) {
      REQUIRE(strength(row) == 0.0);
      REQUIRE(row.state_hash == still.truth[i].state_hash);
      speed = row.tas_kt * kKnot;
    }
    if (strength(row) != 0.0) last = row.t_s;
    most = std::max(most, strength(row));
    load = std::max(load, row.load_factor - still.truth[i].load_factor);
  }
  CHECK(most == Approx(3.0).margin(0.01));
  CHECK(last - 10.0 == Approx(40.0 / speed).margin(0.06));
  CHECK(load > 0.2);
}

TEST_CASE("air that comes to meet the aeroplane shows on its airspeed at once, and stays", "[sortie][gust]") {
  SortieConfig c = short_flight(20.0);
  c.air.severity = Severity::kCalm;
  const MemorySink still = flown(c);
  c.air.gusts = {{GustShape::kRampAndHold, 10.0, 30.0, {-4.0, 0.0, 0.0}}};
  const MemorySink sink = flown(c);
  const auto more_at = [&](double t) {
    const auto i = static_cast<std::size_t>(std::lround(t / kTick_s));
    return (sink.truth[i].tas_kt - still.truth[i].tas_kt) * kKnot;
  };
  CHECK(more_at(10.0) == 0.0);
  CHECK(more_at(10.8) == Approx(4.0).margin(0.4));  // drag has had less than a second
  CHECK(strength(sink.truth.back()) == Approx(4.0).margin(1e-3));
}
