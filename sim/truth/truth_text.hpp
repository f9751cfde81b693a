#pragma once
#include <string>

namespace stallwright {

/// "3.1 kt"
std::string knots_text(double value_kt);

/// "flaps up", "flaps 35°"
std::string flaps_text(double flap_deg);

}  // namespace stallwright
