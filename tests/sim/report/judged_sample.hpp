#pragma once
#include <string>

#include "sim/report/debrief_page.hpp"

/// Numbers in the shape of a result, for tests of files and pages only: nobody flew them.
namespace stallwright::sample {

inline SetPoint set_point(const std::string& name, bool is_stall, double ratio) {
  SetPoint point;
  point.name = name;
  point.is_stall = is_stall;
  point.card_point = is_stall ? 3 : 1;
  point.speed_kt = 60.0;
  if (!is_stall) point.target_kt = 62.0;
  point.ratio = ratio;
  point.u = 0.004;
  point.dof = 31.5;
  point.interval_low = ratio - 0.008;
  point.interval_high = ratio + 0.009;
  point.slope_per_kt = -0.01;
  point.budget = {{"scatter of the record", 'A', 0.001, 12.0, ""},
                  {"probe offset", 'B', 0.0038, INFINITY, "drawn"}};
  point.flags = {"left the speed band"};
  const Reading reading{ratio, 0.004, 0.001, 31.5};
  if (is_stall)
    point.at_break = point.peak = point.max_lift = reading;
  else
    point.spot = point.window_mean = point.lift_corrected = reading;
  RecordWindow window;
  window.point = point.card_point;
  window.begin_s = 20.0;
  window.end_s = 30.0;
  window.left_band = true;
  if (is_stall) {
    window.broke = true;
    window.break_s = 29.5;
    window.break_sign = "uncommanded nose-down pitch";
    window.entry_rate_ktps = 1.1;
  }
  point.windows = {window};
  return point;
}

inline SetPoints set_points() {
  SetPointSet set;
  set.mass_kg = 571.5;
  set.order_ok = true;
  set.slope_per_x = 0.41;
  set.points = {set_point("approach", false, 0.301), set_point("stall", true, 0.852)};
  SetPointSet empty_set;
  empty_set.flap_deg = 30.0;
  empty_set.order_notes = {"stall: not found"};
  SetPoint missing;
  missing.name = "stall";
  missing.is_stall = true;
  missing.flags = {"given up"};
  empty_set.points = {missing};
  return {"short card", "Marram", {set, empty_set}, {"line 7 was cut short"}};
}

inline JudgedPoint judged(const SetPoint& measured) {
  JudgedPoint point;
  point.measured = measured;
  point.true_ratio = 0.85;
  point.true_speed_kt = 40.0;
  if (measured.found()) {
    point.measured_speed_kt = 39.8;
    point.error_ratio = measured.ratio - point.true_ratio;
    point.error_deg = 0.05;
    point.error_kt = -0.2;
    point.expanded_kt = 0.85;
    point.covered = true;
    point.split = measured.is_stall ? ErrorSplit{0.1, -0.2, 0.0, -0.15, 0.05}
                                    : ErrorSplit{0.1, -0.2, -0.05, 0.0, -0.05};
  }
  const std::vector<std::string> stall = {"break", "peak", "max_lift"};
  const std::vector<std::string> steady = {"spot", "window_mean", "lift_corrected"};
  for (const std::string& name : measured.is_stall ? stall : steady)
    point.readings.push_back(
        {name, measured.ratio, measured.u, point.error_ratio, point.error_deg, point.error_kt, point.split});
  return point;
}

inline Judgement judgement() {
  Judgement result;
  result.verdict = Verdict::fly_again;
  result.fly_again = {"stall"};
  result.reason = "the stall with flaps 30 was given up";
  const SetPoints measured = set_points();  // a temporary would not outlive the head of the loop
  for (const SetPointSet& set : measured.sets) {
    JudgedSet judged_set;
    judged_set.flap_deg = set.flap_deg;
    judged_set.mass_kg = 571.5;
    judged_set.stall_speed_kt = 40.0;
    judged_set.order_ok = set.order_ok;
    for (const SetPoint& point : set.points) judged_set.points.push_back(judged(point));
    result.sets.push_back(judged_set);
  }
  return result;
}

inline Protection protection() {
  Protection result;
  result.taught_margin_kt = 7.5;
  result.rows = {
      {0.0, 0.0, PowerRule::idle, 0.0, false, 450.0, 43.6, 36.1, 7.5, true, ""},
      {0.0, 0.0, PowerRule::idle, 30.0, false, 450.0, 44.0, 39.8, 4.2, true, ""},
      {30.0, 0.0, PowerRule::idle, 0.0, false, 450.0, kNone, 32.4, kNone, false, "stalls before the warning"},
      {30.0, 0.0, PowerRule::idle, 30.0, false, 450.0, 37.5, 35.3, 2.2, false, ""}};
  result.sentence = "as recorded, the warning comes 4.2 kt above the stall in a turn.";
  return result;
}

inline DebriefInput debrief() {
  DebriefInput input;
  input.protection = protection();
  input.summary.wanted_margin_kt = 5.0;
  input.summary.aircraft = "Marram";
  input.summary.card = "short card";
  input.summary.air = "light";
  input.summary.sigma_kt = 1.63;
  input.summary.pilot = "current";
  input.summary.sensors = "standard";
  input.summary.seed = 4711;
  input.summary.mass_kg = 571.5;
  input.summary.working_altitude_ft = 3200;
  input.summary.floor_altitude_ft = 1700;
  input.summary.wanted_uncertainty_kt = 2.0;
  input.summary.events = {{25.0, "unintended stall", "approach", "wing dropped", true}};
  input.summary.counts = {{"approach", 0.0, 1, 1, 2, 1, 1, 0, 0, 1, 0}};
  input.set_points = set_points();
  input.judgement = judgement();
  for (int i = 0; i <= 3000; ++i) {
    const double t = 0.02 * i;
    input.history.t_s.push_back(t);
    input.history.ias_kt.push_back(62.0 - 0.3 * t);
    input.history.altitude_ft.push_back(3200.0 - t);
    input.history.ratio.push_back(0.3 + 0.01 * t);
    input.history.alpha_deg.push_back(4.0 + 0.2 * t);
    input.history.true_speed_kt.push_back(62.1 - 0.3 * t);
  }
  input.history.windows = {{20.0, 30.0, "approach", false, true, false},
                           {45.0, 55.0, "stall", true, false, true}};
  input.history.bands = {{10.0, 30.0, "approach", 59.0, 65.0, 3050.0, 3350.0}};
  input.history.breaks = {{52.0, "stall", "control at its aft stop"}};
  return input;
}

}  // namespace stallwright::sample
