#include "render/view/logbook_view.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <ctime>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "sim/report/who.hpp"

namespace stallwright::view {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

constexpr std::uintmax_t kLargest = 4u << 20;

/// A JSON file without the parts that a logbook does not show; discarded where it is none.
Json small_json(const fs::path& file) {
  std::error_code error;
  if (fs::file_size(file, error) > kLargest || error) return Json(Json::value_t::discarded);
  std::ifstream in(file, std::ios::binary);
  const auto skip = [](int, Json::parse_event_t event, Json& key) {
    return event != Json::parse_event_t::key ||
           (key != "budget" && key != "readings" && key != "windows" && key != "rows" && key != "events");
  };
  return Json::parse(in, skip, false);
}

std::string text_at(const Json& json, const char* key) {
  const auto at = json.is_object() ? json.find(key) : json.end();
  return json.is_object() && at != json.end() && at->is_string() ? at->get<std::string>() : std::string();
}

const Json& at(const Json& json, const char* key, const Json& otherwise) {
  if (!json.is_object()) return otherwise;
  const auto found = json.find(key);
  return found == json.end() ? otherwise : *found;
}

double number_at(const Json& json, const char* key) {
  const Json none;
  const Json& value = at(json, key, none);
  return value.is_number() ? value.get<double>() : kNone;
}

std::string local_time(fs::file_time_type written) {
  const auto system = std::chrono::time_point_cast<std::chrono::system_clock::duration>(
      written - fs::file_time_type::clock::now() + std::chrono::system_clock::now());
  const std::time_t seconds = std::chrono::system_clock::to_time_t(system);
  std::tm parts{};
  char text[32] = "";
  if (localtime_r(&seconds, &parts) != nullptr) std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &parts);
  return text;
}

void read_flown(const Json& sortie, LogbookLine& line) {
  const Json none;
  line.aircraft = text_at(at(sortie, "aircraft", none), "name");
  line.card = text_at(at(sortie, "card", none), "name");
  line.air = text_at(at(sortie, "air", none), "name");
  line.pilot = text_at(sortie, "pilot");
  const Json& seed = at(sortie, "seed", none);
  if (seed.is_number_unsigned()) line.seed = seed.get<std::uint64_t>();
  line.outcome = at(sortie, "ended", none).is_null() ? "cut off in the air" : "not debriefed yet";
}

std::string verdict_words(const Json& judgement) {
  const std::string verdict = text_at(judgement, "verdict");
  if (verdict == "keep") return "keep";
  if (verdict == "wait_for_better_air") return "wait for better air";
  if (verdict != "fly_again") return "";
  std::string words = "fly again";
  const Json none;
  for (const Json& name : at(judgement, "fly_again", none))
    if (name.is_string()) words += (words == "fly again" ? ": " : ", ") + name.get<std::string>();
  return words;
}

void read_judged(const Json& judgement, LogbookLine& line) {
  if (const std::string words = verdict_words(judgement); !words.empty()) line.outcome = words;
  const Json none;
  for (const Json& set : at(judgement, "sets", none))
    for (const Json& point : at(set, "points", none)) {
      const double error_kt = number_at(point, "error_kt");
      const bool warning = text_at(point, "name") == "warning" && std::isfinite(number_at(point, "ratio"));
      line.has_warning = line.has_warning || warning;
      if (!std::isfinite(error_kt)) continue;
      if (warning) line.warning_error_kt = std::fmin(line.warning_error_kt, error_kt);
      if (!(std::abs(error_kt) <= std::abs(line.largest_error_kt))) line.largest_error_kt = error_kt;
    }
}

void read_who_of(const fs::path& folder, LogbookLine& line) {
  try {
    const Who who = read_who(folder);
    for (const std::string& name : who.names) line.who += (line.who.empty() ? "" : ", ") + name;
    line.when_given = !who.date.empty();
    if (line.when_given) line.when = who.date;
  } catch (const std::exception& e) {
    line.problem = e.what();
  }
}

LogbookLine read_line(const fs::path& folder) {
  LogbookLine line;
  line.folder = folder;
  line.name = folder.filename().string();
  std::error_code error;
  const fs::path file = folder / "sortie.json";
  line.written = fs::last_write_time(file, error);
  if (error) line.written = fs::last_write_time(folder, error);
  line.when = local_time(line.written);
  const Json sortie = small_json(file);
  if (sortie.is_discarded() || text_at(sortie, "format") != "stallwright-sortie-1") {
    line.problem = fs::exists(file, error) ? "sortie.json: expected what was flown, found something else"
                                           : "sortie.json: expected in the folder, found none";
    return line;
  }
  read_flown(sortie, line);
  if (const Json judged = small_json(folder / "judgement.json"); judged.is_object())
    read_judged(judged, line);
  if (const Json verified = small_json(folder / "verification.json"); verified.is_object()) {
    const Json none;
    const Json& pass = at(verified, "pass", none);
    if (pass.is_boolean()) line.outcome = pass.get<bool>() ? "pass" : "no pass";
  }
  read_who_of(folder, line);
  return line;
}

bool is_sortie(const fs::directory_entry& entry) {
  std::error_code error;
  return entry.is_directory(error) &&
         (fs::exists(entry.path() / "sortie.json", error) || fs::exists(entry.path() / "log.csv", error));
}

void take_over_holds(const Logbook& before, Logbook& now) {
  std::map<std::string, const LogbookLine*> known;
  for (const LogbookLine& line : before.lines)
    if (line.hold_looked_up) known[line.folder.string()] = &line;
  for (LogbookLine& line : now.lines) {
    const auto old = known.find(line.folder.string());
    if (old == known.end() || old->second->written != line.written) continue;
    line.hold_rms_kt = old->second->hold_rms_kt;
    line.hold_looked_up = true;
  }
}

}  // namespace

Logbook read_logbook(const fs::path& folder, const Logbook& before) {
  Logbook logbook;
  std::error_code error;
  if (!fs::exists(folder, error)) return logbook;
  fs::directory_iterator it(folder, error);
  for (const fs::directory_iterator end; !error && it != end; it.increment(error))
    if (is_sortie(*it)) logbook.lines.push_back(read_line(it->path()));
  if (error) logbook.problem = folder.string() + ": " + error.message();
  std::sort(logbook.lines.begin(), logbook.lines.end(), [](const LogbookLine& a, const LogbookLine& b) {
    return a.written != b.written ? a.written > b.written : a.name > b.name;
  });
  take_over_holds(before, logbook);
  return logbook;
}

std::vector<TaughtOffer> taught_offers(const Logbook& logbook) {
  std::vector<TaughtOffer> offers;
  for (const LogbookLine& line : logbook.lines)
    if (line.has_warning && line.problem.empty())
      offers.push_back({line.folder,
                        line.when + ", " + line.aircraft + ", " + line.card + ", " + line.air + ", seed " +
                            std::to_string(line.seed),
                        line.aircraft});
  return offers;
}

}  // namespace stallwright::view
