#include <catch2/catch.hpp>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "aircraft/type_file.hpp"
#include "sim/report/number_text.hpp"
#include "sim/report/record_page.hpp"
#include "sim/report/record_parts.hpp"
#include "sim/report/svg.hpp"
#include "sim/report/verdict_text.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/report/judged_sample.hpp"
#include "tests/sim/report/page_checks.hpp"

using namespace stallwright;
using namespace stallwright::page_checks;
using Catch::Matchers::Contains;

namespace {

/// The numbers of judged_sample.hpp as if the short card had been flown in the Marram; nobody did.
Debrief sample_debrief() {
  Debrief debrief;
  debrief.page = sample::debrief();
  debrief.page.summary.version = "0.0.7";
  FlownSortie& flown = debrief.flown;
  flown.air = "light";
  flown.version = "0.0.7";
  flown.ended = true;
  flown.outcome.finished = true;
  flown.outcome.ended_s = 912.0;
  flown.outcome.entered_mass_kg = 571.5;
  PointTally tally;
  tally.unintended_stalls = 2;
  tally.given_up = 1;
  flown.outcome.tallies = {tally};
  SortieConfig& config = flown.config;
  config.type = load_aircraft_type(find_aircraft_file("marram"));
  config.card = load_test_card(find_card_file("short"));
  config.loading = default_loading(config.type);
  config.air.day.qnh_Pa = 99870.0;
  config.air.day.temperature_offset_K = -7.5;
  config.air.wind.from_rad = 250.0 * math::kDegree;
  config.air.wind.speed_mps = 12.0 * kKnot;
  config.pilot = pilot_grade("rusty");
  config.instruments = instrument_grade("standard");
  config.seed = 18446744073709551615u;
  config.airframe_seed = 3;
  return debrief;
}

std::string words(const Debrief& debrief, const Who& who = {}) { return words_of(record_page(debrief, who)); }

}  // namespace

TEST_CASE("the record is one well-formed page that loads nothing and runs nothing", "[report][record]") {
  const std::string page = record_page(sample_debrief(), {{"A", "B"}, "1 May"});
  CHECK(page.starts_with("<!DOCTYPE html>"));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  CHECK_FALSE(has_bare_ampersand(page));
  CHECK_THAT(page, Contains("<meta charset=\"utf-8\"/>") && Contains("size: A4"));
  CHECK_THAT(page, !Contains("<script") && !Contains("src=") && !Contains("href=") && !Contains("url(") &&
                       !Contains("@import") && !Contains("http"));
}

TEST_CASE("the record of the same sortie is the same, byte for byte", "[report][record]") {
  const Who who{{"A"}, "1 May"};
  CHECK(record_page(sample_debrief(), who) == record_page(sample_debrief(), who));
  CHECK(record_page(sample_debrief(), who) != record_page(sample_debrief(), {}));
}

TEST_CASE("the record says what was flown, with which load and in which air", "[report][record]") {
  const std::string text = words(sample_debrief());
  for (const char* part :
       {"Marram (invented), key marram", "key short", "rusty (simulated pilot)", "standard",
        "18446744073709551615; airframe 3", "light; gusts \u03c3 1.6 kt", "QNH 998.7 hPa",
        "\u22127.5 K from standard", "wind 250\u00b0 12 kt", "flown to its end, 912 s",
        "unintended stalls 2, knocked off 0, recorded off condition 0, points given up 1",
        "Stallwright 0.0.7", "up, 30\u00b0", "571.5"})
    CHECK_THAT(text, Contains(part));
  Debrief warm = sample_debrief();
  warm.flown.config.air.convection = ConvectiveDay{};
  warm.flown.config.air.convection->hour = 7.5;
  CHECK_THAT(words(warm), Contains("local solar time 07:30"));
}

