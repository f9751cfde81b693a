#pragma once
#include <filesystem>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "sim/reduction/set_points.hpp"

namespace stallwright {

/// The file set-points.json: what `reduce` makes of one log, without any truth.
///
///   format "stallwright-set-points-1"; card, aircraft, warnings[]; sets[], each with
///     flap_deg, mass_kg, order_ok, order_notes[], slope_per_x, points[], each with
///       name, ratio, u, dof, interval_95 [low, high], speed_kt, target_kt, slope_per_kt, card_point
///       budget[]: name, kind "A" or "B", u_ratio, dof, shared ("record", "sortie" or "installation": what the effect is the
///       same for), note;  flags[]
///       readings: spot, window_mean, lift_corrected; for the stall break, peak, max_lift; each with
///         ratio, u, type_a_u, dof
///       windows[]: point, repeat, attempt, begin_s, end_s, button_s, left_band, forced, and for stalls
///         broke, break_s, break_sign, entry_rate_ktps;  where sorties were combined: sortie, from 1
///
/// A number that does not exist is null. A `dof` of null beside a known uncertainty means infinitely many.
/// Which readings a point has says whether it is the stall.
inline constexpr std::string_view kSetPointsFormat = "stallwright-set-points-1";

std::string set_points_to_json(const SetPoints& set_points);

/// Reads it back. The keys above up to `readings` must be there, save target_kt, slope_per_kt, card_point,
/// order_notes, slope_per_x and warnings; keys that are not listed are passed over. Throws InputError, one
/// line: `FILE:LINE: expected ..., found ...` where the text is no JSON, else `FILE: sets[0].points[2].u:
/// expected ...`.
SetPoints set_points_from_json(std::string_view text, const std::string& file);

/// The same from a file; InputError too when it is missing or a folder.
SetPoints read_set_points(const std::filesystem::path& file);

/// One point as it stands in `points[]`; judgement.json adds the truth to it.
nlohmann::ordered_json set_point_json(const SetPoint& point);

/// A number, or null when it is not finite.
nlohmann::ordered_json number_json(double value);

/// Indented text with a line end. Bytes that are not UTF-8 become the replacement character.
std::string json_text(const nlohmann::ordered_json& value);

}  // namespace stallwright
