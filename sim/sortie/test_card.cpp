#include "sim/sortie/test_card.hpp"

namespace stallwright {

const char* power_name(PowerRule power) {
  switch (power) {
    case PowerRule::level:
      return "level";
    case PowerRule::descent:
      return "descent";
    case PowerRule::idle:
      return "idle";
  }
  return "";
}

PowerRule power_named(const std::string& name) {
  return name == "level" ? PowerRule::level : name == "descent" ? PowerRule::descent : PowerRule::idle;
}

}  // namespace stallwright
