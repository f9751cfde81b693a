#include "sim/truth/truth_text.hpp"

#include <cmath>
#include <cstdio>

namespace stallwright {

std::string knots_text(double value_kt) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f kt", value_kt);
  return text;
}

std::string flaps_text(double flap_deg) {
  return flap_deg == 0.0 ? "flaps up" : "flaps " + std::to_string(std::lround(flap_deg)) + "\u00b0";
}

}  // namespace stallwright
