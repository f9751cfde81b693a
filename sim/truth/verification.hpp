#pragma once
#include <string>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/sortie.hpp"
#include "sim/truth/static_response.hpp"

namespace stallwright {

/// Set points as taught, and what is known of how.
struct Taught {
  SetPoints set_points;
  PowerRule power =
      PowerRule::level;  ///< that the warnings were taught with, where the card of then is not at hand
};

/// The unit that sounds at the taught warnings; without warnings it never does.
WarningUnit unit_for(const SetPoints& taught);

/// One point of a verifying card, held against the truth.
struct VerifiedPoint {
  std::size_t card_point = 0;
  std::string name;
  double flap_deg = 0.0, taught_flap_deg = kNone;
  PowerRule power = PowerRule::idle;
  double bank_deg = 0.0;
  bool slow_run = false;     ///< else a steady point, on which the tone is to be silent
  bool in_use = false;       ///< a warning was taught with these flaps
  double tone_kt = kNone;    ///< slow run: indicated speed as the tone started
  double stall_kt = kNone;   ///< indicated speed of quasi-static maximum lift in this flight, at this mass
  double margin_kt = kNone;  ///< between them
  double taught_kt = kNone;  ///< the taught flight only: speed of the warning, at this mass
  int nuisance_tones = 0;    ///< steady point: how often the tone started, or stood from the start
  bool ok = false;
  bool set_point_off = false;  ///< not ok, and by the tone's own doing: the warning wants to be taught again
  std::string text;            ///< what came of it, in words
};

struct Verification {
  std::vector<VerifiedPoint> points;
  bool pass = false;
  std::vector<std::string>
      fly_again;  ///< set points to teach again, with their flaps; empty: fly the card again
  std::string sentence;
};

/// Indicated speed of quasi-static maximum lift in the flight of every slow run of a card, kt; NaN at other points. Once for an
/// aeroplane as loaded.
std::vector<double> stalls_of_runs(const TestCard& card, const Aircraft& aircraft, const StillAir& air);

/// A pass asks of every point in use:
///   slow run       the tone starts on the run, `wanted_margin_kt` of the card or more above the stall
///   taught flight  (a slow run with the flaps and power of the teaching, wings level) and within `tone_band_kt` of the
///                  speed it was taught at
///   steady point   no tone at all
/// A point that could not be flown fails, and a run whose bank before the tone was more than 10 deg off the card's. At least one slow run must be in use.
///   stalls_kt  stalls_of_runs
Verification verify(const std::vector<LogRow>& rows, const TestCard& card, const AircraftType& type,
                    const std::vector<double>& stalls_kt, const Taught& taught);

}  // namespace stallwright
