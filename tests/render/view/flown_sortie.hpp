#pragma once
#include <vector>

#include "aircraft/type_file.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/sortie/card_text.hpp"

namespace stallwright::view_test {

namespace fs = std::filesystem;

/// Forty seconds of the short card in bumpy, windy air: two clearing turns and more. What was true is kept beside the files.
struct Flown {
  card_text::Folder folder;
  fs::path sortie = folder.path() / "sortie";
  std::vector<RigidState<double>> states;

  Flown() {
    const fs::path root = STALLWRIGHT_SOURCE_DIR;
    const SourceFiles files{find_aircraft_file("marram"), find_card_file("short"),
                            root / "assets" / "air" / "light.toml"};
    FlownSortie flown;
    flown.air = "light";
    SortieConfig& config = flown.config;
    config.type = load_aircraft_type(files.aircraft);
    config.loading = default_loading(config.type);
    config.card = load_test_card(files.card);
    config.air = read_air_preset(files.air);
    config.pilot = pilot_grade("sharp");
    config.instruments = ideal_instruments();
    config.longest_s = 40.0;
    Sortie flight(config);
    SortieFolder out(sortie, files, flown);
    do states.push_back(flight.state().rigid);
    while (flight.tick(out));
    out.close(flight.outcome());
  }
};

}  // namespace stallwright::view_test
