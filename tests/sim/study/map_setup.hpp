#pragma once
#include "sim/study/map/map_plan.hpp"
#include "sim/study/map/sortie_numbers.hpp"
#include "tests/sim/study/study_setup.hpp"

namespace stallwright::study_test {

/// Two airs by two pilots with one varied cell, so many sorties in each; nothing is flown for it.
inline MapPlan small_plan(int sorties) {
  MapSetup setup;
  setup.base = sortie("marram", "current", "standard");
  setup.recipe.key = "small";
  setup.recipe.name = "Small";
  setup.recipe.summary = "For tests.";
  setup.recipe.airs = {{"calm", air("calm"), "calm"}, {"rough, \"very\"", air("moderate"), "moderate"}};
  setup.recipe.pilots = {"sharp", "rusty"};
  RecipeVaried varied;
  varied.air = 1;
  varied.entry_rates_ktps = {2.0};
  setup.recipe.varied = varied;
  setup.sorties = sorties;
  return map_plan(setup, "small.toml");
}

/// A sortie in which every set point is so far off.
inline SortieNumbers made_up(const StudyMap& map, double error_kt) {
  SortieNumbers n;
  n.verdict = Verdict::keep;
  n.out_of_order = false;
  n.hold_rms_kt = 0.5;
  n.gust_rms_mps = 0.25;
  n.warning_margin_kt = 7.0 + error_kt;
  n.lines.assign(map.lines.size(), {{true, true, error_kt, 1.0}, 2});
  return n;
}

}  // namespace stallwright::study_test
