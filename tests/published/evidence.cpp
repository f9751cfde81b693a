#include "tests/published/evidence.hpp"

#include <algorithm>
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

/// What the page prints of one value; the last field is no column of it, tests/breaks reads it.
struct Line {
  const Published& source;
  std::string quantity, measured, published, within, unit, ratio, remark;
  bool held;
};

void write_down(const Line& l) {
  const char* file = std::getenv("STALLWRIGHT_EVIDENCE");
  if (file == nullptr || *file == '\0') return;
  std::string line;
  for (const std::string& field :
       {std::string(l.source.key), std::string(l.source.where), l.quantity, l.measured, l.published, l.within,
        l.unit, l.ratio, std::string(l.source.known), l.remark, std::string(l.held ? "held" : "red")})
    line += (line.empty() ? "" : "\t") + one_line(field);
  std::ofstream(file, std::ios::app) << line << '\n';
}

std::string ratio(double measured, double published) {
  return published != 0.0 ? number(measured / published) : "-";
}

std::string in_words(const Sense& bound) {
  if (std::isinf(bound.low)) return "below " + number(bound.high);
  if (std::isinf(bound.high)) return "above " + number(bound.low);
  return number(bound.low) + " to " + number(bound.high);
}

/// The next power of ten above a difference; a thousandth of its tolerance, or rounding, is the least that is told apart.
std::string size_of(double difference, double tolerance) {
  const double least = std::max(1e-3 * tolerance, 1e-15);
  return "< " + number(std::pow(10.0, std::ceil(std::log10(std::max(difference, least)) - 1e-9)));
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
  write_down({source, quantity, number(measured), number(published), number(tolerance), unit,
              ratio(measured, published), tolerance_reason, std::abs(measured - published) <= tolerance});
}

void sense(const Published& source, const std::string& quantity, double measured, const Sense& bound,
           const std::string& unit, const std::string& reason) {
  require_source(source);
  INFO(source.key << ", " << source.where << ": " << quantity << ", " << unit << ", must be "
                  << in_words(bound));
  CHECK(measured >= bound.low);
  CHECK(measured <= bound.high);
  write_down({source, quantity, number(measured), in_words(bound), "a sense", unit, "-", reason,
              measured >= bound.low && measured <= bound.high});
}

void WorstRow::row(const std::string& name, double measured, double published, double tolerance) {
  ++rows_;
  const double difference = std::abs(measured - published);
  double off = difference == 0.0 ? 0.0 : difference / tolerance;
  if (std::isnan(off)) off = std::numeric_limits<double>::infinity();
  if (off <= off_) return;
  name_ = name, measured_ = measured, published_ = published, tolerance_ = tolerance, off_ = off;
}

void WorstRow::row_relative(const std::string& name, double measured, double published, double share) {
  row(name, measured, published, share * std::abs(published));
}

void WorstRow::difference_relative(const std::string& name, double measured, double published, double share) {
  difference(name, (measured - published) / std::abs(published), 0.0, share);
}

void WorstRow::difference(const std::string& name, double measured, double published, double tolerance) {
  differences_ = true;
  row(name, std::abs(measured - published), 0.0, tolerance);
}

void WorstRow::hold(const Published& source, const std::string& quantity, const std::string& unit,
                    const std::string& tolerance_reason) const {
  REQUIRE(rows_ > 0);
  const std::string rows = ", worst of " + std::to_string(rows_);
  if (!differences_) {
    evidence::hold(source, quantity + rows + ": " + name_, measured_, published_, tolerance_, unit,
                   tolerance_reason);
    return;
  }
  require_source(source);
  INFO(source.key << ", " << source.where << ": " << quantity << rows << ": " << name_ << ", " << unit);
  CHECK_THAT(measured_, Catch::WithinAbs(0.0, tolerance_));
  write_down({source, quantity + (rows_ > 1 ? rows : "") + ", difference", size_of(measured_, tolerance_),
              "0", number(tolerance_), unit, "-", tolerance_reason, measured_ <= tolerance_});
}

void show(const Published& source, const std::string& quantity, double measured, double published,
          const std::string& unit, const std::string& why_off) {
  require_source(source);
  INFO(source.key << ", " << source.where << ": " << quantity << ", " << unit);
  CHECK(std::isfinite(measured));
  write_down({source, quantity, number(measured), number(published), "not held", unit,
              ratio(measured, published), why_off, std::isfinite(measured)});
}

}  // namespace stallwright::evidence
