#include <catch2/catch.hpp>
#include <cmath>

#include "sim/motion/linear_motion.hpp"
#include "sim/motion/modes.hpp"
#include "tests/published/evidence.hpp"
#include "tests/published/textbook_modes.hpp"

using namespace stallwright;
using namespace stallwright::published;

namespace {

using Modes = std::vector<Mode>;

/// Both ways from the same derivatives: our linear model of a flight, and the textbook's roots [NELSON-1998].
struct TwoWays {
  Modes ours;
  Roots4 along, across;
};

DerivativeModel model_at(const Derivatives& d, const LevelPoint& at) {
  DerivativeModel m{d, at.density_slugpft3, at.gravity_ftps2, at.speed_ftps, 0.0, at.thrust_power};
  m.reference_thrust_lbf = 0.5 * at.density_slugpft3 * at.speed_ftps * at.speed_ftps * d["S"] * at.drag;
  return m;
}

/// The file's point, derivatives that its book leaves out set to zero. About it the file's lift is the reference, whether
/// or not it is the weight.
TwoWays about_point(Derivatives d, const LevelPoint& at) {
  d.set("CL0", at.lift);
  d.set("CD0", at.drag);
  d.set("CDa", at.drag_by_alpha);
  d.set("Cm0", 0.0);
  const DerivativeModel model = model_at(d, at);
  const DerivativeState about = model.reference();
  const LinearModel linear = linearise_model(model, about, motion_inputs<DerivativeModel>(about));
  return {classical_modes(linear), characteristic_roots(along_matrix(d, at)),
          characteristic_roots(across_matrix(d, at))};
}

TwoWays navion() {
  Derivatives d("navion_derivatives.csv");
  for (const char* left_out : {"CLq", "CLadot", "CYp", "CYr"}) d.set(left_out, 0.0);
  return about_point(d, {d["V"], 0.002377, 32.2, d["CL"], d["CD"], d["CDa"], 0.0});
}

/// With the thrust of constant power, as its derivative says, or constant thrust.
TwoWays high_wing_single(double thrust_power) {
  const Derivatives d("high_wing_single_derivatives.csv");
  const double density = 2.0 * d["qbar"] / (d["V"] * d["V"]);
  return about_point(d, {d["V"], density, 32.2, d["CL1"], d["CD1"], d["CDa"], thrust_power});
}

/// The file says height, speed and a drag polar: the point is level, in the stability axes of that flight.
TwoWays cruise_navion() {
  const Derivatives d("navion_cruise_derivatives.csv");
  LevelPoint at{d["V"] * 1852.0 / 3600.0 / 0.3048, 0.0017556, 32.2, 0.0, 0.0, 0.0, 0.0};
  at.lift = d["W"] / (0.5 * at.density_slugpft3 * at.speed_ftps * at.speed_ftps * d["S"]);
  const double above = at.lift - d["CL_mindrag"], span_load = math::kPi * d["e"] * d["b"] * d["b"] / d["S"];
  at.drag = d["CD0"] + above * above / span_load;
  at.drag_by_alpha = 2.0 * above * d["CLa"] / span_load;
  return about_point(d, at);
}

/// Holds a root's parts; `within` is relative to the root's size.
void hold_root(const evidence::Published& source, const std::string& aeroplane, const Modes& modes,
               const std::string& mode, std::complex<double> root, double within, const std::string& reason) {
  const std::complex<double> found = mode_named(modes, mode).eigenvalue;
  const std::string quantity = aeroplane + ", " + mode;
  evidence::hold(source, quantity + ", real part", found.real(), root.real(), within * std::abs(root), "1/s",
                 reason);
  if (root.imag() != 0.0)
    evidence::hold(source, quantity + ", imaginary part", found.imag(), root.imag(), within * std::abs(root),
                   "1/s", reason);
}

constexpr evidence::Published kNavion{"TEPER-1969",
                                      "derivatives at 176 ft/s, sea level, as NELSON-1998 prints them",
                                      "read in a copy; roots recomputed"};
constexpr evidence::Published kCruise{"FAA-RD-71-6", "derivatives at 135 kt, 10,000 ft",
                                      "read in a copy; roots recomputed"};
constexpr evidence::Published kSingle{"ROSKAM", "appendix B, aeroplane A, cruise",
                                      "read in a copy; roots recomputed"};
constexpr evidence::Published kPrinted{"NELSON-1998", "examples 4.3 and 5.3, printed roots", "from memory"};
const std::string kNear = "0.5 % of exact recomputation";

}  // namespace

