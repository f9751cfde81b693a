#pragma once
#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "render/view/start_view.hpp"
#include "sim/reduction/set_points.hpp"

namespace stallwright::view {

/// One past rehearsal, as far as its small files tell. A number that does not exist is NaN.
struct LogbookLine {
  std::filesystem::path folder;
  std::string name;                           ///< of the folder
  std::filesystem::file_time_type written{};  ///< of sortie.json: when the flight ended
  std::string when;                           ///< the date given with the names, else `written` in local time
  bool when_given = false;                    ///< which of the two
  std::string who;                            ///< names of who.json; empty: none given
  std::string aircraft, card, air, pilot;
  std::uint64_t seed = 0;
  std::string outcome;  ///< "keep", "fly again: approach", "pass", "cut off in the air", "not debriefed yet"
  bool has_warning = false;         ///< set points with a warning, which can be verified
  double warning_error_kt = kNone;  ///< of the warning that errs most towards late; negative: late
  double largest_error_kt = kNone;  ///< of any set point, by size
  double hold_rms_kt = kNone;       ///< of speed less target in the records
  bool hold_looked_up = false;      ///< whether log.csv was read for it
  std::string problem;              ///< why the folder cannot be read, one line; empty: it can
};

struct Logbook {
  std::vector<LogbookLine> lines;  ///< newest first
  std::string problem;             ///< why there is nothing; empty: there may be nothing yet
};

/// Looks at every folder inside `folder` that has a sortie.json, or log.csv: reads sortie.json, judgement.json or
/// verification.json, and who.json, no other file. What cannot be read is a line with its problem. Never throws for what stands
/// on the disk. Holds that `before` has looked up are taken over where the folder was not written since.
Logbook read_logbook(const std::filesystem::path& folder, const Logbook& before = {});

/// Looks up the speed hold of the newest line that has none yet, from its log.csv (some tens of milliseconds to the minute of
/// reading a very long one); false: none is left. One call a frame keeps a page alive.
bool look_up_next_hold(Logbook& logbook);

/// Root mean square of speed less target in the records of a log.csv, kt; NaN where there is none or it cannot be read. Reads
/// six columns; lines that are cut short are passed over.
double hold_of_log(const std::filesystem::path& log_csv);

/// The lines that a verifying card can listen to, newest first.
std::vector<TaughtOffer> taught_offers(const Logbook& logbook);

}  // namespace stallwright::view
