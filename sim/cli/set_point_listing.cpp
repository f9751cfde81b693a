#include "sim/cli/set_point_listing.hpp"

#include <algorithm>
#include <cmath>

#include "sim/cli/cli_common.hpp"
#include "sim/reduction/repeats.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

std::string row(const std::string& name, const std::string& ratio, const std::string& u,
                const std::string& dof, const std::string& speed) {
  return "  " + padded(name, 24, false) + padded(ratio, 18, true) + padded(u, 10, true) +
         padded(dof, 9, true) + padded(speed, 13, true) + "\n";
}

std::string dof_words(double dof) { return std::isinf(dof) ? "many" : fixed(dof, 1); }

/// How well a point is known, and what more records would do.
std::string repeats_words(const SetPoint& point, double wanted_kt) {
  const double kt_per_ratio = std::abs(1.0 / point.slope_per_kt);
  if (!point.found() || !std::isfinite(kt_per_ratio)) return "";
  const RepeatsWanted wanted = repeats_wanted(point, wanted_kt, kt_per_ratio);
  if (wanted.done) return "";
  const std::string now = "      known to \u00b1 " + fixed(expanded_ratio(point) * kt_per_ratio, 1) +
                          " kt, the card wants \u00b1 " + fixed(wanted_kt, 1) + ": ";
  if (wanted.records == 0) return now + "repeats alone leave \u00b1 " + fixed(wanted.half_width_kt, 1) + "\n";
  return now + std::to_string(wanted.records) + " records in air like this\n";
}

std::string set_words(const SetPointSet& set, double wanted_kt) {
  std::string text = "  " + flap_words(set.flap_deg) + ", " + fixed(set.mass_kg, 0) +
                     " kg as entered: " + (set.order_ok ? "in order" : "NOT in order") + "\n";
  for (const SetPoint& point : set.points) {
    text += row("  " + one_line(point.name), plus_minus(point.ratio, expanded_ratio(point), 4),
                fixed(point.u, 5), dof_words(point.dof), fixed(point.speed_kt, 1));
    text += repeats_words(point, wanted_kt);
    for (const std::string& flag : point.flags) text += "      flagged: " + one_line(flag) + "\n";
  }
  for (const std::string& note : set.order_notes) text += "    order: " + one_line(note) + "\n";
  return text;
}

}  // namespace

std::string set_point_listing(const SetPoints& set_points, const std::string& sensors, double wanted_kt) {
  std::string text = one_line(set_points.card) + ", from the log alone; " + sensors + " sensors.\n\n";
  text += row("set point", "ratio \u00b1 95 %", "u", "dof", "speed, kt");
  text += "  " + std::string(74, '-') + "\n";
  for (const SetPointSet& set : set_points.sets) text += set_words(set, wanted_kt);
  for (const std::string& warning : set_points.warnings) text += filled("Warning: ", warning);
  return text + "\n" + filled("Caution: ", cautions().front());
}

bool all_found(const SetPoints& set_points) {
  return std::all_of(set_points.sets.begin(), set_points.sets.end(), [](const SetPointSet& set) {
    return set.order_ok &&
           std::all_of(set.points.begin(), set.points.end(), [](const SetPoint& p) { return p.found(); });
  });
}

}  // namespace stallwright::cli
