#include "sim/reduction/repeats.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/reduction/uncertainty.hpp"

namespace stallwright {
namespace {

/// `share` of every record's own part is left, with degrees of freedom more by as much.
double half_width(const SetPoint& point, double share) {
  std::vector<Component> budget;
  for (const BudgetLine& line : point.budget) {
    const bool own = line.shared == Shared::record;
    if (own && share == 0.0) continue;
    budget.push_back({line.name, line.kind == 'A' ? Evaluation::kTypeA : Evaluation::kTypeB,
                      line.u_ratio * (own ? std::sqrt(share) : 1.0), line.dof / (own ? share : 1.0), 1.0,
                      ""});
  }
  return budget.empty() ? 0.0 : expand(0.0, combine(budget)).expanded_uncertainty;
}

}  // namespace

int records_of(const SetPoint& point) {
  const auto counts = [&](const RecordWindow& w) { return !point.is_stall || w.broke; };
  return std::max(1, static_cast<int>(std::count_if(point.windows.begin(), point.windows.end(), counts)));
}

double half_width_with(const SetPoint& point, int records) {
  return half_width(point, static_cast<double>(records_of(point)) / records);
}

RepeatsWanted repeats_wanted(const SetPoint& point, double wanted_kt, double kt_per_ratio, int most) {
  RepeatsWanted out;
  const int have = records_of(point);
  for (int records = have; records <= std::max(have, most); ++records) {
    const double kt = half_width_with(point, records) * kt_per_ratio;
    if (kt > wanted_kt) continue;
    return {records, kt, records == have};
  }
  out.half_width_kt = half_width(point, 0.0) * kt_per_ratio;
  return out;
}

}  // namespace stallwright
