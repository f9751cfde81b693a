#include "tests/published/evidence.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <regex>
#include <set>

namespace stallwright::evidence {
namespace {

/// Keys that references.md describes.
std::set<std::string> described() {
  std::ifstream in(std::string(STALLWRIGHT_SOURCE_DIR) + "/tests/published/references.md");
  const std::regex heading(R"(^## ([A-Z][A-Z0-9_-]{2,})\s*$)");
  std::set<std::string> keys;
  std::smatch match;
  for (std::string line; std::getline(in, line);)
    if (std::regex_match(line, match, heading)) keys.insert(match[1]);
  return keys;
}

std::string number(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.6g", value);
  return text;
}

std::string one_line(std::string text) {
  for (char& c : text)
    if (c == '\t' || c == '\n' || c == '|') c = ' ';
  return text;
}

void write_down(const Published& source, const std::string& quantity, double measured, double published,
                const std::string& tolerance, const std::string& unit, const std::string& remark) {
  const char* file = std::getenv("STALLWRIGHT_EVIDENCE");
  if (file == nullptr || *file == '\0') return;
  std::string line;
  for (const std::string& field :
       {std::string(source.key), std::string(source.where), quantity, number(measured), number(published),
        tolerance, unit, published != 0.0 ? number(measured / published) : std::string("-"),
        std::string(source.known), remark})
    line += (line.empty() ? "" : "\t") + one_line(field);
  std::ofstream(file, std::ios::app) << line << '\n';
}

void require_source(const Published& source) {
  const std::string key = source.key == nullptr ? "" : source.key;
  INFO("source key \"" << key << "\", described in tests/published/references.md?");
  REQUIRE(described().count(key) == 1);
  REQUIRE(source.known != nullptr);
}

}  // namespace

void hold(const Published& source, const std::string& quantity, double measured, double published,
          double tolerance, const std::string& unit, const std::string& tolerance_reason) {
  require_source(source);
  INFO(source.key << ", " << source.where << ": " << quantity << ", " << unit);
  CHECK_THAT(measured, Catch::WithinAbs(published, tolerance));
  write_down(source, quantity, measured, published, number(tolerance), unit, tolerance_reason);
}

void show(const Published& source, const std::string& quantity, double measured, double published,
          const std::string& unit, const std::string& why_off) {
  require_source(source);
  INFO(source.key << ", " << source.where << ": " << quantity << ", " << unit);
  CHECK(std::isfinite(measured));
  write_down(source, quantity, measured, published, "not held", unit, why_off);
}

}  // namespace stallwright::evidence
