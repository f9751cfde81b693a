#pragma once
#include <filesystem>
#include <string>
#include <string_view>

#include "sim/report/debrief_page.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/truth/verification.hpp"

namespace stallwright {

/// The file verification.json.
///   format "stallwright-verification-1"; aircraft, card; pass; fly_again[]; sentence; unit: smoothing_s, delay_s,
///   hysteresis_ratio, warnings[] (flap_deg, ratio); points[]: name, flap_deg, taught_flap_deg, power, bank_deg, slow_run,
///   in_use, tone_kt, stall_kt, margin_kt, taught_kt, nuisance_tones, ok, text (sim/truth/verification.hpp)
/// A number that does not exist is null.
inline constexpr std::string_view kVerificationFormat = "stallwright-verification-1";

/// What a verifying sortie came to, and what its page shows.
struct VerificationDebrief {
  FlownSortie flown;
  DebriefInput page;  ///< without set points or judgement
  Verification verification;
};

/// Reads a folder that was flown with a verifying card. Throws InputError as make_debrief does, and where nothing was
/// taught.
VerificationDebrief make_verification(const std::filesystem::path& folder);

/// Makes verification.json and verification.html in it. Same folder, same bytes.
VerificationDebrief verify_folder(const std::filesystem::path& folder);

std::string verification_to_json(const VerificationDebrief& debrief);
std::string verification_page(const VerificationDebrief& debrief);  ///< as debrief_page

/// The words that page and terminal share.
std::string verification_verdict(const VerificationDebrief& debrief);  ///< "Pass.", "Teach again: ..."
std::string verified_flight_words(const VerifiedPoint& point);         ///< "idle, 30° of bank"
std::string verified_outcome(const VerifiedPoint& point);              ///< "good", "NO", "not judged"
std::string tone_words(const VerifiedPoint& point);  ///< speed at the tone, "none", "2 tones"

}  // namespace stallwright
