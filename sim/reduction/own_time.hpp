#pragma once
#include <string>
#include <vector>

namespace stallwright {

/// A recorder's time made to run on.
struct OwnTime {
  std::vector<double> s;         ///< of the rows kept; rises strictly
  std::vector<std::size_t> row;  ///< which row of the table each is
  std::vector<bool>
      begins_anew;  ///< the recorder was started again here, or its clock set: unknown time lies before
  double interval_s = 0.0;  ///< median of neighbours
  std::vector<std::string> warnings;
};

/// Rules, each said in a warning with its count:
///   a time of day that falls by more than twelve hours passed midnight: a day is added from there on;
///   times that stand still in most rows are a clock coarser than the rows: those of one tick are spread evenly over it;
///   a single repeated time, or one up to 5 s back: the row is left out, until time has caught up;
///   more than 5 s back: the recorder began anew. Its time goes on from the last one (by one interval), and no record
///   reaches across.
///   raw    s, one a row, all numbers;  clock  times of day
OwnTime running_time(const std::vector<double>& raw, bool clock, const std::string& file,
                     const std::vector<std::size_t>& line);

}  // namespace stallwright
