#pragma once
#include <string>

namespace stallwright::cli {

/// Style of the plan page: for a kneeboard, so floor and speeds are larger than the rest; three sheets of A4.
std::string plan_style_sheet();

}  // namespace stallwright::cli
