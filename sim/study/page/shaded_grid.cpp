#include "sim/study/page/shaded_grid.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright {
namespace {

/// Steps of blue; their greys are 255, 224, 181 and 94 of 255, so that each can be told from its neighbours in print.
constexpr std::array<const char*, 4> kShades{"#ffffff", "#cfe3f2", "#8fbce0", "#1f6191"};
constexpr std::array<Stroke, 3> kEdges{Stroke{theme::kInk, 2.4, "2 4"}, Stroke{theme::kInk, 2.8, "9 4"},
                                       Stroke{theme::kInk, 4.0, ""}};
constexpr double kLeft = 128, kTop = 74, kRow = 72, kLeastWidth = 630, kLeastColumn = 118;

std::string_view ink_on(int shade) { return shade == 3 ? theme::kPaper : theme::kInk; }

/// Where the places lie.
struct Layout {
  explicit Layout(const ShadedGrid& g)
      : column(std::max(kLeastColumn, (kLeastWidth - kLeft) / static_cast<double>(g.columns.size()))),
        width(kLeft + column * static_cast<double>(g.columns.size()) + 2),
        height(kTop + kRow * static_cast<double>(g.rows.size()) + 4) {}
  Box box(std::size_t row, std::size_t col) const {
    return {kLeft + column * static_cast<double>(col), kTop + kRow * static_cast<double>(row), column, kRow};
  }
  double column, width, height;
};

void draw_place(Svg& svg, const Box& box, const ShadedGrid::Place& place, int shade) {
  if (shade > 0) svg.box(box, kShades[static_cast<std::size_t>(shade)]);
  svg.frame(box, {theme::kSoftInk, 0.6});
  const double x = box.x + 0.5 * box.width;
  svg.text({x, box.y + 29}, place.text, {24, Anchor::middle, true, false, ink_on(shade)});
  svg.text({x, box.y + 47}, place.below, {14, Anchor::middle, false, false, ink_on(shade)});
  svg.text({x, box.y + 64}, place.further, {14, Anchor::middle, false, false, ink_on(shade)});
}

/// The highest bound that lies between two neighbours gives the edge its look.
void draw_edge(Svg& svg, int a, int b, Spot from, Spot to) {
  if (a < 0 || b < 0 || a == b) return;
  svg.line(from, to, {theme::kPaper, 4.0});  // so that dots and dashes show on the dark step
  svg.line(from, to, kEdges[static_cast<std::size_t>(std::max(a, b) - 1)]);
}

void draw_headings(Svg& svg, const ShadedGrid& grid, const Layout& layout) {
  svg.text({0, 18}, grid.title, {18, Anchor::start, true});
  svg.text({kLeft - 10, 46}, grid.column_title + " \u2192", {14, Anchor::end, false, false, theme::kSoftInk});
  svg.text({kLeft - 10, 64}, grid.row_title + " \u2193", {14, Anchor::end, false, false, theme::kSoftInk});
  for (std::size_t c = 0; c < grid.columns.size(); ++c) {
    const double x = layout.box(0, c).x + 0.5 * layout.column;
    svg.text({x, 48}, grid.columns[c], {15, Anchor::middle, true});
    if (c < grid.column_notes.size())
      svg.text({x, 65}, grid.column_notes[c], {14, Anchor::middle, false, false, theme::kSoftInk});
  }
  for (std::size_t r = 0; r < grid.rows.size(); ++r)
    svg.text({kLeft - 10, layout.box(r, 0).y + 0.5 * kRow + 5}, grid.rows[r], {15, Anchor::end, true});
}

}  // namespace

int shade_of(double value, const std::array<double, 3>& bounds) {
  if (!std::isfinite(value)) return -1;
  return static_cast<int>(std::upper_bound(bounds.begin(), bounds.end(), value) - bounds.begin());
}

Svg shaded_grid(const ShadedGrid& grid) {
  const Layout layout(grid);
  Svg svg(layout.width, layout.height, grid.title);
  draw_headings(svg, grid, layout);
  const std::size_t columns = grid.columns.size();
  const auto shade = [&](std::size_t r, std::size_t c) {
    return shade_of(grid.places.at(r * columns + c).value, grid.bounds);
  };
  for (std::size_t r = 0; r < grid.rows.size(); ++r)
    for (std::size_t c = 0; c < columns; ++c)
      draw_place(svg, layout.box(r, c), grid.places.at(r * columns + c), shade(r, c));
  for (std::size_t r = 0; r < grid.rows.size(); ++r)
    for (std::size_t c = 0; c < columns; ++c) {
      const Box b = layout.box(r, c);
      if (c > 0) draw_edge(svg, shade(r, c - 1), shade(r, c), {b.x, b.y}, {b.x, b.y + b.height});
      if (r > 0) draw_edge(svg, shade(r - 1, c), shade(r, c), {b.x, b.y}, {b.x + b.width, b.y});
    }
  return svg;
}

Svg shade_legend(const std::array<std::string, 4>& names, const std::array<std::string, 3>& edges) {
  Svg svg(1280, 34, "What the shades mean");
  double x = 2;
  for (std::size_t i = 0; i < names.size(); ++i) {
    svg.box({x, 6, 34, 22}, kShades[i]);
    svg.frame({x, 6, 34, 22}, {theme::kSoftInk, 1.0});
    svg.text({x + 42, 22}, names[i], {14});
    x += 58 + text_width(names[i], 14);
  }
  x += 24;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    svg.line({x, 17}, {x + 44, 17}, kEdges[i]);
    svg.text({x + 52, 22}, edges[i], {14});
    x += 68 + text_width(edges[i], 14);
  }
  return svg;
}

}  // namespace stallwright
