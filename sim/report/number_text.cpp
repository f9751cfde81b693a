#include "sim/report/number_text.hpp"

#include <array>
#include <charconv>
#include <cmath>

namespace stallwright {
namespace {

constexpr double kLargest = 1e15;

std::string with_minus_sign(std::string text) {
  if (!text.empty() && text.front() == '-') text.replace(0, 1, "\u2212");
  return text;
}

}  // namespace

std::string fixed(double value, int decimals) {
  if (!(std::abs(value) < kLargest)) return kNoNumber;
  std::array<char, 64> buffer;
  const auto result =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  std::string text(buffer.data(), result.ptr);
  // What rounds to zero has no sign.
  if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
  return text;
}

std::string signed_fixed(double value, int decimals) {
  std::string text = fixed(value, decimals);
  const bool nonzero = text.find_first_of("123456789") != std::string::npos;
  return value > 0.0 && nonzero ? "+" + text : text;
}

std::string page_fixed(double value, int decimals) { return with_minus_sign(fixed(value, decimals)); }

std::string page_signed(double value, int decimals) { return with_minus_sign(signed_fixed(value, decimals)); }

std::string plus_minus(double value, double expanded, int decimals) {
  if (!std::isfinite(value)) return kNoNumber;
  return fixed(value, decimals) + " \u00b1 " + fixed(expanded, decimals);
}

std::string shortest(double value) {
  if (!(std::abs(value) < kLargest)) return kNoNumber;
  std::array<char, 64> buffer;
  const auto result =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::general, 6);
  return {buffer.data(), result.ptr};
}

}  // namespace stallwright
