#pragma once
#include <cstddef>
#include <memory>
#include <string>

#include "sim/lanes/lane_group.hpp"
#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// A sortie that has taken a lane.
struct SeatedSortie {
  std::size_t number = 0;  ///< the crew's own
  std::unique_ptr<Sortie> sortie;
  SortieSink* sink = nullptr;
};

/// Who brings sorties to the lanes and takes them when they have ended.
class LaneCrew {
 public:
  virtual ~LaneCrew() = default;
  /// The next sortie, at its start, without a twin and not flown by hand; none: nothing left.
  virtual SeatedSortie next() = 0;
  /// It has ended: `failure` is the message of an exception, otherwise empty.
  virtual void ended(SeatedSortie& seated, const std::string& failure) = 0;
  /// True: those under way are dropped.
  virtual bool stopped() const { return false; }
};

/// Flies all that the crew brings, side by side in the kernel's lanes, on this thread. A lane whose sortie has ended takes the
/// next one; aeroplanes that are not the same (KnownAircraft) never share the lanes, so bring those that are one after the
/// other. Each sortie goes as Sortie::tick would make it go, to the last bit.
void fly_in_lanes(const LaneKernel& kernel, LaneCrew& crew);

}  // namespace stallwright
