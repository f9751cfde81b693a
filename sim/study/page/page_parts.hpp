#pragma once
#include <string>

#include "sim/study/study_map.hpp"

/// The parts of the study page, each a piece of HTML; study_page puts them in order. A part without anything to show is empty.
namespace stallwright::study_parts {

std::string style_sheet();
std::string header(const StudyMap& map);        ///< title, caution, the sentence, what was flown
std::string heat_maps(const StudyMap& map);     ///< errors by hands and air, one for each set point
std::string error_panels(const StudyMap& map);  ///< RMS with whiskers by air, one for each pilot
std::string chance_maps(const StudyMap& map);   ///< late warning, a set out of order
std::string windows(const StudyMap& map);       ///< RMS by length of record
std::string varied(const StudyMap& map);        ///< one thing at a time
std::string sensitivity(const StudyMap& map);   ///< everything at once: Sobol' indices
std::string rules(const StudyMap& map);
std::string foot(const StudyMap& map);  ///< recipe, seeds, version, cautions

/// "1.23 (1.10 to 1.36)"; kNoNumber alone when there is none.
std::string estimate_words(const Estimate& estimate, int decimals);

/// A line under a picture: "Marram (invented), Short card, standard sensors; seeds from 1."
std::string made_by(const StudyMap& map);

}  // namespace stallwright::study_parts
