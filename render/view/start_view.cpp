#include "render/view/start_view.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "aircraft/type_file.hpp"
#include "sim/report/number_text.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright::view {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> toml_files(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code error;
  for (fs::directory_iterator it(folder, error), end; !error && it != end; it.increment(error))
    if (it->path().extension() == ".toml") files.push_back(it->path());
  std::sort(files.begin(), files.end());
  return files;
}

/// Runs a reader; what it threw is the offer's problem.
template <class Offer, class Read>
Offer offer(const fs::path& file, Read read) {
  Offer out;
  out.key = file.stem().string();
  out.file = file;
  try {
    read(out);
  } catch (const std::exception& e) {
    out.problem = e.what();
  }
  return out;
}

std::string stall_words(const AircraftType& type) {
  return "Stalls at " + fixed(type.limits.book_v_s1_mps / kKnot, 0) + " kt flaps up, " +
         fixed(type.limits.book_v_s0_mps / kKnot, 0) + " kt flaps down";
}

int severity_rank(const std::string& key) {
  constexpr std::array kOrder{"calm", "light", "moderate", "severe", "day"};
  const auto at = std::find(kOrder.begin(), kOrder.end(), key);
  return static_cast<int>(at - kOrder.begin());
}

std::string air_words(const AirPreset& preset) {
  if (preset.convection) return "by the hour";
  const bool still = preset.severity && *preset.severity == Severity::kCalm && preset.gusts.empty();
  return still ? "smooth" : "bumpy";
}

}  // namespace

StartView start_view(const StartFolders& folders, std::vector<TaughtOffer> taught) {
  StartView view;
  for (const fs::path& file : toml_files(folders.aircraft))
    view.aircraft.push_back(offer<AircraftOffer>(file, [&](AircraftOffer& o) {
      o.type.name = o.key;
      o.type = load_aircraft_type(file);
      o.stalls = stall_words(o.type);
    }));
  for (const fs::path& file : toml_files(folders.cards))
    view.cards.push_back(offer<CardOffer>(file, [&](CardOffer& o) {
      o.card.name = o.key;
      o.card = load_test_card(file);
    }));
  for (const fs::path& file : toml_files(folders.air))
    view.air.push_back(offer<AirOffer>(file, [&](AirOffer& o) {
      o.name = o.key;
      o.preset = read_air_preset(file);
      o.name = o.preset.name;
      o.words = air_words(o.preset);
    }));
  std::stable_sort(view.air.begin(), view.air.end(), [](const AirOffer& a, const AirOffer& b) {
    return severity_rank(a.key) < severity_rank(b.key);
  });
  view.taught = std::move(taught);
  return view;
}

}  // namespace stallwright::view
