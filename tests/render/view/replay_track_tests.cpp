// A flight that was flown here and now, and the same flight read back from its folder.
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"
#include "render/view/replay_track.hpp"
#include "tests/render/view/flown_sortie.hpp"

using namespace stallwright;
using namespace stallwright::view;
using view_test::Flown;
namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

double apart_m(const Vec3<double>& a, const Vec3<double>& b) { return norm(a - b); }

/// Angle between two attitudes, deg.
double apart_deg(const Quaternion<double>& a, const Quaternion<double>& b) {
  const double cosine = std::abs(a.w * b.w + a.x * b.x + a.y * b.y + a.z * b.z);
  return 2.0 * std::acos(std::min(1.0, cosine)) * 57.29577951308232;
}

}  // namespace

TEST_CASE("a replay follows the flight that was flown, in place, height and attitude", "[view][replay]") {
  const Flown flown;
  const ReplayTrack track(flown.sortie);
  REQUIRE(track.has_truth());
  CHECK(track.begin_s() == 0.0);
  const Vec3<double> start = flown.states.front().position_E_m;
  double worst_m = 0.0, worst_deg = 0.0;
  for (std::size_t i = 0; 0.02 * static_cast<double>(i) <= track.end_s(); ++i) {
    const Snapshot s = track.at(0.02 * static_cast<double>(i));
    Vec3<double> place = s.rigid.position_E_m;
    place.x += start.x;
    place.y += start.y;
    worst_m = std::max(worst_m, apart_m(place, flown.states[i].position_E_m));
    worst_deg = std::max(worst_deg, apart_deg(s.rigid.attitude_EB, flown.states[i].attitude_EB));
  }
  // Over 1 km is flown. Files hold 0.01 ft and 0.0001 deg; ideal instruments read the heading as it is.
  CHECK(apart_m(flown.states.back().position_E_m, start) > 500.0);
  CHECK(worst_m < 3.0);
  CHECK(worst_deg < 0.1);
}

TEST_CASE("between two lines a straight line, beyond the ends the last", "[view][replay]") {
  const Flown flown;
  const ReplayTrack track(flown.sortie);
  const Snapshot a = track.at(10.0), b = track.at(10.02), between = track.at(10.005);
  CHECK(between.time_s == 10.005);
  CHECK(between.rigid.position_E_m.x ==
        Approx(0.75 * a.rigid.position_E_m.x + 0.25 * b.rigid.position_E_m.x));
  CHECK(between.readings.indicated_airspeed_mps ==
        Approx(0.75 * a.readings.indicated_airspeed_mps + 0.25 * b.readings.indicated_airspeed_mps));
  CHECK(track.at(-5.0).rigid == track.at(0.0).rigid);
  CHECK(track.at(1e6).rigid == track.at(track.end_s()).rigid);
  CHECK(track.at(1e6).done);
  CHECK_FALSE(track.at(0.0).done);
  CHECK(track.at(0.0).set_points != nullptr);
}

TEST_CASE("files cut short in a line, as by a power cut, still replay", "[view][replay]") {
  const Flown flown;
  const double whole_s = ReplayTrack(flown.sortie).end_s();
  const std::string log = text_of(flown.sortie / "log.csv"), truth = text_of(flown.sortie / "truth.csv");
  std::ofstream(flown.sortie / "log.csv", std::ios::binary) << log.substr(0, log.size() * 2 / 3);
  const ReplayTrack cut(flown.sortie);
  CHECK(cut.end_s() > 0.6 * whole_s);
  CHECK(cut.end_s() < 0.7 * whole_s);
  std::ofstream(flown.sortie / "truth.csv", std::ios::binary) << truth.substr(0, truth.size() / 3);
  CHECK(ReplayTrack(flown.sortie).end_s() < 0.4 * whole_s);
}

TEST_CASE("without the truth the recorder's own figures stand in", "[view][replay]") {
  const Flown flown;
  const ReplayTrack with(flown.sortie);
  fs::remove(flown.sortie / "truth.csv");
  const ReplayTrack without(flown.sortie);
  CHECK_FALSE(without.has_truth());
  const Snapshot a = with.at(30.0), b = without.at(30.0);
  CHECK(std::abs(a.rigid.position_E_m.z - b.rigid.position_E_m.z) < 20.0);
  // Along the heading, the drift of the wind sideways is lost.
  CHECK(apart_m(a.rigid.position_E_m, b.rigid.position_E_m) < 200.0);
  CHECK(norm(b.rigid.position_E_m) > 500.0);
}

TEST_CASE("a heading that runs through north turns the short way", "[view][replay]") {
  const Flown flown;
  // Every line heads 359 or 1 degree, in turn.
  const std::string log = text_of(flown.sortie / "log.csv");
  std::string out;
  std::size_t column = 0, row = 0;
  for (std::size_t from = 0; from < log.size(); ++row) {
    const std::size_t end = std::min(log.find('\n', from), log.size());
    std::string line = log.substr(from, end - from), made;
    std::size_t k = 0;
    for (std::size_t a = 0; a <= line.size(); ++k) {
      const std::size_t b = std::min(line.find(',', a), line.size());
      const std::string field = line.substr(a, b - a);
      if (row == 0 && field == "heading_deg") column = k;
      made += (k > 0 ? "," : "") + (row > 0 && k == column ? (row % 2 == 1 ? "359" : "1") : field);
      a = b + 1;
    }
    out += made + "\n";
    from = end + 1;
  }
  std::ofstream(flown.sortie / "log.csv", std::ios::binary) << out;
  const ReplayTrack track(flown.sortie);
  const double heading_deg = track.at(0.01).readings.heading_rad * 57.29577951308232;
  CHECK(std::min(heading_deg, 360.0 - heading_deg) < 0.01);
}

TEST_CASE("what is no sortie is one line of complaint", "[view][replay]") {
  const card_text::Folder folder;
  CHECK_THROWS_AS(ReplayTrack(folder.path()), InputError);
  const Flown flown;
  fs::remove(flown.sortie / "log.csv");
  CHECK_THROWS_AS(ReplayTrack(flown.sortie), InputError);
}
