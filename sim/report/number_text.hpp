#pragma once
#include <string>

namespace stallwright {

/// What stands where a number does not exist; "nan" is never printed.
inline constexpr const char* kNoNumber = "\u2013";

/// A number with `decimals` digits after the point, "." always, no "-0.0"; kNoNumber when it is not finite or
/// too large to be meant (1e15 and more).
std::string fixed(double value, int decimals);

/// The same with its sign, "+0.3", for differences. A zero has none.
std::string signed_fixed(double value, int decimals);

/// `fixed` and `signed_fixed` for the page: a true minus sign instead of the hyphen.
std::string page_fixed(double value, int decimals);
std::string page_signed(double value, int decimals);

/// value ± expanded, both with the same decimals; kNoNumber alone when there is no value.
std::string plus_minus(double value, double expanded, int decimals);

/// An address-like number, as a flap setting in degrees: no needless decimals.
std::string shortest(double value);

}  // namespace stallwright
