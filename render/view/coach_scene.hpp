#pragma once
// Shared by the parts of the coach's view: what they all look at.
#include <cmath>

#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"
#include "render/view/coach_view.hpp"
#include "sim/sortie/director_rules.hpp"

namespace stallwright::view {

struct CoachScene {
  const Snapshot& seen;
  const TestCard& card;
  const AircraftType& type;
  const TestPoint& point;
  const PointSpeeds& speeds;
  const KeyNames& keys;
  double working_ft;  ///< indicated

  double speed_kt() const { return seen.readings.indicated_airspeed_mps / kKnot; }
  double height_ft() const { return seen.readings.indicated_altitude_m / kFoot; }
  double climb_fpm() const { return seen.readings.vertical_speed_mps / kFootPerMinute; }
  double bank_deg() const { return seen.readings.bank_rad / math::kDegree; }
  double wanted_climb_fpm() const { return point.power == PowerRule::descent ? -point.descent_fpm : 0.0; }
  double set_up_kt() const { return speeds.set_up_kt(); }
  /// Bands before the record. A slow run may begin anywhere near its speed: that is the director's rule, not the card's.
  double bank_band_deg() const {
    return point.is_steady() ? point.bands.bank_deg : director::kEntryBank_rad / math::kDegree;
  }
  double slow_band_kt() const {
    return point.is_steady() ? set_up_kt() - speeds.band_low_kt : director::kEntrySpeedBand_kt;
  }
  double fast_band_kt() const {
    return point.is_steady() ? speeds.band_high_kt - set_up_kt() : director::kEntrySpeedBand_kt;
  }
};

/// One line of what hands do next: the first thing that is wrong, by the key that puts it right.
void say_guide(const CoachScene& scene, std::string& text);

}  // namespace stallwright::view
