#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sim/reduction/set_points_json.hpp"
#include "sim/report/judgement_json.hpp"
#include "tests/sim/report/judged_sample.hpp"

using namespace stallwright;
using Json = nlohmann::json;

namespace {
Json judged() {
  return Json::parse(judgement_to_json(sample::judgement(), sample::protection(), "short card", "Marram"));
}
}  // namespace

TEST_CASE("judgement.json holds all that set-points.json says of each point, and the truth",
          "[report][json]") {
  const Json plain = Json::parse(set_points_to_json(sample::set_points()));
  const Json truth = judged();
  CHECK(truth.at("format") == "stallwright-judgement-1");
  for (std::size_t s = 0; s < 2; ++s)
    for (std::size_t p = 0; p < plain["sets"][s]["points"].size(); ++p) {
      const Json& before = plain["sets"][s]["points"][p];
      const Json& after = truth.at("sets").at(s).at("points").at(p);
      for (const auto& [key, value] : before.items())
        if (key != "readings") CHECK(after.at(key) == value);
      for (const char* key : {"true_ratio", "true_speed_kt", "error_ratio", "error_deg", "error_kt"}) {
        CHECK(after.contains(key));
        for (const auto& [name, reading] : before["readings"].items()) {
          CHECK(after.at("readings").at(name).at("ratio") == reading["ratio"]);
          CHECK(after.at("readings").at(name).contains(key));
        }
      }
      CHECK(after.at("readings").size() == 3);
    }
}

TEST_CASE("judgement.json gives errors to every reading, and null where nothing was found",
          "[report][json]") {
  const Json truth = judged();
  const Json& found = truth.at("sets").at(0).at("points").at(1);
  CHECK(found.at("error_kt") == -0.2);
  CHECK(found.at("readings").at("break").at("error_kt") == -0.2);
  CHECK(found.at("readings").at("break").at("true_speed_kt") == 40.0);
  CHECK(truth.at("sets").at(1).at("points").at(0).at("error_kt").is_null());
}

TEST_CASE("readings named in words take the same keys", "[report][json]") {
  Judgement judgement = sample::judgement();
  judgement.sets[0].points[0].readings[1].name = "window mean";
  judgement.sets[0].points[0].readings[2].name = "lift-corrected";
  const Json json = Json::parse(judgement_to_json(judgement, {}, "c", "a"));
  CHECK(json["sets"][0]["points"][0]["readings"].size() == 3);
}

TEST_CASE("judgement.json says what the warning protects", "[report][json]") {
  const Json protection = judged().at("protection");
  CHECK(protection.at("rows").size() == 4);
  CHECK(protection.at("least_margin_kt") == 4.2);
  CHECK(protection.at("rows").at(1).at("power") == "idle");
  CHECK(protection.at("rows").at(2).at("margin_kt").is_null());
  CHECK(protection.at("rows").at(2).at("note") == "stalls before the warning");
}

TEST_CASE("judgement.json says the verdict, its reason and the points to fly again", "[report][json]") {
  const Json truth = judged();
  CHECK(truth.at("verdict") == "fly_again");
  CHECK(truth.at("reason") == "the stall with flaps 30 was given up");
  CHECK(truth.at("fly_again") == Json({"stall"}));
  CHECK(verdict_key(Verdict::keep) == "keep");
  CHECK(verdict_key(Verdict::wait_for_better_air) == "wait_for_better_air");
}
