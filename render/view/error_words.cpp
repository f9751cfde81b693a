// The worded answers of the debrief: how far off, and why.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "render/view/debrief_view.hpp"
#include "sim/report/number_text.hpp"

namespace stallwright::view {
namespace {

constexpr std::array<const char*, kParts> kFrom{"instruments", "air", "hold", "entry rate", "remainder"};
constexpr double kRight_kt = 0.05;  ///< rounds to nothing

}  // namespace

std::string off_words(const std::string& name, double error_kt) {
  if (!std::isfinite(error_kt)) return "not known";
  if (std::abs(error_kt) < kRight_kt) return "right to 0.1 kt";
  const bool slow = error_kt < 0.0;
  const char* word = name == "warning" ? (slow ? "late" : "early") : (slow ? "slow" : "fast");
  return fixed(std::abs(error_kt), 1) + " kt " + word;
}

std::string why_words(const std::array<double, kParts>& part_kt) {
  double sum = 0.0;
  std::array<std::size_t, kParts> order{};
  for (std::size_t i = 0; i < kParts; ++i) {
    order[i] = i;
    if (std::isfinite(part_kt[i])) sum += part_kt[i];
  }
  const auto size = [&](std::size_t i) { return std::isfinite(part_kt[i]) ? std::abs(part_kt[i]) : 0.0; };
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return size(a) > size(b); });
  const std::size_t most = order[0], second = order[1];
  if (size(most) < kRight_kt) return "";
  // Parts that cancel are told of: a small error is then luck.
  if (size(second) > 0.5 * size(most) && part_kt[most] * part_kt[second] < 0.0 &&
      std::abs(sum) < 0.6 * size(most))
    return std::string(kFrom[most]) + " and " + kFrom[second] + " partly cancel";
  if (size(second) > 0.8 * size(most))
    return "from " + std::string(kFrom[most]) + " and " + kFrom[second] + " alike";
  return "most of it from the " + std::string(kFrom[most]);
}

}  // namespace stallwright::view
