// The numbers to fly at a test point, and what keeps a card from being flown in an aeroplane.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>

#include "aircraft/type_file.hpp"
#include "sim/sortie/card_check.hpp"
#include "sim/sortie/card_speeds.hpp"
#include "sim/sortie/test_card_file.hpp"

using namespace stallwright;
using Catch::Matchers::Contains;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double kTiny_kt = 1e-9;  // round-off of knots to metres per second and back

double mps(double speed_kt) { return speed_kt * unit::kKnot.si; }

FlapSetting flap(double deflection_deg, double limit_kt) {
  FlapSetting out;
  out.deflection_rad = deflection_deg * unit::kDegree.si;
  out.limit_speed_mps = mps(limit_kt);
  return out;
}

/// Stalls at 50 kt flaps up and 40 kt full (40 deg) at 900 kg; card speeds belong to 800 kg.
AircraftType glider_tug() {
  AircraftType type;
  type.name = "Tug";
  type.flaps = {flap(0, 150), flap(10, 100), flap(40, 80)};
  type.mass.max_kg = 900;
  type.mass.reference_kg = 800;
  type.limits.v_fe_mps = mps(80);
  type.limits.v_no_mps = mps(120);
  type.limits.book_v_s1_mps = mps(50);
  type.limits.book_v_s0_mps = mps(40);
  type.limits.stalls_permitted = true;
  return type;
}

TestPoint steady(TargetKind kind, double value, std::size_t flap_setting = 0) {
  TestPoint point;
  point.name = "point";
  point.target = kind;
  point.target_value = value;
  point.flap_setting = flap_setting;
  return point;
}

TestPoint stall_at(std::size_t flap_setting) {
  TestPoint point = steady(TargetKind::slow_to_break, kUnset, flap_setting);
  point.power = PowerRule::idle;
  return point;
}

std::vector<std::string> check(const TestPoint& point, const AircraftType& type) {
  TestCard card;
  card.points = {point};
  return card_check(card, type);
}

}  // namespace

TEST_CASE("the book stall speed is the manual's at maximum mass and lies between them by flap deflection",
          "[sortie][card]") {
  const AircraftType type = glider_tug();
  CHECK_THAT(book_stall_kt(type, 0, 900), WithinAbs(50.0, kTiny_kt));
  CHECK_THAT(book_stall_kt(type, 1, 900), WithinAbs(47.5, kTiny_kt));  // a quarter of the way from 50 to 40
  CHECK_THAT(book_stall_kt(type, 2, 900), WithinAbs(40.0, kTiny_kt));
}

TEST_CASE("the book stall speed goes with the root of the mass", "[sortie][card]") {
  const AircraftType type = glider_tug();
  CHECK_THAT(book_stall_kt(type, 0, 225),
             WithinAbs(25.0, kTiny_kt));  // a quarter of the mass, half the speed
  CHECK_THAT(book_stall_kt(type, 1, 400), WithinAbs(47.5 * 2.0 / 3.0, kTiny_kt));
}

TEST_CASE("an aeroplane without flaps has one book stall speed", "[sortie][card]") {
  AircraftType type = glider_tug();
  type.flaps = {flap(0, 150)};
  CHECK_THAT(book_stall_kt(type, 0, 900), WithinAbs(50.0, kTiny_kt));
}

TEST_CASE("a flap setting or a mass that cannot be is refused", "[sortie][card]") {
  const AircraftType type = glider_tug();
  CHECK_THROWS_AS(book_stall_kt(type, 3, 900), std::out_of_range);
  CHECK_THROWS_AS(book_stall_kt(type, 0, 0), std::invalid_argument);
  CHECK_THROWS_AS(book_stall_kt(type, 0, kUnset), std::invalid_argument);
}

TEST_CASE("each way of stating a target gives its speed at the reference mass", "[sortie][card]") {
  const AircraftType type = glider_tug();
  const double stall_kt = 50.0 * std::sqrt(800.0 / 900.0);
  const auto target = [&](TargetKind kind, double value, std::size_t setting = 0) {
    return point_speeds(steady(kind, value, setting), type, 800).target_reference_kt;
  };
  CHECK_THAT(target(TargetKind::speed, 66), WithinAbs(66.0, kTiny_kt));
  CHECK_THAT(target(TargetKind::stall_multiple, 1.3), WithinAbs(1.3 * stall_kt, kTiny_kt));
  CHECK_THAT(target(TargetKind::stall_margin, 7), WithinAbs(stall_kt + 7, kTiny_kt));
  CHECK_THAT(target(TargetKind::below_flap_limit, 5), WithinAbs(75.0, kTiny_kt));     // V_FE, of full flap
  CHECK_THAT(target(TargetKind::below_flap_limit, 5, 1), WithinAbs(95.0, kTiny_kt));  // of this setting
}

