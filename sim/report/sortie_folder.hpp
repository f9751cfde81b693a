#pragma once
#include <filesystem>
#include <string>

#include "sim/reduction/csv.hpp"
#include "sim/reduction/flight_log.hpp"
#include "sim/report/debrief_page.hpp"
#include "sim/report/hands_file.hpp"
#include "sim/report/sortie_json.hpp"
#include "sim/report/who.hpp"
#include "sim/truth/judge.hpp"

namespace stallwright {

/// A sortie folder: everything about one flight of a card.
///   sortie.json      what was flown (sim/report/sortie_json.hpp); first without an end, then with it
///   aircraft.toml, card.toml, air.toml    the three files as they were read, so that the folder needs
///   nothing else log.csv          what the recorder saw truth.csv        what only the simulator knows
///   hands.csv        a person's hands tick by tick, where one flew (sim/report/hands_file.hpp)
///   set-points.json, judgement.json, debrief.html, record.html    made from the above by debrief_folder
///   who.json        names and date for record.html, where somebody gave them (sim/report/who.hpp)
/// The two CSV files grow while the sortie is flown, a second of whole lines at a time; whatever ends the
/// program, they are complete to the last second. The other files are written whole or not at all.

/// Where the three files came from.
struct SourceFiles {
  std::filesystem::path aircraft, card, air;
  std::filesystem::path taught{};  ///< set points that are verified; empty: none
};

/// Throws InputError unless the folder does not exist yet or is empty. Touches nothing.
void require_new_folder(const std::filesystem::path& folder);

/// Takes the rows of a sortie into its folder.
class SortieFolder : public SortieSink {
 public:
  /// Makes the folder and writes what is known before the flight. Throws InputError as require_new_folder and
  /// where the folder cannot be made, std::runtime_error where it cannot be written.
  SortieFolder(const std::filesystem::path& folder, const SourceFiles& sources, const FlownSortie& flown);

  void row(const LogRow& log, const TruthRow& truth) override;

  /// The hands of a tick, for a sortie flown by hand: into hands.csv.
  void hands(double time_s, const Hands& hands);

  /// Hands over the last rows and writes how it ended.
  void close(const SortieOutcome& outcome);

 private:
  std::filesystem::path folder_;
  FlownSortie flown_;
  CsvWriter log_, truth_;
  std::optional<HandsWriter> hands_;
};

/// Set points of a log as read from its file, the reader's warnings among them: the one way from a log to the
/// text of set-points.json.
SetPoints reduce_log(const FlightLog& log, const TestCard& card, const InstrumentGrade& instruments);

/// What a debrief is made of, and what it says.
struct Debrief {
  FlownSortie flown;
  DebriefInput page;
};

/// Reads a folder and holds its set points against the truth; writes nothing. The set points are those of
/// set-points.json where it exists (somebody else's reduction can be judged so), otherwise reduced from
/// log.csv; `flown` says with whose errors in the budget. Throws InputError for a folder that is not a
/// sortie's, std::runtime_error where there is no truth.
Debrief make_debrief(const std::filesystem::path& folder);

/// The text of judgement.json.
std::string judgement_text(const Debrief& debrief);

/// Makes set-points.json (where it is missing), judgement.json, debrief.html and record.html; who.json too where
/// `given`, which has passed check_who, says something. Same folder, same bytes.
Debrief debrief_folder(const std::filesystem::path& folder, const Who& given = {});

}  // namespace stallwright
