#include "sim/reduction/combine_sorties.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "sim/reduction/point_reduction.hpp"
#include "sim/reduction/pooled_mean.hpp"

namespace stallwright {
namespace {

/// One sortie's version of a point.
struct Part {
  SetPoint point;
  double mass_kg = kNone;
  int sortie = 0;
  double own_u() const {
    double sum = 0.0;
    for (const BudgetLine& line : point.budget)
      if (line.shared != Shared::installation) sum += line.u_ratio * line.u_ratio;
    return std::max(std::sqrt(sum), 1e-9);
  }
};

bool recorded(const SetPointSet& set) { return std::isfinite(set.mass_kg); }

/// The same points, flown with the same flaps where both know theirs.
bool same_set(const SetPointSet& a, const SetPointSet& b) {
  constexpr double kSameFlaps_deg = 0.5;
  if (a.points.size() != b.points.size()) return false;
  for (const SetPoint& p : a.points)
    if (std::none_of(b.points.begin(), b.points.end(), [&](const SetPoint& q) {
          return p.is_stall == q.is_stall && (p.is_stall || p.card_point == q.card_point) && p.name == q.name;
        }))
      return false;
  return !recorded(a) || !recorded(b) || std::abs(a.flap_deg - b.flap_deg) < kSameFlaps_deg;
}

void require_alike(const std::vector<SetPoints>& sorties, const std::vector<std::string>& names) {
  const SetPoints& first = sorties.front();
  for (std::size_t i = 1; i < sorties.size(); ++i) {
    const SetPoints& other = sorties[i];
    if (other.aircraft != first.aircraft)
      throw InputError(names[i] + ": expected the aeroplane of " + names[0] + ", " + first.aircraft +
                       ", found " + other.aircraft);
    bool alike = other.card == first.card && other.sets.size() == first.sets.size();
    for (std::size_t k = 0; alike && k < first.sets.size(); ++k)
      alike = same_set(first.sets[k], other.sets[k]);
    if (!alike)
      throw InputError(names[i] + ": expected the card of " + names[0] + ", " + first.card +
                       ", with the same points and flaps, found " + other.card + " with others");
  }
}

const SetPoint& same_point(const SetPointSet& set, const SetPoint& as, const std::string& name) {
  for (const SetPoint& p : set.points)
    if (p.is_stall == as.is_stall && (p.is_stall || p.card_point == as.card_point)) return p;
  throw InputError(name + ": expected the point " + as.name + ", found none");
}

/// Speed at which this mass has the lift area that `speed_kt` has at another.
double at_mass(double speed_kt, double from_kg, double to_kg) {
  return speed_kt * std::sqrt(to_kg / from_kg);
}

/// Moves a steady point to the lift area of the first one, where its own target had to be another.
void move_to(const Part& first, Part& part) {
  if (part.point.is_stall || !part.point.found()) return;
  const double mine = at_mass(part.point.target_kt, part.mass_kg, first.mass_kg);
  const double away_kt = first.point.target_kt - mine;
  if (!(std::abs(away_kt) > 0.01)) return;
  const double shift = part.point.slope_per_kt * away_kt;
  part.point.ratio += shift;
  // The slope is read off a curve through few points; a tenth of it is our judgement.
  part.point.budget.push_back({"moved to another target", 'B', 0.1 * std::abs(shift), 8.0,
                               "a flap limit has set other targets at other masses; along the slope",
                               Shared::sortie});
  part.point.flags.push_back("sorties had targets of their own");
}

/// The lines of one name over all parts.
BudgetLine line_of(const std::string& name, const std::vector<Part>& parts,
                   const std::vector<double>& weights) {
  BudgetLine out;
  double squares = 0.0, fourths = 0.0, sum = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (const BudgetLine& line : parts[i].point.budget) {
      if (line.name != name) continue;
      const double u = weights[i] * line.u_ratio;
      out.kind = line.kind;
      out.note = line.note;
      out.shared = line.shared;
      sum += u;
      squares += u * u;
      fourths += u * u * u * u / line.dof;
    }
  out.name = name;
  const bool in_full = out.shared == Shared::installation;
  out.u_ratio = in_full ? sum : std::sqrt(squares);
  // Welch and Satterthwaite within the line [JCGM-100 eq. G.2b].
  out.dof = fourths > 0.0 ? squares * squares / fourths : std::numeric_limits<double>::infinity();
  return out;
}

void add_lines(const std::vector<Part>& parts, const std::vector<double>& weights, SetPoint& out) {
  for (const Part& part : parts)
    for (const BudgetLine& line : part.point.budget)
      if (std::none_of(out.budget.begin(), out.budget.end(),
                       [&](const BudgetLine& have) { return have.name == line.name; }))
        out.budget.push_back(line_of(line.name, parts, weights));
}

/// Readings beside the adopted one: the plain mean, uncertainty of the mean as if independent.
Reading mean_reading(const std::vector<Part>& parts, const std::vector<double>& weights,
                     Reading SetPoint::*which) {
  Reading out{0.0, 0.0, 0.0, 0.0};
  double u2 = 0.0, a2 = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Reading& r = parts[i].point.*which;
    out.ratio += weights[i] * r.ratio;
    u2 += std::pow(weights[i] * r.u, 2);
    a2 += std::pow(weights[i] * r.type_a_u, 2);
    out.dof += r.dof;
  }
  out.u = std::sqrt(u2);
  out.type_a_u = std::sqrt(a2);
  return out;
}

/// The combined point; its speeds stand at `mass_kg`.
SetPoint combined(std::vector<Part> parts, double mass_kg) {
  std::vector<double> values, u;
  for (Part& part : parts) move_to(parts.front(), part);
  for (const Part& part : parts) {
    values.push_back(part.point.ratio);
    u.push_back(part.own_u());
  }
  const PooledMean mean = pooled_mean(values, u);
  std::vector<double> weights;
  for (double each : u) weights.push_back(mean.u_internal * mean.u_internal / (each * each));

  SetPoint out = parts.front().point;
  out.budget.clear();
  out.windows.clear();
  out.flags.clear();
  out.ratio = mean.value;
  out.slope_per_kt = 0.0;
  double speed_kt = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Part& part = parts[i];
    out.slope_per_kt += weights[i] * part.point.slope_per_kt;
    speed_kt += weights[i] * at_mass(part.point.speed_kt, part.mass_kg, parts.front().mass_kg);
    for (RecordWindow w : part.point.windows) {
      w.sortie = part.sortie;
      out.windows.push_back(w);
    }
    for (const std::string& flag : part.point.flags)
      if (std::find(out.flags.begin(), out.flags.end(), flag) == out.flags.end()) out.flags.push_back(flag);
  }
  const double to_set = at_mass(1.0, parts.front().mass_kg, mass_kg);
  out.target_kt *= to_set;
  out.speed_kt = (out.is_stall ? speed_kt : out.speed_kt) * to_set;
  out.slope_per_kt /= to_set;
  add_lines(parts, weights, out);
  if (mean.birge_ratio > 1.0)
    out.budget.push_back({"scatter between sorties", 'A',
                          mean.u_internal * std::sqrt(mean.birge_ratio * mean.birge_ratio - 1.0),
                          static_cast<double>(mean.dof), "beyond what they state of themselves"});
  for (Reading SetPoint::*which : {&SetPoint::spot, &SetPoint::window_mean, &SetPoint::lift_corrected,
                                   &SetPoint::at_break, &SetPoint::peak, &SetPoint::max_lift})
    out.*which = mean_reading(parts, weights, which);
  detail::conclude(out);
  Reading& adopted = out.is_stall ? out.max_lift : out.lift_corrected;
  adopted.ratio = out.ratio;
  adopted.u = out.u;
  return out;
}

}  // namespace

