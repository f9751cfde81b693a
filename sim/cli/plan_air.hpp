#pragma once
#include <string>
#include <vector>

#include "sim/air/convection.hpp"
#include "sim/cli/plan_floor.hpp"

namespace stallwright::cli {

/// One thing about the weather to be read off before and during the climb, with the number that it must meet. What is
/// observed the pilot writes beside it.
struct AirItem {
  std::string what;    ///< "surface wind"
  std::string wanted;  ///< "10 kt or less"
  std::string reason;
  std::string basis;  ///< "common practice", a regulation, or how we know
};

/// What the list is made from: the card, its ground, and the library's fair-weather day for the sun's part.
struct AirNeeds {
  TestCard card;
  ConvectiveDay fair_day;
};

/// Hours after sunrise at which the stirred layer of a fair-weather day, with the fifth above it that its thermals
/// overshoot into, reaches a height above ground; NaN where it never does before sunset.
double stirred_after_sunrise_h(const ConvectiveDay& day, double height_ft);

std::vector<AirItem> air_to_wait_for(const AirNeeds& needs);

}  // namespace stallwright::cli
