#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Set points of several sorties of one card with one aeroplane, made into one: other days, other masses.
///
/// Ratio belongs to lift area, x = m g/q_c, and a card's speeds go with the root of mass, so ratios compare whatever the
/// mass; where a flap limit has cut a target, the sortie's ratio is first moved to the first sortie's lift area along the
/// slope. Then, point by point, the weighted mean
///   r = sum w_i r_i,  w_i = u_i^-2 / sum u_j^-2,  u_i of what each sortie has for itself   [BIRGE-1932, JCGM-100]
/// Lines of the budget: what records or a sortie have for themselves adds in squares, (sum (w_i u_i)^2)^1/2; what the
/// aeroplane and its instruments have in all of them, in full, sum w_i u_i. Scatter between sorties beyond what they
/// state is believed and stands in the budget as a line of its own.
/// A point that a sortie lacks comes from the others. Order is checked anew. Windows say which sortie they come from.
///   sorties  reduced from the same card; names stand for them in messages, one each
/// One sortie comes back as it is. Throws InputError where points, flaps or aeroplane do not match.
SetPoints combine_sorties(const std::vector<SetPoints>& sorties, const std::vector<std::string>& names,
                          const TestCard& card);

}  // namespace stallwright
