#pragma once
#include <algorithm>
#include <cmath>
#include <string>

namespace stallwright::published {

/// One unit of the last digit of a number as it is printed: 0.01 of "8.49", 1e-6 of "-1.2e-5".
inline double last_digit(const std::string& printed) {
  const std::size_t point = printed.find('.'), power = printed.find('e');
  const std::size_t end = std::min(power, printed.size());
  const double places = point == std::string::npos ? 0.0 : static_cast<double>(end - point - 1);
  const double ten = power == std::string::npos ? 0.0 : std::stod(printed.substr(power + 1));
  return std::pow(10.0, ten - places);
}

}  // namespace stallwright::published
