#include <catch2/catch.hpp>

#include "sim/report/fly_again.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/keyboard_pilot.hpp"

using namespace stallwright;

TEST_CASE(
    "the short card is flown with keys alone from the start page to the debrief, and flies again the same",
    "[cockpit][whole]") {
  const std::string type = GENERATE("marram", "sarsen");
  const cli_test::Folder folder;
  app::Options options = app_test::options(folder.path(), {"--aircraft", type, "--frames", "60000"});
  SortieConfig config;
  config.card = load_test_card(find_card_file("short"));
  app_test::KeyboardPilot pilot;
  bool flew = false, horn = false, buffet = false, checked = false, debriefed = false;
  double horn_s = 0.0, buffet_s = 0.0, break_s = 0.0;
  {
    app::Cockpit cockpit(options);
    cockpit.run([&](app::Cockpit& c) {
      if (c.flight() == nullptr) {
        // The page's own Enter key, as the guide says; the debrief's tabs show that it is over.
        debriefed = flew && c.registry().find("Fly it again") != nullptr;
        if (!flew && c.registry().find("Fly") != nullptr) c.registry().press("Fly");
        if (debriefed) c.quit();
        return;
      }
      flew = true;
      const Seen& seen = *c.flight();
      if (c.registry().find("Gone through (Enter)") != nullptr) {
        c.registry().press("Gone through (Enter)");
        checked = true;
      }
      pilot.fly(seen, config, 0.04);
      const bool stalling = seen.now.marks.phase == Phase::slow;
      if (stalling && seen.now.horn && !horn) horn = true, horn_s = seen.now.time_s;
      if (stalling && seen.now.buffet_g > 0.015 && !buffet) buffet = true, buffet_s = seen.now.time_s;
      if (seen.now.marks.phase == Phase::broken && break_s == 0.0) break_s = seen.now.time_s;
    });
  }
  INFO(type << ": horn " << horn_s << ", buffet " << buffet_s << ", break " << break_s << " s");
  REQUIRE(debriefed);
  CHECK(checked);
  CHECK(horn_s > 0.0);
  CHECK(horn_s < buffet_s);
  CHECK(buffet_s <= break_s);
  const std::filesystem::path sortie = app_test::only_sortie(folder.path());
  const FlownSortie flown = read_sortie(sortie);
  CHECK(flown.outcome.finished);
  CHECK(flown.config.by_hand);
  for (const char* file : {"log.csv", "truth.csv", "hands.csv", "set-points.json", "judgement.json",
                           "debrief.html", "record.html"})
    CHECK(std::filesystem::exists(sortie / file));
  const Debrief debrief = make_debrief(sortie);
  // Calm air: whatever the keys did, the air is not to blame.
  CHECK(debrief.flown.outcome.record_gust_mps < 0.01);
  CHECK(debrief.page.judgement.verdict != Verdict::wait_for_better_air);
  for (const JudgedSet& set : debrief.page.judgement.sets)
    for (const JudgedPoint& point : set.points) CHECK(std::isfinite(point.error_kt));
  // The same inputs, headless: the same bytes.
  const FlownAgain again = fly_again(sortie);
  CHECK_FALSE(again.cut_short);
  CHECK(again.same());
}
