// One section, one Reynolds number: the section's numbers are fitted to Ladson's smooth NACA 0012 at 6 million,
// and what they then say of the rougher section and of other Reynolds numbers is compared [LADSON-1988]
// [MCCROSKEY-1987] [NACA-TR-824]. The fit itself is shown, not held.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/type_file.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/section_fit.hpp"

using namespace stallwright;
using namespace stallwright::published;
using evidence::Published;

namespace {

constexpr double kDeg = M_PI / 180.0;
constexpr double kSlopeWithin = 8.5 * kDeg;
constexpr Published kSmooth{"LADSON-1988", "Table I, free transition", "read in a copy"};
constexpr Published kRough{"LADSON-1988", "transition fixed, Re 6e6", "read in a copy"};

std::vector<TunnelPoint> smooth(double reynolds) {
  std::vector<TunnelPoint> points;
  for (const auto& row : csv_rows("ladson_naca0012_free_transition.csv"))
    if (row[0] == reynolds) points.push_back({row[1] * kDeg, row[3], row[2]});
  return points;
}

std::vector<TunnelPoint> rough(double grit) {
  std::vector<TunnelPoint> points;
  for (const auto& row : csv_rows("ladson_naca0012_re6e6_tripped.csv"))
    if (row[0] == grit) points.push_back({row[1] * kDeg, row[2], row[3]});
  return points;
}

SectionType fitted() { return fitted_section(smooth(5.97e6), 16.0 * kDeg); }

/// Largest differences between the resting section and the points below an angle.
struct Misfit {
  double lift = 0.0, drag = 0.0, lift_rms = 0.0;
};
Misfit misfit(const SectionType& s, const std::vector<TunnelPoint>& points, double below_rad) {
  Misfit m;
  int n = 0;
  for (const TunnelPoint& p : points) {
    if (p.alpha_rad > below_rad) continue;
    const auto c = at_rest(s, p.alpha_rad);
    m.lift = std::max(m.lift, std::abs(c.lift - p.lift));
    m.lift_rms += (c.lift - p.lift) * (c.lift - p.lift);
    ++n;
    if (std::isfinite(p.drag)) m.drag = std::max(m.drag, std::abs(c.drag - p.drag));
  }
  m.lift_rms = std::sqrt(m.lift_rms / n);
  return m;
}

const TunnelPoint& highest(const std::vector<TunnelPoint>& points) {
  return *std::max_element(points.begin(), points.end(),
                           [](const auto& a, const auto& b) { return a.lift < b.lift; });
}

const TunnelPoint& nearest(const std::vector<TunnelPoint>& points, double deg) {
  return *std::min_element(points.begin(), points.end(), [deg](const auto& a, const auto& b) {
    return std::abs(a.alpha_rad - deg * kDeg) < std::abs(b.alpha_rad - deg * kDeg);
  });
}

}  // namespace

TEST_CASE("fitted to the smooth NACA 0012 at Re 6e6, the section has the lift slope of the good tunnels",
          "[aircraft][published]") {
  const SectionType s = fitted();
  const auto points = smooth(5.97e6);
  const Misfit all = misfit(s, points, 90.0 * kDeg), attached = misfit(s, points, 12.5 * kDeg);
  const LiftPeak peak = lift_peak(s);
  const TunnelPoint& top = highest(points);
  const std::string fit = "residual of the fit, which is not a check";
  evidence::show(kSmooth, "NACA 0012, Re 5.97e6, fitted: greatest lift", peak.lift, top.lift, "1", fit);
  evidence::show(kSmooth, "NACA 0012, Re 5.97e6, fitted: angle of greatest lift", peak.alpha_rad / kDeg,
                 top.alpha_rad / kDeg, "deg", fit);
  evidence::show(kSmooth, "NACA 0012, Re 5.97e6, fitted: rms of lift, 18 points through the stall",
                 all.lift_rms, 0.0, "1", fit);
  evidence::show(kSmooth, "NACA 0012, Re 5.97e6, fitted: largest drag difference below 12.5 deg",
                 attached.drag, 0.0, "1", fit);
  // Three numbers carry 18 points through the stall; without Kirchhoff's form they do not.
  CHECK(all.lift_rms < 0.03);
  evidence::hold({"MCCROSKEY-1987", "correlation of the good tunnels, M 0.15", "read in a copy"},
                 "NACA 0012, Re 5.97e6: lift slope about zero",
                 modelled_slope(s, points, kSlopeWithin) * kDeg,
                 (0.1025 + 0.00485 * std::log10(5.97)) / std::sqrt(1.0 - 0.15 * 0.15), 0.003, "1/deg",
                 "3 %: spread of the tunnels, and a slope fitted through the stall too");
}

TEST_CASE("the fitted section foretells the NACA 0012 with fixed transition: lift, stall and drag rise",
          "[aircraft][published]") {
  const SectionType s = fitted();
  const LiftPeak peak = lift_peak(s);
  for (const double grit : {80.0, 120.0, 180.0}) {
    const auto points = rough(grit);
    const TunnelPoint& top = highest(points);
    const std::string which = "NACA 0012, Re 6e6, grit " + std::to_string(static_cast<int>(grit)) + ": ";
    evidence::hold(kRough, which + "lift slope about zero", modelled_slope(s, points, kSlopeWithin) * kDeg,
                   measured_slope(points, kSlopeWithin) * kDeg, 0.0045, "1/deg",
                   "4 %: smooth and rough differ by 2 % themselves");
    evidence::hold(kRough, which + "largest lift difference below 15.5 deg",
                   misfit(s, points, 15.5 * kDeg).lift, 0.0, 0.04, "1",
                   "the fit's own largest difference is 0.03");
    evidence::hold(kRough, which + "greatest lift", peak.lift, top.lift, 0.08, "1",
                   "5 %: smooth and rough differ by 2 to 3 % themselves");
    evidence::hold(kRough, which + "angle of greatest lift", peak.alpha_rad / kDeg, top.alpha_rad / kDeg, 0.5,
                   "deg", "half a step of the tunnel");
    const TunnelPoint &low = nearest(points, 0.0), &high = nearest(points, 15.3);
    evidence::hold(kRough, which + "drag rise from 0 to 15 deg",
                   at_rest(s, high.alpha_rad).drag - at_rest(s, low.alpha_rad).drag, high.drag - low.drag,
                   0.002, "1", "grit moves the least drag, which is not compared; scatter of the rise 0.001");
  }
}

