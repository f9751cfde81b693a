#pragma once
#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// The sortie at its start, once it is sure that it can be flown and judged: what an aeroplane cannot do in the air of the day
/// is known before anything is written. Throws InputError, one line, where it cannot.
Sortie ready_sortie(const SortieConfig& config);

}  // namespace stallwright