SetPoints combine_sorties(const std::vector<SetPoints>& sorties, const std::vector<std::string>& names,
                          const TestCard& card) {
  if (sorties.size() == 1) return sorties.front();
  require_alike(sorties, names);
  SetPoints out = sorties.front();
  for (std::size_t i = 1; i < sorties.size(); ++i)
    for (const std::string& warning : sorties[i].warnings) out.warnings.push_back(names[i] + ": " + warning);
  for (std::size_t k = 0; k < out.sets.size(); ++k) {
    SetPointSet& set = out.sets[k];
    // Mass and flaps are those of the first sortie that has any record of the set.
    for (const SetPoints& sortie : sorties) {
      if (recorded(set)) break;
      set.flap_deg = sortie.sets[k].flap_deg;
      set.mass_kg = sortie.sets[k].mass_kg;
      set.slope_per_x = sortie.sets[k].slope_per_x;
    }
    for (SetPoint& point : set.points) {
      std::vector<Part> parts;
      for (std::size_t i = 0; i < sorties.size(); ++i) {
        const SetPoint& theirs = same_point(sorties[i].sets[k], point, names[i]);
        if (theirs.found()) parts.push_back({theirs, sorties[i].sets[k].mass_kg, static_cast<int>(i) + 1});
      }
      if (!parts.empty()) point = combined(std::move(parts), set.mass_kg);
    }
    detail::check_order(set, card.order_gap);
  }
  return out;
}

}  // namespace stallwright