TEST_CASE("the record shows mass and centre of gravity against their limits", "[report][record]") {
  Debrief debrief = sample_debrief();
  const AircraftType& type = debrief.flown.config.type;
  const MassProperties mass = mass_properties(type, debrief.flown.config.loading);
  const CgRange range = envelope_range(type, mass.mass_kg);
  const std::string text = words(debrief);
  CHECK_THAT(text, Contains(fixed(mass.mass_kg, 1)) && Contains("to " + fixed(type.mass.max_kg, 1)) &&
                       Contains(fixed(mass.cg.x_aft_m, 3)) &&
                       Contains(fixed(range.forward_m, 3) + " to " + fixed(range.aft_m, 3)));
  for (const LoadStation& station : type.mass.stations) CHECK_THAT(text, Contains(station.name + ", kg"));
  CHECK_THAT(text, !Contains("OUTSIDE"));
  for (double& kg : debrief.flown.config.loading.kg) kg *= 3.0;
  CHECK_THAT(words(debrief), Contains("OUTSIDE"));
}

TEST_CASE("set points stand on the record as they were judged", "[report][record]") {
  Debrief debrief = sample_debrief();
  JudgedPoint& point = debrief.page.judgement.sets[0].points[0];
  point.measured.ratio = 0.31234;
  point.measured.interval_low = 0.3001;
  point.measured.interval_high = 0.3241;
  point.measured.speed_kt = 61.27;
  point.expanded_kt = 1.234;
  RecordWindow second = point.measured.windows[0];
  second.begin_s = 140.0;
  second.end_s = 155.0;
  point.measured.windows.push_back(second);
  const std::string text = words(debrief);
  for (const char* part : {"0.3123", "\u00b1 0.0120", "\u00b1 1.23", "61.3", "20\u201330,", "140\u2013155",
                           "left the speed band", "true 1 g stall at 40.0 kt; order holds",
                           "order DOES NOT HOLD", "line 7 was cut short"})
    CHECK_THAT(text, Contains(part));
}

TEST_CASE("the record names what the warning protects, the verdict and what to fly again",
          "[report][record]") {
  Debrief debrief = sample_debrief();
  const std::string text = words(debrief);
  for (const char* part :
       {"As recorded, the warning comes 4.2 kt above the stall in a turn.",
        "Flaps up, idle, 30\u00b0 of bank, 450 kg", "+4.2 \u25bc", "wants 5.0 kt", "taught in: 7.5 kt",
        "Fly again: stall.", "Reason: the stall with flaps 30 was given up",
        "Flaps 30\u00b0, stall: no set point came of it; given up."})
    CHECK_THAT(text, Contains(part));
  CHECK_THAT(text, !Contains("Flaps 30\u00b0, idle"));  // not in use
  debrief.page.protection.rows[2].in_use = true;
  CHECK_THAT(words(debrief),
             Contains("Flaps 30\u00b0, idle, wings level") && Contains("stalls before the warning"));
  debrief.page.protection = {};
  CHECK_THAT(words(debrief), Contains("no warning was recorded"));
}

TEST_CASE("the record carries every caution and says where its numbers come from", "[report][record]") {
  const std::string page = record_page(sample_debrief(), {});
  for (const std::string& caution : cautions()) CHECK_THAT(page, Contains(escaped(caution)));
  for (const char* file :
       {"from sortie.json", "set-points.json", "judgement.json", "aircraft.toml", "card.toml"})
    CHECK_THAT(words_of(page), Contains(file));
  CHECK_THAT(words_of(page), Contains("no training credit"));
}

TEST_CASE("without names and date the record has lines to write on", "[report][record]") {
  const std::string blank = record_page(sample_debrief(), {});
  CHECK(count_of(blank, "class=\"line ") == 2);
  CHECK_THAT(words_of(blank), !Contains("who.json"));
  const std::string filled = record_page(sample_debrief(), {{"Wilma Quill", "Otto Reed"}, "1 May"});
  CHECK(count_of(filled, "class=\"line ") == 0);
  CHECK_THAT(words_of(filled),
             Contains("Wilma Quill, Otto Reed") && Contains("1 May") && Contains("who.json"));
  CHECK(count_of(filled, "Otto Reed") == 2);  // in the head and on a line to sign
}

