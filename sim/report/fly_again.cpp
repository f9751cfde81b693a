#include "sim/report/fly_again.hpp"

#include <fstream>
#include <string>

#include "aircraft/input_error.hpp"
#include "sim/report/hands_file.hpp"
#include "sim/report/sortie_json.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

/// The lines of one CSV file, held one by one against rows as they are flown.
class LinesOf {
 public:
  explicit LinesOf(const fs::path& file) : in_(file, std::ios::binary), file_(file) {
    std::string header;
    if (!std::getline(in_, header))
      throw InputError(file.string() + ": expected a log, found nothing to read");
  }

  /// Notes the first row whose line is another. A line without its end is what a killed program leaves: not compared.
  void compare(double t_s, const std::vector<std::string>& fields, bool cut_short) {
    if (differs_s || over_) return;
    std::string line;
    const bool read = static_cast<bool>(std::getline(in_, line));
    if (!read || in_.eof()) {
      over_ = true;
      if (!cut_short) differs_s = t_s;
      return;
    }
    std::string flown;
    for (const std::string& field : fields) flown += (flown.empty() ? "" : ",") + field;
    if (line != flown) differs_s = t_s;
  }

  /// Lines that the second flight did not reach.
  void finish(double t_s, bool cut_short) {
    std::string line;
    if (!differs_s && !over_ && !cut_short && std::getline(in_, line)) differs_s = t_s;
  }

  std::optional<double> differs_s;

 private:
  std::ifstream in_;
  fs::path file_;
  bool over_ = false;
};

class Comparison : public SortieSink {
 public:
  Comparison(const fs::path& folder, bool cut_short, SortieSink* next)
      : log(folder / "log.csv"), truth(folder / "truth.csv"), cut_short_(cut_short), next_(next) {}
  void row(const LogRow& log_row, const TruthRow& truth_row) override {
    log.compare(log_row.t_s, log_fields(log_row), cut_short_);
    truth.compare(truth_row.t_s, truth_fields(truth_row), cut_short_);
    if (next_ != nullptr) next_->row(log_row, truth_row);
  }
  LinesOf log, truth;

 private:
  bool cut_short_;
  SortieSink* next_;
};

}  // namespace

FlownAgain fly_again(const fs::path& folder, SortieSink* sink) {
  const FlownSortie flown = read_sortie(folder);
  std::vector<Hands> hands;
  if (flown.config.by_hand) hands = read_hands(folder / "hands.csv", flown.config.type.flaps.size());
  FlownAgain again;
  again.cut_short = !flown.ended;
  Comparison lines(folder, again.cut_short, sink);
  Sortie sortie(flown.config);
  std::size_t tick = 0;
  while (!flown.config.by_hand || tick < hands.size()) {
    if (!sortie.tick(lines, flown.config.by_hand ? hands[tick] : Hands{})) break;
    ++tick;
  }
  again.flown_s = sortie.time_s();
  lines.log.finish(again.flown_s, again.cut_short);
  lines.truth.finish(again.flown_s, again.cut_short);
  again.log_differs_s = lines.log.differs_s;
  again.truth_differs_s = lines.truth.differs_s;
  return again;
}

}  // namespace stallwright
