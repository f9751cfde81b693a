#include "sim/study/budget_shares.hpp"

#include <algorithm>
#include <cmath>

#include "sim/reduction/point_reduction.hpp"
#include "sim/reduction/uncertainty.hpp"

namespace stallwright {
namespace {

std::vector<Component> components(const SetPoint& point) {
  std::vector<Component> out;
  for (const BudgetLine& line : point.budget)
    out.push_back({line.name, line.kind == 'A' ? Evaluation::kTypeA : Evaluation::kTypeB, line.u_ratio,
                   line.dof, 1.0, line.note});
  return out;
}

bool holds_truth(const JudgedPoint& point, const CombinedUncertainty& combined) {
  if (!(combined.standard_uncertainty > 0.0)) return point.error_ratio == 0.0;
  return std::abs(point.error_ratio) <= expand(0.0, combined).expanded_uncertainty;
}

}  // namespace

bool covered_by_type_a(const JudgedPoint& point) {
  return holds_truth(point, combine_kind(components(point.measured), Evaluation::kTypeA));
}

std::vector<BudgetShare> budget_shares(const std::vector<const JudgedPoint*>& points) {
  std::vector<BudgetShare> shares;
  const double each = 1.0 / static_cast<double>(std::max<std::size_t>(1, points.size()));
  for (const JudgedPoint* point : points) {
    const std::vector<Component> budget = components(point->measured);
    const std::vector<double> of_variance = variance_shares(budget);
    for (std::size_t i = 0; i < budget.size(); ++i) {
      auto share = std::find_if(shares.begin(), shares.end(),
                                [&](const BudgetShare& s) { return s.name == budget[i].name; });
      if (share == shares.end()) share = shares.insert(share, {budget[i].name, 0.0, 0.0});
      share->variance_share += of_variance[i] * each;
    }
  }
  for (BudgetShare& share : shares)
    for (const JudgedPoint* point : points) {
      std::vector<Component> rest = components(point->measured);
      std::erase_if(rest, [&](const Component& c) { return c.name == share.name; });
      if (holds_truth(*point, combine(rest))) share.coverage_without += each;
    }
  return shares;
}

BudgetShare dominant_share(const std::vector<BudgetShare>& shares) {
  const auto largest = std::max_element(
      shares.begin(), shares.end(),
      [](const BudgetShare& a, const BudgetShare& b) { return a.variance_share < b.variance_share; });
  return largest == shares.end() ? BudgetShare{} : *largest;
}

BudgetShare surplus_share(const std::vector<BudgetShare>& shares) {
  std::vector<BudgetShare> estimated = shares;
  // Only the names of the lines are wanted, whatever their size.
  for (const BudgetLine& drawn : detail::instrument_budget(InstrumentGrade{}, 0.0, 1.0, 0.0, 1.0))
    std::erase_if(estimated, [&](const BudgetShare& s) { return s.name == drawn.name; });
  return dominant_share(estimated.empty() ? shares : estimated);
}

}  // namespace stallwright
