#include "render/sound/buffet.hpp"

namespace stallwright::sound {

double BuffetVoice::next(double buffet_g, double rate) {
  const double aim = std::sqrt(std::clamp((buffet_g - 0.01) / 0.39, 0.0, 1.0));
  strength = moved(strength, aim, 1.0 / (0.15 * rate));
  const double white = noise.next();
  const double wide = high.next(white, 170.0 * 6.3 / rate);
  const double rumble = wide - low.next(wide, 45.0 * 6.3 / rate);
  // Blows come about ten times a second, no two alike.
  const double blows = std::clamp(0.5 + 14.0 * shake.next(noise.next(), 11.0 * 6.3 / rate), 0.0, 1.4);
  const double metal = white - rattle.next(white, 1800.0 * 6.3 / rate);
  return strength * (3.2 * rumble * (0.4 + blows) + 0.05 * metal * blows * blows * blows * strength);
}

}  // namespace stallwright::sound
