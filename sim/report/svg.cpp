#include "sim/report/svg.hpp"

#include <array>
#include <cmath>

#include "sim/report/number_text.hpp"

namespace stallwright {
namespace {

bool finite(Spot spot) { return std::isfinite(spot.x) && std::isfinite(spot.y); }

/// A tenth of a pixel is finer than any printer.
std::string px(double value) {
  std::string text = fixed(value, 1);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text;
}

std::string pair(Spot spot) { return px(spot.x) + "," + px(spot.y); }

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + std::string(value) + "\"";
}

std::string attributes(const Stroke& stroke) {
  std::string text = attribute("stroke", stroke.colour) + attribute("stroke-width", shortest(stroke.width));
  if (!stroke.dash.empty()) text += attribute("stroke-dasharray", stroke.dash);
  return text;
}

std::string attributes(const Box& box) {
  return attribute("x", px(box.x)) + attribute("y", px(box.y)) + attribute("width", px(box.width)) +
         attribute("height", px(box.height));
}

bool finite(const Box& box) {
  return finite(Spot{box.x, box.y}) && std::isfinite(box.width) && std::isfinite(box.height);
}

std::string polygon(std::initializer_list<Spot> corners) {
  std::string points;
  for (const Spot& corner : corners) points += (points.empty() ? "" : " ") + pair(corner);
  return "<polygon" + attribute("points", points);
}

std::string shape(Mark mark, Spot at, double r) {
  const auto [x, y] = at;
  switch (mark) {
    case Mark::circle:
      return "<circle" + attribute("cx", px(x)) + attribute("cy", px(y)) + attribute("r", px(r));
    case Mark::diamond:
      return polygon({{x, y - 1.3 * r}, {x + 1.3 * r, y}, {x, y + 1.3 * r}, {x - 1.3 * r, y}});
    case Mark::square:
      return "<rect" + attributes(Box{x - 0.85 * r, y - 0.85 * r, 1.7 * r, 1.7 * r});
    case Mark::triangle:
      return polygon({{x, y - 1.1 * r}, {x + r, y + 0.8 * r}, {x - r, y + 0.8 * r}});
    case Mark::inverted_triangle:
      return polygon({{x, y + 1.1 * r}, {x + r, y - 0.8 * r}, {x - r, y - 0.8 * r}});
    case Mark::cross:
      return "<path" + attribute("d", "M" + pair({x - r, y - r}) + "L" + pair({x + r, y + r}) + "M" +
                                          pair({x - r, y + r}) + "L" + pair({x + r, y - r}));
  }
  return "<g";
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (c == '\'')
      out += "&#39;";
    else if (c == '\n' || c == '\t')
      out += ' ';
    else if (byte < 0x20 || byte == 0x7f)
      out += "\uFFFD";
    else
      out += c;
  }
  return out;
}

Svg::Svg(double width, double height, std::string_view title) : width_(width), height_(height) {
  body_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\"" +
          attribute("viewBox", "0 0 " + px(width) + " " + px(height)) + attribute("width", px(width)) +
          attribute("height", px(height)) + attribute("font-family", theme::kFonts) + ">\n<title>" +
          escaped(title) + "</title>\n";
}

void Svg::line(Spot from, Spot to, const Stroke& stroke) {
  if (!finite(from) || !finite(to)) return;
  body_ += "<line" + attribute("x1", px(from.x)) + attribute("y1", px(from.y)) + attribute("x2", px(to.x)) +
           attribute("y2", px(to.y)) + attributes(stroke) + "/>\n";
}

void Svg::polyline(std::span<const Spot> points, const Stroke& stroke) {
  std::string path;
  bool pen_down = false;
  for (const Spot& point : points) {
    if (finite(point)) path += (pen_down ? " " : "M") + pair(point);
    pen_down = finite(point);
  }
  if (path.empty()) return;
  body_ += "<path" + attribute("d", path) + attribute("fill", "none") +
           attribute("stroke-linejoin", "round") + attributes(stroke) + "/>\n";
}

void Svg::box(const Box& box, std::string_view fill, double opacity) {
  if (!finite(box) || box.width <= 0.0 || box.height <= 0.0) return;
  body_ += "<rect" + attributes(box) + attribute("fill", fill);
  if (opacity < 1.0) body_ += attribute("fill-opacity", shortest(opacity));
  body_ += "/>\n";
}

void Svg::frame(const Box& box, const Stroke& stroke) {
  if (!finite(box)) return;
  body_ += "<rect" + attributes(box) + attribute("fill", "none") + attributes(stroke) + "/>\n";
}

void Svg::mark(Mark mark, Spot centre, double radius, std::string_view fill, std::string_view outline) {
  if (!finite(centre)) return;
  const Stroke stroke{mark == Mark::cross ? fill : outline, mark == Mark::cross ? 2.2 : 1.2};
  body_ += shape(mark, centre, radius) +
           attribute("fill", fill.empty() || mark == Mark::cross ? "none" : fill) + attributes(stroke) +
           "/>\n";
}

void Svg::whisker(double x_low, double x_high, double y, double cap, const Stroke& stroke) {
  line({x_low, y}, {x_high, y}, stroke);
  for (const double x : {x_low, x_high}) line({x, y - cap}, {x, y + cap}, stroke);
}

void Svg::text(Spot at, std::string_view text, const TextLook& look) {
  if (!finite(at) || text.empty()) return;
  constexpr std::array<std::string_view, 3> kAnchors = {"start", "middle", "end"};
  body_ += "<text" + attribute("x", px(at.x)) + attribute("y", px(at.y)) +
           attribute("font-size", shortest(look.size)) + attribute("fill", look.colour);
  if (look.anchor != Anchor::start)
    body_ += attribute("text-anchor", kAnchors[static_cast<std::size_t>(look.anchor)]);
  if (look.bold) body_ += attribute("font-weight", "bold");
  if (look.halo)
    body_ += attribute("paint-order", "stroke") + attribute("stroke", theme::kPaper) +
             attribute("stroke-width", "3");
  body_ += ">" + escaped(text) + "</text>\n";
}

void Svg::clip(const Box& box) {
  // A nested picture cuts at its edges and needs no name, unlike a clip path: names would have to differ over
  // the page.
  body_ += "<svg" + attributes(box) +
           attribute("viewBox", px(box.x) + " " + px(box.y) + " " + px(box.width) + " " + px(box.height)) +
           ">\n";
}

void Svg::unclip() { body_ += "</svg>\n"; }

double text_width(std::string_view text, double size) {
  double letters = 0.0;
  // Bytes that continue a UTF-8 letter take no room.
  for (const char c : text) letters += (static_cast<unsigned char>(c) & 0xC0) == 0x80 ? 0.0 : 1.0;
  return 0.62 * size * letters;
}

}  // namespace stallwright
