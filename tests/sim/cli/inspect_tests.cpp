#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "aircraft/input_error.hpp"
#include "sim/cli/inspect_command.hpp"
#include "sim/cli/inspect_report.hpp"
#include "tests/sim/cli/run_program.hpp"

using namespace stallwright;
using cli_test::Folder;

namespace {

/// Marram's file with one band of our own instead of its.
std::string with_band(const Folder& folder, const std::string& quantity, double low, double high,
                      const std::string& unit) {
  const std::string file = (folder / "own.toml").string();
  const std::string whole = cli_test::text_of(find_aircraft_file("marram"));
  std::ostringstream text;
  text << whole.substr(0, whole.find("[[band]]")) << "[[band]]\nquantity = \"" << quantity
       << "\"\nlow = " << low << ".0\nhigh = " << high << ".0\nunit = \"" << unit
       << "\"\nreason = \"for the test\"\n";
  cli_test::put(file, text.str());
  return file;
}

std::string complaint(const std::string& aircraft) {
  std::ostringstream out;
  try {
    inspect({aircraft, false}, out);
  } catch (const InputError& e) {
    CHECK(out.str().empty());
    return e.what();
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("inspect judges every band of an aeroplane and answers yes only if all are inside", "[cli]") {
  std::ostringstream out;
  const int status = inspect({"marram", true}, out);
  const auto page = nlohmann::json::parse(out.str());
  CHECK(page["format"] == "stallwright-inspection-1");
  CHECK(page["aircraft"] == "Marram");
  CHECK(page["mass"]["mass_kg"] == Approx(600.0));
  CHECK(page["stalls"].size() == 3);
  CHECK(page["modes"].size() == 5);
  const AircraftType type = load_aircraft_type(find_aircraft_file("marram"));
  REQUIRE(page["bands"].size() == type.bands.size());
  int outside = 0;
  for (const auto& band : page["bands"]) {
    CAPTURE(band.dump());
    REQUIRE(band["value"].is_number());
    const double value = band["value"];
    CHECK(band["inside"] == (value >= band["low"] && value <= band["high"]));
    outside += band["inside"] ? 0 : 1;
  }
  CHECK(page["outside"] == outside);
  CHECK(status == (outside == 0 ? 0 : 1));
}

TEST_CASE("inspect answers 0 with all inside and 1 with one OUTSIDE, and says so", "[cli]") {
  const Folder folder;
  std::ostringstream good, bad;
  CHECK(inspect({with_band(folder, "stall_speed_flap0_kt", 30, 50, "kt"), false}, good) == 0);
  CHECK_THAT(good.str(),
             Catch::Contains("Inside their bands: 1 of 1 figures.") && !Catch::Contains("OUTSIDE"));
  CHECK(inspect({with_band(folder, "stall_speed_flap0_kt", 10, 20, "kt"), false}, bad) == 1);
  CHECK_THAT(bad.str(), Catch::Contains("kt      OUTSIDE  band 10 to 20") &&
                            Catch::Contains("for the test") && Catch::Contains("0 of 1") &&
                            Catch::Contains("short period") && Catch::Contains("maximum lift"));
}

TEST_CASE("a figure that could not be found is outside its band", "[cli]") {
  cli::BandVerdict verdict{{"cruise_speed_kt", 0.0, 1000.0, "kt", ""}, kUnset};
  CHECK_FALSE(verdict.inside());
  verdict.value = 1000.0;
  CHECK(verdict.inside());
}

TEST_CASE("inspect refuses what it cannot judge in one line and writes nothing", "[cli]") {
  const Folder folder;
  const std::string unknown = complaint(with_band(folder, "climb_rate_fpn", 1, 2, "ft/min"));
  CHECK_THAT(unknown, Catch::Contains("own.toml: band[1].quantity: expected one of") &&
                          Catch::Contains("perhaps climb_rate_fpm") && !Catch::Contains("\n"));
  CHECK_THAT(complaint(with_band(folder, "stall_speed_flap7_kt", 1, 2, "kt")),
             Catch::Contains("found \"stall_speed_flap7_kt\""));
  CHECK_THAT(complaint(with_band(folder, "climb_rate_fpm", 1, 2, "m/s")),
             Catch::Contains("band[1].unit: expected \"ft/min\""));
  CHECK_THAT(complaint((folder / "none.toml").string()), Catch::Contains("none.toml"));
  CHECK_THAT(complaint("nosuch"), Catch::Contains("nosuch"));
}
