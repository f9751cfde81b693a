#include "sim/cli/verification_listing.hpp"

#include <cmath>

#include "sim/cli/cli_common.hpp"
#include "sim/cli/text_table.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/verdict_text.hpp"

namespace stallwright::cli {
namespace {

/// An empty cell would be one to write in.
std::string kt_cell(double kt) { return std::isfinite(kt) ? fixed(kt, 1) : "-"; }

}  // namespace

std::string verification_listing(const VerificationDebrief& debrief) {
  const SortieSummary& s = debrief.page.summary;
  std::vector<std::vector<std::string>> rows;
  for (const VerifiedPoint& v : debrief.verification.points)
    rows.push_back({v.name, v.flap_deg == 0.0 ? "up" : fixed(v.flap_deg, 0) + "\u00b0",
                    verified_flight_words(v), tone_words(v), kt_cell(v.stall_kt), kt_cell(v.margin_kt),
                    verified_outcome(v)});
  std::string text =
      filled("", one_line(s.aircraft) + " (invented), " + one_line(s.card) + ". " + made_by(s) + ".");
  text += "\n" + text_table({"point", "flaps", "flown", "tone, kt", "stall, kt", "margin, kt", "in order?"},
                            {false, true, false, true, true, true, false}, rows);
  text += "\n" + filled("Verdict: ", verification_verdict(debrief));
  text += filled("Reason:  ", one_line(debrief.verification.sentence) + ".");
  return text + filled("Caution: ", cautions().front());
}

}  // namespace stallwright::cli
