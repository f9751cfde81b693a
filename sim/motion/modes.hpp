#pragma once
#include <complex>
#include <string>
#include <vector>

#include "sim/motion/linearise.hpp"

namespace stallwright {

/// One way in which a disturbed aeroplane moves, from the pair of eigenvalues that makes it (complex
/// conjugate if it swings; two real ones if it is damped beyond that; one real one alone for roll and
/// spiral):
///   natural period 2 pi/omega_n, omega_n = sqrt(lambda1 lambda2);  damping ratio -(lambda1 + lambda2)/(2
///   omega_n)   time constant -1/Re(lambda) of the slower one, negative if it grows; 2 zeta/omega_n for a roll that swings with
///   its lift, which lags
/// Numbers without meaning for the mode are NaN.
struct Mode {
  std::string name;  ///< short period, phugoid, dutch roll, roll or spiral
  std::complex<double> eigenvalue,
      partner;                 ///< 1/s; eigenvalue is the one that swings forward, or the slower
  std::complex<double> guide;  ///< what the rigid model with quasi-static air gives for eigenvalue
  double natural_period_s = kUnset, damping_ratio = kUnset, time_constant_s = kUnset;
  /// Share of the rigid motion it is named for, 0..1 (participation factors, sizes summing to 1); the rest is
  /// the air's memory and the other axes. Where several eigenvalues share a motion none has much of it.
  double participation = 0.0;
};

/// The five classical modes, in the order named above.
///
/// The guide is the rigid 8 x 8 model whose air follows with its lag to first order (r rigid motion, f flow
/// memory):
///   (I + Arf Aff^-2 Afr) x_r' = (Arr - Arf Aff^-1 Afr) x_r
/// (the left side holds what textbooks call the derivatives to alpha-dot), cut into its longitudinal (u, w,
/// q, theta) and lateral (v, p, r, phi) parts, whose four eigenvalues are told apart by size. For each guide
/// value lambda_g that eigenvalue of the whole matrix is reported which has the greatest
///   participation/(1 + |lambda - lambda_g|/|lambda_g|)
/// where participation is that of the mode's own places: w, q; u, theta; v, r; p; phi. No eigenvalue serves
/// twice. An A of 8 x 8 has no flow memory: the two then differ by the coupling between the axes alone.
/// Throws std::invalid_argument if A is smaller than 8 x 8 or not finite.
std::vector<Mode> classical_modes(const LinearModel& model);

/// The mode of this name. Throws std::out_of_range if there is none.
const Mode& mode_named(const std::vector<Mode>& modes, const std::string& name);

}  // namespace stallwright
