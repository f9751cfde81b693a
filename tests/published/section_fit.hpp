#pragma once
#include <Eigen/Dense>
#include <cmath>
#include <vector>

#include "aircraft/section.hpp"

namespace stallwright::published {

/// One tunnel point of a section.
struct TunnelPoint {
  double alpha_rad, lift, drag;  ///< drag a NaN where it was not measured
};

/// A symmetrical section in steady two-dimensional flow, flat-plate limit of the tunnel tables.
inline SectionType symmetrical_section(double lift_slope_per_rad, double stall_rad, double width_rad) {
  SectionType s;
  s.lift_slope_per_rad = lift_slope_per_rad;
  s.zero_lift_rad = 0.0;
  s.stall_rad = stall_rad;
  s.negative_stall_rad = -stall_rad;
  s.stall_width_rad = width_rad;
  s.profile_drag = s.cl_min_drag = s.drag_rise = s.moment = 0.0;
  s.flat_plate_normal_force = 1.95;
  s.tau1_chords = 0.5;
  s.tau2_chords = 4.5;
  return s;
}

/// What the section comes to rest at: separation on its static curve.
inline SectionCoefficients<double> at_rest(const SectionType& s, double alpha_rad) {
  return section_coefficients(s, alpha_rad, static_separation(s, alpha_rad, 0.0), SectionShift<double>{});
}

/// Slope, stall angle and width by least squares of lift (Levenberg and Marquardt, numerical derivatives), then profile drag
/// and drag rise by linear least squares of drag at the points below `drag_below_rad`.
inline SectionType fitted_section(const std::vector<TunnelPoint>& points, double drag_below_rad) {
  const auto section = [](const Eigen::Vector3d& p) {
    return symmetrical_section(p(0), p(1), std::exp(p(2)));
  };
  const auto n = static_cast<Eigen::Index>(points.size());
  const auto misfit = [&](const Eigen::Vector3d& p) {
    Eigen::VectorXd r(n);
    const SectionType s = section(p);
    for (Eigen::Index i = 0; i < n; ++i) {
      const TunnelPoint& at = points[static_cast<std::size_t>(i)];
      r(i) = at_rest(s, at.alpha_rad).lift - at.lift;
    }
    return r;
  };
  Eigen::Vector3d p(6.0, 16.0 * M_PI / 180.0, std::log(1.0 * M_PI / 180.0));
  double damping = 1e-2;
  for (int step = 0; step < 200; ++step) {
    const Eigen::VectorXd r = misfit(p);
    Eigen::MatrixXd jacobian(n, 3);
    for (int k = 0; k < 3; ++k) {
      const Eigen::Vector3d h = Eigen::Vector3d::Unit(k) * 1e-6;
      jacobian.col(k) = (misfit(p + h) - misfit(p - h)) / 2e-6;
    }
    Eigen::Matrix3d normal = jacobian.transpose() * jacobian;
    normal.diagonal() *= 1.0 + damping;
    const Eigen::Vector3d change = normal.ldlt().solve(-(jacobian.transpose() * r));
    const bool better = misfit(p + change).norm() < r.norm();
    if (better) p += change;
    damping *= better ? 0.3 : 5.0;
  }
  SectionType s = section(p);
  Eigen::Matrix2d a = Eigen::Matrix2d::Zero();
  Eigen::Vector2d b = Eigen::Vector2d::Zero();
  for (const TunnelPoint& at : points) {
    if (!std::isfinite(at.drag) || std::abs(at.alpha_rad) > drag_below_rad) continue;
    const auto c = at_rest(s, at.alpha_rad);  // pressure drag alone: profile drag is still nought
    const Eigen::Vector2d row(1.0, c.lift * c.lift);
    a += row * row.transpose();
    b += row * (at.drag - c.drag);
  }
  const Eigen::Vector2d drag = a.ldlt().solve(b);
  s.profile_drag = drag(0);
  s.drag_rise = drag(1);
  return s;
}

/// Greatest lift of the resting section between two angles, and where.
struct LiftPeak {
  double lift = -1e9, alpha_rad = 0.0;
};
inline LiftPeak lift_peak(const SectionType& s, double from_rad = 0.0, double to_rad = 25.0 * M_PI / 180.0) {
  LiftPeak peak;
  for (double a = from_rad; a <= to_rad; a += 1e-4)
    if (const double lift = at_rest(s, a).lift; lift > peak.lift) peak = {lift, a};
  return peak;
}

/// Slope of measured lift through the points within an angle of zero, 1/rad: least squares.
inline double measured_slope(const std::vector<TunnelPoint>& points, double within_rad) {
  double n = 0, sa = 0, sl = 0, saa = 0, sal = 0;
  for (const TunnelPoint& p : points) {
    if (std::abs(p.alpha_rad) > within_rad) continue;
    n += 1.0, sa += p.alpha_rad, sl += p.lift, saa += p.alpha_rad * p.alpha_rad, sal += p.alpha_rad * p.lift;
  }
  return (n * sal - sa * sl) / (n * saa - sa * sa);
}

/// The same slope of the resting section over the same angles, so that both bend alike.
inline double modelled_slope(const SectionType& s, std::vector<TunnelPoint> points, double within_rad) {
  for (TunnelPoint& p : points) p.lift = at_rest(s, p.alpha_rad).lift;
  return measured_slope(points, within_rad);
}

}  // namespace stallwright::published
