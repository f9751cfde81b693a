#pragma once
#include <string>
#include <vector>

#include "render/input/key_help.hpp"
#include "render/ui/fonts.hpp"
#include "render/ui/widgets.hpp"
#include "sim/sortie/test_card.hpp"

namespace stallwright::app {

/// Pages that open over the panel while a flight is under way, never over the world's horizon. Each returns what was pressed.
enum class Answer { none, yes, no };

/// Checks and cautions before the first stall. yes: gone through.
Answer draw_stall_checks(const TestCard& card, ui::Registry& registry, const ui::Fonts& fonts, ImVec2 from,
                         ImVec2 to);

/// All keys. yes or no: close.
Answer draw_key_page(const std::vector<input::KeyHelp>& keys, ui::Registry& registry, const ui::Fonts& fonts,
                     ImVec2 from, ImVec2 to);

/// Whether to end the flight.
Answer draw_leave_page(ui::Registry& registry, const ui::Fonts& fonts, ImVec2 from, ImVec2 to);

}  // namespace stallwright::app
