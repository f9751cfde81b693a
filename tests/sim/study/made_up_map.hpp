#pragma once
#include "sim/study/study_map.hpp"

namespace stallwright::study_test {

/// Numbers that no sortie gave: every one of a line differs from those of the others, so that a page can be searched for it.
inline LineResult made_up_line(double rms_kt, int found) {
  LineResult line;
  line.found = found;
  line.mean_error_kt = 0.1 * rms_kt;
  line.rms_error_kt = {rms_kt, {0.9 * rms_kt, 1.1 * rms_kt}};
  if (found >= kLeastForPercentile) line.p95_error_kt = {2.0 * rms_kt, {1.8 * rms_kt, 2.2 * rms_kt}};
  line.mean_half_width_kt = 2.0 * rms_kt;
  line.covered = {found - 1, found, {0.91, 0.99}};
  line.records_wanted[1] = found;
  return line;
}

inline MapCell made_up_cell(const StudyMap& map, std::size_t air, std::size_t hand, double rms_kt,
                            int sorties) {
  MapCell cell;
  cell.key = "cell";
  cell.air = air;
  cell.hand = hand;
  cell.sorties = sorties;
  cell.late_warning = {static_cast<int>(air), sorties, {0.001, 0.021 * static_cast<double>(1 + air)}};
  cell.out_of_order = {static_cast<int>(2 * air), sorties, {0.002, 0.033 * static_cast<double>(1 + air)}};
  const int sent_back_fifths[] = {3, 1, 2};  // moderate, calm, light
  cell.kept = {sorties - sorties * sent_back_fifths[air] / 5, sorties, {0.123, 0.877}};
  cell.warning_margin_kt = 7.0;
  cell.gust_rms_mps = map.airs[air].sigma_mps;
  for (std::size_t line = 0; line < map.lines.size(); ++line)
    cell.lines.push_back(made_up_line(rms_kt * (1.0 + 0.11 * static_cast<double>(line)), sorties));
  return cell;
}

/// Three airs by two pilots, a warning in two windows and a stall; errors rise with the air, and by a tenth with the hands.
inline StudyMap made_up_map(int sorties = 400) {
  StudyMap map;
  map.version = "9.8.7";
  map.identity = "0123456789abcdef";
  map.recipe_key = "made-up";
  map.recipe = "Made up";
  map.summary = "For a test.";
  map.aircraft_key = "marram";
  map.aircraft = "Marram & <sons>";
  map.card_key = "short";
  map.card = "Short card";
  map.sensors = "standard";
  map.first_seed = 4711;
  map.airframe_seed = 31;
  map.wanted_margin_kt = 5.0;
  map.wanted_uncertainty_kt = 2.0;
  map.airs = {{"moderate", 1.5}, {"calm", 0.0}, {"light", 0.75}};
  map.hands = {"current", "rusty"};
  map.lines = {{0, 0, "warning", 0.0, false, 1.0, 15.0},
               {0, 0, "warning", 0.0, false, 0.5, 7.5},
               {0, 1, "stall", 0.0, true, 1.0, kNone}};
  for (std::size_t air = 0; air < 3; ++air)
    for (std::size_t hand = 0; hand < 2; ++hand) {
      const double rms_kt = (0.53 + 1.61 * map.airs[air].sigma_mps) * (1.0 + 0.1 * static_cast<double>(hand));
      map.cells.push_back(made_up_cell(map, air, hand, rms_kt, sorties));
    }
  map.base_cell = map.cell_index(2, 0);
  map.varied.push_back(made_up_cell(map, 2, 0, 1.97, 50));
  map.varied.back().varied = "entry rate";
  map.varied.back().value = "2 kt/s";
  map.unvaried = made_up_cell(map, 2, 0, 1.83, 50);
  Sensitivity& about = map.sensitivity;
  about.base = 64;
  about.cell.sorties = 64 * 9;
  about.inputs = {{"air", "calm", "1.50 m/s"}, {"seed", "chance", "everything else"}};
  about.indices.assign(map.lines.size(), {});
  for (const std::size_t line : {0u, 2u})
    about.indices[line] = {{0.37, 0.61, {0.17, 0.57}, {0.43, 0.83}, 64},
                           {0.13, 1.71, {-0.44, 0.29}, {0.27, 2.34}, 63}};
  return map;
}

}  // namespace stallwright::study_test
