#pragma once

#include <limits>
#include <span>
#include <string>
#include <vector>

#include "sim/reduction/intervals.hpp"

namespace stallwright {

/// Uncertainty budgets by JCGM 100:2008 (the GUM). All functions throw std::invalid_argument when an argument
/// is outside the range given or not a number.

/// How a component was found: from the scatter of the data at hand (A) or from other knowledge (B).
/// [JCGM-100 4.2, 4.3]
enum class Evaluation { kTypeA, kTypeB };

/// One line of a budget. Its contribution is |sensitivity| * standard_uncertainty, in the unit of the result.
struct Component {
  std::string name{};
  Evaluation kind = Evaluation::kTypeB;
  double standard_uncertainty = std::numeric_limits<double>::quiet_NaN();  ///< >= 0, unit of the input
  double dof = std::numeric_limits<double>::infinity();  ///< > 0; infinite: u is taken as known
  double sensitivity = 1.0;                              ///< unit of the result per unit of the input
  std::string note{};                                    ///< where the number comes from
};

/// u_c^2 = sum_i (c_i u_i)^2, inputs independent of each other                          [JCGM-100 eq. 10,
/// 11a] nu_eff = u_c^4 / sum_i (c_i u_i)^4 / nu_i                                            [JCGM-100 eq.
/// G.2b] nu_eff is not cut down to a whole number. It is infinite when every contribution is known or nil.
struct CombinedUncertainty {
  double standard_uncertainty;
  double effective_dof;
};
CombinedUncertainty combine(std::span<const Component> budget);

/// The same for the components of one kind: Type A alone, to show beside the whole.
CombinedUncertainty combine_kind(std::span<const Component> budget, Evaluation kind);

/// Share of each component in u_c^2, in the order of the budget; sums to 1, all 0 when u_c is 0.
std::vector<double> variance_shares(std::span<const Component> budget);

/// The component with the largest contribution, the first of equals; the budget must not be empty.
const Component& dominant_component(std::span<const Component> budget);

/// Student's t such that P(|t| <= k) = probability; the normal one when dof is infinite. [JCGM-100 G.3, table
/// G.2]
double coverage_factor(double probability, double dof);

/// U = k u_c and the interval value +- U.                                               [JCGM-100 6.2, G.4]
struct Expanded {
  double coverage_factor;
  double expanded_uncertainty;
  Interval interval;
};
Expanded expand(double value, const CombinedUncertainty& combined, double probability = 0.95);

/// Standard uncertainty of a quantity known to lie within +- half_width:
double standard_uncertainty_rectangular(double half_width);  ///< a/sqrt(3), anywhere alike   [JCGM-100 4.3.7]
double standard_uncertainty_triangular(double half_width);   ///< a/sqrt(6), middle likelier  [JCGM-100 4.3.9]
/// a/z_p: normal, inside with the given probability                                          [JCGM-100 4.3.4]
double standard_uncertainty_normal(double half_width, double probability);
/// Recording in steps of `resolution`: resolution/sqrt(12)                                   [JCGM-100
/// F.2.2.1]
double standard_uncertainty_resolution(double resolution);
/// Degrees of freedom of a u that is itself known to a fraction r = du/u: 1/(2 r^2)          [JCGM-100 eq.
/// G.3]
double dof_of_relative_uncertainty(double fraction);

}  // namespace stallwright