TEST_CASE("a target goes with the root of the mass over the reference mass, and its bands go with it",
          "[sortie][card]") {
  TestPoint point = steady(TargetKind::stall_margin, 10);
  point.bands.speed_low_kt = 2;
  point.bands.speed_high_kt = 4;
  const PointSpeeds speeds = point_speeds(point, glider_tug(), 648);
  CHECK_THAT(speeds.target_kt, WithinAbs(0.9 * speeds.target_reference_kt, kTiny_kt));  // 648 = 0.81 x 800
  CHECK_THAT(speeds.band_low_kt, WithinAbs(speeds.target_kt - 2, kTiny_kt));
  CHECK_THAT(speeds.band_high_kt, WithinAbs(speeds.target_kt + 4, kTiny_kt));
  CHECK(speeds.set_up_kt() == speeds.target_kt);
  CHECK(std::isnan(speeds.entry_kt));
  CHECK(speeds.note.empty());
}

TEST_CASE(
    "above the reference mass a flap limit binds: target and band are cut to a knot below it, with a note",
    "[sortie][card]") {
  const PointSpeeds speeds = point_speeds(steady(TargetKind::below_flap_limit, 5), glider_tug(), 900);
  CHECK_THAT(speeds.target_reference_kt, WithinAbs(75.0, kTiny_kt));
  CHECK_THAT(speeds.target_kt, WithinAbs(76.0, kTiny_kt));  // the root would be 79.5 kt
  CHECK_THAT(speeds.band_high_kt, WithinAbs(79.0, kTiny_kt));
  CHECK(speeds.note ==
        "76.0 kt instead of 79.5 kt: the flap limit is 80 kt and the band reaches 3.0 kt above");
}

TEST_CASE("flaps up, only a point that is counted from V_FE is limited by it", "[sortie][card]") {
  const AircraftType type = glider_tug();
  CHECK(std::isinf(point_speeds(steady(TargetKind::speed, 100), type, 900).flap_limit_kt));
  CHECK_THAT(point_speeds(steady(TargetKind::speed, 100), type, 800).target_kt, WithinAbs(100.0, kTiny_kt));
  CHECK_THAT(point_speeds(steady(TargetKind::speed, 100, 2), type, 800).target_kt, WithinAbs(76.0, kTiny_kt));
}

TEST_CASE("a stall is entered from the greater of 10 kt above it and 1.3 times it, at the mass flown",
          "[sortie][card]") {
  const AircraftType type = glider_tug();
  const PointSpeeds heavy = point_speeds(stall_at(0), type, 900);
  CHECK_THAT(heavy.stall_kt, WithinAbs(50.0, kTiny_kt));
  CHECK_THAT(heavy.entry_kt, WithinAbs(65.0, kTiny_kt));
  CHECK(std::isnan(heavy.target_kt));
  CHECK(std::isnan(heavy.stop_kt));
  CHECK(heavy.set_up_kt() == heavy.entry_kt);
  CHECK_THAT(point_speeds(stall_at(0), type, 225).entry_kt, WithinAbs(35.0, kTiny_kt));  // 25 kt and 10 kt
}

TEST_CASE("a slow run goes from one margin above the stall to another, scaled with the root of the mass",
          "[sortie][card]") {
  TestPoint run = steady(TargetKind::slow_through, kUnset);
  run.from_above_stall_kt = 20;
  run.to_above_stall_kt = 8;
  const double stall_kt = 50.0 * std::sqrt(800.0 / 900.0);
  const PointSpeeds speeds = point_speeds(run, glider_tug(), 200);  // half the speed
  CHECK_THAT(speeds.entry_kt, WithinAbs(0.5 * (stall_kt + 20), kTiny_kt));
  CHECK_THAT(speeds.stop_kt, WithinAbs(0.5 * (stall_kt + 8), kTiny_kt));
}

