#include <algorithm>
#include <catch2/catch.hpp>

#include "sim/sortie/test_card_file.hpp"
#include "sim/truth/decide.hpp"

using namespace stallwright;

namespace {

/// A finished sortie of the short card in which everything went well: each test spoils one thing.
struct Flown {
  TestCard card = load_test_card(find_card_file("short"));
  SetPoints measured;
  Judgement judgement;
  SortieOutcome outcome;

  Flown() {
    outcome.finished = true;
    outcome.tallies.resize(card.points.size());
    SetPointSet set;
    JudgedSet judged;
    set.order_ok = judged.order_ok = true;
    for (std::size_t k = 0; k < card.points.size(); ++k) {
      JudgedPoint p;
      p.measured.name = card.points[k].name;
      p.measured.card_point = k;
      p.measured.is_stall = card.points[k].is_stall();
      p.measured.ratio = 0.2 * static_cast<double>(k);
      RecordWindow window;
      window.load_factor_sd = 0.03;
      p.measured.windows = {window};
      p.expanded_kt = 1.0;
      p.error_kt = 0.3;
      set.points.push_back(p.measured);
      judged.points.push_back(p);
    }
    measured.sets = {set};
    judgement.sets = {judged};
  }

  JudgedPoint& point(std::size_t k) { return judgement.sets[0].points[k]; }
  RecordWindow& window(std::size_t k) { return point(k).measured.windows[0]; }
  const Judgement& decided() {
    decide(judgement, measured, card, outcome);
    return judgement;
  }
};

constexpr std::size_t kApproach = 1, kWarning = 2, kStall = 3;
using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("a clean sortie is kept") {
  Flown f;
  CHECK(f.decided().verdict == Verdict::keep);
  CHECK(f.judgement.fly_again.empty());
}

TEST_CASE("a stall that nobody asked for: wait where the air was rough, fly again where it was not") {
  Flown f;
  f.outcome.tallies[kWarning].unintended_stalls = 1;
  SECTION("smooth") {
    CHECK(f.decided().verdict == Verdict::fly_again);
    CHECK(f.judgement.fly_again == Names{"warning"});
  }
  SECTION("rough") {
    f.window(kApproach).load_factor_sd = 0.15;
    CHECK(f.decided().verdict == Verdict::wait_for_better_air);
    CHECK(f.judgement.fly_again == Names{"warning"});
    CHECK(f.judgement.reason.find("not safe to hold") != std::string::npos);
  }
}

TEST_CASE("a point that was forced is the air's fault only in rough air") {
  Flown f;
  f.window(kApproach).forced = true;
  SECTION("smooth") { CHECK(f.decided().verdict == Verdict::keep); }
  SECTION("rough") {
    f.window(kApproach).load_factor_sd = 0.15;
    CHECK(f.decided().verdict == Verdict::wait_for_better_air);
    CHECK(f.judgement.fly_again == Names{"approach"});
    CHECK(f.judgement.reason.find("0.15 g") != std::string::npos);
  }
}

TEST_CASE("an interval that is too wide: wait in rough air, repeat in smooth") {
  Flown f;
  f.point(kWarning).expanded_kt = f.card.wanted_uncertainty_kt + 0.1;
  SECTION("smooth") { CHECK(f.decided().verdict == Verdict::fly_again); }
  SECTION("rough") {
    f.window(kWarning).load_factor_sd = 0.15;
    CHECK(f.decided().verdict == Verdict::wait_for_better_air);
    CHECK(f.judgement.reason.find(": warning is less certain than") != std::string::npos);
  }
  CHECK(f.judgement.fly_again == Names{"warning"});
}

TEST_CASE("two points that are too wide in rough air are told as two") {
  Flown f;
  for (const std::size_t point : {kApproach, kWarning}) {
    f.point(point).expanded_kt = f.card.wanted_uncertainty_kt + 0.1;
    f.window(point).load_factor_sd = 0.15;
  }
  CHECK(f.decided().verdict == Verdict::wait_for_better_air);
  CHECK(f.judgement.reason.find("approach and warning are less certain than") != std::string::npos);
}

TEST_CASE("a stall on the way to which the air was rough is not kept, whatever its interval says") {
  Flown f;
  f.window(kStall).load_factor_sd = 0.12;
  CHECK(f.decided().verdict == Verdict::wait_for_better_air);
  CHECK(f.judgement.fly_again == Names{"stall"});
}

TEST_CASE("where the truth says that the air was smooth, a load factor that swings is not laid to it") {
  Flown f;
  f.window(kStall).load_factor_sd = 0.12;
  SECTION("smooth by the truth") {
    f.outcome.record_gust_mps = 0.05;
    CHECK(f.decided().verdict == Verdict::keep);
  }
  SECTION("smooth, and a stall that nobody asked for") {
    f.outcome.record_gust_mps = 0.05;
    f.outcome.tallies[kWarning].unintended_stalls = 1;
    CHECK(f.decided().verdict == Verdict::fly_again);
  }
  SECTION("light turbulence") {
    f.outcome.record_gust_mps = 0.8;
    CHECK(f.decided().verdict == Verdict::wait_for_better_air);
  }
}

TEST_CASE("rough air that spoilt nothing does not stand in the way") {
  Flown f;
  f.window(kApproach).load_factor_sd = 0.12;
  CHECK(f.decided().verdict == Verdict::keep);
}

TEST_CASE("a set point that is missing, out of order or wrong is flown again") {
  Flown f;
  SECTION("missing") {
    f.point(kStall).measured.ratio = f.measured.sets[0].points[kStall].ratio = kNone;
    f.decided();
  }
  SECTION("out of order") {
    f.measured.sets[0].order_ok = false;
    f.measured.sets[0].order_notes = {"stall is not above warning"};
    f.decided();
  }
  SECTION("wrong, held against the truth") {
    f.point(kStall).error_kt = -f.card.wanted_uncertainty_kt - 0.1;
    f.decided();
  }
  CHECK(f.judgement.verdict == Verdict::fly_again);
  CHECK(std::find(f.judgement.fly_again.begin(), f.judgement.fly_again.end(), "stall") !=
        f.judgement.fly_again.end());
}

TEST_CASE("a flight that ended before its card did is not kept") {
  Flown f;
  f.outcome.finished = false;
  f.outcome.failure = "met the ground";
  CHECK(f.decided().verdict == Verdict::fly_again);
  CHECK(f.judgement.reason.find("met the ground") != std::string::npos);
}
