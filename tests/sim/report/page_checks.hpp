#pragma once
#include <regex>
#include <string>
#include <vector>

/// What every page must pass, for tests of pages.
namespace stallwright::page_checks {

/// The first place where tags do not balance; empty when they all do. Enough of XML for a page that never
/// writes
/// '<' or '>' but in tags.
inline std::string imbalance(const std::string& page) {
  std::vector<std::string> open;
  for (std::size_t at = page.find('<'); at != std::string::npos; at = page.find('<', at + 1)) {
    const std::size_t end = page.find_first_of("<>", at + 1);
    if (end == std::string::npos || page[end] == '<') return "unfinished tag: " + page.substr(at, 40);
    const std::string tag = page.substr(at + 1, end - at - 1);
    if (tag.starts_with('!') || tag.ends_with('/')) continue;
    const std::string name = tag.substr(tag.starts_with('/') ? 1 : 0, tag.find(' '));
    if (!tag.starts_with('/'))
      open.push_back(name);
    else if (open.empty() || open.back() != name)
      return "closes what is not open: " + tag;
    else
      open.pop_back();
  }
  return open.empty() ? "" : "left open: " + open.back();
}

/// Bare '&' or a stray '>' would make it no XML.
inline bool has_bare_ampersand(const std::string& page) {
  return std::regex_search(page, std::regex("&(?!(amp|lt|gt|quot|#39);)"));
}

/// The words of the page without tags and style.
inline std::string words_of(const std::string& page) {
  std::string text = page.substr(page.find("</style>"));
  return std::regex_replace(text, std::regex("<[^>]*>"), " ");
}

inline std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace stallwright::page_checks