TEST_CASE("a sortie that was cut off or ended early says so on the record", "[report][record]") {
  Debrief debrief = sample_debrief();
  debrief.flown.outcome.finished = false;
  debrief.flown.outcome.failure = "too low";
  CHECK_THAT(words(debrief), Contains("ended early at 912 s: too low"));
  debrief.flown.ended = false;
  CHECK_THAT(words(debrief), Contains("cut off in the air") && Contains("not counted"));
}

TEST_CASE("hostile names come out as text on the record", "[report][record]") {
  const std::string hostile = "</title><script>alert('x')</script>&\"\x1b[2J" + std::string(300, 'W');
  Debrief debrief = sample_debrief();
  for (std::string* text :
       {&debrief.page.summary.aircraft, &debrief.page.summary.card, &debrief.flown.config.type.name,
        &debrief.flown.config.type.key, &debrief.flown.config.card.name, &debrief.flown.air,
        &debrief.flown.version, &debrief.flown.config.type.mass.stations[0].name,
        &debrief.flown.config.pilot.name, &debrief.page.judgement.reason,
        &debrief.page.judgement.fly_again[0], &debrief.page.judgement.sets[0].points[0].measured.name,
        &debrief.page.judgement.sets[0].points[0].measured.flags[0], &debrief.page.protection.sentence,
        &debrief.page.protection.rows[2].note, &debrief.page.set_points.warnings[0]})
    *text = hostile;
  debrief.page.protection.rows[2].in_use = true;
  const std::string page = record_page(debrief, {{hostile}, hostile});
  CHECK_THAT(page, !Contains("<script>") && !Contains("\x1b"));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  CHECK_FALSE(has_bare_ampersand(page));
}

TEST_CASE("a number that does not exist is a dash on the record", "[report][record]") {
  Debrief debrief = sample_debrief();
  const std::regex bad("\\b(nan|inf|null)\\b", std::regex::icase);
  // The sample's second set has a stall that was not found.
  CHECK_THAT(record_page(debrief, {}), Contains("<td class=\"number\">\u2013</td>"));
  CHECK_THAT(words(debrief), !Contains("\u00b1 \u2013"));
  debrief.page.summary = {};
  debrief.flown.outcome = {};
  for (ProtectionRow& row : debrief.page.protection.rows) row.margin_kt = kNone;
  for (JudgedSet& set : debrief.page.judgement.sets) {
    set.mass_kg = set.stall_speed_kt = kNone;
    for (JudgedPoint& point : set.points) point = {};
  }
  const std::string page = record_page(debrief, {});
  CHECK_FALSE(std::regex_search(page, bad));
  CHECK_THAT(imbalance(page), Catch::Equals(""));
  debrief.page.judgement.sets.clear();
  CHECK_THAT(imbalance(record_page(debrief, {})), Catch::Equals(""));
}

TEST_CASE("a station name cannot leave its quotes in the line that flies the sortie again",
          "[report][record]") {
  Debrief debrief = sample_debrief();
  debrief.flown.config.type.mass.stations[0].name = "seat'; rm -r x";
  debrief.flown.config.loading.kg[0] = 80.1;
  const std::string command = record::fly_again_command(debrief.flown);
  CHECK_THAT(command, Contains(R"(--load 'seat'\''; rm -r x=80.1')"));
  CHECK_THAT(command, Contains("--pilot rusty") && Contains("--seed 18446744073709551615") &&
                          Contains("--airframe-seed 3") && !Contains("--instrument-seed"));
  debrief.flown.config.instrument_seed = 12;
  debrief.flown.config.air.convection = ConvectiveDay{};
  debrief.flown.config.air.convection->hour = 7.5;
  CHECK_THAT(record::fly_again_command(debrief.flown),
             Contains("--instrument-seed 12") && Contains("--air air.toml:07:30"));
}
