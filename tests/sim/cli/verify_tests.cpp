// From taught set points to a verdict on them, through the program.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/sim/cli/run_program.hpp"
#include "tests/sim/report/page_checks.hpp"

namespace stallwright::cli_test {
namespace {

using Json = nlohmann::json;

/// One slow run and one approach: the least that can be verified.
const std::string kCard = R"(format = "stallwright-card-1"
[card]
name = "Listen"
summary = "For tests."
purpose = "verify"
clearing_turns = false
[[point]]
name = "level power"
flap_setting = 0
power = "level"
slow_through_ktps = 0.5
from_above_stall_kt = 14
to_above_stall_kt = 2
[point.bands]
entry_rate_ktps = 0.3
[[point]]
name = "approach"
flap_setting = 0
power = "level"
stall_multiple = 1.3
settle_s = 2
record_s = 8
)";

/// A set-points file as somebody's own reduction might write it: the least that the format asks for.
std::string taught(double warning, const std::string& aircraft = "Marram") {
  const Json reading = {{"ratio", warning}, {"u", 0.01}};
  const Json point = {
      {"name", "warning"},
      {"ratio", warning},
      {"u", 0.01},
      {"dof", 10},
      {"interval_95", {warning - 0.02, warning + 0.02}},
      {"speed_kt", 47.6},
      {"target_kt", 47.6},
      {"card_point", 2},
      {"budget", Json::array()},
      {"flags", Json::array()},
      {"readings", {{"spot", reading}, {"window_mean", reading}, {"lift_corrected", reading}}}};
  const Json set = {{"flap_deg", 0.0}, {"mass_kg", 565.0}, {"order_ok", true}, {"points", {point}}};
  return Json{{"format", "stallwright-set-points-1"}, {"card", "c"}, {"aircraft", aircraft}, {"sets", {set}}}
      .dump();
}

}  // namespace

TEST_CASE("taught set points are verified through the program: pass, or what to teach again",
          "[cli][verify]") {
  const Folder folder;
  put(folder / "listen.toml", kCard);
  put(folder / "good.json", taught(0.126));
  put(folder / "late.json", taught(0.40));
  const Result good = run(folder, "rehearse --card listen.toml --set-points good.json --out good");
  INFO(good.out << good.err);
  CHECK(good.status == 0);
  CHECK(good.out.find("Verdict: Pass.") != std::string::npos);
  CHECK(good.out.find("Caution: Stalls kill") != std::string::npos);
  const Json answer = Json::parse(text_of(folder / "good/verification.json"));
  CHECK(answer.at("pass") == true);
  CHECK(answer.at("points").size() == 2);
  CHECK(answer.at("points")[0].at("tone_kt").get<double>() >
        answer.at("points")[0].at("stall_kt").get<double>());
  const std::string page = text_of(folder / "good/verification.html");
  CHECK(page_checks::imbalance(page).empty());
  CHECK(page.find("Pass.") != std::string::npos);
  CHECK(fs::exists(folder / "good/taught.json"));
  CHECK_FALSE(fs::exists(folder / "good/judgement.json"));

  const Result late = run(folder, "rehearse --card listen.toml --set-points late.json --out late");
  CHECK(late.status == 1);
  CHECK(late.out.find("Teach again: warning, flaps up.") != std::string::npos);

  // No set points come of it, and no study.
  CHECK(run(folder, "reduce good").status == 2);
  CHECK(run(folder, "study intervals --card listen.toml --sorties 2 --air calm").status == 2);

  CHECK(run(folder, "debrief good --who 'A. Pilot'").status == 2);

  // Without a speed of the teaching, nothing is said of it.
  std::string unknown = text_of(folder / "good/taught.json");
  const std::size_t target = unknown.find("\"target_kt\":47.6,");
  REQUIRE(target != std::string::npos);
  unknown.erase(target, 17);
  put(folder / "unknown.json", unknown);
  const Result uncompared =
      run(folder, "rehearse --card listen.toml --set-points unknown.json --out uncompared");
  CHECK(uncompared.out.find("where it was taught") == std::string::npos);
  CHECK(uncompared.out.find("no run could be compared") != std::string::npos);

  // From the folder alone, to the same bytes.
  fs::remove(folder / "good/verification.html");
  CHECK(run(folder, "debrief good").status == 0);
  CHECK(text_of(folder / "good/verification.html") == page);
}

TEST_CASE("what cannot be verified is refused with one line before anything is written", "[cli][verify]") {
  const Folder folder;
  put(folder / "listen.toml", kCard);
  put(folder / "good.json", taught(0.126));
  put(folder / "other.json", taught(0.126, "Sarsen"));
  put(folder / "broken.json", "{");
  std::string unnamed = taught(0.126);
  unnamed.replace(unnamed.find("warning"), 7, "approach");
  put(folder / "unnamed.json", unnamed);
  const std::string before = folder.listing();
  for (const std::string& options : {std::string("--card listen.toml"), std::string("--set-points good.json"),
                                     std::string("--card listen.toml --set-points nowhere.json"),
                                     std::string("--card listen.toml --set-points broken.json"),
                                     std::string("--card listen.toml --set-points unnamed.json"),
                                     std::string("--card listen.toml --set-points other.json")}) {
    const Result refused = run(folder, "rehearse --out new " + options);
    INFO(options << ": " << refused.err);
    CHECK(refused.status == 2);
    CHECK(refused.err_lines() == 1);
    CHECK(refused.err.find("expected") != std::string::npos);
    CHECK(folder.listing() == before);
  }
}

}  // namespace stallwright::cli_test
