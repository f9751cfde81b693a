#pragma once
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "sim/reduction/column_map.hpp"
#include "sim/sortie/log_row.hpp"

namespace stallwright {

/// What a recorder did not write down, and what stands in for it.
struct Lacks {
  bool acceleration = false;  ///< load factor taken as 1
  bool chordwise =
      false;  ///< normal acceleration alone and no pitch either: load factor taken from the normal part
  bool mass = false;   ///< the targets' mass stands in
  bool pitch = false;  ///< a break is looked for in the lift alone
  bool stick = false;  ///< a push cannot be told from a nose that falls
  bool bank = false, altitude = false, flap = false;
};

/// A real flight's log in the form that the reduction takes: rows every 0.02 s, none where the log has a gap.
struct OwnLog {
  std::string file;
  std::vector<LogRow> rows;
  std::vector<double> mark;  ///< of each row; empty without a column of marks
  Lacks lacks;
  double interval_s = 0.0;  ///< of the log as it was, median
  bool clock = false;       ///< its times are times of day
  std::vector<std::string> warnings;
};

/// Reads a log through its map. Between its rows every quantity is interpolated in a straight line (marks and flaps are
/// held); where the rows, or the numbers of a quantity, stand further apart than half a second and 2.5 times their usual
/// interval, the log has a gap and no rows are made. Interpolating adds no knowledge: the samples it makes are alike,
/// which their autocorrelation shows. Quantities that were not recorded:
///   impact pressure from indicated airspeed or the reverse, as the dial has it; ratio from the probe's pressure
///   pitch rate  from pitch, over 0.2 s
///   forward     g sin(pitch), as in unaccelerated flight
/// Throws InputError as load_column_map and parse_own_table do.
OwnLog read_own_log(const std::filesystem::path& file, const ColumnMap& map);
OwnLog parse_own_log(std::string_view text, const std::string& name, const ColumnMap& map);

/// Seconds of the log for a moment of the map: a time of day before the log's beginning belongs to the next day.
double log_seconds(const OwnLog& log, const MapTime& time);

/// A moment of the log for people: seconds, and the time of day where its clock has one.
std::string moment_text(const OwnLog& log, double time_s);

/// Index of the first row at or after a time.
std::size_t row_at(const OwnLog& log, double time_s);

/// No row is missing among rows begin to end - 1.
bool unbroken(const OwnLog& log, std::size_t begin, std::size_t end);

}  // namespace stallwright
