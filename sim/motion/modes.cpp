#include "sim/motion/modes.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace stallwright {
namespace {

using Complex = std::complex<double>;
using Matrix8 = Eigen::Matrix<double, kRigidPlaces, kRigidPlaces>;
using Places = std::vector<Eigen::Index>;

/// The rigid model with quasi-static air, in the form x_r' = G x_r.
Matrix8 guide_matrix(const Eigen::MatrixXd& a) {
  const Eigen::Index flow = a.rows() - kRigidPlaces;
  const Matrix8 rigid = a.topLeftCorner(Eigen::Index{kRigidPlaces}, Eigen::Index{kRigidPlaces});
  if (flow == 0) return rigid;
  const Eigen::MatrixXd to_rigid = a.topRightCorner(Eigen::Index{kRigidPlaces}, flow);
  const Eigen::MatrixXd from_rigid = a.bottomLeftCorner(flow, Eigen::Index{kRigidPlaces});
  const auto memory = Eigen::MatrixXd(a.bottomRightCorner(flow, flow)).partialPivLu();
  const Eigen::MatrixXd once = memory.solve(from_rigid), twice = memory.solve(once);
  const Matrix8 still = rigid - to_rigid * once;
  const Matrix8 lagging = Matrix8::Identity() + to_rigid * twice;
  return lagging.partialPivLu().solve(still);
}

/// Eigenvalues of the part of the guide on some places, the smallest first, conjugates with the positive one
/// first.
std::array<Complex, 4> part_eigenvalues(const Matrix8& guide, const Places& places) {
  Eigen::Matrix4d part;
  for (Eigen::Index i = 0; i < 4; ++i)
    for (Eigen::Index k = 0; k < 4; ++k) part(i, k) = guide(places[i], places[k]);
  const Eigen::Vector4cd values = part.eigenvalues();
  std::array<Complex, 4> sorted{values[0], values[1], values[2], values[3]};
  std::sort(sorted.begin(), sorted.end(), [](const Complex& x, const Complex& y) {
    // Conjugates differ in size by rounding alone; without the tolerance they would land in any order.
    if (std::abs(std::abs(x) - std::abs(y)) > 1e-9 * (std::abs(x) + std::abs(y)))
      return std::abs(x) < std::abs(y);
    return x.imag() > y.imag();
  });
  return sorted;
}

/// Roll, spiral and the pair between them. Usually roll is the fastest of the lateral ones, but what swings
/// is the dutch roll whatever its speed.
struct LateralGuide {
  Complex dutch, dutch_partner, roll, spiral;
};

LateralGuide lateral_guide(const std::array<Complex, 4>& by_size) {
  std::vector<Complex> swinging, plain;
  for (const Complex& value : by_size) (value.imag() != 0.0 ? swinging : plain).push_back(value);
  if (plain.size() == 2) return {swinging[0], swinging[1], plain[1], plain[0]};
  // Roll and spiral joined (a lateral phugoid) or all four real: by size alone.
  return {by_size[1], by_size[2], by_size[3], by_size[0]};
}

class WholeModel {
 public:
  explicit WholeModel(const Eigen::MatrixXd& a) {
    const Eigen::EigenSolver<Eigen::MatrixXd> solver(a);
    values_ = solver.eigenvalues();
    const Eigen::MatrixXcd right = solver.eigenvectors();
    const Eigen::MatrixXcd left = right.inverse();
    share_.resize(a.rows(), a.rows());
    for (Eigen::Index k = 0; k < a.rows(); ++k) {
      share_.col(k) = (right.col(k).array() * left.row(k).transpose().array()).abs().matrix();
      share_.col(k) /= share_.col(k).sum();
    }
    taken_.assign(a.rows(), false);
  }

  struct Match {
    Complex value;
    double participation = 0.0;
  };

