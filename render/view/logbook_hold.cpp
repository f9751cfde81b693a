// The speed hold of a past flight, from six columns of its log.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string_view>

#include "render/view/hold_figures.hpp"
#include "render/view/logbook_view.hpp"

namespace stallwright::view {
namespace {

constexpr std::array<std::string_view, 6> kWanted{"point",     "repeat",    "attempt",
                                                  "recording", "target_kt", "ias_kt"};
constexpr std::size_t kAbsent = static_cast<std::size_t>(-1);

using Places = std::array<std::size_t, kWanted.size()>;

std::string_view take(std::string_view& rest, char until) {
  const std::size_t at = rest.find(until);
  const std::string_view head = rest.substr(0, at);
  rest = at == std::string_view::npos ? std::string_view() : rest.substr(at + 1);
  return head;
}

Places places_of(std::string_view header) {
  Places places;
  places.fill(kAbsent);
  for (std::size_t column = 0; !header.empty(); ++column) {
    const std::string_view name = take(header, ',');
    for (std::size_t k = 0; k < kWanted.size(); ++k)
      if (name == kWanted[k]) places[k] = column;
  }
  return places;
}

/// The wanted numbers of a line; false where one is missing or is no number.
bool numbers_of(std::string_view line, const Places& places, std::size_t last,
                std::array<double, kWanted.size()>& numbers) {
  std::size_t found = 0;
  for (std::size_t column = 0; column <= last; ++column) {
    if (line.empty()) return false;
    const std::string_view field = take(line, ',');
    for (std::size_t k = 0; k < kWanted.size(); ++k) {
      if (places[k] != column) continue;
      const auto read = std::from_chars(field.data(), field.data() + field.size(), numbers[k]);
      if (read.ec != std::errc()) return false;
      ++found;
    }
  }
  return found == kWanted.size();
}

}  // namespace

double hold_of_log(const std::filesystem::path& log_csv) {
  std::error_code error;
  const std::uintmax_t size = std::filesystem::file_size(log_csv, error);
  constexpr std::uintmax_t kMost = 512u << 20;
  std::ifstream in(log_csv, std::ios::binary);
  if (error || !in || size > kMost) return kNone;
  std::string text(static_cast<std::size_t>(size), '\0');
  in.read(text.data(), static_cast<std::streamsize>(size));
  text.resize(static_cast<std::size_t>(in.gcount()));
  std::string_view rest(text);
  std::string_view header = take(rest, '\n');
  if (!header.empty() && header.back() == '\r') header.remove_suffix(1);
  const Places places = places_of(header);
  if (std::find(places.begin(), places.end(), kAbsent) != places.end()) return kNone;
  const std::size_t last = *std::max_element(places.begin(), places.end());

  std::vector<LogRow> rows;
  std::array<double, kWanted.size()> n{};
  while (rest.find('\n') != std::string_view::npos) {
    const std::string_view line = take(rest, '\n');
    if (!numbers_of(line, places, last, n) || n[3] == 0.0) continue;
    LogRow row;
    row.point = static_cast<int>(n[0]);
    row.repeat = static_cast<int>(n[1]);
    row.attempt = static_cast<int>(n[2]);
    row.recording = 1;
    row.target_kt = n[4];
    row.ias_kt = n[5];
    rows.push_back(row);
  }
  return hold_rms_kt(rows);
}

bool look_up_next_hold(Logbook& logbook) {
  for (LogbookLine& line : logbook.lines) {
    if (line.hold_looked_up) continue;
    line.hold_rms_kt = hold_of_log(line.folder / "log.csv");
    line.hold_looked_up = true;
    return true;
  }
  return false;
}

}  // namespace stallwright::view
