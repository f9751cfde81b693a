#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "aircraft/math/units.hpp"
#include "sim/reduction/reduce.hpp"
#include "sim/truth/error_split.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

/// A sortie flown in memory, with all that its errors are taken apart with.
struct Flown {
  SortieConfig config;
  Aircraft aircraft;
  StillAir air;
  std::vector<TrueSet> truth;
  SplitReference reference;
  MemorySink rows;
  SortieOutcome outcome;

  Flown(const std::string& type, const std::string& air_name, const std::string& sensors)
      : config(study_test::sortie(type, "current", sensors)),
        aircraft(make_aircraft(config.type, config.loading, config.airframe_seed)) {
    config.air = study_test::air(air_name);
    air = working_air(config.card, config.air.day);
    truth = find_truth(aircraft, config.card, air);
    reference = split_reference(aircraft, config.card, truth, air);
  }
  void fly(std::uint64_t seed) {
    rows = {};
    config.seed = seed;
    outcome = fly_sortie(config, rows);
  }
  std::vector<JudgedPoint> points(double assumed_lag_s = kAssumedLiftLag_s) const {
    Judgement j =
        judge(reduce(rows.log, config.card, config.instruments), truth, config.card, config.type, outcome);
    split_errors(j, rows.log, rows.truth, config.card, aircraft, config.instruments, truth, reference,
                 assumed_lag_s);
    return j.sets[0].points;
  }
};

/// Lets the twin hold every steady point to the last digit: its lift area and thrust those of the truth, at 1 g.
void hold_exactly(Flown& f) {
  for (std::size_t i = 0; i < f.rows.log.size(); ++i) {
    const LogRow& log = f.rows.log[i];
    TruthRow& row = f.rows.truth[i];
    if (log.recording == 0 || f.config.card.points[static_cast<std::size_t>(log.point - 1)].is_stall())
      continue;
    const StaticPoint& at = f.truth[0].points[static_cast<std::size_t>(log.point - 1)].at;
    const double mass = as_printed(f.aircraft.mass.mass_kg, 1);
    row.smooth_forward_mps2 = row.smooth_right_mps2 = 0.0;
    row.smooth_down_mps2 = -at.lift_area_m2 * row.smooth_impact_pa / mass;
    row.smooth_thrust_n = at.thrust_area_m2 * row.smooth_impact_pa;
  }
}

/// Lets the twin's lift in stalls be that of steady flight at its ratio.
void no_lag(Flown& f) {
  const double mass = as_printed(f.aircraft.mass.mass_kg, 1);
  for (std::size_t i = 0; i < f.rows.log.size(); ++i) {
    const LogRow& log = f.rows.log[i];
    TruthRow& row = f.rows.truth[i];
    if (log.recording == 0 || !f.config.card.points[static_cast<std::size_t>(log.point - 1)].is_stall())
      continue;
    row.smooth_forward_mps2 = row.smooth_right_mps2 = 0.0;
    row.smooth_down_mps2 = -f.truth[0].map.lift_area_m2(row.smooth_ratio) * row.smooth_impact_pa / mass;
  }
}

}  // namespace

TEST_CASE("the parts of an error add up to it at every point and reading", "[truth][split]") {
  const auto type = GENERATE(as<std::string>{}, "marram", "sarsen", "tarnfell");
  Flown f(type, "light", "standard");
  f.fly(3);
  int checked = 0;
  for (const JudgedPoint& p : f.points()) {
    INFO(type << ", " << p.measured.name);
    REQUIRE(p.split.known());
    CHECK(p.split.sum_kt() == Approx(p.error_kt).margin(1e-9));
    CHECK(std::abs(p.split.sensor_kt) > 0.0);
    CHECK(std::abs(p.split.air_kt) > 0.0);
    CHECK(std::abs(p.measured.is_stall ? p.split.entry_kt : p.split.hold_kt) > 0.0);
    for (const ReadingError& r : p.readings) {
      REQUIRE(r.split.known());
      CHECK(r.split.sum_kt() == Approx(r.error_kt).margin(1e-9));
      ++checked;
    }
  }
  CHECK(checked == 12);
}