TEST_CASE("a card is told what keeps it from being flown in this aeroplane", "[sortie][card]") {
  AircraftType type = glider_tug();
  CHECK(check(steady(TargetKind::speed, 60), type).empty());
  const auto only = [](const std::vector<std::string>& problems) {
    REQUIRE(problems.size() == 1);
    return problems[0];
  };
  CHECK(only(check(steady(TargetKind::speed, 60, 3), type)) ==
        "point[1] \"point\": flap setting 3, but Tug has 0 to 2");
  CHECK_THAT(only(check(steady(TargetKind::speed, 77, 2), type)),
             Contains("too near the flap limit: 76.0 kt instead of 77.0 kt"));
  CHECK_THAT(only(check(steady(TargetKind::below_flap_limit, 3), type)), Contains("too near the flap limit"));
  CHECK_THAT(only(check(steady(TargetKind::speed, 118), type)),
             Contains("reaches 121.0 kt, above V_NO, 120.0 kt"));
  CHECK_THAT(only(check(steady(TargetKind::speed, 50), type)),
             Contains("down to 47.0 kt, and the book stall there is 47.1 kt"));
  CHECK(check(stall_at(0), type).empty());
  type.limits.stalls_permitted = false;
  CHECK_THAT(only(check(stall_at(0), type)), Contains("does not permit intentional stalls"));
}

TEST_CASE("a set whose speeds do not fall by two knots from point to point is told so, each set by itself",
          "[sortie][card]") {
  const AircraftType type = glider_tug();
  TestCard card;
  card.points = {steady(TargetKind::speed, 70), steady(TargetKind::speed, 68),
                 steady(TargetKind::speed, 70, 1)};
  CHECK(card_check(card, type).empty());
  card.points[1].target_value = 68.5;
  REQUIRE(card_check(card, type).size() == 1);
  CHECK_THAT(card_check(card, type)[0], Contains("point[2]") && Contains("68.5 kt") && Contains("70.0 kt"));
}

TEST_CASE("a stall or slow run that a flap limit leaves no room for is told so", "[sortie][card]") {
  AircraftType type = glider_tug();
  type.flaps[2].limit_speed_mps = mps(50);  // entry of the full-flap stall: 49 kt and 3 kt of band
  REQUIRE(check(stall_at(2), type).size() == 1);
  TestPoint run = steady(TargetKind::slow_through, kUnset, 2);
  run.from_above_stall_kt = 20;
  run.to_above_stall_kt = 10;
  REQUIRE(check(run, type).size() == 2);
  CHECK_THAT(check(run, type)[1], Contains("end no slower"));
}

TEST_CASE("both cards fit each aeroplane that comes with the program", "[sortie][card]") {
  REQUIRE(list_aircraft_types().size() >= 3);
  for (const auto& card : list_cards()) {
    for (const auto& type : list_aircraft_types()) {
      INFO(card << " in " << type);
      CHECK_THAT(
          card_check(load_test_card(find_card_file(card)), load_aircraft_type(find_aircraft_file(type))),
          Catch::Equals(std::vector<std::string>{}));
    }
  }
}

TEST_CASE("the short card is the four set points with flaps up, each once, the stall power off",
          "[sortie][card]") {
  const TestCard card = load_test_card(find_card_file("short"));
  REQUIRE(card.points.size() == 4);
  const std::array names{"fast reference", "approach", "warning", "stall"};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(card.points[i].name == names[i]);
    CHECK(card.points[i].flap_setting == 0);
    CHECK(card.points[i].repeats == 1);
  }
  CHECK(card.points[0].target == TargetKind::below_flap_limit);
  CHECK(card.points[0].target_value == 5.0);
  CHECK(card.points[0].bands.speed_high_kt < 5.0);
  CHECK(card.points[3].is_stall());
  CHECK(card.points[3].power == PowerRule::idle);
  CHECK(card.points[3].entry_rate_ktps == 1.0);
}

TEST_CASE("the thorough card flies flaps up first, repeats, has two entry rates a set and one slow run",
          "[sortie][card]") {
  const TestCard card = load_test_card(find_card_file("thorough"));
  std::map<std::size_t, std::set<double>> rates;
  int runs = 0;
  for (std::size_t i = 0; i < card.points.size(); ++i) {
    const TestPoint& point = card.points[i];
    if (i > 0) CHECK(point.flap_setting >= card.points[i - 1].flap_setting);
    if (point.is_stall()) rates[point.flap_setting].insert(point.entry_rate_ktps);
    runs += point.target == TargetKind::slow_through;
    if (point.target != TargetKind::slow_through) CHECK(point.repeats >= 2);
  }
  CHECK(runs == 1);
  REQUIRE(rates.size() == 2);
  for (const auto& [setting, entry_rates] : rates) CHECK(entry_rates == std::set<double>{1.0, 3.0});
}