TEST_CASE(
    "the fitted section foretells lift slope, lift and drag at a half and a third of its Reynolds number",
    "[aircraft][published]") {
  const SectionType s = fitted();
  for (const auto& [reynolds, drag_within] : {std::pair{3.94e6, 0.002}, std::pair{2.0e6, 0.004}}) {
    const auto points = smooth(reynolds);
    const std::string which = reynolds > 3e6 ? "NACA 0012, Re 3.94e6: " : "NACA 0012, Re 2.0e6: ";
    evidence::hold(kSmooth, which + "lift slope about zero", modelled_slope(s, points, kSlopeWithin) * kDeg,
                   measured_slope(points, kSlopeWithin) * kDeg, 0.003, "1/deg",
                   "3 %: McCroskey's correlation gives 2 % between the Reynolds numbers");
    const Misfit m = misfit(s, points, 12.5 * kDeg);
    evidence::hold(kSmooth, which + "largest lift difference below 12.5 deg", m.lift, 0.0, 0.04, "1",
                   "the fit's own largest difference is 0.03");
    evidence::hold(kSmooth, which + "largest drag difference below 12.5 deg", m.drag, 0.0, drag_within, "1",
                   "transition moves with Reynolds number; the tunnel's own jumps are 0.002 to 0.004");
    const TunnelPoint& top = highest(points);
    const std::string why =
        "the section has no Reynolds number: its numbers are for one, and the stall of a thin round nose "
        "moves most (the types' numbers are meant for their own, 2 to 3 million)";
    evidence::show(kSmooth, which + "greatest lift by the fit at 6e6", lift_peak(s).lift, top.lift, "1", why);
    evidence::show(kSmooth, which + "angle of greatest lift by the fit at 6e6", lift_peak(s).alpha_rad / kDeg,
                   top.alpha_rad / kDeg, "deg", why);
  }
}

TEST_CASE("fitted anew at Re 2e6, the same three numbers carry the earlier stall", "[aircraft][published]") {
  // What Reynolds number does is taken up by the stall angle, not by slope or width: 18.2 to 15.8 deg.
  const SectionType low = fitted_section(smooth(2.0e6), 14.0 * kDeg), high = fitted();
  const LiftPeak peak = lift_peak(low);
  const TunnelPoint& top = highest(smooth(2.0e6));
  evidence::show(kSmooth, "NACA 0012, Re 2.0e6, fitted: greatest lift", peak.lift, top.lift, "1",
                 "residual of the fit, which is not a check");
  CHECK(low.lift_slope_per_rad / high.lift_slope_per_rad == Approx(1.0).margin(0.05));
  CHECK(low.stall_width_rad / kDeg == Approx(high.stall_width_rad / kDeg).margin(0.2));
  CHECK((high.stall_rad - low.stall_rad) / kDeg == Approx(17.35 - 15.25).margin(0.6));
}

TEST_CASE("past the break of a thin section drag jumps tenfold as in the tunnel", "[aircraft][published]") {
  const SectionType s = fitted();
  // At equal lift lost, so that the break's exact angle does not matter: the model's drag where lift is what it was.
  for (const double grit : {80.0, 120.0, 180.0}) {
    const TunnelPoint& after = nearest(rough(grit), 18.1);
    double alpha = lift_peak(s).alpha_rad;
    while (at_rest(s, alpha).lift > after.lift) alpha += 1e-4;
    const double drag = at_rest(s, alpha).drag;
    evidence::show(kRough,
                   "NACA 0012, Re 6e6, grit " + std::to_string(static_cast<int>(grit)) +
                       ": drag just past the break, at equal lift",
                   drag, after.drag, "1",
                   "the form of the suction was chosen to go through these: a residual, not a check");
    CHECK(drag > 5.0 * at_rest(s, 17.0 * kDeg).drag);
  }
}

TEST_CASE("the wing sections of all types have slopes and greatest lift of real ones of their kind",
          "[aircraft][published]") {
  const Published table{"NACA-TR-824", "4415, smooth, Re 9e6", "from memory"};
  for (const std::string type : {"marram", "sarsen", "tarnfell"}) {
    const SectionType s =
        load_aircraft_type(std::string(STALLWRIGHT_SOURCE_DIR) + "/aircraft/types/" + type + ".toml")
            .wing.section;
    evidence::hold(table, type + ": slope of the wing's section", s.lift_slope_per_rad * kDeg, 0.105, 0.003,
                   "1/deg", "0.105 to 0.107 for the family");
    evidence::show(table, type + ": greatest lift of the wing's section", lift_peak(s).lift, 1.64, "1",
                   "a section with rivets and joints at 2 to 3 million, not smooth at 9: 0.1 to 0.2 less");
    CHECK(lift_peak(s).lift < 1.64);
    CHECK(lift_peak(s).lift > 1.35);
  }
}