TEST_CASE("ideal instruments take exactly the sensors' part away, smooth air exactly its own",
          "[truth][split]") {
  SECTION("ideal instruments") {
    Flown f("sarsen", "light", "ideal");
    f.fly(4);
    for (const JudgedPoint& p : f.points()) {
      REQUIRE(p.split.known());
      CHECK(p.split.sensor_kt == 0.0);
      CHECK(p.split.air_kt != 0.0);
      for (const ReadingError& r : p.readings) CHECK(r.split.sensor_kt == 0.0);
    }
  }
  SECTION("calm air") {
    Flown f("sarsen", "calm", "standard");
    f.fly(4);
    for (const JudgedPoint& p : f.points()) {
      REQUIRE(p.split.known());
      CHECK(p.split.air_kt == 0.0);
      CHECK(p.split.sensor_kt != 0.0);
      for (const ReadingError& r : p.readings) CHECK(r.split.air_kt == 0.0);
    }
  }
}

TEST_CASE("a point held exactly has no part for hold", "[truth][split]") {
  Flown f("marram", "light", "standard");
  f.fly(5);
  hold_exactly(f);
  for (const JudgedPoint& p : f.points()) {
    if (p.measured.is_stall) continue;
    REQUIRE(p.split.known());
    CHECK(std::abs(p.split.hold_kt) < 1e-9);
    CHECK(p.split.sensor_kt != 0.0);
    for (const ReadingError& r : p.readings) CHECK(std::abs(r.split.hold_kt) < 1e-9);
  }
}

TEST_CASE("lift without lag, and none assumed, has no part for entry rate", "[truth][split]") {
  Flown f("marram", "calm", "standard");
  f.fly(5);
  CHECK(f.points().back().split.entry_kt != 0.0);
  no_lag(f);
  const JudgedPoint stall = f.points(0.0).back();
  REQUIRE(stall.measured.is_stall);
  REQUIRE(stall.split.known());
  CHECK(stall.split.entry_kt == 0.0);
  CHECK(stall.split.sensor_kt != 0.0);
}

TEST_CASE("a power that was chased shows as hold", "[truth][split]") {
  // The twin flies the point's own lift area with 30 % more thrust area: the slipstream lifts, the ratio is lower, and
  // a lower ratio is a faster set point.
  Flown f("marram", "calm", "ideal");
  f.fly(6);
  hold_exactly(f);
  for (TruthRow& row : f.rows.truth) row.smooth_thrust_n *= 1.3;
  for (const JudgedPoint& p : f.points())
    if (p.measured.name == "warning") CHECK(p.split.hold_kt > 0.1);
}

TEST_CASE("the remainder is a small part of what set points are off", "[truth][split]") {
  // Over seeds: median of |remainder| under a fifth of the RMS error, point by point in calm air, steady points in
  // light air together.
  const auto air = GENERATE(as<std::string>{}, "calm", "light");
  Flown f("marram", air, "standard");
  std::map<std::string, std::vector<double>> remainder;
  std::map<std::string, double> square;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    f.fly(seed);
    for (const JudgedPoint& p : f.points()) {
      if (!p.split.known()) continue;
      const std::string name = air == "calm" || p.measured.is_stall ? p.measured.name : "steady";
      remainder[name].push_back(std::abs(p.split.remainder_kt));
      square[name] += p.error_kt * p.error_kt;
    }
  }
  CHECK(remainder.size() == (air == "calm" ? 4u : 2u));
  for (auto& [name, values] : remainder) {
    std::sort(values.begin(), values.end());
    const double rms = std::sqrt(square[name] / static_cast<double>(values.size()));
    INFO(air << ", " << name << ": RMS " << rms << " kt, median of |remainder| "
             << values[values.size() / 2]);
    CHECK(values[values.size() / 2] < 0.2 * rms);
  }
}

