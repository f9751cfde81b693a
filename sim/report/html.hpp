#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "sim/report/svg.hpp"

namespace stallwright::html {

/// <tag attributes>inner</tag>; `inner` is HTML already, `attributes` too.
std::string element(std::string_view tag, std::string_view inner, std::string_view attributes = "");

/// <tag>text</tag>, the text escaped.
std::string text_element(std::string_view tag, std::string_view text, std::string_view attributes = "");

/// A whole page: one file, no script, well-formed XML too.
///   title  plain text;  style  a style sheet;  body  HTML of the main part
std::string page(std::string_view title, std::string_view style, std::string_view body);

/// A picture with the line below it; the caption is escaped.
std::string figure(const Svg& svg, std::string_view caption);

/// A table whose cells are HTML. The first column is set to the left, columns of numbers to the right.
struct Table {
  std::string caption;
  std::vector<std::string> headings;  ///< plain text
  std::vector<bool> numeric;          ///< as long as headings
  std::vector<std::vector<std::string>> rows;

  std::string str() const;
};

std::string list(const std::vector<std::string>& texts, std::string_view attributes = "");

}  // namespace stallwright::html
