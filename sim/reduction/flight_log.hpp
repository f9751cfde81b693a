#pragma once
#include <filesystem>
#include <vector>

#include "sim/reduction/set_points.hpp"
#include "sim/sortie/log_row.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// A recorder's log read back: rows in time order.
struct FlightLog {
  std::vector<LogRow> rows;
  std::vector<std::string> warnings;  ///< a line cut short at the end, for instance
};

/// Reads log.csv. Throws InputError with one line (file, line, expected, found) for anything that is not such a log,
/// or that does not fit the card (a point number that the card lacks).
FlightLog read_flight_log(const std::filesystem::path& file, const TestCard& card);

/// Fills in `tone` from a log. Throws InputError as read_flight_log does, also without such a column, which only a log of
/// a verifying sortie needs.
void read_tones(const std::filesystem::path& file, std::vector<LogRow>& rows);

/// Rows of one record, as indices into the log: [begin, end).
struct Record {
  std::size_t begin = 0, end = 0;
  std::size_t point = 0;  ///< index in the card
  int repeat = 0, attempt = 0;
};

/// The records that count: for every point and repeat the last one that was begun. Earlier attempts were broken off.
/// Records shorter than `least_rows` are dropped.
std::vector<Record> find_records(const std::vector<LogRow>& rows, std::size_t least_rows = 20);

/// Lift area that the wing made up for at one moment, m2:  x = n m g/q_c,  n = |specific force|/g.
/// (With the wing area, x/S is the lift coefficient; the area itself cancels out of every result.)
double lift_area_m2(const LogRow& row);

}  // namespace stallwright
