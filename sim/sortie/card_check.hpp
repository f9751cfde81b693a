#pragma once
#include <string>
#include <vector>

#include "aircraft/aircraft_type.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Holds a card against an aeroplane, at the reference mass: one sentence for each thing that keeps it from
/// being flown, in the order of the points; empty when all is well. Looked at: the flap setting exists; the
/// manual permits stalls; with its upper band a speed stays kBelowFlapLimit_kt below its flap limit and,
/// flaps up, not above V_NO; with its lower band it stays above the book stall; a stall is entered with the
/// room that 14 CFR 23.201(b), amendment 62, asks for; speeds fall through a set, kLeastGap_kt or more from
/// point to point.
std::vector<std::string> card_check(const TestCard& card, const AircraftType& type);

/// Neighbours in a set closer than this cannot be told apart by a hand that holds a speed to a knot or two.
inline constexpr double kLeastGap_kt = 2.0;

}  // namespace stallwright
