#pragma once
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stallwright {

/// What a reduction can use of a recorder's log.
enum class Quantity : std::size_t {
  time,
  airspeed,
  impact_pressure,
  probe_ratio,
  probe_pressure,
  pitch,
  bank,
  pitch_rate,
  normal,
  forward,
  right,
  altitude,
  stick,
  flap,
  mass,
  mark,
};
inline constexpr std::size_t kQuantities = 16;

/// One unit that a column may be in, and the SI value of one of it.
struct LogUnit {
  const char* name;
  double si;
};

/// How a quantity is written in a map and what of it makes sense, SI.
struct QuantityKind {
  const char* key;             ///< its table in the map: [column.KEY]
  std::vector<LogUnit> units;  ///< none: a plain number
  const char* positive;        ///< which way our numbers count; "" where there is no other way
  const char* negative;
  double low, high;  ///< SI
};

/// The kinds in the order of Quantity.
const std::vector<QuantityKind>& quantity_kinds();
inline const QuantityKind& kind_of(Quantity quantity) {
  return quantity_kinds()[static_cast<std::size_t>(quantity)];
}

/// A number as recorders write it: blanks around it and a plus sign are fine; with `comma` a decimal comma. None for
/// anything else, infinities and NaN included.
std::optional<double> number_in(std::string_view field, bool comma);

/// A field that stands for 'no value': empty, or one of the few words that recorders put there (-, --, ---, nan, n/a).
bool says_nothing(std::string_view field);

/// Seconds since midnight of hh:mm:ss with or without decimals; a date before it, after a blank or a T, and a Z behind
/// it are passed over. None for anything else.
std::optional<double> clock_seconds(std::string_view field);

/// hh:mm:ss.s of seconds since some midnight.
std::string clock_text(double seconds);

}  // namespace stallwright
