#include "sim/cli/set_point_listing.hpp"

#include <cmath>

#include "sim/cli/cli_common.hpp"
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

std::string set_words(const SetPointSet& set) {
  std::string text = "  " + flap_words(set.flap_deg) + ", " + fixed(set.mass_kg, 0) +
                     " kg as entered: " + (set.order_ok ? "in order" : "NOT in order") + "\n";
  for (const SetPoint& point : set.points) {
    text += row("  " + one_line(point.name), plus_minus(point.ratio, expanded_ratio(point), 4),
                fixed(point.u, 5), dof_words(point.dof), fixed(point.speed_kt, 1));
    for (const std::string& flag : point.flags) text += "      flagged: " + one_line(flag) + "\n";
  }
  for (const std::string& note : set.order_notes) text += "    order: " + one_line(note) + "\n";
  return text;
}

}  // namespace

std::string set_point_listing(const SetPoints& set_points, const std::string& sensors) {
  std::string text = one_line(set_points.card) + ", from the log alone; " + sensors + " sensors.\n\n";
  text += row("set point", "ratio \u00b1 95 %", "u", "dof", "speed, kt");
  text += "  " + std::string(74, '-') + "\n";
  for (const SetPointSet& set : set_points.sets) text += set_words(set);
  for (const std::string& warning : set_points.warnings) text += filled("Warning: ", warning);
  return text + "\n" + filled("Caution: ", cautions().front());
}

}  // namespace stallwright::cli
