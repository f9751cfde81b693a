#pragma once
#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "sim/reduction/log_units.hpp"
#include "sim/reduction/set_points.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Where one quantity stands in a log:  SI = factor * number + offset.
struct MappedColumn {
  std::string name, unit;
  double factor = 1.0, offset = 0.0;
};

/// A moment as a map gives it: seconds of the log's time column, or a time of day.
struct MapTime {
  double s = kNone;
  bool clock = false;
  bool given() const { return std::isfinite(s); }
};

/// What a column of marks says.
enum class MarkMeaning {
  recording,  ///< not zero while recording; the stretches follow the card's points and repeats
  point,      ///< number of the card's point while recording, otherwise zero
};

struct GivenRecord {
  std::size_t point = 0;  ///< index in the card
  MapTime begin, end, at_break;
};
struct GivenTarget {
  std::size_t point = 0;
  double speed_kt = kNone, mass_kg = kNone;  ///< without a mass the speed holds as flown
};
struct FlapChange {
  MapTime from;  ///< not given: from the beginning
  double deg = 0.0;
};

/// How to read the log of a recorder: assets/columns/README.md says what the file holds.
struct ColumnMap {
  std::string file;
  std::size_t header_line = 1, data_line = 2;
  char separator = ',';
  bool decimal_comma = false, clock = false;
  std::array<std::optional<MappedColumn>, kQuantities> columns;
  MarkMeaning mark = MarkMeaning::recording;
  double stick_forward = kNone, stick_aft = kNone;  ///< the column's numbers at the two stops
  double mass_kg = kNone, take_off_mass_kg = kNone, fuel_kgph = 0.0;
  MapTime take_off;
  std::vector<double> flaps_deg;  ///< of the card's flap settings
  std::vector<FlapChange> flaps;
  std::vector<GivenTarget> targets;
  std::vector<GivenRecord> records;

  const std::optional<MappedColumn>& column(Quantity quantity) const {
    return columns[static_cast<std::size_t>(quantity)];
  }
  bool has(Quantity quantity) const { return column(quantity).has_value(); }
};

/// Reads and checks a map against the card that was flown. Throws InputError, one line with file, line, key, expected
/// and found; for an unknown key, unit or point the nearest known one is named.
ColumnMap load_column_map(const std::filesystem::path& file, const TestCard& card);

}  // namespace stallwright
