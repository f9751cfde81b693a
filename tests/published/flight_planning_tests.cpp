#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/mass_properties.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/standard_atmosphere.hpp"
#include "sim/motion/trim.hpp"
#include "tests/published/evidence.hpp"
#include "tests/sim/motion/marram.hpp"

using namespace stallwright;
using evidence::hold;
using evidence::Published;
using stallwright::testing::marram_type;

namespace {

constexpr double kPound = 0.45359237, kInch = 0.0254, kInchOfMercury_pa = 3386.389;

/// A type that is nothing but masses: empty, and load stations on the centre line.
AircraftType scales_of(double empty_lb, double arm_in,
                       const std::vector<std::pair<const char*, double>>& arms_in) {
  AircraftType type = marram_type();
  type.mass.empty_kg = empty_lb * kPound;
  type.mass.empty_cg = {arm_in * kInch, 0.0, 0.0};
  type.mass.stations.clear();
  for (const auto& [name, arm] : arms_in)
    type.mass.stations.push_back({name, {arm * kInch, 0.0, 0.0}, 500.0, 0.0});
  return type;
}

}  // namespace

TEST_CASE("a loaded centre of gravity is the total moment over the total weight", "[aircraft][published]") {
  // [FAA-H-8083-1B], the method; loads ours. Weight, lb, arm, in, moment, lb in:
  //   empty  1,340  37   49,580     front seats  340  37  12,580     rear seats  300  73  21,900
  //   fuel     240  48   11,520     baggage       20  95   1,900     sum       2,240      97,480
  // 97,480/2,240 = 43.518 in; the tolerance is half of the last digit.
  const AircraftType type = scales_of(1340, 37, {{"front", 37}, {"rear", 73}, {"fuel", 48}, {"baggage", 95}});
  const auto loaded = [&](double rear_lb, double baggage_lb) {
    return mass_properties(type, {{340 * kPound, rear_lb * kPound, 240 * kPound, baggage_lb * kPound}});
  };
  const MassProperties m = loaded(300, 20);
  const Published method{"FAA-H-8083-1B", "total moment over total weight", "worked by hand"};
  hold(method, "weight of the worked loading", m.mass_kg / kPound, 2240.0, 2240e-12, "lb", "a sum");
  hold(method, "centre of gravity of the worked loading", m.cg.x_aft_m / kInch, 43.518, 5e-4, "in",
       "half of the last digit");
  // Moving w over d shifts the centre of gravity by w d/W: 100 lb from rear seats to baggage, 22 in, is 2,200/2,240 in.
  hold(method, "shift of the centre of gravity when 100 lb move 22 in",
       (loaded(200, 120).cg.x_aft_m - m.cg.x_aft_m) / kInch, 2200.0 / 2240.0, 1e-9, "in", "exact");
}

TEST_CASE("pressure and density altitude agree with the sample problem of the pilot handbook",
          "[air][published]") {
  // [FAA-H-8083-25B] chart of density altitude, from memory: 5,883 ft, 30.10 inHg, 70 deg F; its table takes 165 ft off,
  // its chart gives 7,700 ft. Table: 5 ft, since it is by hundredths of an inch. Chart: 150 ft, a third of its spacing.
  const double off_ft = pressure_altitude(30.10 * kInchOfMercury_pa) / kFoot;
  const Published chart{"FAA-H-8083-25B", "chart of density altitude, sample problem", "from memory"};
  hold(chart, "pressure altitude less altitude at 30.10 inHg", off_ft, -165.0, 5.0, "ft",
       "the table is by hundredths of an inch");
  const double pressure_pa = atmosphere(Day{}, geometric_altitude((5883.0 - 165.0) * kFoot)).pressure_Pa;
  const double temperature_K = 273.15 + (70.0 - 32.0) / 1.8;
  const double density = pressure_pa / (ussa1976::kGasConstant * temperature_K);
  hold(chart, "density altitude at 5,718 ft and 70 degF", density_altitude(density) / kFoot, 7700.0, 150.0,
       "ft", "a third of the chart's spacing");
  // And its rule: 120 ft a degree above standard, a figure rounded by a little more than 1 % (118.6 ft by the gas law and
  // the lapse), for small differences: by 17 degrees it has overstated by 5 %.
  const double standard_K = 288.15 - 0.0065 * (5718.0 * kFoot);
  const auto height_ft = [&](double kelvin) {
    return density_altitude(pressure_pa / (ussa1976::kGasConstant * kelvin)) / kFoot;
  };
  CHECK(height_ft(standard_K) == Approx(5718.0).margin(1.0).epsilon(0));
  hold({"FAA-H-8083-25B", "rule of thumb", "from memory"}, "density altitude a degree Celsius above standard",
       height_ft(standard_K + 1.0) - height_ft(standard_K), 120.0, 2.4, "ft",
       "rounded by a little more than 1 %");
}

TEST_CASE("the load factor of a level turn is that of the pilot handbook", "[motion][published]") {
  // [FAA-H-8083-25B] table of bank, load factor and stall speed factor; 1/cos and its root recomputed. The simulator's
  // bank is the roll angle of an aeroplane whose nose is up by a few degrees and whose thrust carries some of the
  // weight: half a per cent.
  struct Row {
    double bank_deg, load_factor, stall_factor;
  };
  const Aircraft a = make_aircraft(marram_type(), default_loading(marram_type()), 0);
  for (const Row& row :
       {Row{15, 1.0353, 1.0175}, Row{30, 1.1547, 1.0746}, Row{45, 1.4142, 1.1892}, Row{60, 2.0, 1.4142}}) {
    CAPTURE(row.bank_deg);
    CHECK(std::sqrt(row.load_factor) == Approx(row.stall_factor).margin(1e-4).epsilon(0));
    TrimCondition turn;
    turn.true_airspeed_mps = 42.0;
    turn.bank_rad = row.bank_deg * math::kDegree;
    const Trim t = find_trim(a, turn);
    REQUIRE(t.converged);
    hold({"FAA-H-8083-25B", "table of bank and load factor", "from memory; worked by hand"},
         "marram: load factor of a level turn at " + std::to_string(static_cast<int>(row.bank_deg)) + " deg",
         t.load_factor, row.load_factor, 0.005 * row.load_factor, "1",
         "roll angle of an aeroplane with its nose up, thrust carries some weight");
  }
}
