#pragma once
#include <vector>

#include "sim/reduction/reduce.hpp"

namespace stallwright::detail {

/// All that the reduction of one set shares.
struct SetContext {
  const std::vector<LogRow>& rows;
  const TestCard& card;
  const InstrumentGrade& instruments;
  const ReductionTerms& terms;
  SetSlope slope;  ///< filled by fit_slope before any point is reduced
};

/// One curve of ratio against lift area through the steady records of a set.
SetSlope fit_slope(const std::vector<LogRow>& rows, const std::vector<Record>& steady);

/// A steady point from its records (repeats of one card point).
SetPoint reduce_steady(const SetContext& set, std::size_t card_point, const std::vector<Record>& records);

/// The stall of a set from its records, which may come from several card points with different entry rates.
SetPoint reduce_stall(const SetContext& set, const std::vector<Record>& records);

/// Looks for the break of a stall record and notes it in the window (broke, break_s, break_sign).
void find_break(const std::vector<LogRow>& rows, const Record& record, RecordWindow& window);

/// Standard deviation of the load factor over rows begin to end - 1; none for fewer than two.
double load_factor_scatter(const std::vector<LogRow>& rows, std::size_t begin, std::size_t end);

/// Type B lines that every point has, from the instruments' grade.
///   ratio, lift_area  the point;  slope  b there;  impact_pa  impact pressure there
std::vector<BudgetLine> instrument_budget(const InstrumentGrade& grade, double ratio, double lift_area,
                                          double slope, double impact_pa);

/// Sorts a set by falling speed and checks its order: faster point, lower ratio; every neighbour must stand higher than the
/// one before, by the card's gap.
void check_order(SetPointSet& set, double gap);

/// Combines the budget into u, dof and the 95 % interval of a point.
void conclude(SetPoint& point);

}  // namespace stallwright::detail
