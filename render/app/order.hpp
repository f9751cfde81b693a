#pragma once
#include <filesystem>
#include <string>

#include "render/flight/flight.hpp"
#include "render/view/start_view.hpp"
#include "sim/report/who.hpp"

namespace stallwright::app {

/// From what was chosen on the start page to what is flown. `choice` has passed `check`. Throws InputError, one line, for what
/// shows only now (set points that do not fit).
FlightOrder order_of(const view::StartChoice& choice, const view::StartCheck& check,
                     const std::filesystem::path& sorties);

/// A folder below `sorties` that does not exist yet, named by card, aeroplane, air and the time by the clock.
std::filesystem::path fresh_folder(const std::filesystem::path& sorties, const FlownSortie& flown);

/// The name for the record, today's date with it; empty where none was given or it cannot stand there.
Who who_flies(const view::StartChoice& choice);

}  // namespace stallwright::app
