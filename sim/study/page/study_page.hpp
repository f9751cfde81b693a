#pragma once
#include <string>

#include "sim/study/study_map.hpp"

namespace stallwright {

/// A study as one HTML file (study.html), made to be projected: nothing else is loaded, no script; UTF-8, well-formed XML too;
/// it prints on A4 and reads in grey. From top: what rough air costs, in one sentence; errors by hands and air; errors by air
/// for each pilot; late warnings and sets out of order; length of record; one thing varied at a time; Sobol' indices; rules of
/// thumb; recipe, seeds, version, cautions. Numbers that do not exist show as a dash. Same map, same bytes.
///   map  with results
std::string study_page(const StudyMap& map);

}  // namespace stallwright
