#pragma once
#include "aircraft/type_file.hpp"
#include "render/flight/flight.hpp"
#include "sim/crew/pilot_grade.hpp"
#include "sim/sortie/test_card_file.hpp"
#include "tests/sim/sortie/card_text.hpp"

namespace stallwright::flight_test {

/// A flight of the short card in Marram into a folder of its own.
struct Ordered {
  card_text::Folder folder;
  FlightOrder order;

  explicit Ordered(bool by_hand = true, const char* air = "calm") {
    const std::filesystem::path root = STALLWRIGHT_SOURCE_DIR;
    order.sources = {find_aircraft_file("marram"), find_card_file("short"),
                     root / "assets" / "air" / (std::string(air) + ".toml")};
    order.flown.air = air;
    SortieConfig& config = order.flown.config;
    config.type = load_aircraft_type(order.sources.aircraft);
    config.loading = default_loading(config.type);
    config.card = load_test_card(order.sources.card);
    config.air = read_air_preset(order.sources.air);
    config.by_hand = by_hand;
    config.pilot = by_hand ? by_hand_grade() : pilot_grade("sharp");
    config.instruments = ideal_instruments();
    order.folder = folder.path() / "sortie";
    order.wait_for_set_points = true;
  }
  std::unique_ptr<Flight> flight() const { return std::make_unique<Flight>(order); }
};

}  // namespace stallwright::flight_test
