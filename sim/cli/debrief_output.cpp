#include "sim/cli/debrief_output.hpp"

#include <iostream>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "aircraft/input_error.hpp"
#include "sim/cli/cli_common.hpp"
#include "sim/cli/verification_listing.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/report/table.hpp"

namespace stallwright::cli {

int print_debrief(const Debrief& debrief, const std::filesystem::path& folder, bool json) {
  const SortieOutcome& outcome = debrief.flown.outcome;
  if (json) {
    auto text = nlohmann::ordered_json::parse(judgement_text(debrief));
    text["folder"] = folder.string();
    std::cout << json_text(text);
  } else {
    std::cout << result_table(debrief.page.judgement, debrief.page.summary);
    if (!debrief.page.protection.sentence.empty())
      std::cout << filled("Protects: ", debrief.page.protection.sentence);
    if (!debrief.flown.ended)
      std::cout << "The sortie was cut off in the air; what was recorded until then is judged.\n";
    if (!outcome.failure.empty()) std::cout << "The sortie ended early: " << outcome.failure << ".\n";
    std::cout << "Debrief: " << (folder / "debrief.html").string() << '\n';
    std::cout << "To keep: " << (folder / "record.html").string() << '\n';
  }
  if (outcome.failure_kind == SortieOutcome::Failure::not_finite)
    throw std::runtime_error(folder.string() + ": " + outcome.failure);
  const bool keep = debrief.page.judgement.verdict == Verdict::keep;
  return keep && debrief.flown.ended && outcome.finished ? kYes : kNo;
}

int print_verification(const VerificationDebrief& debrief, const std::filesystem::path& folder, bool json) {
  const SortieOutcome& outcome = debrief.flown.outcome;
  if (json) {
    auto text = nlohmann::ordered_json::parse(verification_to_json(debrief));
    text["folder"] = folder.string();
    std::cout << json_text(text);
  } else {
    std::cout << verification_listing(debrief);
    if (!debrief.flown.ended)
      std::cout << "The sortie was cut off in the air; what was recorded until then is judged.\n";
    if (!outcome.failure.empty()) std::cout << "The sortie ended early: " << outcome.failure << ".\n";
    std::cout << "Page:    " << (folder / "verification.html").string() << '\n';
  }
  if (outcome.failure_kind == SortieOutcome::Failure::not_finite)
    throw std::runtime_error(folder.string() + ": " + outcome.failure);
  return debrief.verification.pass && debrief.flown.ended && outcome.finished ? kYes : kNo;
}

int debrief_and_print(const std::filesystem::path& folder, bool json, const Who& who) {
  const bool verifies = read_sortie(folder).config.card.verifies;
  if (verifies && !who.empty()) throw InputError(kNoRecord);
  if (verifies) return print_verification(verify_folder(folder), folder, json);
  return print_debrief(debrief_folder(folder, who), folder, json);
}

}  // namespace stallwright::cli
