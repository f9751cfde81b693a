#include "sim/study/map/blocks.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>

#include "aircraft/input_error.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/reduction/csv.hpp"

namespace stallwright {
namespace {

constexpr const char* kVerdicts[] = {"keep", "fly again", "wait for better air"};

/// Beginning of a line's columns: "warning_flap0_15s_", "stall_flap0_".
std::string line_prefix(const MapLine& line) {
  std::string name = line.name;
  std::replace(name.begin(), name.end(), ' ', '_');
  name += "_flap" + number_text(line.flap_deg) + "_";
  return line.is_stall ? name : name + number_text(line.window_s) + "s_";
}

std::vector<std::string> line_columns(const MapLine& line) {
  std::vector<std::string> names;
  for (const char* column : {"found", "covered", "error_kt", "half_width_kt", "records_wanted"})
    names.push_back(line_prefix(line) + column);
  return names;
}

const std::vector<std::string> kTexts = {"study", "cell", "seed", "verdict", "failure"};
const std::vector<std::string> kNumbers = {"out_of_order", "hold_rms_kt", "gust_rms_mps",
                                           "warning_margin_kt"};

std::string row_text(const StudyMap& map, const Block& block, int k, const SortieNumbers& n) {
  std::string row = csv_field(map.identity) + "," + csv_field(map.flown_cell(block.cell).key) + "," +
                    std::to_string(map.sortie_seed(block.cell, block.first + k)) + "," +
                    (n.verdict ? kVerdicts[static_cast<std::size_t>(*n.verdict)] : "") + "," +
                    csv_field(n.failure);
  const auto add = [&](double value) { row += "," + csv_field(value); };
  add(n.out_of_order ? (*n.out_of_order ? 1.0 : 0.0) : kNone);
  add(n.hold_rms_kt);
  add(n.gust_rms_mps);
  add(n.warning_margin_kt);
  for (const LineNumbers& line : n.lines) {
    add(line.found ? 1.0 : 0.0);
    add(line.covered ? 1.0 : 0.0);
    add(line.error_kt);
    add(line.half_width_kt);
    add(line.records_wanted);
  }
  return row + "\n";
}

NumericTable read_table(const std::filesystem::path& file, const StudyMap& map) {
  CsvRequest request;
  request.texts = kTexts;
  request.numbers_or_empty = kNumbers;
  for (const MapLine& line : map.lines)
    for (const std::string& name : line_columns(line)) request.numbers_or_empty.push_back(name);
  return read_csv(file, request);
}

class RowReader {
 public:
  RowReader(const NumericTable& table, const StudyMap& map) : table_(table), map_(map) {}

  SortieNumbers row(std::size_t i) const {
    SortieNumbers n;
    const std::string& verdict = table_.texts.at("verdict")[i];
    for (std::size_t v = 0; v < std::size(kVerdicts); ++v)
      if (verdict == kVerdicts[v]) n.verdict = static_cast<Verdict>(v);
    n.failure = table_.texts.at("failure")[i];
    const double order = number("out_of_order", i);
    if (order == order) n.out_of_order = order != 0.0;
    n.hold_rms_kt = number("hold_rms_kt", i);
    n.gust_rms_mps = number("gust_rms_mps", i);
    n.warning_margin_kt = number("warning_margin_kt", i);
    for (const MapLine& line : map_.lines) {
      const std::vector<std::string> names = line_columns(line);
      n.lines.push_back(
          {{number(names[0], i) == 1.0, number(names[1], i) == 1.0, number(names[2], i), number(names[3], i)},
           records(number(names[4], i))});
    }
    return n;
  }

 private:
  double number(const std::string& name, std::size_t i) const { return table_.numbers.at(name)[i]; }
  static int records(double value) { return value >= 1.0 && value <= 9.0 ? static_cast<int>(value) : 0; }
  const NumericTable& table_;
  const StudyMap& map_;
};

}  // namespace

std::vector<Block> blocks_of(const StudyMap& map) {
  std::vector<Block> blocks;
  for (std::size_t cell = 0; cell < map.flown_cells(); ++cell) {
    const MapCell& of = map.flown_cell(cell);
    for (int first = 0, number = 1; first < of.sorties; first += kBlockSorties, ++number) {
      std::string digits = std::to_string(number);
      digits.insert(0, 4 - std::min<std::size_t>(4, digits.size()), '0');
      blocks.push_back(
          {cell, number, first, std::min(kBlockSorties, of.sorties - first), of.key + "-" + digits + ".csv"});
    }
  }
  return blocks;
}

std::filesystem::path block_file(const std::filesystem::path& folder, const Block& block) {
  return folder / kSortiesFolder / block.name;
}

std::string block_text(const StudyMap& map, const Block& block, const std::vector<SortieNumbers>& numbers) {
  std::string text;
  for (const std::string& name : kTexts) text += (text.empty() ? "" : ",") + name;
  for (const std::string& name : kNumbers) text += "," + name;
  for (const MapLine& line : map.lines)
    for (const std::string& name : line_columns(line)) text += "," + csv_field(name);
  text += "\n";
  for (std::size_t k = 0; k < numbers.size(); ++k)
    text += row_text(map, block, static_cast<int>(k), numbers[k]);
  return text;
}

std::vector<SortieNumbers> read_block(const std::filesystem::path& file, const StudyMap& map,
                                      const Block& block) {
  const NumericTable table = read_table(file, map);
  const auto refuse = [&](const std::string& expected, const std::string& found) {
    throw InputError(file.string() + ": expected " + expected + ", found " + found);
  };
  if (table.rows != static_cast<std::size_t>(block.sorties))
    refuse(std::to_string(block.sorties) + " sorties", std::to_string(table.rows));
  std::vector<SortieNumbers> numbers;
  const RowReader reader(table, map);
  for (std::size_t k = 0; k < table.rows; ++k) {
    const std::string seed = std::to_string(map.sortie_seed(block.cell, block.first + static_cast<int>(k)));
    if (table.texts.at("study")[k] != map.identity)
      refuse("sorties of study " + map.identity, table.texts.at("study")[k]);
    if (table.texts.at("cell")[k] != map.flown_cell(block.cell).key)
      refuse("cell " + map.flown_cell(block.cell).key, table.texts.at("cell")[k]);
    if (table.texts.at("seed")[k] != seed) refuse("seed " + seed, table.texts.at("seed")[k]);
    numbers.push_back(reader.row(k));
    for (std::size_t i = 0; i < map.lines.size(); ++i) {
      const LineNumbers& line = numbers.back().lines[i];
      if (line.found && !(std::isfinite(line.error_kt) && std::isfinite(line.half_width_kt)))
        refuse("an error and a half-width of what was found, " + line_prefix(map.lines[i]) +
                   "found of seed " + seed,
               "none");
    }
  }
  return numbers;
}

std::string block_identity(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::string line;
  std::getline(in, line);
  if (line.rfind("study,", 0) != 0 || !std::getline(in, line)) return "";
  // A file cut within the digits has no identity, rather than a short one that is not ours.
  constexpr std::size_t kDigits = 16;
  if (line.size() <= kDigits || line.find_first_not_of("0123456789abcdef") != kDigits || line[kDigits] != ',')
    return "";
  return line.substr(0, kDigits);
}

}  // namespace stallwright