TEST_CASE("the steady surface gives what steady flight gives between its own flights", "[truth][split]") {
  const auto type = GENERATE(as<std::string>{}, "marram", "sarsen", "tarnfell");
  const Flown f(type, "calm", "ideal");
  for (const TruePoint& p : f.truth[0].points) {
    if (p.is_stall) continue;
    const SteadySurface& s = f.reference.around.at(p.card_point);
    CHECK(s.ratio(p.at.lift_area_m2, p.at.thrust_area_m2) == p.at.ratio);
    for (const double share : {0.98, 1.025, 1.08}) {
      const StaticPoint at =
          steady_at(f.aircraft, 0.0, PowerRule::descent, 0.7, f.air, share * p.at.indicated_mps);
      REQUIRE(at.found);
      INFO(type << ", " << p.name << " at " << share);
      // A hundredth of a knot near the point, a tenth towards the stall.
      CHECK(s.ratio(at.lift_area_m2, at.thrust_area_m2) == Approx(at.ratio).margin(0.0015));
    }
  }
}

TEST_CASE("the twin in air without gusts is the aeroplane itself, to the last bit", "[truth][split]") {
  Flown f("tarnfell", "calm", "ideal");
  f.fly(7);
  int recorded = 0;
  for (std::size_t i = 0; i < f.rows.log.size(); ++i) {
    const TruthRow& row = f.rows.truth[i];
    if (f.rows.log[i].recording == 0) {
      CHECK(std::isnan(row.smooth_ratio));
      continue;
    }
    ++recorded;
    REQUIRE(row.smooth_ratio == row.static_ratio);
    REQUIRE(row.smooth_impact_pa == row.ideal_impact_pa);
    REQUIRE(row.smooth_down_mps2 == row.ideal_down_mps2);
    REQUIRE(row.smooth_thrust_n == row.thrust_n);
  }
  CHECK(recorded > 50 * 60);
}

TEST_CASE("a flight without its twin is the same flight", "[truth][split]") {
  Flown f("sarsen", "light", "standard");
  f.fly(8);
  const MemorySink with = f.rows;
  f.config.smooth_twin = false;
  f.fly(8);
  REQUIRE(f.rows.log.size() == with.log.size());
  for (std::size_t i = 0; i < with.log.size(); ++i) {
    REQUIRE(log_fields(f.rows.log[i]) == log_fields(with.log[i]));
    REQUIRE(f.rows.truth[i].static_ratio == with.truth[i].static_ratio);
    REQUIRE(std::isnan(f.rows.truth[i].smooth_ratio));
  }
  // And nothing can be taken apart.
  for (const JudgedPoint& p : f.points()) CHECK_FALSE(p.split.known());
}

TEST_CASE("air that moves as one is no gust to the twin", "[truth][split]") {
  // In a gust that stays the same the twin, begun beside the real aeroplane, flies as that does.
  const Flown f("marram", "calm", "ideal");
  TrimCondition c;
  c.true_airspeed_mps = 30.0;
  c.altitude_m = f.air.altitude_m;
  c.density_kgpm3 = f.air.density_kgpm3;
  const Trim trim = find_trim(f.aircraft, c);
  REQUIRE(trim.converged);
  FlightState<double> real = trim.state;
  AirSample<double> air = trim_air(c);
  const Vec3<double> gust_E{2.0, 0.0, -3.0};
  const auto in_body = [&] { return transpose(rotation_EB(real.rigid.attitude_EB)) * gust_E; };
  air.gust_B_mps = in_body();
  real.rigid.velocity_B_mps += air.gust_B_mps;
  SmoothTwin twin;
  twin.begin(real, air);
  Controls<double> controls = trim.controls;
  controls.stick_aft += 0.05;  // a pull, so that something happens
  double moved = 0.0;
  for (int k = 0; k < 500; ++k) {
    air.gust_B_mps = in_body();
    real = flight_step(f.aircraft, real, controls, air);
    twin.step(f.aircraft, controls, air, real);
    const Vec3<double> v = real.rigid.velocity_B_mps - in_body();
    moved = std::max(moved, std::abs(v.z - trim.state.rigid.velocity_B_mps.z));
    REQUIRE(norm(twin.state().rigid.velocity_B_mps - v) < 0.02);
  }
  CHECK(moved > 0.3);
}
