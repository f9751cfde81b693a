#include "sim/truth/steady_surface.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"
#include "sim/reduction/least_squares.hpp"

namespace stallwright {

std::array<double, SteadySurface::kTerms> SteadySurface::terms(double dx, double dy) {
  return {dx, dx * dx, dx * dx * dx, dy, dx * dy, dy * dy};
}

SteadySurface::SteadySurface(const Aircraft& aircraft, const TestPoint& point, const StaticPoint& at,
                             const StillAir& air)
    : x0_(at.lift_area_m2), y0_(at.thrust_area_m2), r0_(at.ratio) {
  const double flap_rad = aircraft.type.flaps[point.flap_setting].deflection_rad;
  std::vector<StaticPoint> flights;
  for (const double share : {0.88, 0.92, 0.96, 1.0, 1.05, 1.1, 1.17, 1.25})
    for (const double beside_mps : {-1.5, 0.0, 1.5}) {
      const StaticPoint f = steady_at(aircraft, flap_rad, PowerRule::descent, beside_mps - at.climb_mps, air,
                                      share * at.indicated_mps);
      if (f.found) flights.push_back(f);
    }
  if (flights.size() < kTerms + 3) throw std::runtime_error("too few steady flights around " + point.name);
  Eigen::MatrixXd X(static_cast<Eigen::Index>(flights.size()), static_cast<Eigen::Index>(kTerms));
  Eigen::VectorXd y(static_cast<Eigen::Index>(flights.size()));
  for (std::size_t i = 0; i < flights.size(); ++i) {
    const auto row = terms(flights[i].lift_area_m2 - x0_, flights[i].thrust_area_m2 - y0_);
    for (std::size_t k = 0; k < kTerms; ++k)
      X(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(k)) = row[k];
    y(static_cast<Eigen::Index>(i)) = flights[i].ratio - r0_;
  }
  const LeastSquaresFit fit = fit_linear(X, y, TotalAbout::kZero);
  for (std::size_t k = 0; k < kTerms; ++k) coefficients_[k] = fit.parameters[static_cast<Eigen::Index>(k)];
  worst_residual_ = fit.residuals.cwiseAbs().maxCoeff();
}

double SteadySurface::ratio(double lift_area_m2, double thrust_area_m2) const {
  const auto t = terms(lift_area_m2 - x0_, thrust_area_m2 - y0_);
  double r = r0_;
  for (std::size_t k = 0; k < kTerms; ++k) r += coefficients_[k] * t[k];
  return r;
}

}  // namespace stallwright
