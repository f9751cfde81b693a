#include <catch2/catch.hpp>
#include <cmath>

#include "sim/motion/runge_kutta.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/f16_trim.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

constexpr evidence::Published kCase{"NESC-2015", "case 11, tools 04 and 05",
                                    "read in the source's trajectories"};
constexpr evidence::Published kNominal{"NESC-2015", "F-16 control model, nominal trim",
                                       "read in the source's model file"};

/// As case 11 has it: tables [NASA-TP-1538], mass and centre of gravity [NESC-2015].
F16 nasa_f16(double gravity_ftps2) {
  F16 model;
  model.tables = f16_tables(F16Source::nasa);
  model.inertia = exact_inertia(637.1595);
  model.xcg = 0.25;
  model.gravity_ftps2 = gravity_ftps2;
  model.air = standard_air;
  return model;
}

/// What a level flight over the turning ellipsoid must hold up, ft/s2: gravitation less what bends the path round the
/// earth's axis and down over the horizon. Columns as in f16_case11.csv.
double felt_gravity_ftps2(const std::vector<double>& row) {
  constexpr double kRadius_ft = 6378137.0 / kFoot_m, kFlat = 1.0 / 298.257223563, kTurn_radps = 7.292115e-5;
  constexpr double kLatitude = 36.0191667 * kDegree, kSquare = kFlat * (2.0 - kFlat);
  const double waist = 1.0 - kSquare * std::sin(kLatitude) * std::sin(kLatitude);
  const double across_ft = kRadius_ft / std::sqrt(waist) + row[2];
  const double along_ft = kRadius_ft * (1.0 - kSquare) / (waist * std::sqrt(waist)) + row[2];
  const double east_ftps = row[4] + kTurn_radps * across_ft * std::cos(kLatitude);
  return row[11] - east_ftps * east_ftps / across_ft - row[3] * row[3] / along_ft;
}

TrimCondition at_height(double speed_ftps, double height_ft) {
  TrimCondition c = level_f16(speed_ftps);
  c.altitude_m = height_ft * kFoot_m;
  return c;
}

}  // namespace

TEST_CASE("NASA's F-16 trims as in case 11, as far as a flat earth can", "[motion][published]") {
  std::size_t tools = 0;
  for (const auto& row : csv_rows("f16_case11.csv")) {
    // Tool 02 begins 0.035 ft/s2 out of trim and climbs away: its own start is no steady flight.
    if (row[1] != 0.0 || row[0] == 2.0) continue;
    ++tools;
    const F16 model = nasa_f16(felt_gravity_ftps2(row));
    const F16Trim trim = trim_f16(model, at_height(std::hypot(row[3], row[4]), row[2]));
    REQUIRE(trim.residual < 1e-9);
    const F16::Loads loads = model.loads(trim.state);
    const std::string tool = "F-16 trimmed, tool 0" + std::to_string(static_cast<int>(row[0])) + ": ";
    evidence::hold(kCase, tool + "pitch", trim.pitch_rad / kDegree, row[6], 2e-4, "deg",
                   "tools differ by 2e-4; the earth's own turning is left out");
    evidence::hold(kCase, tool + "aerodynamic force along x", loads.force_lbf.x, row[13], 0.2, "lbf",
                   "follows from pitch: 2e-4 deg is 0.1 lbf");
    evidence::hold(kCase, tool + "aerodynamic force along z", loads.force_lbf.z, row[14], 0.1, "lbf",
                   "gravity felt over the ellipsoid, to 5e-6");
    evidence::hold(kCase, tool + "air density", model.air(row[2]).density_slugpft3, row[12], 6e-9, "slug/ft3",
                   "tools differ by 4e-9");
  }
  CHECK(tools == 2);
}

TEST_CASE("NASA's F-16 over a flat earth trims as its control model was set", "[motion][published]") {
  // The model file says 10,000 ft and 287 knots equivalent. Its three numbers fit the case's own 565.685 ft/s at 10,013 ft,
  // which is 287.98 knots; a whole knot less would be 0.028 deg more.
  const F16 model = nasa_f16(kStandardGravity_mps2 / kFoot_m);
  const F16Trim trim = trim_f16(model, at_height(std::hypot(400.0, 400.0), 10013.0));
  REQUIRE(trim.residual < 1e-9);
  const std::string at = "F-16 over a flat earth, 10,013 ft, 565.685 ft/s: ", reason = "0.02 knots of speed";
  evidence::hold(kNominal, at + "angle of attack", trim.alpha_rad / kDegree, 2.653814, 6e-4, "deg", reason);
  evidence::hold(kNominal, at + "power over 100 %", trim.state.power_pct / 100.0, 0.1390191, 1e-5, "1",
                 reason);
  evidence::hold(kNominal, at + "stick, a 25th of the elevator", trim.elevator_deg / -25.0, 0.1296382, 1.2e-5,
                 "1", reason);
}

TEST_CASE("NASA's F-16 in case 11 stays where it was trimmed for 30 s", "[motion][published]") {
  const auto rows = csv_rows("f16_case11.csv");
  const auto& start = rows.at(4);
  const auto& end = rows.at(5);
  REQUIRE((start[0] == 5.0 && start[1] == 0.0 && end[0] == 5.0 && end[1] == 30.0));
  const F16 model = nasa_f16(felt_gravity_ftps2(start));
  F16State s = trim_f16(model, at_height(std::hypot(start[3], start[4]), start[2])).state;
  for (int i = 0; i < 3000; ++i) {
    s = runge_kutta_step(s, 0.01, [&](const F16State& at) { return model.rate(at); });
    s.rigid.attitude_EB = normalised(s.rigid.attitude_EB);
  }
  evidence::hold(kCase, "F-16 trimmed, tool 05: altitude after 30 s", -s.rigid.position_E_m.z / kFoot_m,
                 end[2], 0.01, "ft", "tools 04 and 05 differ by 0.02");
  evidence::hold(kCase, "F-16 trimmed, tool 05: pitch after 30 s",
                 euler_angles(s.rigid.attitude_EB).pitch_rad / kDegree, end[6], 2e-4, "deg",
                 "as at the start");
}
