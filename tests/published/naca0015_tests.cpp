// The NACA 0015 through half a turn [SAND80]. The numbers of the section are fitted to the table below 18.5 deg at
// Re 7e5; what comes after, and the other Reynolds number, is compared.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/section_fit.hpp"

using namespace stallwright;
using namespace stallwright::published;
using evidence::Published;

namespace {

constexpr double kDeg = M_PI / 180.0;
constexpr Published kTable{"SAND80", "NACA 0015", "read in a copy"};

std::vector<TunnelPoint> table(double reynolds, double from_deg, double to_deg) {
  std::vector<TunnelPoint> points;
  for (const auto& row : csv_rows("sand80_naca0015.csv"))
    if (row[0] == reynolds && row[1] >= from_deg && row[1] <= to_deg)
      points.push_back({row[1] * kDeg, row[2], row[3]});
  return points;
}

SectionType fitted() { return fitted_section(table(7e5, 0.0, 18.5), 10.0 * kDeg); }

/// Largest difference of lift and drag over a stretch of angles.
struct Worst {
  double lift = 0.0, drag = 0.0;
};
Worst worst(const SectionType& s, double from_deg, double to_deg) {
  Worst w;
  for (const TunnelPoint& p : table(7e5, from_deg, to_deg)) {
    const auto c = at_rest(s, p.alpha_rad);
    w.lift = std::max(w.lift, std::abs(c.lift - p.lift));
    w.drag = std::max(w.drag, std::abs(c.drag - p.drag));
  }
  return w;
}

}  // namespace

TEST_CASE("three numbers carry the gentle stall of the NACA 0015 within 0.01 of lift",
          "[aircraft][published]") {
  const SectionType s = fitted();
  const Worst w = worst(s, 0.0, 18.5);
  evidence::show(kTable, "NACA 0015, Re 7e5, fitted: largest lift difference to 18 deg", w.lift, 0.0, "1",
                 "residual of the fit, which is not a check");
  evidence::show(kTable, "NACA 0015, Re 7e5, fitted: largest drag difference to 12 deg",
                 worst(s, 0.0, 12.5).drag, 0.0, "1", "residual of the fit, which is not a check");
  CHECK(w.lift < 0.015);  // else Kirchhoff's form or the separation curve has lost its shape
}

TEST_CASE("the section fitted at Re 7e5 foretells the lift slope at half of it", "[aircraft][published]") {
  const SectionType s = fitted();
  const auto half = table(3.6e5, 0.0, 24.0);
  evidence::hold(kTable, "NACA 0015, Re 3.6e5: lift slope to 8 deg",
                 modelled_slope(s, half, 8.5 * kDeg) * kDeg, measured_slope(half, 8.5 * kDeg) * kDeg, 0.003,
                 "1/deg", "3 %: the table's thinner boundary layer is not modelled");
  const LiftPeak peak = lift_peak(s, 5.0 * kDeg, 18.0 * kDeg);
  evidence::show(kTable, "NACA 0015, Re 3.6e5: greatest lift by the fit at 7e5", peak.lift, 0.9572, "1",
                 "the section has no Reynolds number; below a million it costs a tenth of lift per halving");
  evidence::show(kTable, "NACA 0015, Re 3.6e5: angle of greatest lift by the fit at 7e5",
                 peak.alpha_rad / kDeg, 11.0, "deg", "as above");
}

TEST_CASE("a section fitted before the stall foretells the NACA 0015 from 30 to 180 deg",
          "[aircraft][published]") {
  const SectionType s = fitted();
  evidence::hold(kTable, "NACA 0015: largest lift difference, 30 to 130 deg", worst(s, 30.0, 130.0).lift, 0.0,
                 0.2, "1", "the table is unsymmetrical about 90 deg (thickness, round nose), a plate is not");
  evidence::hold(kTable, "NACA 0015: largest lift difference, 135 to 160 deg", worst(s, 135.0, 160.0).lift,
                 0.0, 0.1, "1", "sharp edge leads, still separated: a plate");
  evidence::hold(kTable, "NACA 0015: largest drag difference, 30 to 180 deg", worst(s, 30.0, 180.0).drag, 0.0,
                 0.2, "1", "8 % of a plate's at 90 deg, and the way there");
  evidence::hold(kTable, "NACA 0015: drag at 90 deg", at_rest(s, 90.0 * kDeg).drag, 1.80, 0.2, "1",
                 "plates have 1.98 in two dimensions (Hoerner, from memory), the table 1.80");
  const LiftPeak second = lift_peak(s, 30.0 * kDeg, 80.0 * kDeg);
  evidence::hold(kTable, "NACA 0015: second greatest lift", second.lift, 1.05, 0.1, "1",
                 "half the plate's normal force against half of it and a nose");
  evidence::hold(kTable, "NACA 0015: angle of the second greatest lift", second.alpha_rad / kDeg, 45.0, 2.5,
                 "deg", "half a step of the table");
  evidence::show(kTable, "NACA 0015: largest lift difference, 165 to 175 deg", worst(s, 165.0, 175.0).lift,
                 0.0, "1",
                 "in reversed flow the table's section flies again, ours stays a plate: no aeroplane of ours "
                 "keeps such flow for longer than a tumble");
}

TEST_CASE("past its break the section's drag is that of a plate of its lift: the nose has let go",
          "[aircraft][published]") {
  const SectionType s = fitted();
  const auto at = [](double deg) {
    return "NACA 0015, Re 7e5, " + std::to_string(static_cast<int>(deg)) + " deg: ";
  };
  for (const double deg : {18.0, 20.0, 24.0, 27.0}) {
    const TunnelPoint p = table(7e5, deg, deg).front();
    const auto c = at_rest(s, p.alpha_rad);
    // Lift itself is not compared here: the table's comes back sooner than the separation curve's.
    evidence::hold(kTable, at(deg) + "drag over lift", c.drag / c.lift, p.drag / p.lift, 0.04, "1",
                   "a tenth; the form of the suction was chosen on the NACA 0012");
    if (deg <= 20.0)
      evidence::hold(kTable, at(deg) + "drag", c.drag, p.drag, 0.04, "1",
                     "a sixth; the form of the suction was chosen on the NACA 0012");
  }
  for (const double deg : {13.0, 15.0}) {
    const TunnelPoint p = table(7e5, deg, deg).front();
    evidence::show(kTable, at(deg) + "drag", at_rest(s, p.alpha_rad).drag, p.drag, "1",
                   "the table, made by rule here, keeps attached drag while lift falls and jumps by 0.2 from "
                   "16 to 18 deg");
  }
  evidence::hold(kTable, "NACA 0015: largest lift difference, 19 to 24 deg", worst(s, 19.0, 24.0).lift, 0.0,
                 0.16, "1",
                 "outside the fit; the table's lift comes back sooner than the separation curve's");
}

TEST_CASE("a symmetrical section is the same on its back at every angle", "[aircraft][published]") {
  const SectionType s = fitted();
  for (double deg = 0.0; deg <= 180.0; deg += 1.0) {
    const auto up = at_rest(s, deg * kDeg), down = at_rest(s, -deg * kDeg);
    CHECK(up.lift == Approx(-down.lift).margin(1e-13));
    CHECK(up.drag == Approx(down.drag).margin(1e-13));
    CHECK(up.moment == Approx(-down.moment).margin(1e-13));
  }
}
