#pragma once
#include <string>
#include <vector>

#include "sim/reduction/flight_log.hpp"
#include "sim/reduction/own_log.hpp"

namespace stallwright {

/// A stretch of a log that is a record of one point of the card.
struct ChosenRecord {
  std::size_t point = 0;  ///< index in the card
  int repeat = 1;         ///< in order of time
  double begin_s = 0.0, end_s = 0.0;
  double break_s = kNone;  ///< where the map gives it
};

/// Those that the map lists. Throws InputError for one that does not lie within the log.
std::vector<ChosenRecord> given_records(const ColumnMap& map, const TestCard& card, const OwnLog& log);

/// Those that the column of marks shows. Throws InputError for a mark that the card has no point for, and where marks
/// without numbers are not as many as the card has points and repeats.
std::vector<ChosenRecord> marked_records(const ColumnMap& map, const TestCard& card, const OwnLog& log);

/// Target of a steady point at a mass, indicated, kt: the map's, by the root of mass over its mass where it gives one;
/// else the card's own speed. Throws InputError where neither has one.
double own_target_kt(const ColumnMap& map, const TestCard& card, std::size_t point, double mass_kg);

/// Mass that stands in at a point where nobody gave one: its target's, else any target's. Throws InputError for none.
double stand_in_mass_kg(const ColumnMap& map, std::size_t point);

/// The rows from begin to end.
Record record_of(const OwnLog& log, const ChosenRecord& chosen);

/// Marks the rows of the records as a sortie's log has them: point, repeat, recording, target, flaps, mass and in_band.
/// A record with a gap in it, or shorter than a second, is left out and said so among the warnings.
void mark_records(const std::vector<ChosenRecord>& records, const ColumnMap& map, const TestCard& card,
                  OwnLog& log);

/// A list of [[record]] tables to check, correct and put at the end of a map.
std::string records_toml(const std::vector<ChosenRecord>& records, const TestCard& card, const OwnLog& log);

}  // namespace stallwright