  /// Takes the eigenvalue that fits a guide value best, so that it serves no second time.
  Match take(const Complex& guide, const Places& own) {
    Eigen::Index best = -1;
    double best_score = -1.0;
    for (Eigen::Index k = 0; k < values_.size(); ++k) {
      if (taken_[k] || (values_[k].imag() < 0.0) != (guide.imag() < 0.0)) continue;
      const double distance = std::abs(values_[k] - guide) / std::max(std::abs(guide), 1e-9);
      const double score = participation(k, own) / (1.0 + distance);
      if (score > best_score) {
        best_score = score;
        best = k;
      }
    }
    if (best < 0) return {};
    taken_[best] = true;
    return {values_[best], participation(best, own)};
  }

 private:
  double participation(Eigen::Index k, const Places& own) const {
    double sum = 0.0;
    for (const Eigen::Index place : own) sum += share_(place, k);
    return sum;
  }

  Eigen::VectorXcd values_;
  Eigen::MatrixXd share_;  // row: place, column: eigenvalue
  std::vector<bool> taken_;
};

Mode paired(const std::string& name, WholeModel& whole, const Complex& guide, const Complex& guide_partner,
            const Places& own) {
  const WholeModel::Match first = whole.take(guide, own);
  // A swinging mode's partner is its conjugate; two real ones are matched each by its own guide.
  const bool swings = first.value.imag() != 0.0;
  const WholeModel::Match second = whole.take(swings ? std::conj(first.value) : guide_partner, own);
  Mode m;
  m.name = name;
  m.guide = guide;
  m.eigenvalue = first.value;
  m.partner = second.value;
  m.participation = first.participation;
  const double product = (m.eigenvalue * m.partner).real();
  if (product > 0.0) {
    const double natural_radps = std::sqrt(product);
    m.natural_period_s = 2.0 * math::kPi / natural_radps;
    m.damping_ratio = -(m.eigenvalue + m.partner).real() / (2.0 * natural_radps);
  }
  m.time_constant_s = -1.0 / m.eigenvalue.real();
  return m;
}

Mode single(const std::string& name, WholeModel& whole, const Complex& guide, const Places& own) {
  const WholeModel::Match match = whole.take(guide, own);
  Mode m;
  m.name = name;
  m.guide = guide;
  m.eigenvalue = match.value;
  m.participation = match.participation;
  // Where a light aeroplane's roll swings together with its lift that lags, the pair answers late by 2 zeta/omega_n, as
  // one first-order mode of that time would.
  const double square = std::norm(m.eigenvalue);
  m.time_constant_s =
      m.eigenvalue.imag() == 0.0 ? -1.0 / m.eigenvalue.real() : -2.0 * m.eigenvalue.real() / square;
  return m;
}

}  // namespace

std::vector<Mode> classical_modes(const LinearModel& model) {
  const Eigen::MatrixXd& a = model.a;
  if (a.rows() < kRigidPlaces || a.rows() != a.cols() || !a.allFinite())
    throw std::invalid_argument("modes need a finite square matrix of at least 8 x 8");
  const Matrix8 guide = guide_matrix(a);
  const std::array<Complex, 4> along = part_eigenvalues(guide, {kU, kW, kQ, kTheta});
  const LateralGuide across = lateral_guide(part_eigenvalues(guide, {kV, kP, kR, kPhi}));
  WholeModel whole(a);
  // The slow ones first: they stand alone, while roll and short period share their place with the air's
  // memory.
  const Mode phugoid = paired("phugoid", whole, along[0], along[1], {kU, kTheta});
  const Mode spiral = single("spiral", whole, across.spiral, {kPhi});
  const Mode dutch = paired("dutch roll", whole, across.dutch, across.dutch_partner, {kV, kR});
  const Mode brief = paired("short period", whole, along[2], along[3], {kW, kQ});
  const Mode roll = single("roll", whole, across.roll, {kP});
  return {brief, phugoid, dutch, roll, spiral};
}

const Mode& mode_named(const std::vector<Mode>& modes, const std::string& name) {
  for (const Mode& mode : modes)
    if (mode.name == name) return mode;
  throw std::out_of_range("no mode named " + name);
}

}  // namespace stallwright
