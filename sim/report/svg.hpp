#pragma once
#include <span>
#include <string>
#include <string_view>

#include "sim/report/theme.hpp"

namespace stallwright {

/// Text for HTML and SVG, in elements and in attributes: & < > " ' become entities; control characters, which
/// XML forbids, become U+FFFD.
std::string escaped(std::string_view text);

struct Stroke {
  std::string_view colour = theme::kInk;
  double width = 1.0;
  std::string_view dash{};
};

struct Spot {
  double x = 0.0, y = 0.0;
};

struct Box {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
};

enum class Anchor { start, middle, end };

struct TextLook {
  double size = 12.0;
  Anchor anchor = Anchor::start;
  bool bold = false;
  bool halo = false;  ///< on paper of its own, so that a curve behind it does not strike it out
  std::string_view colour = theme::kInk;
};

enum class Mark { circle, diamond, square, triangle, inverted_triangle, cross };

/// A small picture for a page: shapes are added in drawing order; y runs down, in pixels. It scales to the
/// width of its place. Anything with a coordinate that is not finite is left out. All text is escaped here.
class Svg {
 public:
  /// `title` is read out by screen readers and shown by browsers.
  Svg(double width, double height, std::string_view title);

  void line(Spot from, Spot to, const Stroke& stroke);
  /// Breaks where a point is not finite.
  void polyline(std::span<const Spot> points, const Stroke& stroke);
  void box(const Box& box, std::string_view fill, double opacity = 1.0);
  void frame(const Box& box, const Stroke& stroke);
  /// Outlined in ink, so that the form is seen in grey as well. An empty fill leaves it open.
  void mark(Mark mark, Spot centre, double radius, std::string_view fill,
            std::string_view outline = theme::kInk);
  /// A horizontal interval with end caps.
  void whisker(double x_low, double x_high, double y, double cap, const Stroke& stroke);
  void text(Spot at, std::string_view text, const TextLook& look = {});

  /// From here on nothing is drawn outside the box, until `unclip`.
  void clip(const Box& box);
  void unclip();

  std::string str() const { return body_ + "</svg>\n"; }
  double width() const { return width_; }
  double height() const { return height_; }

 private:
  std::string body_;
  double width_, height_;
};

/// Rough width of a text in pixels, on the generous side: for keeping labels apart.
double text_width(std::string_view text, double size);

}  // namespace stallwright
