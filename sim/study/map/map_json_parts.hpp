#pragma once
#include <nlohmann/json.hpp>

#include "sim/study/study_map.hpp"

/// Inside of the map's JSON writers: not for use elsewhere (it brings the parser's header with it).
namespace stallwright::map_json {

using Json = nlohmann::ordered_json;

/// JSON has no NaN: what does not exist is null.
Json number(double value);

/// Name, aeroplane, card, seeds, airs, hands and lines.
Json head(const StudyMap& map, const char* format);

/// What a cell is: key, air, hand, what was varied, sorties planned.
Json planned_cell(const MapCell& cell);

std::string text_of(const Json& json);

}  // namespace stallwright::map_json
