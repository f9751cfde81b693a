#include "sim/study/map/study_folder.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "aircraft/input_error.hpp"
#include "sim/report/whole_file.hpp"
#include "sim/study/map/cell_summary.hpp"
#include "sim/study/map/map_csv.hpp"
#include "sim/study/map/map_json.hpp"
#include "sim/study/page/study_page.hpp"
#include "sim/study/sensitivity/sensitivity_plan.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& place, const std::string& expected, const std::string& found) {
  throw InputError(place.string() + ": expected " + expected + ", found " + found);
}

/// Files that lie among the blocks, sorted, so that of several troubles the same one is told.
std::vector<fs::path> files_among_blocks(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder / kSortiesFolder, error))
    if (entry.path().extension() == ".csv") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// Nothing in it but what a killed or a simultaneous start leaves there: unfinished files, and `sorties` with none but
/// such. What vanishes while we look is nothing.
bool is_as_new(const fs::path& folder, bool may_have_sorties = true) {
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const fs::path& place = entry.path();
    if (is_unfinished_file(place)) continue;
    if (may_have_sorties && place.filename() == kSortiesFolder && fs::is_directory(place, error) &&
        is_as_new(place, false))
      continue;
    return false;
  }
  return !error;
}

bool is_whole(const fs::path& file, const StudyMap& map, const Block& block) {
  std::error_code error;
  if (!fs::exists(file, error)) return false;
  try {
    read_block(file, map, block);
    return true;
  } catch (const InputError&) {
    return false;
  }
}

std::string bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The first few names, and how many more.
std::string some_of(const std::vector<std::string>& names) {
  constexpr std::size_t kShown = 5;
  std::string text;
  for (std::size_t i = 0; i < std::min(kShown, names.size()); ++i) text += (i > 0 ? ", " : "") + names[i];
  return names.size() > kShown ? text + " and " + std::to_string(names.size() - kShown) + " more" : text;
}

/// For each block the one file that holds it, read once to be sure.
std::vector<fs::path> one_file_each(const std::vector<fs::path>& folders, const StudyMap& map,
                                    const std::vector<Block>& blocks) {
  std::vector<fs::path> files;
  std::vector<std::string> lacking;
  for (const Block& block : blocks) {
    std::vector<fs::path> having;
    for (const fs::path& folder : folders)
      if (fs::exists(block_file(folder, block))) having.push_back(folder);
    if (having.size() > 1)
      refuse(block_file(having[1], block), "each block once", "it in " + having[0].string() + " too");
    if (having.empty()) {
      lacking.push_back(block.name);
      continue;
    }
    files.push_back(block_file(having[0], block));
    read_block(files.back(), map, block);
  }
  if (!lacking.empty())
    throw InputError("merge: expected every block of the study, found no " + some_of(lacking));
  return files;
}

}  // namespace

void require_same_study(const fs::path& folder, const StudyMap& map) {
  std::error_code error;
  if (folder.empty()) throw InputError("--out: expected a folder, found no name");
  if (!fs::exists(folder, error)) {
    const fs::path above = folder.has_parent_path() ? folder.parent_path() : fs::path(".");
    if (!fs::is_directory(above, error)) refuse(folder, "a folder in one that exists", "none");
    return;
  }
  if (!fs::is_directory(folder, error)) refuse(folder, "a folder", "a file");
  const auto has_plan = [&] { return fs::exists(folder / kPlanFile, error); };
  if (!has_plan()) {
    if (is_as_new(folder)) return;
    // Another shard may have begun since: its plan comes before anything else, so it is there by now.
    if (!has_plan()) refuse(folder, "a new or empty folder, or one of this study", "something else");
  }
  const StudyMap there = read_plan(folder / kPlanFile);
  if (there.identity != map.identity)
    refuse(folder / kPlanFile, "study " + map.identity,
           "another, " + there.identity + " (" + there.recipe_key + ", " + there.aircraft_key + ", card " +
               there.card_key + ", version " + there.version + ")");
  for (const fs::path& file : files_among_blocks(folder)) {
    const std::string identity = block_identity(file);
    if (!identity.empty() && identity != map.identity)
      refuse(file, "sorties of study " + map.identity, "those of " + identity);
  }
}

void prepare_study_folder(const fs::path& folder, const StudyMap& map) {
  require_same_study(folder, map);
  std::error_code error;
  const auto make = [&](const fs::path& wanted) {
    fs::create_directories(wanted, error);
    if (error) refuse(folder, "a folder that can be made", error.message());
  };
  make(folder);
  // Of shards that begin at once each may put it there: the same bytes, whole, over one another.
  if (!fs::exists(folder / kPlanFile, error)) write_whole_file(folder / kPlanFile, plan_to_json(map));
  make(folder / kSortiesFolder);
}

std::vector<Block> missing_blocks(const fs::path& folder, const StudyMap& map,
                                  const std::vector<Block>& wanted) {
  std::vector<Block> missing;
  for (const Block& block : wanted)
    if (!is_whole(block_file(folder, block), map, block)) missing.push_back(block);
  return missing;
}

void read_results(const fs::path& folder, StudyMap& map) {
  const std::vector<Block> blocks = blocks_of(map);
  auto block = blocks.begin();
  for (std::size_t cell = 0; cell < map.flown_cells(); ++cell) {
    std::vector<SortieNumbers> sorties;
    for (; block != blocks.end() && block->cell == cell; ++block) {
      const std::vector<SortieNumbers> read = read_block(block_file(folder, *block), map, *block);
      sorties.insert(sorties.end(), read.begin(), read.end());
    }
    if (cell < map.all_cells())
      summarise_cell(map, cell, sorties);
    else
      summarise_sensitivity(map, sorties);
  }
}

void write_tables(const fs::path& folder, StudyMap& map) {
  read_results(folder, map);
  write_whole_file(folder / "study.csv", map_to_csv(map));
  write_whole_file(folder / "study.json", map_to_json(map));
  write_whole_file(folder / "study.html", study_page(map));
}

StudyMap merge_studies(const std::vector<fs::path>& folders, const fs::path& out) {
  StudyMap map = read_plan(folders.at(0) / kPlanFile);
  for (const fs::path& folder : folders) {
    std::error_code error;
    read_plan(folder / kPlanFile);
    require_same_study(folder, map);
    if (fs::equivalent(folder, out, error))
      refuse(out, "a folder of its own for --out", "one of those to merge");
  }
  std::error_code error;
  if (fs::exists(out, error) && (!fs::is_directory(out, error) || !fs::is_empty(out, error)))
    refuse(out, "a new or empty folder", "something in it");
  const std::vector<Block> blocks = blocks_of(map);
  const std::vector<fs::path> files = one_file_each(folders, map, blocks);
  prepare_study_folder(out, map);
  for (std::size_t i = 0; i < blocks.size(); ++i)
    write_whole_file(block_file(out, blocks[i]), bytes_of(files[i]));
  write_tables(out, map);
  return map;
}

}  // namespace stallwright
