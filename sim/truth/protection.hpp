#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/test_card.hpp"
#include "sim/truth/static_response.hpp"

namespace stallwright {

/// What the recorded warning protects: how far above the stall it comes in flight other than the one it was taught in.
/// Truth: steady flight with the installed probe, no lag, noise or drift; the stall at quasi-static maximum lift.
struct ProtectionRow {
  double flap_deg = 0.0;
  double taught_flap_deg = 0.0;  ///< flap setting of the set whose warning is used
  PowerRule power = PowerRule::idle;
  double bank_deg = 0.0;
  bool heavy = false;  ///< at the greatest mass; else with the pilot alone
  double mass_kg = kNone;
  double warning_kt = kNone;  ///< indicated speed at which the recorded ratio is reached; none: see `note`
  double stall_kt = kNone;    ///< indicated speed of maximum lift in this flight
  double margin_kt = kNone;   ///< their difference; negative: the wing stalls without a warning
  bool in_use = false;        ///< within what the card says that the warning is for
  std::string note;           ///< why there is no number
};

struct Protection {
  std::vector<ProtectionRow> rows;  ///< by flap setting, power, bank, mass
  double taught_margin_kt = kNone;  ///< in the flight that the warning was taught in, at the mass flown
  std::string sentence;             ///< the least row in use, in plain words; empty without rows
  /// The row in use with the least margin, or none.
  const ProtectionRow* least() const;
};

/// Idle and level power, each flap setting of the type, bank 0, 30 and 45 deg, the pilot alone and the greatest mass,
/// for every recorded warning; a flap setting without a set of its own is protected by the nearest one that has. In use
/// are rows of the card's own flap settings up to the card's `protected_bank_deg`.
///   aircraft  as flown, for what was taught
Protection protection(const Aircraft& aircraft, std::uint64_t airframe_seed, const SetPoints& measured,
                      const TestCard& card, const StillAir& air);

/// One flight of the table: where a warning ratio comes in it, and where the wing stalls.
///   aircraft  as loaded
ProtectionRow protected_flight(const Aircraft& aircraft, std::size_t flap_setting, PowerRule power,
                               double bank_deg, double warning_ratio, const StillAir& air);

/// A set that would be kept is flown again, with a faster warning, where the least row in use gives less margin than the
/// card wants.
void heed_protection(Judgement& judgement, const Protection& protection, const TestCard& card);

/// Mass properties of the two ends: the pilot alone (first load station at its usual load, the others empty), moved
/// into the envelope if it is outside, and the greatest mass at the centre of gravity as loaded, likewise.
MassProperties light_mass(const AircraftType& type);
MassProperties heavy_mass(const AircraftType& type, double cg_aft_m);

}  // namespace stallwright
