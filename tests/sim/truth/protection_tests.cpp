#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/truth/judge.hpp"
#include "sim/truth/protection.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

/// True set points of the short card, as if recorded without any error, and what they protect.
struct Taught {
  SortieConfig config;
  Aircraft aircraft;
  StillAir air;
  std::vector<TrueSet> truth;
  SetPoints recorded;

  explicit Taught(const std::string& type)
      : config(study_test::sortie(type, "current", "ideal")),
        aircraft(make_aircraft(config.type, config.loading, 0)),
        air(working_air(config.card, config.air.day)),
        truth(find_truth(aircraft, config.card, air)) {
    SetPointSet set;
    for (const TruePoint& t : truth[0].points) {
      SetPoint p;
      p.name = t.name;
      p.card_point = t.card_point;
      p.is_stall = t.is_stall;
      p.ratio = t.at.ratio;
      set.points.push_back(p);
    }
    recorded.sets = {set};
  }
  SetPoint& warning() { return recorded.sets[0].points[2]; }
  Protection protects() const { return protection(aircraft, 0, recorded, config.card, air); }
};

const ProtectionRow& row(const Protection& p, double flap_deg, PowerRule power, double bank_deg, bool heavy) {
  const auto found = std::find_if(p.rows.begin(), p.rows.end(), [&](const ProtectionRow& r) {
    return std::abs(r.flap_deg - flap_deg) < 0.1 && r.power == power && r.bank_deg == bank_deg &&
           r.heavy == heavy;
  });
  REQUIRE(found != p.rows.end());
  return *found;
}

}  // namespace

TEST_CASE("the warning protects as much as taught in the flight that it was taught in",
          "[truth][protection]") {
  const Taught t("sarsen");
  const Protection p = t.protects();
  const double target_kt = t.truth[0].points[2].at.indicated_mps / kKnot;
  const ProtectionRow& light = row(p, 0.0, PowerRule::level, 0.0, false);
  const ProtectionRow& heavy = row(p, 0.0, PowerRule::level, 0.0, true);
  // Speeds of one angle go with the root of mass, but for the slipstream, which does more for a light aeroplane.
  CHECK(light.warning_kt * std::sqrt(t.aircraft.mass.mass_kg / light.mass_kg) ==
        Approx(target_kt).margin(0.6));
  CHECK(heavy.warning_kt * std::sqrt(t.aircraft.mass.mass_kg / heavy.mass_kg) ==
        Approx(target_kt).margin(0.6));
  CHECK(p.taught_margin_kt > light.margin_kt - 0.3);
  CHECK(p.taught_margin_kt < heavy.margin_kt + 0.3);
}

TEST_CASE("stall speeds of the protection table go with the roots of mass and load factor",
          "[truth][protection]") {
  const Protection p = Taught("tarnfell").protects();
  const ProtectionRow& level = row(p, 0.0, PowerRule::idle, 0.0, true);
  const ProtectionRow& light = row(p, 0.0, PowerRule::idle, 0.0, false);
  CHECK(level.stall_kt / light.stall_kt == Approx(std::sqrt(level.mass_kg / light.mass_kg)).epsilon(0.02));
  for (const double bank : {30.0, 45.0}) {
    const double load_factor = 1.0 / std::cos(bank * math::kDegree);
    // sqrt(n) in a level turn (common practice). The inner wing of a slow aeroplane is slower than its middle, which costs
    // some lift, and a gliding turn needs a little less of it.
    CHECK(row(p, 0.0, PowerRule::level, bank, true).stall_kt /
              row(p, 0.0, PowerRule::level, 0.0, true).stall_kt ==
          Approx(std::sqrt(load_factor)).epsilon(0.02));
    CHECK(row(p, 0.0, PowerRule::idle, bank, true).stall_kt / level.stall_kt ==
          Approx(std::sqrt(load_factor)).epsilon(0.03));
  }
}

TEST_CASE("a warning taught with flaps up and power on gives less at idle, and much less with flaps down",
          "[truth][protection]") {
  const std::string type = GENERATE("marram", "sarsen", "tarnfell");
  const Taught t(type);
  const Protection p = t.protects();
  INFO(type);
  for (const bool heavy : {false, true}) {
    const double idle = row(p, 0.0, PowerRule::idle, 0.0, heavy).margin_kt;
    CHECK(idle < row(p, 0.0, PowerRule::level, 0.0, heavy).margin_kt);
    const double full = t.config.type.flaps.back().deflection_rad / math::kDegree;
    CHECK(row(p, full, PowerRule::idle, 0.0, heavy).margin_kt < idle - 2.0);
    CHECK_FALSE(row(p, full, PowerRule::idle, 0.0, heavy).in_use);
  }
  CHECK(p.least() != nullptr);
  CHECK(p.least()->margin_kt < p.taught_margin_kt);
  CHECK(p.sentence.find("closer to the stall") != std::string::npos);
  for (const ProtectionRow& r : p.rows) {
    INFO(r.flap_deg << " deg, bank " << r.bank_deg << ", " << r.mass_kg << " kg " << r.note);
    CHECK(r.stall_kt > 20.0);
    CHECK((r.margin_kt > 0.0 && r.margin_kt < 15.0));
    CHECK(r.in_use == (r.flap_deg == 0.0 && r.bank_deg <= t.config.card.protected_bank_deg));
  }
}

TEST_CASE("a warning recorded too late protects less, and past the stall nothing", "[truth][protection]") {
  Taught t("marram");
  const double before = t.protects().least()->margin_kt;
  t.warning().ratio += 0.1;
  const double after = t.protects().least()->margin_kt;
  CHECK(after < before - 1.0);
  t.warning().ratio = t.truth[0].points.back().at.ratio + 0.3;
  const Protection none = t.protects();
  CHECK(none.least()->note == "stalls before the warning");
  CHECK(none.sentence.find("stalls before the warning") != std::string::npos);
  t.recorded.sets[0].points.erase(t.recorded.sets[0].points.begin() + 2);
  CHECK(t.protects().rows.empty());
}

TEST_CASE("a set is not kept whose warning comes later than the card wants in some flight within its use",
          "[truth][protection]") {
  TestCard card;
  Protection p;
  p.rows = {{0.0, 0.0, PowerRule::idle, 0.0, false, 450.0, 43.0, 39.0, 4.0, true, ""},
            {0.0, 0.0, PowerRule::idle, 45.0, false, 450.0, 43.0, 42.0, 1.0, false, ""}};
  p.sentence = "as recorded, the warning comes 4.0 kt above the stall.";
  Judgement j;
  card.wanted_margin_kt = 3.9;
  heed_protection(j, p, card);
  CHECK(j.verdict == Verdict::keep);
  card.wanted_margin_kt = 4.1;
  heed_protection(j, p, card);
  CHECK(j.verdict == Verdict::fly_again);
  CHECK(j.fly_again == std::vector<std::string>{"warning"});
  CHECK(j.reason.find("4.1 kt") != std::string::npos);
}
