#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/mass_properties.hpp"
#include "render/view/start_choice.hpp"
#include "sim/air/air_preset.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::view {

/// Where the files that can be chosen from stand.
struct StartFolders {
  std::filesystem::path aircraft, cards, air;
};

struct AircraftOffer {
  std::string key;  ///< file name without ending
  std::filesystem::path file;
  AircraftType type;
  std::string stalls;   ///< "Stalls at 43 kt flaps up, 37 kt flaps down"
  std::string problem;  ///< why it cannot be read; empty: it can
};

struct CardOffer {
  std::string key;
  std::filesystem::path file;
  TestCard card;
  std::string problem;
};

struct AirOffer {
  std::string key, name;
  std::filesystem::path file;
  AirPreset preset;
  std::string words;  ///< "smooth", "bumps of 1.6 kt rms", "by the hour"
  std::string problem;
};

/// An earlier sortie that has set points to verify.
struct TaughtOffer {
  std::filesystem::path folder;
  std::string words, aircraft;  ///< aircraft: name of the type
};

/// What the start page offers; made once when it opens.
struct StartView {
  std::vector<AircraftOffer> aircraft;
  std::vector<CardOffer> cards;
  std::vector<AirOffer> air;
  std::vector<TaughtOffer> taught;  ///< newest first
};

/// Reads the files of the folders, sorted by name, in a fixed order of severity for the air. A file that cannot be read is
/// offered with its problem. Never throws for what stands in a file; a folder that is not there offers nothing.
StartView start_view(const StartFolders& folders, std::vector<TaughtOffer> taught);

/// What a choice comes to.
struct StartCheck {
  const AircraftOffer* aircraft = nullptr;  ///< into the view; null: none of that name
  const AirOffer* air = nullptr;
  const CardOffer* card = nullptr;  ///< of the view; null also for an own card
  TestCard flown_card;              ///< as it would be flown
  std::filesystem::path card_file;
  Loading loading;
  double mass_kg = 0.0, cg_aft_m = 0.0;
  CgRange range;                      ///< at this mass
  bool inside = false;                ///< the envelope
  std::string balance;                ///< "565 kg, 0.371 m aft: inside the envelope"
  std::string hour_words;             ///< "10:00, sun 45° up"
  std::vector<std::string> problems;  ///< why it cannot be flown, one sentence each; empty: it can
  bool can_fly() const { return problems.empty(); }
};

/// Pure but for an own card, which is read. Never throws.
StartCheck start_check(const StartView& view, const StartChoice& choice);

/// "07:30"
std::string hour_text(double hour);

}  // namespace stallwright::view
