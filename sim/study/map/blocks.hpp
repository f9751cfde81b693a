#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "sim/study/map/sortie_numbers.hpp"
#include "sim/study/study_map.hpp"

namespace stallwright {

/// Numbers of sorties are kept in blocks of a cell, one CSV file each, written whole: `sorties/03-light-current-0001.csv`
/// in the folder of the study. Each row names its study, cell and seed, so that a file tells whether it belongs where it
/// lies. Numbers stand in the shortest form that reads back exactly.
inline constexpr int kBlockSorties = 50;
inline constexpr const char* kSortiesFolder = "sorties";

struct Block {
  std::size_t cell = 0;        ///< index by StudyMap::flown_cell
  int number = 0;              ///< in its cell, from 1
  int first = 0, sorties = 0;  ///< sorties first, first + 1, ... of the cell; the last block may be shorter
  std::string name;            ///< of its file
};

/// All blocks of a study: cell by cell, in order of seed.
std::vector<Block> blocks_of(const StudyMap& map);

/// Where the block lies in the folder of a study.
std::filesystem::path block_file(const std::filesystem::path& folder, const Block& block);

/// The text of its file; one entry of `numbers` for each sortie.
std::string block_text(const StudyMap& map, const Block& block, const std::vector<SortieNumbers>& numbers);

/// Reads it back, equal to the last bit. Throws InputError, one line, for a file that is not this block of this study,
/// and for a set point that was found and has no finite error and half-width.
std::vector<SortieNumbers> read_block(const std::filesystem::path& file, const StudyMap& map,
                                      const Block& block);

/// Identity of the study that a block file belongs to: 16 hexadecimal digits; empty when they cannot be read whole.
std::string block_identity(const std::filesystem::path& file);

}  // namespace stallwright
