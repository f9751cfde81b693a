#pragma once
#include <string>
#include <vector>

#include "aircraft/type_file.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "sim/study/coverage.hpp"

namespace stallwright::study_test {

inline AirPreset air(const std::string& name) {
  return read_air_preset(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/air/" + name + ".toml");
}

/// The short card on one of the aeroplanes that come with the program.
inline SortieConfig sortie(const std::string& type, const std::string& pilot, const std::string& sensors) {
  SortieConfig config;
  config.type = load_aircraft_type(find_aircraft_file(type));
  config.loading = default_loading(config.type);
  config.card = load_test_card(find_card_file("short"));
  config.air = air("calm");
  config.pilot = pilot_grade(pilot);
  config.instruments = instrument_grade(sensors);
  return config;
}

inline StudyConfig study(const SortieConfig& base, const std::vector<std::string>& airs, int sorties) {
  StudyConfig config;
  config.base = base;
  config.sorties = sorties;
  config.threads = 1;  // the tests themselves run side by side
  for (const std::string& name : airs) config.airs.push_back(air(name));
  return config;
}

}  // namespace stallwright::study_test
