#pragma once
#include <array>

#include "aircraft/toml_reader.hpp"
#include "sim/sortie/test_card.hpp"

/// The numbers of a test card: key, unit and range in the file, member of the struct. A card stays in the
/// units a pilot reads, so each unit here counts as one of itself. assets/cards/README.md says what each
/// number means; a test holds the two together.
namespace stallwright::card_fields {

inline constexpr FileUnit kKnots{"kt", 1.0}, kFeet{"ft", 1.0}, kFeetPerMinute{"ft/min", 1.0},
    kSeconds{"s", 1.0}, kDegrees{"deg", 1.0}, kGs{"g", 1.0}, kKnotsPerSecond{"kt/s", 1.0};

// The floor may not be lower than 500 ft: no card should be an invitation to stall beneath that.
inline constexpr std::array kCardFields{
    Field<TestCard>{{"working_height_ft", kFeet, 1000, 20000}, &TestCard::working_height_ft},
    Field<TestCard>{{"terrain_ft", kFeet, -1400, 15000}, &TestCard::terrain_ft},
    Field<TestCard>{{"floor_ft", kFeet, 500, 15000}, &TestCard::floor_ft},
    Field<TestCard>{{"order_gap", unit::kNone, 0, 5}, &TestCard::order_gap},
    Field<TestCard>{{"wanted_margin_kt", kKnots, 1, 30}, &TestCard::wanted_margin_kt},
    Field<TestCard>{{"tone_band_kt", kKnots, 0.5, 20}, &TestCard::tone_band_kt},
    Field<TestCard>{{"protected_bank_deg", kDegrees, 0, 60}, &TestCard::protected_bank_deg},
    Field<TestCard>{{"wanted_uncertainty_kt", kKnots, 0.1, 10}, &TestCard::wanted_uncertainty_kt},
};
inline constexpr double kLeastHeightAboveFloor_ft = 500.0;  ///< room for one stall and its recovery

inline constexpr std::array kTimeFields{
    Field<TestPoint>{{"settle_s", kSeconds, 1, 60}, &TestPoint::settle_s},
    Field<TestPoint>{{"record_s", kSeconds, 1, 120}, &TestPoint::record_s},
    Field<TestPoint>{{"timeout_s", kSeconds, 10, 900}, &TestPoint::timeout_s},
};

inline constexpr std::array kBandFields{
    Field<Bands>{{"speed_low_kt", kKnots, 0.5, 20}, &Bands::speed_low_kt},
    Field<Bands>{{"speed_high_kt", kKnots, 0.5, 20}, &Bands::speed_high_kt},
    Field<Bands>{{"altitude_ft", kFeet, 20, 1000}, &Bands::altitude_ft},
    Field<Bands>{{"vertical_speed_fpm", kFeetPerMinute, 50, 2000}, &Bands::vertical_speed_fpm},
    Field<Bands>{{"bank_deg", kDegrees, 1, 30}, &Bands::bank_deg},
    Field<Bands>{{"slip_g", kGs, 0.01, 0.3}, &Bands::slip_g},
    Field<Bands>{{"entry_rate_ktps", kKnotsPerSecond, 0.05, 3}, &Bands::entry_rate_ktps},
};

inline constexpr NumberField kFlapSetting{"flap_setting", unit::kNone, 0, 5};
inline constexpr NumberField kDescent{"descent_fpm", kFeetPerMinute, 50, 1500};
inline constexpr NumberField kRepeats{"repeats", unit::kNone, 1, 20};
inline constexpr NumberField kAttempts{"attempts", unit::kNone, 1, 20};
inline constexpr NumberField kTurnBank{"turn_bank_deg", kDegrees, 10, 45};
inline constexpr NumberField kFromAboveStall{"from_above_stall_kt", kKnots, 4, 100};
inline constexpr NumberField kToAboveStall{"to_above_stall_kt", kKnots, 2, 90};

/// The six ways of saying what to fly. A point has exactly one of these keys.
struct TargetField {
  NumberField in_file;
  TargetKind kind;
};
inline constexpr std::array kTargetFields{
    TargetField{{"speed_kt", kKnots, 30, 250}, TargetKind::speed},
    TargetField{{"stall_multiple", unit::kNone, 1.05, 3}, TargetKind::stall_multiple},
    TargetField{{"above_stall_kt", kKnots, 2, 60}, TargetKind::stall_margin},
    TargetField{{"below_v_fe_kt", kKnots, 1, 60}, TargetKind::below_flap_limit},
    TargetField{{"slow_to_break_ktps", kKnotsPerSecond, 0.2, 6}, TargetKind::slow_to_break},
    TargetField{{"slow_through_ktps", kKnotsPerSecond, 0.2, 3}, TargetKind::slow_through},
};

}  // namespace stallwright::card_fields
