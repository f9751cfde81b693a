#pragma once
#include <array>
#include <string>
#include <vector>

#include "render/view/work_on.hpp"
#include "sim/report/sortie_folder.hpp"
#include "sim/report/verification_report.hpp"

namespace stallwright::view {

/// Parts that an error is taken apart into, in the order of the columns (sim/truth/error_split.hpp).
inline constexpr std::size_t kParts = 5;
inline constexpr std::array<const char*, kParts> kPartNames{"Instruments", "Air", "Hold", "Entry rate",
                                                            "Remainder"};

/// One set point held against the truth, in display units. A number that does not exist is NaN.
struct PointView {
  std::string name;
  bool is_stall = false, found = false, covered = false;
  double ratio = kNone, low = kNone, high = kNone, true_ratio = kNone;  ///< probe ratio; low to high: 95 %
  double above_stall_kt = kNone,
         true_above_stall_kt = kNone;  ///< above the 1 g stall; not of the stall itself
  double true_speed_kt = kNone;
  double error_kt = kNone;             ///< positive: stands too fast, warns early
  double expanded_kt = kNone;          ///< half of the 95 % interval
  std::array<double, kParts> part_kt;  ///< they add up to error_kt; NaN where the point has no such part
  std::array<double, kParts> plain_part_kt;  ///< the same of a plain reading of the record
  double plain_error_kt = kNone;
  bool split_known = false;
  std::string off;    ///< "1.3 kt late", "0.2 kt fast", "not found"
  std::string why;    ///< "most of it from the hold"; empty: not known
  std::string order;  ///< "in order", "OUT OF ORDER", "too close", ...
};

/// Where a knots mark stands on the ratio axis of a set.
struct KnotsMark {
  double ratio = 0.0;
  std::string text;
};

struct SetView {
  std::string title;  ///< "Flaps up, 600 kg"
  double flap_deg = 0.0;
  bool order_ok = false;
  std::vector<PointView> points;  ///< fastest first
  std::vector<KnotsMark> knots;   ///< speed at 1 g, rising ratio
};

/// One run or approach of a verifying flight.
struct HeardView {
  std::string name, flight, tone, margin, outcome;
  bool ok = false, judged = false;
};

/// One curve of the flight over time.
struct Trace {
  std::string name;
  bool truth = false;  ///< known to the simulator alone
  std::vector<double> values;
};

/// One picture over time, with all its curves in one unit.
struct Panel {
  std::string name, unit;
  int decimals = 0;
  std::vector<Trace> traces;
  double least_span = 1.0;     ///< of the axis
  double floor_value = kNone;  ///< a limit to draw; NaN: none
  bool bands_speed = false, bands_height = false;
};

struct FlightView {
  std::vector<double> t_s;
  std::vector<Panel> panels;
  std::vector<TimeHistory::Window> windows;
  std::vector<TimeHistory::Band> bands;
  std::vector<SortieEvent> events;  ///< breaks among them
};

/// What the warning leaves of margin at one flap setting and power: the least of both masses, by bank.
struct GuardView {
  std::string flight;                                    ///< "flaps up, idle"
  std::array<bool, 3> in_use{};                          ///< what the card says that the warning is for
  std::array<double, 3> margin_kt{kNone, kNone, kNone};  ///< wings level, 30 and 45 degrees of bank
  std::array<bool, 3> unwarned{};  ///< some mass has no number there: the wing may stall before the warning
};

/// Everything that the debrief pages show; made once, when the page opens.
struct DebriefView {
  std::string title, flown, made_by;
  std::string headline;  ///< "Your warning is 1.3 kt late."
  std::string because;   ///< "Most of it from the hold: ..."
  std::string verdict, reason, protects;
  std::vector<std::string> next, cautions;
  std::vector<SetView> sets;
  double ratio_low = 0.0, ratio_high = 1.0;  ///< of the chart's axis, one for all sets
  double part_span_kt = 1.0;                 ///< bars run from minus to plus this; some may be longer
  bool verifying = false;
  std::vector<HeardView> heard;  ///< of a verifying flight
  FlightView flight;
  std::vector<WorkItem> work;
  std::vector<HoldFigures> records;  ///< how each was flown
  std::vector<GuardView> guard;      ///< what the warning protects, in knots
  std::vector<SortieEvent> events;
  std::vector<PointCount> counts;
};

/// From a debrief and the recorder's rows that it was made of.
DebriefView debrief_view(const Debrief& debrief, const std::vector<LogRow>& rows);
/// The same of a verifying flight.
DebriefView debrief_view(const VerificationDebrief& debrief, const std::vector<LogRow>& rows);

/// Reads a folder of either kind. Takes seconds (the truth is worked out anew): not for the thread that draws. Throws
/// InputError, one line, for a folder that is not a sortie's; std::runtime_error where there is no truth.
DebriefView open_debrief(const std::filesystem::path& folder);

/// "1.3 kt late" and so on: for a warning late or early, else slow or fast; "right to 0.1 kt" within 0.05.
std::string off_words(const std::string& name, double error_kt);

/// "most of it from the hold", "hold and air partly cancel", or empty where nothing is known or the error is not worth words.
std::string why_words(const std::array<double, kParts>& part_kt);

}  // namespace stallwright::view
