#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/f16_trim.hpp"
#include "tests/published/last_digit.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

constexpr evidence::Published kOverSpeed{"STEVENS_LEWIS", "table 3.6-2 (3rd ed.)",
                                         "read in a copy (two agreeing)"};
constexpr evidence::Published kCases{"STEVENS_LEWIS", "table 3.6-3 (3rd ed.)",
                                     "read in a copy (two agreeing)"};

/// What the rows of the second table are [STEVENS_LEWIS, table 3.6-3].
const std::map<std::string, std::string> kCaseNames{{"level_35", "level, centre of gravity at 0.35 chords"},
                                                    {"level_30", "level, centre of gravity at 0.30 chords"},
                                                    {"level_38", "level, centre of gravity at 0.38 chords"},
                                                    {"turn_0.3rad_s", "level turn at 0.3 rad/s"},
                                                    {"pullup_0.3rad_s", "pull-up at 0.3 rad/s"}};

void hold_digits(const evidence::Published& source, const std::string& quantity, double measured,
                 const std::string& printed, const std::string& unit) {
  evidence::hold(source, quantity, measured, std::stod(printed), 0.51 * last_digit(printed), unit,
                 "half of the last printed digit");
}

/// Aileron and rudder of the two manoeuvres. The book's search ends at a small sum of squares, not at zero: 2e-5 deg of
/// aileron is 1.4e-5 rad/s2 of roll here, a sum of 2e-10.
void hold_surface(const std::string& quantity, double measured, const std::string& printed) {
  evidence::hold(kCases, quantity, measured, std::stod(printed), 3e-5, "deg",
                 "2e-5 deg is where the book's search for the least sum of squares ended");
}

}  // namespace

TEST_CASE("the F-16 of the tables trims level as printed from 150 to 600 ft/s", "[motion][published]") {
  const auto rows = csv_cells("f16_trim_vs_speed.csv");
  REQUIRE(rows.size() == 6);
  const F16 model;
  for (const auto& row : rows) {
    const F16Trim trim = trim_f16(model, level_f16(std::stod(row[0])));
    REQUIRE(trim.residual < 1e-9);
    const std::string at = "F-16 level at " + row[0] + " ft/s: ";
    // "0.2" at 600 ft/s stands for 0.200.
    hold_digits(kOverSpeed, at + "throttle", trim.throttle, row[1].size() < 5 ? row[1] + "00" : row[1], "1");
    hold_digits(kOverSpeed, at + "angle of attack", trim.alpha_rad / kDegree, row[2], "deg");
    hold_digits(kOverSpeed, at + "elevator", trim.elevator_deg, row[3], "deg");
  }
}

TEST_CASE("the F-16 of the tables trims at three centres of gravity, in a turn and in a pull-up as printed",
          "[motion][published]") {
  const auto rows = csv_cells("f16_trim_cases.csv");
  REQUIRE(rows.size() == 5);
  for (const auto& row : rows) {
    F16 model;
    model.xcg = std::stod(row[1]);
    TrimCondition condition = level_f16(502.0);
    const bool turn = row[0].starts_with("turn"), pull_up = row[0].starts_with("pullup");
    if (pull_up) condition.pull_up_radps = 0.3;
    const F16Trim trim = turn ? turn_f16(model, 502.0, 0.3) : trim_f16(model, condition);
    REQUIRE(trim.residual < 1e-9);
    const std::string at = "F-16 at 502 ft/s, " + kCaseNames.at(row[0]) + ": ";
    hold_digits(kCases, at + "angle of attack", trim.alpha_rad, row[2], "rad");
    hold_digits(kCases, at + "throttle", trim.throttle, row[4], "1");
    hold_digits(kCases, at + "elevator", trim.elevator_deg, row[5], "deg");
    hold_digits(kCases, at + "pitch", trim.pitch_rad, row[12], "rad");
    if (!turn && !pull_up) continue;  // lateral numbers of level flight are the book's rounding
    const Vec3<double>& w = trim.state.rigid.rate_B_radps;
    hold_digits(kCases, at + "sideslip", trim.beta_rad, row[3], "rad");
    hold_surface(at + "aileron", trim.aileron_deg, row[6]);
    hold_surface(at + "rudder", trim.rudder_deg, row[7]);
    if (!turn) continue;
    hold_digits(kCases, at + "rate of pitch", w.y, row[9], "rad/s");
    hold_digits(kCases, at + "rate of roll", w.x, row[8], "rad/s");
    hold_digits(kCases, at + "rate of yaw", w.z, row[10], "rad/s");
    hold_digits(kCases, at + "bank", trim.roll_rad, row[11], "rad");
  }
}
