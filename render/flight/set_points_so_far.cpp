#include "render/flight/set_points_so_far.hpp"

#include <chrono>
#include <cmath>
#include <utility>

#include "sim/reduction/reduce.hpp"

namespace stallwright {

std::vector<SetPointSoFar> so_far(const SetPoints& found) {
  std::vector<SetPointSoFar> list;
  for (const SetPointSet& set : found.sets)
    for (const SetPoint& p : set.points)
      if (p.found()) list.push_back({p.name, set.flap_deg, p.ratio, p.interval_low, p.interval_high});
  return list;
}

SetPointsSoFar::SetPointsSoFar(TestCard card, InstrumentGrade instruments, bool wait)
    : card_(std::move(card)),
      instruments_(std::move(instruments)),
      wait_(wait),
      ready_(std::make_shared<const std::vector<SetPointSoFar>>()) {}

void SetPointsSoFar::start_with(const SetPoints& taught) {
  ready_ = std::make_shared<const std::vector<SetPointSoFar>>(so_far(taught));
}

void SetPointsSoFar::begin() {
  wanted_ = false;
  working_ = std::async(std::launch::async, [rows = rows_, card = card_, grade = instruments_]() -> List {
    try {
      return std::make_shared<const std::vector<SetPointSoFar>>(so_far(reduce(rows, card, grade)));
    } catch (const std::exception&) {
      return nullptr;  // a log that cannot be reduced yet: the pegs stay as they are, the flight goes on
    }
  });
}

void SetPointsSoFar::take() {
  if (List found = working_.get()) ready_ = std::move(found);
}

void SetPointsSoFar::add(const LogRow& row) {
  rows_.push_back(row);
  const bool recording = row.recording != 0;
  if (was_recording_ && !recording && !card_.verifies) wanted_ = true;
  was_recording_ = recording;
  if (wanted_ && !working_.valid()) begin();
  if (wait_ && working_.valid()) take();
}

const SetPointsSoFar::List& SetPointsSoFar::list() {
  if (working_.valid() && working_.wait_for(std::chrono::seconds(0)) == std::future_status::ready) take();
  return ready_;
}

}  // namespace stallwright
