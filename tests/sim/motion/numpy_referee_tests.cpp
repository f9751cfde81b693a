// The flight step written a second time, in NumPy from the equations (tests/bench/numpy_flight.py): the two must agree.
#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/bench/aeroplane_json.hpp"
#include "tests/sim/cli/run_program.hpp"

namespace stallwright {
namespace {

using cli_test::Folder;

/// Worst difference of the two steps, over the larger of 1 and the number.
double difference(const Folder& folder) {
  const std::string command = "/usr/bin/python3 -B '" STALLWRIGHT_SOURCE_DIR "/tests/bench/agree.py' '" +
                              folder.path().string() + "' >'" + (folder / "out").string() + "'";
  REQUIRE(std::system(command.c_str()) == 0);
  return std::stod(cli_test::text_of(folder / "out"));
}

bool stalled(const LaneGroup<double>& aeroplane) {
  const auto& x = aeroplane.flight.airframe.separation;
  return std::any_of(x.begin(), x.begin() + kWingStrips, [](double share) { return share < 0.5; });
}

}  // namespace

TEST_CASE(
    "one step agrees with the same equations written in NumPy, before, in and after a stall in light air",
    "[motion][referee]") {
  const bench::Samples flown = bench::samples(300);
  REQUIRE(std::any_of(flown.aeroplanes.begin(), flown.aeroplanes.end(), stalled));
  const Folder folder;
  const std::string json = bench::aeroplane_json(flown.known->aircraft);
  cli_test::put(folder / "aeroplane.json", json);
  bench::write_samples(flown, folder / "samples.f64");
  // The order of sums differs, nothing else: a few roundings of a step.
  CHECK(difference(folder) < 1e-12);

  // It tells: six thousandths of a degree in the tail's angle of zero lift are seen.
  auto other = nlohmann::json::parse(json);
  other["sections"][1]["zero_lift"] = other["sections"][1]["zero_lift"].get<double>() + 1e-4;
  cli_test::put(folder / "aeroplane.json", other.dump());
  CHECK(difference(folder) > 1e-8);
}

}  // namespace stallwright
