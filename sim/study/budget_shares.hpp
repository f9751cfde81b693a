#pragma once
#include <vector>

#include "sim/study/coverage.hpp"

namespace stallwright {

/// Is the truth within the 95 % interval that Type A alone would give?
bool covered_by_type_a(const JudgedPoint& point);

/// Every component of the budgets of one set point over many sorties, in the order in which they first
/// appear. `coverage_without` recomputes each sortie's interval with the component left out.
std::vector<BudgetShare> budget_shares(const std::vector<const JudgedPoint*>& points);

/// The largest component; an empty one when there is none.
BudgetShare dominant_share(const std::vector<BudgetShare>& shares);

/// What makes an interval wider than it need be. Instrument errors are drawn from the very distribution that
/// the budget states, so they cannot: it is the largest of the components that are estimated, scatter and
/// model terms. The largest of all when there is none.
BudgetShare surplus_share(const std::vector<BudgetShare>& shares);

}  // namespace stallwright
