#pragma once
#include <filesystem>
#include <string>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// What a study is, before and after it is flown.
///
/// study-plan.json, format "stallwright-map-plan-1": everything of a StudyMap but results; written first, so that the
/// blocks beside it can be read by themselves.
/// study.json, format "stallwright-map-1": the same with results. assets/recipes/README.md describes its fields.
std::string plan_to_json(const StudyMap& map);
std::string map_to_json(const StudyMap& map);

/// Reads study-plan.json back. Throws InputError, one line, for anything else.
StudyMap read_plan(const std::filesystem::path& file);

}  // namespace stallwright
