#pragma once
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "sim/reduction/column_map.hpp"

namespace stallwright {

/// The mapped columns of a recorder's log, row by row as they stand there, SI; NaN where a field says nothing.
struct OwnTable {
  std::string file;
  std::array<std::vector<double>, kQuantities> values;  ///< empty for what the map lacks
  std::vector<std::size_t> line;                        ///< of each row, from 1
  std::vector<std::string> warnings;                    ///< what was passed over, with counts

  const std::vector<double>& of(Quantity quantity) const {
    return values[static_cast<std::size_t>(quantity)];
  }
  std::size_t rows() const { return line.size(); }
};

/// Cuts and converts. Recorders are not tidy, so this is taken and counted: CR LF, a byte-order mark, quotes, blank
/// lines, a separator at the end of every line, empty fields, a header that comes again, no last line end, a last line
/// cut short, and a few ragged lines (fewer than one in a hundred). Throws InputError, one line
/// "FILE:LINE: column NAME: expected ..., found ...", for text where a number should be, a number that the quantity
/// cannot have, a column that the header lacks (the nearest is named) or has twice, an open quote, a damaged file.
OwnTable parse_own_table(std::string_view text, const std::string& file, const ColumnMap& map);

}  // namespace stallwright
