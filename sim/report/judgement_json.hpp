#pragma once
#include <string>
#include <string_view>

#include "sim/reduction/set_points.hpp"
#include "sim/truth/protection.hpp"

namespace stallwright {

/// The file judgement.json: the shape of set-points.json (sim/reduction/set_points_json.hpp) with the truth
/// beside it.
///
///   format "stallwright-judgement-1"; card, aircraft; verdict "keep", "fly_again" or "wait_for_better_air",
///   reason, fly_again[] (names of points); sets[] with flap_deg, mass_kg, order_ok, stall_speed_kt,
///   points[]:
///     everything a set point has, and true_ratio, true_speed_kt, true_alpha_deg, measured_speed_kt,
///     error_ratio, error_deg, error_kt, error_split_kt (sensor, air, hold, entry_rate, remainder; they add up to error_kt,
///     sim/truth/error_split.hpp), expanded_kt, margin_kt, true_margin_kt, covered;
///     each of `readings` has true_ratio, true_speed_kt, error_ratio, error_deg, error_kt, error_split_kt as well;
///   protection: taught_margin_kt, least_margin_kt, sentence, rows[] with flap_deg, taught_flap_deg, power, bank_deg,
///     mass_kg, warning_kt, stall_kt, margin_kt, in_use, note (sim/truth/protection.hpp).
///
/// Errors are measured less true: ratio and degrees positive where the warning would come late, knots
/// positive where it would come early. A number that does not exist is null.
inline constexpr std::string_view kJudgementFormat = "stallwright-judgement-1";

std::string judgement_to_json(const Judgement& judgement, const Protection& protection,
                              const std::string& card, const std::string& aircraft);

/// `keep`, `fly_again`, `wait_for_better_air`.
std::string_view verdict_key(Verdict verdict);

}  // namespace stallwright
