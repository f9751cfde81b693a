#include "tests/published/lifting_line_series.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <functional>

namespace stallwright::published {
namespace {

constexpr int kTerms = 200, kSlices = 4000;

/// A_n of the circulation 2 b V sum A_n sin(n t), y = -(b/2) cos t, for an angle of attack over y/(b/2) of -1..1
/// [GLAUERT; LIFTING-LINE].
Eigen::VectorXd terms(const TaperedWing& wing, const std::function<double(double)>& alpha) {
  Eigen::MatrixXd m(kTerms, kTerms);
  Eigen::VectorXd right(kTerms);
  for (int i = 0; i < kTerms; ++i) {
    const double t = (i + 1) * M_PI / (kTerms + 1), out = -std::cos(t);
    const double chord = wing.root_chord + (wing.tip_chord - wing.root_chord) * std::abs(out);
    const double mu = wing.section_slope_per_rad * chord / (4.0 * wing.span);
    for (int n = 1; n <= kTerms; ++n) m(i, n - 1) = std::sin(n * t) * (1.0 + mu * n / std::sin(t));
    right[i] = mu * alpha(out);
  }
  return m.partialPivLu().solve(right);
}

/// Circulation over b V and induced angle at t.
struct Local {
  double circulation = 0.0, induced = 0.0;
};

Local at(const Eigen::VectorXd& a, double t) {
  Local sum;
  for (int n = 1; n <= kTerms; ++n) {
    sum.circulation += 2.0 * a[n - 1] * std::sin(n * t);
    sum.induced += n * a[n - 1] * std::sin(n * t) / std::sin(t);
  }
  return sum;
}

}  // namespace

SeriesDerivatives lifting_line_series(const TaperedWing& wing, double lift_coefficient) {
  const double aspect = 2.0 * wing.span / (wing.root_chord + wing.tip_chord);
  const Eigen::VectorXd flat = terms(wing, [](double) { return 1.0; });
  const Eigen::VectorXd rolling = terms(wing, [](double out) { return out; });
  Eigen::VectorXd steady = terms(wing, [&](double out) { return -wing.washout_rad * std::abs(out); });
  steady += (lift_coefficient / (M_PI * aspect) - steady[0]) / flat[0] * flat;
  // Lift leans forward by what the roll adds to the angle of attack and back by what is induced: all to first order.
  double roll = 0.0, yaw = 0.0;
  for (int k = 0; k < kSlices; ++k) {
    const double t = (k + 0.5) * M_PI / kSlices, out = -std::cos(t),
                 width = 0.5 * std::sin(t) * M_PI / kSlices;
    const Local s = at(steady, t), r = at(rolling, t);
    roll -= 0.5 * out * r.circulation * width;
    yaw -= 0.5 * out * (s.circulation * (out - r.induced) - r.circulation * s.induced) * width;
  }
  return {M_PI * aspect * flat[0], 2.0 * aspect * roll, 2.0 * aspect * yaw};
}

}  // namespace stallwright::published
