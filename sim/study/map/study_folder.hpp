#pragma once
#include <filesystem>
#include <vector>

#include "sim/study/map/blocks.hpp"

namespace stallwright {

/// The folder of a study:
///   study-plan.json   what is flown (map_json.hpp)
///   sorties/          the blocks (blocks.hpp)
///   study.csv, study.json    the tables, made from the two above when every block is there
///   study.html        the page, made with them
/// What is flown is spilled there, so memory does not grow with the number of sorties.

inline constexpr const char* kPlanFile = "study-plan.json";

/// Throws InputError, one line, unless the folder does not exist, is empty, or holds this study and nothing of another.
/// A start that was cut short counts as empty: unfinished files, and `sorties` with nothing else in it. Touches nothing.
void require_same_study(const std::filesystem::path& folder, const StudyMap& map);

/// Makes the folder and writes the plan where it is not there, before anything else. Shards of one study may do so in one
/// folder at once. Throws InputError as above, and where it cannot be made.
void prepare_study_folder(const std::filesystem::path& folder, const StudyMap& map);

/// Blocks that the folder lacks, or holds damaged: in order.
std::vector<Block> missing_blocks(const std::filesystem::path& folder, const StudyMap& map,
                                  const std::vector<Block>& wanted);

/// Takes the results of every cell from the blocks, cell by cell and block by block in order: only one cell's numbers are in
/// memory at a time. Throws InputError for a block that is missing or is not what it should be.
void read_results(const std::filesystem::path& folder, StudyMap& map);

/// Reads the results and writes study.csv, study.json and study.html.
void write_tables(const std::filesystem::path& folder, StudyMap& map);

/// Gathers the blocks of several folders, shards of one study, into a new or empty one, and writes the tables. Throws
/// InputError, one line and nothing written, for differing studies, a block that several folders have, or one that none
/// has.
StudyMap merge_studies(const std::vector<std::filesystem::path>& folders, const std::filesystem::path& out);

}  // namespace stallwright
