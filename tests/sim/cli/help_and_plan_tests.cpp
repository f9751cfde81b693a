#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/sim/cli/run_program.hpp"

namespace stallwright::cli_test {

using Json = nlohmann::json;

TEST_CASE("every command has a help text with examples and the exit status", "[cli]") {
  const Folder folder;
  for (const std::string command : {"", "plan ", "rehearse ", "reduce ", "debrief ", "study ", "study merge ",
                                    "study place ", "study intervals "}) {
    const Result help = run(folder, command + "--help");
    INFO(command << "\n" << help.out);
    CHECK(help.status == 0);
    CHECK(help.err.empty());
    CHECK(help.out.find("Examples:\n  stallwright " + command.substr(0, command.find(' '))) !=
          std::string::npos);
    CHECK(help.out.find("Exit status:") != std::string::npos);
  }
  CHECK(run(folder, "--version").out == "stallwright " STALLWRIGHT_VERSION "\n");
  const Result whole = run(folder, "--help");
  for (const char* command : {"plan", "rehearse", "reduce", "debrief"})
    CHECK(whole.out.find(command) != std::string::npos);
  CHECK(folder.listing().empty());
}

TEST_CASE("a plan gives the speeds of the mass, the floor and the cautions", "[cli]") {
  const Folder folder;
  const Result page = run(folder, "plan");
  INFO(page.out << page.err);
  CHECK(page.status == 0);
  for (const char* word :
       {"fast reference", "approach", "warning", "stall", "FLOOR 1500 ft", "Plan: go", "Caution:"}) {
    INFO("missing: " << word);
    CHECK(page.out.find(word) != std::string::npos);
  }
  const Json full = Json::parse(run(folder, "plan --json").out);
  const Json light = Json::parse(run(folder, "plan --json --load 'rear seat=0'").out);
  CHECK(full.at("format") == "stallwright-plan-1");
  CHECK(full.at("go") == true);
  const double masses = light.at("mass_kg").get<double>() / full.at("mass_kg").get<double>();
  CHECK(masses < 0.9);
  // One angle of attack, one load factor: speed goes with the root of the mass.
  const auto target = [](const Json& plan) { return plan.at("points").at(1).at("target_kt").get<double>(); };
  CHECK(target(light) / target(full) == Approx(std::sqrt(masses)).epsilon(1e-6));
  CHECK(folder.listing().empty());
}

TEST_CASE("a plan knows the density of the day", "[cli]") {
  const Folder folder;
  // 1 hPa is about 27 ft. Ten degrees are worth about 1,200 ft of density altitude (120 ft per K, common
  // practice), less the 100 ft by which the pressure altitude of 3,000 ft falls in the thicker layers of a
  // warm day (4 % for 11 K).
  const auto altitude = [&](const std::string& day, const char* key) {
    return Json::parse(run(folder, "plan --json " + day).out).at(key).get<double>();
  };
  CHECK(altitude("", "density_altitude_ft") == Approx(3000).margin(2));
  CHECK(altitude("--qnh 1003.25", "pressure_altitude_ft") == Approx(3270).margin(15));
  CHECK(altitude("--temperature-offset 10", "density_altitude_ft") == Approx(4100).margin(80));
}

TEST_CASE("a plan says no to a card that the aeroplane cannot fly", "[cli]") {
  const Folder folder;
  std::string card = text_of(fs::path(STALLWRIGHT_SOURCE_DIR) / "assets/cards/short.toml");
  const std::string target = "above_stall_kt = 7.0";
  card.replace(card.find(target), target.size(), "above_stall_kt = 2.0");
  put(folder / "slow.toml", card);
  const Result page = run(folder, "plan --card slow.toml");
  INFO(page.out << page.err);
  CHECK(page.status == 1);
  CHECK(page.out.find("NO GO") != std::string::npos);
  CHECK(page.out.find("warning") != std::string::npos);
}

}  // namespace stallwright::cli_test
