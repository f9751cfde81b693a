#pragma once
#include "sim/reduction/set_points.hpp"
#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// Fills in the verdict, its reason and which points to fly again. In this order, the first that holds:
///   0. the flight ended before the card did: fly again;
///   1. the air stalled the wing, or kept a point off condition: wait for better air;
///   2. a point is missing, or its set is out of order: fly those again;
///   3. a point's 95 % interval is wider than the card wants: fly it again, or wait for better air if scatter or a
///      record that left its bands is what widens it and the air was rough;
///   4. the set points, held against the truth, leave less warning than the card wants, or err by more: fly again;
///   5. otherwise: keep.
void decide(Judgement& judgement, const SetPoints& measured, const TestCard& card, const SortieOutcome& outcome);

}  // namespace stallwright
