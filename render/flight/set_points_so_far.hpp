#pragma once
#include <future>
#include <memory>
#include <vector>

#include "render/flight/snapshot.hpp"
#include "sim/reduction/set_points.hpp"
#include "sim/sensing/instrument_grade.hpp"
#include "sim/sortie/log_row.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright {

/// Set points of a flight under way: after each record the log so far is reduced as any log is, beside the flight.
/// Before a set has two different speeds a point is known by its plain mean alone, with its honest, wide interval.
class SetPointsSoFar {
 public:
  using List = std::shared_ptr<const std::vector<SetPointSoFar>>;
  /// wait: work within add(), for repeatable pictures.
  SetPointsSoFar(TestCard card, InstrumentGrade instruments, bool wait);

  /// What the list holds from the start: the taught set points of a flight that verifies them.
  void start_with(const SetPoints& taught);

  /// A row of the log. When a record has just ended, the work begins.
  void add(const LogRow& row);

  /// The newest that is ready; never null. Cheap.
  const List& list();

 private:
  void begin();
  void take();

  TestCard card_;
  InstrumentGrade instruments_;
  bool wait_, was_recording_ = false, wanted_ = false;
  std::vector<LogRow> rows_;
  std::future<List> working_;
  List ready_;
};

/// Of one reduction, those that were found.
std::vector<SetPointSoFar> so_far(const SetPoints& found);

}  // namespace stallwright
