#include "sim/reduction/set_points_json_node.hpp"

namespace stallwright {
namespace {

std::string describe(const nlohmann::json& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "a list of " + std::to_string(value.size());
  return JsonNode::one_line(value.dump(-1, ' ', true, nlohmann::json::error_handler_t::replace));
}

}  // namespace

std::string JsonNode::one_line(std::string text) {
  constexpr std::size_t kMost = 60;
  if (text.size() > kMost) text = text.substr(0, kMost) + "...";
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
  return text;
}

void JsonNode::fail(const std::string& expected) const {
  throw InputError(*file_ + ": " + (path_.empty() ? "" : path_ + ": ") + "expected " + expected + ", found " +
                   describe(*value_));
}

JsonNode JsonNode::at(const char* key) const {
  if (!value_->is_object()) fail("an object");
  const std::string path = path_.empty() ? key : path_ + "." + key;
  if (!value_->contains(key)) throw InputError(*file_ + ": " + path + ": expected a value, found none");
  return {(*value_)[key], *file_, path};
}

std::vector<JsonNode> JsonNode::elements() const {
  if (!value_->is_array()) fail("a list");
  std::vector<JsonNode> nodes;
  for (std::size_t i = 0; i < value_->size(); ++i)
    nodes.emplace_back((*value_)[i], *file_, path_ + "[" + std::to_string(i) + "]");
  return nodes;
}

double JsonNode::number_or_none() const {
  if (value_->is_null()) return kNone;
  if (!value_->is_number()) fail("a number or null");
  return value_->get<double>();
}

double JsonNode::uncertainty() const {
  const double u = number_or_none();
  if (u < 0.0) fail("an uncertainty of 0 or more, or null");
  return u;
}

double JsonNode::degrees_of_freedom(double u) const {
  const double dof = number_or_none();
  if (dof < 0.0) fail("degrees of freedom of 0 or more, or null");
  return std::isnan(dof) && std::isfinite(u) ? std::numeric_limits<double>::infinity() : dof;
}

std::string JsonNode::text() const {
  if (!value_->is_string()) fail("a text");
  return value_->get<std::string>();
}

bool JsonNode::boolean() const {
  if (!value_->is_boolean()) fail("true or false");
  return value_->get<bool>();
}

int JsonNode::count() const {
  constexpr std::uint64_t kMost = 1000000;
  if (!value_->is_number_unsigned() || value_->get<std::uint64_t>() > kMost)
    fail("a whole number from 0 to 1000000");
  return value_->get<int>();
}

std::vector<std::string> JsonNode::texts() const {
  std::vector<std::string> result;
  for (const JsonNode& node : elements()) result.push_back(node.text());
  return result;
}

}  // namespace stallwright
