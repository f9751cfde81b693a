#pragma once
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"
#include "sim/reduction/set_points.hpp"

namespace stallwright {

/// A JSON value with its place in the file, so that each complaint can say where. Inside of the set-points
/// reader (it brings the parser's header with it). Every getter throws InputError, one line `FILE:
/// sets[0].points[2].u: expected ..., found ...`.
class JsonNode {
 public:
  JsonNode(const nlohmann::json& value, const std::string& file, std::string path)
      : value_(&value), file_(&file), path_(std::move(path)) {}

  [[noreturn]] void fail(const std::string& expected) const;
  bool has(const char* key) const { return value_->is_object() && value_->contains(key); }
  JsonNode at(const char* key) const;
  std::vector<JsonNode> elements() const;

  double number_or_none() const;  ///< null: NaN
  double uncertainty() const;     ///< 0 or more, null: NaN
  /// Null beside a known uncertainty means that nothing limits the degrees of freedom.
  double degrees_of_freedom(double u) const;
  std::string text() const;
  bool boolean() const;
  int count() const;  ///< 0 to a million
  std::vector<std::string> texts() const;

  /// Short and on one line, whatever stood in the file.
  static std::string one_line(std::string text);

 private:
  const nlohmann::json* value_;
  const std::string* file_;
  std::string path_;
};

}  // namespace stallwright
