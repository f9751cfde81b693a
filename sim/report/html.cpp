#include "sim/report/html.hpp"

namespace stallwright::html {

std::string element(std::string_view tag, std::string_view inner, std::string_view attributes) {
  std::string out = "<" + std::string(tag);
  if (!attributes.empty()) out += " " + std::string(attributes);
  return out + ">" + std::string(inner) + "</" + std::string(tag) + ">\n";
}

std::string text_element(std::string_view tag, std::string_view text, std::string_view attributes) {
  return element(tag, escaped(text), attributes);
}

std::string page(std::string_view title, std::string_view style, std::string_view body) {
  const std::string head =
      "<meta charset=\"utf-8\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n" +
      text_element("title", title) + element("style", style);
  return "<!DOCTYPE html>\n" +
         element("html", element("head", head) + element("body", element("main", body)), "lang=\"en\"");
}

std::string figure(const Svg& svg, std::string_view caption) {
  return element("figure", svg.str() + text_element("figcaption", caption));
}

std::string Table::str() const {
  const auto is_number = [&](std::size_t i) { return i < numeric.size() && numeric[i]; };
  std::string head;
  for (std::size_t i = 0; i < headings.size(); ++i)
    head +=
        text_element("th", headings[i], is_number(i) ? "scope=\"col\" class=\"number\"" : "scope=\"col\"");
  std::string body;
  for (const auto& row : rows) {
    std::string cells;
    for (std::size_t i = 0; i < row.size(); ++i)
      cells += i == 0 ? element("th", row[i], "scope=\"row\"")
                      : element("td", row[i], is_number(i) ? "class=\"number\"" : "");
    body += element("tr", cells);
  }
  const std::string title = caption.empty() ? "" : text_element("caption", caption);
  return element("table", title + element("thead", element("tr", head)) + element("tbody", body));
}

std::string list(const std::vector<std::string>& texts, std::string_view attributes) {
  std::string items;
  for (const std::string& text : texts) items += text_element("li", text);
  return texts.empty() ? "" : element("ul", items, attributes);
}

}  // namespace stallwright::html
