#include "sim/report/taught.hpp"

#include <system_error>

#include "aircraft/input_error.hpp"
#include "sim/reduction/set_points_json.hpp"
#include "sim/sortie/test_card_file.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

/// Set points to verify: a file, or a folder that has one and, with its card, says how the warning was taught.
Taught read_taught(const std::string& given, SourceFiles& sources) {
  const fs::path path(given);
  std::error_code error;
  const bool folder = fs::is_directory(path, error);
  sources.taught = folder ? path / "set-points.json" : path;
  Taught taught;
  taught.set_points = read_set_points(sources.taught);
  if (unit_for(taught.set_points).warnings.empty())
    throw InputError(sources.taught.string() + ": expected set points with a warning among them, found none");
  if (!folder || !fs::exists(path / "card.toml", error)) return taught;
  for (const TestPoint& point : load_test_card(path / "card.toml").points)
    if (point.name == "warning") taught.power = point.power;
  return taught;
}

}  // namespace

void load_unit(const std::string& set_points, FlownSortie& flown, SourceFiles& sources) {
  const TestCard& card = flown.config.card;
  if (card.verifies && set_points.empty())
    throw InputError("--set-points: expected the set points that " + card.name + " verifies, found none");
  if (set_points.empty()) return;
  if (!card.verifies)
    throw InputError("--set-points: expected a card that verifies, as the card verify does, found " +
                     card.name);
  flown.taught = read_taught(set_points, sources);
  const std::string& taught_on = flown.taught->set_points.aircraft;
  if (!taught_on.empty() && taught_on != flown.config.type.name)
    throw InputError("--set-points: expected those of " + flown.config.type.name + ", found those of " +
                     taught_on);
  flown.config.unit = unit_for(flown.taught->set_points);
}

}  // namespace stallwright
