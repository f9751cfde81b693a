#pragma once
#include <bit>
#include <cmath>
#include <cstdint>

/// The few operations that elementary.hpp needs of a number type, here for double.
///
/// A SIMD lane type joins in by giving the same five overloads in its own namespace (they are found by
/// argument-dependent lookup, hence names that differ from those in elementary.hpp, which code calls as
/// math::...), the arithmetic operators, comparisons that yield a mask, `&`, `|` and `!` on masks, and a
/// constructor from double. Everything else in the state path is written on top of these.
namespace stallwright::math {

/// a where the condition holds, otherwise b. Both are always evaluated.
constexpr double select(bool condition, double a, double b) { return condition ? a : b; }

/// Correctly rounded square root (IEEE 754), so the same on every processor.
inline double square_root(double x) { return std::sqrt(x); }

/// Nearest integer, ties to even, for |x| < 2^51: adding 1.5 * 2^52 leaves no room for a fraction.
constexpr double round_to_integer(double x) {
  constexpr double kNoFraction = 6755399441055744.0;  // 1.5 * 2^52
  return (x + kNoFraction) - kNoFraction;
}

/// x * 2^k for an integral k in [-1022, 1023]. The sum leaves k + 1023, the biased exponent, in the low bits.
constexpr double scale_by_power_of_two(double x, double k) {
  constexpr double kNoFraction = 6755399441055744.0;  // 1.5 * 2^52
  const auto biased = std::bit_cast<std::uint64_t>(k + (kNoFraction + 1023.0));
  return x * std::bit_cast<double>(biased << 52);
}

/// A number as mantissa * 2^exponent.
template <class T>
struct SplitNumber {
  T mantissa;  ///< in [1, 2)
  T exponent;  ///< integral
};

/// Splits a positive normal number; anything else gives a meaningless (but defined) answer.
constexpr SplitNumber<double> split_exponent(double x) {
  const auto bits = std::bit_cast<std::uint64_t>(x);
  constexpr std::uint64_t kFraction = 0x000FFFFFFFFFFFFFu;
  constexpr std::uint64_t kOne = 0x3FF0000000000000u;
  constexpr std::uint64_t kTwoTo52 = 0x4330000000000000u;
  // Placing the exponent field in the fraction of 2^52 turns it into a double without an integer conversion.
  const double biased = std::bit_cast<double>(kTwoTo52 | ((bits >> 52) & 0x7FFu)) - 4503599627370496.0;
  return {std::bit_cast<double>((bits & kFraction) | kOne), biased - 1023.0};
}

}  // namespace stallwright::math
