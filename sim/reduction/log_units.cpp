#include "sim/reduction/log_units.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>

#include "aircraft/math/units.hpp"
#include "sim/motion/flight.hpp"

namespace stallwright {
namespace {

constexpr double kDegree = 0.017453292519943295;
constexpr double kInfinite = 1e300;

// Knot, foot, mile and pound are exact by definition, the pound-force per square inch follows from them. The inch of
// water is the conventional one, water of 1000 kg/m3 under standard gravity: 25.4 mm of it.
const std::vector<LogUnit> kSpeeds = {
    {"kt", 1852.0 / 3600.0}, {"m/s", 1.0}, {"km/h", 1.0 / 3.6}, {"mph", 0.44704}};
const std::vector<LogUnit> kPressures = {{"Pa", 1.0},       {"hPa", 100.0},       {"mbar", 100.0},
                                         {"kPa", 1000.0},   {"inH2O", 249.08891}, {"mmH2O", 9.80665},
                                         {"psi", 6894.7573}};
const std::vector<LogUnit> kAngles = {{"deg", kDegree}, {"rad", 1.0}};
const std::vector<LogUnit> kRates = {{"deg/s", kDegree}, {"rad/s", 1.0}};
const std::vector<LogUnit> kAccelerations = {{"g", kStandardGravity_mps2}, {"m/s2", 1.0}, {"ft/s2", 0.3048}};
const std::vector<LogUnit> kTimes = {{"s", 1.0}, {"ms", 1e-3}, {"min", 60.0}, {"clock", 1.0}};

const std::vector<QuantityKind> kKinds = {
    {"time", kTimes, "", "", -kInfinite, kInfinite},
    {"airspeed", kSpeeds, "", "", -20.0 * kKnot, 500.0 * kKnot},
    {"impact_pressure", kPressures, "", "", -2000.0, 40000.0},
    {"probe_ratio", {}, "slow", "fast", -kInfinite, kInfinite},
    {"probe_pressure", kPressures, "slow", "fast", -100000.0, 100000.0},
    {"pitch", kAngles, "up", "down", -90.5 * kDegree, 90.5 * kDegree},
    {"bank", kAngles, "right", "left", -360.5 * kDegree, 360.5 * kDegree},
    {"pitch_rate", kRates, "up", "down", -720.0 * kDegree, 720.0 * kDegree},
    {"normal", kAccelerations, "up", "down", -200.0, 200.0},
    {"forward", kAccelerations, "forward", "aft", -200.0, 200.0},
    {"right", kAccelerations, "right", "left", -200.0, 200.0},
    {"altitude", {{"ft", 0.3048}, {"m", 1.0}}, "", "", -700.0, 18288.0},
    {"stick", {}, "", "", -kInfinite, kInfinite},
    {"flap", kAngles, "", "", -10.0 * kDegree, 90.0 * kDegree},
    {"mass", {{"kg", 1.0}, {"lb", 0.45359237}}, "", "", 50.0, 20000.0},
    {"mark", {}, "", "", -kInfinite, kInfinite},
};

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

/// Digits and at most one point, nothing else; -1 for what is not.
double plain_number(std::string_view digits) {
  if (digits.empty() || digits.find_first_not_of("0123456789.") != std::string_view::npos) return -1.0;
  return number_in(digits, false).value_or(-1.0);
}

}  // namespace

const std::vector<QuantityKind>& quantity_kinds() { return kKinds; }

std::optional<double> number_in(std::string_view field, bool comma) {
  std::string digits(trimmed(field));
  if (digits.size() > 1 && digits.front() == '+' && digits[1] != '-') digits.erase(0, 1);
  if (comma) std::replace(digits.begin(), digits.end(), ',', '.');
  double value = 0.0;
  const char* const end = digits.data() + digits.size();
  const std::from_chars_result result = std::from_chars(digits.data(), end, value);
  if (digits.empty() || result.ec != std::errc() || result.ptr != end || !std::isfinite(value)) return {};
  return value;
}

bool says_nothing(std::string_view field) {
  std::string word(trimmed(field));
  std::transform(word.begin(), word.end(), word.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return word.empty() || word == "nan" || word == "n/a" || word == "na" || word == "null" ||
         word.find_first_not_of('-') == std::string::npos;
}

std::optional<double> clock_seconds(std::string_view field) {
  std::string_view text = trimmed(field);
  const std::size_t date = text.find_last_of(" T");
  if (date != std::string_view::npos) text.remove_prefix(date + 1);
  if (!text.empty() && text.back() == 'Z') text.remove_suffix(1);
  const std::size_t first = text.find(':');
  const std::size_t second = first == std::string_view::npos ? first : text.find(':', first + 1);
  if (second == std::string_view::npos) return {};
  const double hours = plain_number(text.substr(0, first)),
               minutes = plain_number(text.substr(first + 1, second - first - 1)),
               seconds = plain_number(text.substr(second + 1));
  const auto whole = [](double value, double most) {
    return value >= 0.0 && value <= most && value == std::floor(value);
  };
  if (!whole(hours, 24.0) || !whole(minutes, 59.0) || seconds < 0.0 || seconds >= 61.0) return {};
  return hours * 3600.0 + minutes * 60.0 + seconds;
}

std::string clock_text(double seconds) {
  const long tenths = std::lround(std::fmod(std::max(seconds, 0.0), 86400.0) * 10.0) % 864000;
  char text[32];
  std::snprintf(text, sizeof text, "%02ld:%02ld:%02ld.%ld", tenths / 36000, tenths / 600 % 60,
                tenths / 10 % 60, tenths % 10);
  return text;
}

}  // namespace stallwright
