#pragma once
#include <filesystem>
#include <vector>

#include "sim/crew/hands.hpp"
#include "sim/reduction/csv.hpp"

namespace stallwright {

/// hands.csv of a sortie flown by hand: one row a tick (50 Hz), columns t_s; stick_aft, stick_right, pedal_right (-1 to 1),
/// throttle (0 to 1), each with four decimals; flap_setting (index, from 0); feet_assisted, record, record_anyway,
/// area_clear, knock_it_off (0 or 1). With the other files of the folder it flies the sortie again to the last bit.
class HandsWriter {
 public:
  /// Errors as CsvWriter.
  explicit HandsWriter(const std::filesystem::path& file);
  void write(double time_s, const Hands& hands);
  void flush() { csv_.flush(); }

 private:
  CsvWriter csv_;
};

/// Hands tick by tick. Throws InputError, one line, for a file that is not such a one: a row missing or out of step, a
/// value off its stops or its steps, a flap setting that the type lacks.
std::vector<Hands> read_hands(const std::filesystem::path& file, std::size_t flap_settings);

}  // namespace stallwright
