#include <catch2/catch.hpp>
#include <cmath>

#include "sim/motion/performance.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;

namespace {

constexpr double kSpeed_ftps = 176.0;

/// The two printed matrices put into one in our order; sideslip angle becomes the side speed v = V beta.
LinearModel navion() {
  const auto rows = published::csv_rows("navion_matrices.csv");
  const Eigen::Index along[] = {kU, kW, kQ, kTheta}, across[] = {kV, kP, kR, kPhi};
  LinearModel model;
  model.a = Eigen::MatrixXd::Zero(kRigidPlaces, kRigidPlaces);
  for (int i = 0; i < 4; ++i)
    for (int k = 0; k < 4; ++k) {
      model.a(along[i], along[k]) = rows[i][k];
      const double scale = (i == 0 ? kSpeed_ftps : 1.0) / (k == 0 ? kSpeed_ftps : 1.0);
      model.a(across[i], across[k]) = rows[i + 4][k] * scale;
    }
  return model;
}

constexpr evidence::Published kMatrix{"NELSON-1998", "examples 4.3 and 5.3, roots of the printed matrices",
                                      "recomputed from the matrices: one read in a copy, one from memory"};
constexpr evidence::Published kPrinted{"NELSON-1998", "examples 4.3 and 5.3, printed roots", "from memory"};

/// Holds a mode's root; one that is printed real must be real.
void hold_root(const evidence::Published& source, const std::string& what, const Mode& mode, double real,
               double imaginary, double within, const std::string& reason) {
  const std::string quantity = "Navion, " + mode.name + ", " + what;
  evidence::hold(source, quantity + ", real part", mode.eigenvalue.real(), real, within, "1/s", reason);
  if (imaginary == 0.0)
    CHECK(mode.eigenvalue.imag() == 0.0);
  else
    evidence::hold(source, quantity + ", imaginary part", mode.eigenvalue.imag(), imaginary, within, "1/s",
                   reason);
}

}  // namespace

TEST_CASE("the modes of the Navion are told apart and have their printed roots", "[motion][published]") {
  // [NELSON-1998] examples 4.3 and 5.3. Printed to three digits; the printed matrix itself is rounded, which
  // moves the short period and the dutch roll by 0.5 %, the spiral (a small difference of large terms) by 2
  // %.
  const std::vector<Mode> modes = classical_modes(navion());
  REQUIRE(modes.size() == 5);
  struct Root {
    const char* mode;
    double matrix_real, matrix_imaginary, printed_real, printed_imaginary, within;
  };
  for (const Root& root : {Root{"short period", -2.48945, 2.59776, -2.5, 2.59, 0.006},
                           Root{"phugoid", -0.01705, 0.21354, -0.0171, 0.213, 0.006},
                           Root{"dutch roll", -0.48616, 2.33358, -0.487, 2.335, 0.006},
                           Root{"roll", -8.43276, 0.0, -8.435, 0.0, 0.006},
                           Root{"spiral", -0.00891, 0.0, -0.00877, 0.0, 0.02}}) {
    const Mode& mode = mode_named(modes, root.mode);
    hold_root(kMatrix, "root of the printed matrix", mode, root.matrix_real, root.matrix_imaginary, 0.6e-5,
              "half of the last digit");
    hold_root(kPrinted, "printed root beside its matrix", mode, root.printed_real, root.printed_imaginary,
              root.within * std::hypot(root.printed_real, root.printed_imaginary),
              "the printed matrices are rounded");
  }
}

TEST_CASE("the phugoid of each aeroplane lies about Lanchester's period, never faster",
          "[motion][published]") {
  // [LANCHESTER-1908] pi sqrt(2) V/g holds at constant angle of attack and with thrust equal to drag at every
  // speed. Pitch stability lets the angle change and makes it slower: by 9 % for the Navion in the test
  // above, by up to a third for stable aeroplanes at low speed. A quarter either way of the middle, 1.15.
  for (const std::string& name : list_aircraft_types()) {
    const AircraftType type = load_aircraft_type(find_aircraft_file(name));
    const Aircraft aircraft = book_aircraft(type);
    TrimCondition level;
    level.true_airspeed_mps = 1.5 * type.limits.book_v_s1_mps;
    const Trim trim = find_trim(aircraft, level);
    REQUIRE(trim.converged);
    const Mode phugoid =
        mode_named(classical_modes(linearise(aircraft, trim.state, trim_air(level))), "phugoid");
    const double lanchester_s = math::kPi * std::sqrt(2.0) * level.true_airspeed_mps / kStandardGravity_mps2;
    CAPTURE(name, phugoid.natural_period_s, lanchester_s);
    evidence::sense({"LANCHESTER-1908", "period of the phugoid at constant angle of attack", "from memory"},
                    name + ": period of the phugoid at 1.5 stall speeds over Lanchester's",
                    phugoid.natural_period_s / lanchester_s, evidence::between(1.0, 1.4), "1",
                    "slower, since pitch stability lets the angle change; never faster");
    CHECK(phugoid.participation > 0.9);
  }
}
