#include "sim/reduction/reduce.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "sim/reduction/point_reduction.hpp"

namespace stallwright {

namespace detail {

void check_order(SetPointSet& set, double gap) {
  // In order of falling speed; points without a speed (never recorded) keep the card's order at their place.
  std::stable_sort(set.points.begin(), set.points.end(),
                   [](const SetPoint& a, const SetPoint& b) { return a.speed_kt > b.speed_kt; });
  set.order_notes.clear();
  set.order_ok = true;
  const SetPoint* before = nullptr;
  for (const SetPoint& p : set.points) {
    if (!p.found()) {
      set.order_ok = false;
      set.order_notes.push_back(p.name + " is missing");
      continue;
    }
    if (before != nullptr) {
      const double difference = p.ratio - before->ratio;
      const double needed =
          gap * std::hypot(p.interval_high - p.ratio, before->interval_high - before->ratio);
      if (difference <= 0.0) {
        set.order_ok = false;
        set.order_notes.push_back(p.name + " does not stand above " + before->name);
      } else if (difference < needed) {
        set.order_ok = false;
        set.order_notes.push_back(p.name + " stands above " + before->name + " by less than the card's gap");
      }
    }
    before = &p;
  }
}

}  // namespace detail

namespace {

SetPointSet reduce_set(detail::SetContext context, std::size_t flap_setting,
                       const std::vector<Record>& records) {
  const std::vector<LogRow>& rows = context.rows;
  const TestCard& card = context.card;
  const auto of_point = [&](std::size_t k) {
    std::vector<Record> found;
    for (const Record& r : records)
      if (r.point == k) found.push_back(r);
    return found;
  };
  std::vector<Record> steady, stalls;
  bool wants_stall = false;
  for (std::size_t k = 0; k < card.points.size(); ++k) {
    const TestPoint& point = card.points[k];
    if (point.flap_setting != flap_setting) continue;
    wants_stall = wants_stall || point.is_stall();
    for (const Record& r : of_point(k)) {
      if (point.is_steady()) steady.push_back(r);
      if (point.is_stall()) stalls.push_back(r);
    }
  }
  context.slope = detail::fit_slope(rows, steady);

  SetPointSet set;
  for (std::size_t k = 0; k < card.points.size(); ++k)
    if (card.points[k].flap_setting == flap_setting && card.points[k].is_steady())
      set.points.push_back(detail::reduce_steady(context, k, of_point(k)));
  if (wants_stall) {
    set.points.push_back(detail::reduce_stall(context, stalls));
    for (std::size_t k = 0; k < card.points.size(); ++k)
      if (card.points[k].flap_setting == flap_setting && card.points[k].is_stall() && stalls.empty())
        set.points.back().card_point = k;
  }
  if (!steady.empty()) {
    set.flap_deg = rows[steady.front().begin].flap_deg;
    set.mass_kg = rows[steady.front().begin].mass_kg;
    const LogRow& last = rows[steady.back().begin];
    set.slope_per_x = context.slope.at(lift_area_m2(last));
  } else if (!stalls.empty()) {
    set.flap_deg = rows[stalls.front().begin].flap_deg;
    set.mass_kg = rows[stalls.front().begin].mass_kg;
  }
  detail::check_order(set, card.order_gap);
  return set;
}

}  // namespace

SetPoints reduce(const std::vector<LogRow>& rows, const TestCard& card, const InstrumentGrade& instruments,
                 const ReductionTerms& terms) {
  SetPoints out;
  out.card = card.name;
  const std::vector<Record> records = find_records(rows);
  std::vector<std::size_t> flaps;
  for (const TestPoint& point : card.points)
    if (std::find(flaps.begin(), flaps.end(), point.flap_setting) == flaps.end())
      flaps.push_back(point.flap_setting);
  for (std::size_t flap : flaps)
    out.sets.push_back(reduce_set({rows, card, instruments, terms, {}}, flap, records));
  return out;
}

}  // namespace stallwright
