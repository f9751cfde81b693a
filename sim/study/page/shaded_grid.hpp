#pragma once
#include <array>
#include <string>
#include <vector>

#include "sim/report/svg.hpp"

namespace stallwright {

/// A table as a picture: each place has its number in large figures and a line or two below, and is shaded in four steps of
/// one hue, light to dark, that differ in grey too. Where neighbours lie on two sides of a bound, the edge between them
/// says which: dots for the first, dashes for the second, a whole line for the third.
struct ShadedGrid {
  struct Place {
    double value = 0.0;  ///< decides the shade: as `text` shows it; NaN: no shade
    std::string text, below, further;
  };
  std::string title, row_title, column_title;
  std::vector<std::string> rows, columns, column_notes;
  std::vector<Place> places;       ///< row by row
  std::array<double, 3> bounds{};  ///< rising
};

/// 0 to 3; -1 for NaN.
int shade_of(double value, const std::array<double, 3>& bounds);

Svg shaded_grid(const ShadedGrid& grid);

/// What shades and edges mean; `names` of the four steps, as "under 1 kt".
Svg shade_legend(const std::array<std::string, 4>& names, const std::array<std::string, 3>& edges);

}  // namespace stallwright
