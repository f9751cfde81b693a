#pragma once
#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <vector>

namespace stallwright::published {

/// A section by its static lift alone, Kirchhoff's formula written out again: what the referee needs and no more.
struct StaticLift {
  double slope_per_rad, stall_rad, width_rad;
  double operator()(double alpha_rad) const {
    const double x = 1.0 / (1.0 + std::exp((alpha_rad - stall_rad) / width_rad));
    return slope_per_rad * 0.25 * std::pow(1.0 + std::sqrt(x), 2) * std::sin(alpha_rad) * std::cos(alpha_rad);
  }
  /// Greatest lift, and its angle by bisection of the slope.
  double peak_rad() const {
    double low = 0.0, high = stall_rad + 2.0 * width_rad;
    for (int i = 0; i < 60; ++i) {
      const double mid = 0.5 * (low + high);
      ((*this)(mid + 1e-6) > (*this)(mid - 1e-6) ? low : high) = mid;
    }
    return low;
  }
  double peak() const { return (*this)(peak_rad()); }
};

/// A straight-tapered wing without twist, by the station from 0 in the middle to 1 at the tip.
struct PlanForm {
  double aspect_ratio, taper;
  double chord_over_span(double eta) const {
    return 2.0 / (aspect_ratio * (1.0 + taper)) * (1.0 - (1.0 - taper) * eta);
  }
};

/// Prandtl's lifting line with a section that stalls: Fourier series of the circulation, Gamma = 2 b V sum A_n sin n theta
/// with odd n, the section's curve met at as many stations, by Newton's method from the answer before.
///   alpha_i = sum n A_n sin n theta/sin theta,   4 b sum A_n sin n theta = c c_l(alpha - alpha_i),   C_L = pi A A_1
class NonlinearLiftingLine {
 public:
  NonlinearLiftingLine(PlanForm plan, StaticLift section, int terms)
      : plan_(plan), section_(section), a_(Eigen::VectorXd::Zero(terms)) {}

  /// Moves to a new angle of attack; false if Newton's method found no answer.
  bool move_to(double alpha_rad) {
    const Eigen::Index n = a_.size();
    Eigen::VectorXd a = a_;
    for (int step = 0; step < 60; ++step) {
      Eigen::VectorXd r(n);
      Eigen::MatrixXd j(n, n);
      for (Eigen::Index k = 0; k < n; ++k) {
        const double local = alpha_rad - induced(a, theta(k));
        const double chord = plan_.chord_over_span(std::cos(theta(k)));
        const double slope = (section_(local + 1e-6) - section_(local - 1e-6)) / 2e-6;
        r(k) = -chord * section_(local);
        for (Eigen::Index m = 0; m < n; ++m) {
          const double order = static_cast<double>(2 * m + 1), shape = std::sin(order * theta(k));
          r(k) += 4.0 * a(m) * shape;
          j(k, m) = 4.0 * shape + chord * slope * order * shape / std::sin(theta(k));
        }
      }
      if (r.norm() < 1e-11) {
        a_ = a;
        alpha_rad_ = alpha_rad;
        return true;
      }
      a -= j.partialPivLu().solve(r);
    }
    return false;
  }

  double lift() const { return M_PI * plan_.aspect_ratio * a_(0); }
  double section_lift(double eta) const {
    return section_(alpha_rad_ - induced(a_, std::acos(std::clamp(eta, 0.0, 1.0))));
  }
  /// Station of the greatest section lift, as far out as the tip's own stations.
  double most_loaded() const {
    double best = 0.0;
    for (double eta = 0.0; eta < 0.95; eta += 0.005)
      if (local_angle(eta) > local_angle(best) + 1e-12) best = eta;
    return best;
  }
  double local_angle(double eta) const { return alpha_rad_ - induced(a_, std::acos(eta)); }

 private:
  /// Stations evenly in angle, from the middle (pi/2) towards the tip.
  double theta(Eigen::Index k) const {
    const auto n = static_cast<double>(a_.size());
    return 0.5 * M_PI * (1.0 - static_cast<double>(k) / n);
  }
  static double induced(const Eigen::VectorXd& a, double theta) {
    double sum = 0.0;
    for (Eigen::Index m = 0; m < a.size(); ++m) {
      const double order = static_cast<double>(2 * m + 1);
      sum += order * a(m) * std::sin(order * theta);
    }
    return sum / std::sin(theta);
  }

  PlanForm plan_;
  StaticLift section_;
  Eigen::VectorXd a_;
  double alpha_rad_ = 0.0;
};

}  // namespace stallwright::published
