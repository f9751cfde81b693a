#include "sim/report/sortie_folder.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

#include "aircraft/input_error.hpp"
#include "sim/report/whole_file.hpp"

namespace stallwright {
namespace {

namespace fs = std::filesystem;

std::vector<CsvColumn> text_columns(const std::vector<std::string>& names) {
  std::vector<CsvColumn> columns;
  for (const std::string& name : names) columns.push_back({name});
  return columns;
}

void write_fields(CsvWriter& writer, const std::vector<std::string>& fields) {
  const std::vector<CsvValue> values(fields.begin(), fields.end());
  writer.write_row(values);
}

void copy_whole(const fs::path& from, const fs::path& to) {
  std::ifstream in(from, std::ios::binary);
  const std::string text(std::istreambuf_iterator<char>(in), {});
  if (!in) throw std::runtime_error(from.string() + ": cannot be read again");
  write_whole_file(to, text);
}

/// Makes the folder; the way of handing it back lets it stand before the writers among the members.
fs::path made_folder(const fs::path& folder) {
  require_new_folder(folder);
  std::error_code error;
  fs::create_directories(folder, error);
  if (error)
    throw InputError("--out: expected a folder that can be made, found " + folder.string() + ": " +
                     error.message());
  return folder;
}

}  // namespace

void require_new_folder(const fs::path& folder) {
  const std::string expected = "--out: expected a new or empty folder, found ";
  if (folder.empty()) throw InputError(expected + "an empty name");
  std::error_code error;
  const fs::file_status status = fs::status(folder, error);
  if (!fs::exists(status)) {
    if (error && error != std::errc::no_such_file_or_directory)
      throw InputError(expected + folder.string() + ": " + error.message());
    return;
  }
  if (!fs::is_directory(status)) throw InputError(expected + "the file " + folder.string());
  const bool empty = fs::is_empty(folder, error);
  if (error) throw InputError(expected + folder.string() + ": " + error.message());
  if (!empty) throw InputError(expected + folder.string() + " with something in it");
}

SortieFolder::SortieFolder(const fs::path& folder, const SourceFiles& sources, const FlownSortie& flown)
    : folder_(made_folder(folder)),
      flown_(flown),
      log_(folder / "log.csv", text_columns(log_columns())),
      truth_(folder / "truth.csv", text_columns(truth_columns())) {
  copy_whole(sources.aircraft, folder_ / "aircraft.toml");
  copy_whole(sources.card, folder_ / "card.toml");
  copy_whole(sources.air, folder_ / "air.toml");
  if (!sources.taught.empty()) copy_whole(sources.taught, folder_ / "taught.json");
  if (flown_.config.by_hand) hands_.emplace(folder_ / "hands.csv");
  write_whole_file(folder_ / "sortie.json", sortie_to_json(flown_));
}

void SortieFolder::hands(double time_s, const Hands& hands) {
  if (hands_) hands_->write(time_s, hands);
}

void SortieFolder::row(const LogRow& log, const TruthRow& truth) {
  write_fields(log_, log_fields(log));
  write_fields(truth_, truth_fields(truth));
}

void SortieFolder::close(const SortieOutcome& outcome) {
  log_.flush();
  truth_.flush();
  if (hands_) hands_->flush();
  flown_.ended = true;
  flown_.outcome = outcome;
  write_whole_file(folder_ / "sortie.json", sortie_to_json(flown_));
}

}  // namespace stallwright
