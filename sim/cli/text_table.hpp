#pragma once
#include <cstddef>
#include <string>
#include <vector>

namespace stallwright::cli {

/// Rows of cells set in columns for a terminal or a printer. Columns are as wide as they need to be; where that is more
/// than the page the widest give way and their words run on in lines below. A column in which a cell is empty is one to
/// write in: its empty cells become a line.
///   numeric  set to the right;  indent  blanks before each line;  columns  of the page, indent included
std::string text_table(const std::vector<std::string>& headings, const std::vector<bool>& numeric,
                       const std::vector<std::vector<std::string>>& rows, std::size_t indent = 2,
                       std::size_t columns = 100);

}  // namespace stallwright::cli
