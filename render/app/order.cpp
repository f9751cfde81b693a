#include "render/app/order.hpp"

#include <algorithm>
#include <ctime>
#include <system_error>

#include "aircraft/input_error.hpp"
#include "sim/report/taught.hpp"

namespace stallwright::app {
namespace {

namespace fs = std::filesystem;

std::string clock_text(const char* format) {
  const std::time_t now = std::time(nullptr);
  std::tm utc{};
  gmtime_r(&now, &utc);
  char text[40];
  std::strftime(text, sizeof text, format, &utc);
  return text;
}

}  // namespace

fs::path fresh_folder(const fs::path& sorties, const FlownSortie& flown) {
  std::string air = flown.air;
  std::replace(air.begin(), air.end(), ' ', '-');
  std::erase(air, ':');
  const std::string stem =
      flown.config.card.key + "-" + flown.config.type.key + "-" + air + "-" + clock_text("%Y%m%dT%H%M%SZ");
  fs::path folder = sorties / stem;
  std::error_code error;
  for (int k = 2; fs::exists(folder, error); ++k) folder = sorties / (stem + "-" + std::to_string(k));
  return folder;
}

FlightOrder order_of(const view::StartChoice& choice, const view::StartCheck& check,
                     const fs::path& sorties) {
  FlightOrder order;
  FlownSortie& flown = order.flown;
  flown.version = STALLWRIGHT_VERSION;
  SortieConfig& config = flown.config;
  config.type = check.aircraft->type;
  config.loading = check.loading;
  config.card = check.flown_card;
  config.seed = choice.seed;
  config.instruments = instrument_grade(choice.sensors);
  config.by_hand = choice.flown_by == "me";
  config.pilot = config.by_hand ? by_hand_grade() : pilot_grade(choice.flown_by);
  config.air = check.air->preset;
  flown.air = check.air->key;
  if (config.air.convection) {
    config.air = read_air_preset(check.air->file, choice.hour);
    flown.air += " " + view::hour_text(choice.hour);
  }
  order.sources = {check.aircraft->file, check.card_file, check.air->file};
  load_unit(config.card.verifies ? choice.set_points : "", flown, order.sources);
  order.folder = fresh_folder(sorties, flown);
  return order;
}

Who who_flies(const view::StartChoice& choice) {
  if (choice.pilot.empty()) return {};
  const Who who{{choice.pilot}, clock_text("%Y-%m-%d")};
  try {
    check_who(who);
  } catch (const InputError&) {
    return {};
  }
  return who;
}

}  // namespace stallwright::app