TEST_CASE(
    "three light aeroplanes linearised from their derivatives have the roots of the textbook's polynomials",
    "[motion][published]") {
  for (const TwoWays& both : {navion(), cruise_navion(), high_wing_single(0.0), high_wing_single(-1.0)})
    for (const Mode& mode : both.ours) {
      CAPTURE(mode.name, mode.eigenvalue);
      const bool along = mode.name == "short period" || mode.name == "phugoid";
      CHECK(apart(mode.eigenvalue, along ? both.along : both.across) < 1e-6);
    }
}

TEST_CASE("the Navion's published derivatives give the modes recomputed from them", "[motion][published]") {
  const Modes modes = navion().ours;
  hold_root(kNavion, "Navion", modes, "short period", {-2.50941, 2.59140}, 5e-3, kNear);
  hold_root(kNavion, "Navion", modes, "phugoid", {-0.01711, 0.21303}, 5e-3, kNear);
  hold_root(kNavion, "Navion", modes, "dutch roll", {-0.48678, 2.34677}, 5e-3, kNear);
  hold_root(kNavion, "Navion", modes, "roll", -8.43138, 5e-3, kNear);
  hold_root(kNavion, "Navion", modes, "spiral", -0.00820, 5e-3, kNear);
}

TEST_CASE("the Navion's published derivatives give the printed roots", "[motion][published]") {
  // Half of the last digit where the book worked from the derivatives; the dutch roll, roll and spiral it took from a
  // matrix with N_beta 4.488, where these derivatives give 4.551.
  const Modes modes = navion().ours;
  const auto hold = [&](const char* mode, bool imaginary, double printed, double within, const char* reason) {
    const std::complex<double> found = mode_named(modes, mode).eigenvalue;
    evidence::hold(kPrinted,
                   std::string("Navion, ") + mode + ", printed root beside its derivatives" +
                       (imaginary ? ", imaginary part" : ", real part"),
                   imaginary ? found.imag() : found.real(), printed, within, "1/s", reason);
  };
  const char* half = "half of the last digit";
  const char* other = "printed from a matrix with another N_beta";
  hold("short period", false, -2.5, 0.05, half);
  hold("short period", true, 2.59, 0.005, half);
  hold("phugoid", false, -0.0171, 0.00005, half);
  hold("phugoid", true, 0.213, 0.0005, half);
  hold("dutch roll", false, -0.487, 0.0005, half);
  hold("dutch roll", true, 2.335, 0.012, other);
  hold("roll", false, -8.435, 0.005, other);
  hold("spiral", false, -0.00877, 0.0006, other);
}

TEST_CASE("the cruising Navion's published derivatives give the modes recomputed from them",
          "[motion][published]") {
  const Modes modes = cruise_navion().ours;
  hold_root(kCruise, "Navion in cruise", modes, "short period", {-3.184, 3.003}, 5e-3, kNear);
  hold_root(kCruise, "Navion in cruise", modes, "phugoid", {-0.0156, 0.159}, 5e-3, kNear);
  hold_root(kCruise, "Navion in cruise", modes, "dutch roll", {-0.369, 2.853}, 5e-3, kNear);
  hold_root(kCruise, "Navion in cruise", modes, "roll", -7.41, 5e-3, kNear);
  evidence::hold(kCruise, "Navion in cruise, spiral", mode_named(modes, "spiral").eigenvalue.real(), 0.0,
                 1e-3, "1/s", "neutral within 0.001");
}

TEST_CASE("the high-wing single's published derivatives give the modes recomputed from them",
          "[motion][published]") {
  const Modes steady = high_wing_single(0.0).ours, power = high_wing_single(-1.0).ours;
  hold_root(kSingle, "High-wing single", steady, "short period", {-4.451, 2.825}, 5e-3, kNear);
  hold_root(kSingle, "High-wing single, constant thrust", steady, "phugoid", {-0.01447, 0.1707}, 5e-3, kNear);
  hold_root(kSingle, "High-wing single, constant power", power, "phugoid", {-0.02208, 0.1699}, 5e-3, kNear);
  hold_root(kSingle, "High-wing single", steady, "dutch roll", {-0.6703, 3.1749}, 5e-3, kNear);
  hold_root(kSingle, "High-wing single", steady, "roll", -13.01, 5e-3, kNear);
  hold_root(kSingle, "High-wing single", steady, "spiral", -0.0179, 5e-3, kNear);
}
