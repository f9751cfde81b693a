#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "aircraft/input_error.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "tests/sim/report/judged_sample.hpp"

using namespace stallwright;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

Json sample_json() { return Json::parse(set_points_to_json(sample::set_points())); }

/// The one line with which a file is refused; empty when it is not.
std::string refusal(const std::string& text) {
  try {
    set_points_from_json(text, "set-points.json");
    return "";
  } catch (const InputError& error) {
    return error.what();
  }
}

std::string refusal_with(const char* place, const Json& value) {
  Json json = sample_json();
  json[Json::json_pointer(place)] = value;
  return refusal(json.dump());
}

std::string refusal_without(const char* parent, const char* key) {
  Json json = sample_json();
  json[Json::json_pointer(parent)].erase(key);
  return refusal(json.dump());
}

}  // namespace

TEST_CASE("set-points.json has the keys that are promised", "[report][json]") {
  const Json json = sample_json();
  CHECK(json.at("format") == "stallwright-set-points-1");
  for (const char* key : {"flap_deg", "mass_kg", "order_ok", "points"})
    CHECK(json.at("sets").at(0).contains(key));
  const Json& points = json.at("sets").at(0).at("points");
  for (const Json& point : points)
    for (const char* key :
         {"name", "ratio", "u", "dof", "interval_95", "speed_kt", "budget", "flags", "readings"})
      CHECK(point.contains(key));
  CHECK(points.at(0).at("interval_95") == Json({0.301 - 0.008, 0.301 + 0.009}));
  for (const char* key : {"spot", "window_mean", "lift_corrected"}) {
    CHECK(points.at(0).at("readings").at(key).at("ratio") == 0.301);
    CHECK(points.at(0).at("readings").at(key).at("u") == 0.004);
  }
  for (const char* key : {"break", "peak", "max_lift"}) CHECK(points.at(1).at("readings").contains(key));
  CHECK(points.at(1).at("readings").size() == 3);
}

TEST_CASE("set-points.json holds no truth", "[report][json]") {
  CHECK_THAT(set_points_to_json(sample::set_points()), !Contains("true_") && !Contains("error"));
}

TEST_CASE("set points written and read back are the same, none and infinity included", "[report][json]") {
  const SetPoints before = sample::set_points();
  const std::string text = set_points_to_json(before);
  const SetPoints after = set_points_from_json(text, "f");
  CHECK(set_points_to_json(after) == text);
  CHECK(after.warnings == before.warnings);
  REQUIRE(after.sets.size() == 2);
  const SetPoint& stall = after.sets[0].points.at(1);
  CHECK(stall.is_stall);
  CHECK_FALSE(after.sets[0].points.at(0).is_stall);
  CHECK(stall.interval_high == before.sets[0].points[1].interval_high);
  CHECK(stall.budget.at(0).kind == 'A');
  CHECK(stall.budget.at(0).dof == 12.0);
  CHECK(std::isinf(stall.budget.at(1).dof));
  CHECK(stall.windows.at(0).break_sign == "uncommanded nose-down pitch");
  CHECK(stall.windows.at(0).entry_rate_ktps == 1.1);
  CHECK_FALSE(after.sets[1].points.at(0).found());
  CHECK(std::isnan(after.sets[1].points.at(0).dof));
}

TEST_CASE("numbers that are not finite stand as null", "[report][json]") {
  const Json json = sample_json();
  CHECK(json.at("sets").at(1).at("points").at(0).at("ratio").is_null());
  CHECK(json.at("sets").at(0).at("points").at(0).at("budget").at(1).at("dof").is_null());
}

TEST_CASE("a malformed set-points file gets one line that says where, what was expected and found",
          "[report][json]") {
  CHECK_THAT(refusal(""), Contains("set-points.json:1: expected JSON, found the end of the file"));
  CHECK_THAT(refusal("{\n\"format\": nan}"), Contains("set-points.json:2: expected JSON"));
  CHECK_THAT(refusal(std::string(3000000, '0')), Contains("set-points.json:1: expected JSON"));
  CHECK_THAT(refusal(std::string(3000000, '\0')), Contains("set-points.json:1: expected JSON"));
  CHECK_THAT(refusal("{\"format\": 1e999}"), Contains("expected numbers that a double can hold"));
  CHECK_THAT(refusal("[]"), Contains("expected an object, found a list of 0"));
  const std::string whole = set_points_to_json(sample::set_points());
  for (std::size_t cut = 0; cut + 2 < whole.size(); cut += 97)
    CHECK_FALSE(refusal(whole.substr(0, cut)).empty());
  CHECK_THAT(refusal_with("/format", "stallwright-log-1"),
             Contains("format: expected \"stallwright-set-points-1\", found \"stallwright-log-1\""));
  CHECK_THAT(refusal_with("/sets/0/points/1/u", "wide"),
             Contains("set-points.json: sets[0].points[1].u: expected a number or null, found \"wide\""));
  CHECK_THAT(refusal_with("/sets/0/points/1/u", -0.1),
             Contains("sets[0].points[1].u: expected an uncertainty of 0"));
  CHECK_THAT(refusal_with("/sets/0/points/0/interval_95", Json({2.0, 1.0})), Contains("interval_95[1]"));
  CHECK_THAT(refusal_with("/sets/0/points/0/interval_95", Json({2.0})),
             Contains("a list of 2, low and high"));
  CHECK_THAT(refusal_with("/sets/0/points/0/budget/0/kind", "C"),
             Contains("expected \"A\" or \"B\", found \"C\""));
  CHECK_THAT(refusal_with("/sets/0/order_ok", 1),
             Contains("sets[0].order_ok: expected true or false, found 1"));
  CHECK_THAT(refusal_with("/sets/0/points/0/card_point", -1),
             Contains("card_point: expected a whole number"));
  CHECK_THAT(refusal_with("/sets", 5), Contains("sets: expected a list, found 5"));
}

TEST_CASE("each promised key of a set-points file is missed when it lacks", "[report][json]") {
  for (const char* key : {"format", "card", "aircraft", "sets"})
    CHECK_THAT(refusal_without("", key), Contains(key));
  for (const char* key : {"flap_deg", "mass_kg", "order_ok", "points"})
    CHECK_THAT(refusal_without("/sets/0", key),
               Contains(std::string("sets[0].") + key + ": expected a value, found none"));
  for (const char* key :
       {"name", "ratio", "u", "dof", "interval_95", "speed_kt", "budget", "flags", "readings"})
    CHECK_THAT(refusal_without("/sets/0/points/0", key), Contains(std::string("points[0].") + key));
  for (const char* key : {"spot", "window_mean", "lift_corrected"})
    CHECK_THAT(refusal_without("/sets/0/points/0/readings", key), Contains(key));
  CHECK(refusal_without("/sets/0/points/0", "windows").empty());
}

TEST_CASE("a message keeps to one short line whatever stood in the file", "[report][json]") {
  const std::string line = refusal_with("/format", std::string(5000, 'x') + "\n\x1b[2J");
  CHECK_FALSE(line.empty());
  CHECK(line.size() < 200);
  CHECK(line.find_first_of("\n\x1b") == std::string::npos);
}

TEST_CASE("a folder or nothing in place of a set-points file is said to be one", "[report][json]") {
  CHECK_THROWS_WITH(read_set_points("/"), Contains("found a folder"));
  CHECK_THROWS_AS(read_set_points("/no/such/file.json"), InputError);
}
