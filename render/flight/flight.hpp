#pragma once
#include <cstddef>
#include <filesystem>
#include <memory>
#include <string>

#include "render/flight/seat.hpp"
#include "render/flight/set_points_so_far.hpp"
#include "render/flight/snapshot.hpp"
#include "render/flight/stall_horn.hpp"
#include "sim/report/sortie_folder.hpp"

namespace stallwright {

/// What is to be flown, and where it is kept.
struct FlightOrder {
  FlownSortie flown;
  SourceFiles sources;
  std::filesystem::path folder;  ///< new or empty
  bool wait_for_set_points =
      false;  ///< work them out within the tick instead of beside it: repeatable pictures
};

/// One sortie on its way into its folder, tick by tick, with what the cockpit shows of it. Knows no clock, no thread of
/// its own but the one that works out set points, no screen.
class Flight {
 public:
  /// Sets the aeroplane up and opens the folder. Throws InputError for a card that this aeroplane cannot fly in this air,
  /// or a folder that is not new; std::runtime_error where the folder cannot be written.
  explicit Flight(const FlightOrder& order);

  /// One tick of 20 ms. False when the flight is over; then the folder is closed.
  bool tick(const Hands& hands);

  /// Ends it before the card does; the folder keeps what was flown.
  void leave();

  const Snapshot& snapshot() const { return shown_; }
  const Hands& first_hands() const { return first_hands_; }
  const Sortie& sortie() const { return sortie_; }
  bool over() const { return over_; }
  const std::filesystem::path& folder() const { return folder_path_; }
  /// Why nothing more can be written; empty: all is well. The flight goes on, with what was written safe.
  const std::string& trouble() const { return trouble_; }

 private:
  void close(const SortieOutcome& outcome);
  void update();
  void remember_usual(const CrewTask& asked);
  void keep(const Hands& hands);

  FlownSortie flown_;
  Sortie sortie_;
  std::filesystem::path folder_path_;
  std::unique_ptr<SortieFolder> folder_;
  SetPointsSoFar set_points_;
  Snapshot shown_;
  Hands first_hands_;
  SeatFeel seat_;
  StallHorn horn_;
  Vec3<double> arm_m_;  ///< centre of gravity to the pilot's head, body axes
  std::string trouble_;
  bool over_ = false;
};

}  // namespace stallwright
