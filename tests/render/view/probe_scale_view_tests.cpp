#include <catch2/catch.hpp>
#include <numbers>

#include "render/view/probe_scale_view.hpp"

using namespace stallwright;

namespace {

Snapshot with(std::vector<SetPointSoFar> points, double flap_deg = 0.0) {
  Snapshot now;
  now.readings.flap_rad = flap_deg * std::numbers::pi / 180.0;
  now.set_points = std::make_shared<const std::vector<SetPointSoFar>>(std::move(points));
  return now;
}

}  // namespace

TEST_CASE("with no set points the ruler is the usual one and the needle stands at the lagged ratio",
          "[view][probe_scale]") {
  Snapshot now = with({});
  now.needles.probe_ratio = 0.3;
  now.readings.probe_ratio = 0.9;
  const auto v = view::probe_scale_view(now);
  CHECK(v.peg_count == 0);
  CHECK(v.ratio == 0.3);
  CHECK(v.from == view::kRulerFrom);
  CHECK(v.to == view::kRulerTo);
}

TEST_CASE("pegs carry name and interval, and those of the nearest flap setting are lit",
          "[view][probe_scale]") {
  const std::vector<SetPointSoFar> points = {{"approach", 0.0, -0.1, -0.12, -0.08},
                                             {"stall", 0.0, 0.7, 0.6, 0.8},
                                             {"approach", 35.0, -0.5, -0.52, -0.48}};
  for (const double flap_deg : {0.0, 17.0, 18.0, 35.0}) {
    CAPTURE(flap_deg);
    const auto v = view::probe_scale_view(with(points, flap_deg));
    REQUIRE(v.peg_count == 3);
    CHECK(std::string(v.pegs[1].name.data()) == "stall");
    CHECK(v.pegs[1].ratio == 0.7);
    CHECK(v.pegs[1].low == 0.6);
    CHECK(v.pegs[1].high == 0.8);
    CHECK(v.pegs[0].lit == (flap_deg < 17.5));
    CHECK(v.pegs[1].lit == (flap_deg < 17.5));
    CHECK(v.pegs[2].lit == (flap_deg > 17.5));
  }
}

TEST_CASE("the ruler grows by whole steps for a peg or whisker beyond it, never for the needle",
          "[view][probe_scale]") {
  Snapshot now = with({{"fast reference", 0.0, -1.1, -1.21, -1.0}, {"stall", 0.0, 1.3, 1.2, 1.4}});
  const auto v = view::probe_scale_view(now);
  CHECK(v.from == Approx(-1.4));
  CHECK(v.to == Approx(1.4));
  now = with({{"stall", 0.0, 0.7, 0.6, 0.8}});
  now.needles.probe_ratio = 5.0;
  CHECK(view::probe_scale_view(now).to == view::kRulerTo);
  now = with({{"stall", 0.0, 0.7, -INFINITY, NAN}});
  CHECK(view::probe_scale_view(now).from == view::kRulerFrom);
}

TEST_CASE("too many set points and too long names are cut, letters whole", "[view][probe_scale]") {
  const std::string alphas = [] {
    std::string s = "a";
    for (int k = 0; k < 40; ++k) s += "α";
    return s;
  }();
  const auto v = view::probe_scale_view(with(std::vector<SetPointSoFar>(60, {alphas, 0.0, 0.1, 0.0, 0.2})));
  CHECK(v.peg_count == view::kPegs);
  const std::string name = v.pegs[0].name.data();
  CHECK(name.size() == 63);
  CHECK(alphas.starts_with(name));
  const auto w = view::probe_scale_view(with({{"x" + alphas, 0.0, 0.1, 0.0, 0.2}}));
  CHECK(std::string(w.pegs[0].name.data()).size() == 62);
  CHECK(view::probe_scale_view(Snapshot{}).peg_count == 0);
}
