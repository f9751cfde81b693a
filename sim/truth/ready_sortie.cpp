#include "sim/truth/ready_sortie.hpp"

#include <stdexcept>

#include "aircraft/input_error.hpp"
#include "sim/truth/judge.hpp"

namespace stallwright {

Sortie ready_sortie(const SortieConfig& config) {
  try {
    Sortie sortie(config);
    find_truth(sortie.aircraft(), config.card, working_air(config.card, config.air.day));
    return sortie;
  } catch (const std::runtime_error& e) {
    throw InputError("expected a card that " + config.type.name + " can fly in this air, found: " + e.what());
  }
}

}  // namespace stallwright
