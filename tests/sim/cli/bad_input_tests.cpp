// Whatever is wrong in what a person gives: one clear line, exit status 2, nothing written.
#include <catch2/catch.hpp>
#include <vector>

#include "tests/sim/cli/refused.hpp"

namespace stallwright::cli_test {
namespace {

const fs::path kRoot = STALLWRIGHT_SOURCE_DIR;

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const std::size_t at = text.find(what);
  if (at == std::string::npos) throw std::runtime_error("no " + what);
  return text.replace(at, what.size(), with);
}

const std::string kType = text_of(kRoot / "aircraft/types/marram.toml");
const std::string kCard = text_of(kRoot / "assets/cards/short.toml");
const std::string kAir = text_of(kRoot / "assets/air/light.toml");
const std::string kZeros(3u << 20, '\0');

/// The three kinds of input file, each with a number of its own that can be spoilt.
struct Kind {
  std::string option, text, line, key;
  std::string needed;  ///< a line that may not be left out
};
const std::vector<Kind> kKinds = {{"--aircraft", kType, "empty_kg = 365.0", "empty_kg", "empty_kg = 365.0"},
                                  {"--card", kCard, "floor_ft = 1500.0", "floor_ft", "name = \"Short card\""},
                                  {"--air", kAir, "speed_kt = 8", "speed_kt", "speed_kt = 8"}};

}  // namespace

TEST_CASE("a spoilt type, card or air file is refused by rehearse in one line and nothing is written",
          "[cli]") {
  for (const Kind& kind : kKinds) {
    const Folder folder;
    const auto spoilt = [&](const std::string& with, const std::vector<std::string>& words) {
      put(folder / "bad.toml", replaced(kind.text, kind.line, with));
      refused(folder, "rehearse --out out " + kind.option + " bad.toml", words);
    };
    spoilt(kind.key + " = \"heavy\"", {"bad.toml:", kind.key, "expected", "heavy"});
    put(folder / "bad.toml", replaced(kind.text, kind.needed, ""));
    refused(folder, "rehearse --out out " + kind.option + " bad.toml",
            {"bad.toml:", kind.needed.substr(0, kind.needed.find(' ')), "expected"});
    spoilt(kind.key + " = nan", {"bad.toml:", kind.key, "nan"});
    spoilt(kind.key + " = -1e9", {"bad.toml:", kind.key, "expected"});
    put(folder / "bad.toml", kind.text.substr(0, kind.text.size() / 2) + "\n[");
    refused(folder, "rehearse --out out " + kind.option + " bad.toml", {"bad.toml:"});
    put(folder / "bad.toml", kZeros);
    refused(folder, "rehearse --out out " + kind.option + " bad.toml", {"bad.toml"});
    refused(folder, "rehearse --out out " + kind.option + " missing.toml", {"missing.toml"});
    fs::create_directory(folder / "folder.toml");
    refused(folder, "rehearse --out out " + kind.option + " folder.toml", {"folder.toml", "folder"});
  }
}

TEST_CASE(
    "an air file with spectra or a gust that do not exist is refused in one line and nothing is written",
    "[cli]") {
  const Folder folder;
  const auto spoilt = [&](const std::string& added, const std::vector<std::string>& words) {
    put(folder / "bad.toml", replaced(kAir, "severity = \"light\"\n", "severity = \"light\"\n" + added));
    refused(folder, "rehearse --out out --air bad.toml", words);
  };
  spoilt("turbulence = \"karman\"\n", {"bad.toml:", "turbulence", "dryden", "von-karman", "karman"});
  spoilt("gust = 3\n", {"bad.toml:", "gust", "expected"});
}

TEST_CASE("an unknown name is refused with the known ones", "[cli]") {
  const Folder folder;
  refused(folder, "rehearse --aircraft marran", {"marram", "sarsen", "tarnfell", "marran"});
  refused(folder, "rehearse --card shrt", {"short", "thorough", "shrt"});
  refused(folder, "rehearse --air lihgt", {"calm", "light", "moderate", "severe", "perhaps light"});
  refused(folder, "rehearse --pilot tired", {"sharp", "current", "rusty", "tired"});
  refused(folder, "rehearse --sensors good", {"ideal", "standard", "good"});
  refused(folder, "plan --aircraft marran", {"marram"});
  refused(folder, "plan --card shrt", {"short"});
}

TEST_CASE("a wrong option is refused in one line", "[cli]") {
  const Folder folder;
  refused(folder, "", {"command"});
  refused(folder, "fly", {"fly"});
  refused(folder, "rehearse --sped 3", {"--sped"});
  refused(folder, "rehearse --seed -1", {"--seed"});
  refused(folder, "rehearse --seed many", {"--seed"});
  refused(folder, "rehearse --seed 18446744073709551616", {"--seed"});
  refused(folder, "rehearse left-over", {"left-over"});
  refused(folder, "reduce", {"LOG"});
  refused(folder, "debrief", {"DIR"});
  refused(folder, "plan --qnh nan", {"--qnh", "800 to 1100 hPa"});
  refused(folder, "plan --qnh 30", {"--qnh", "800 to 1100 hPa"});
  refused(folder, "plan --temperature-offset 100", {"--temperature-offset", "-60 to 60 K"});
}

TEST_CASE("a loading that cannot be is refused before anything is flown", "[cli]") {
  const Folder folder;
  for (const std::string command : {"rehearse --out out", "plan"}) {
    refused(folder, command + " --load 'front seat'", {"STATION=KG"});
    refused(folder, command + " --load 'front seat=heavy'", {"STATION=KG", "heavy"});
    refused(folder, command + " --load 'front seat=nan'", {"STATION=KG", "nan"});
    refused(folder, command + " --load 'front seet=80'", {"front seat", "rear seat", "front seet"});
    refused(folder, command + " --load 'front seat=500'", {"front seat", "0 to 110 kg", "500"});
    refused(folder, command + " --load 'front seat=-1'", {"front seat", "0 to 110 kg", "-1"});
    refused(folder, command + " --load 'front seat=110' --load 'rear seat=110'", {"envelope", "maximum"});
    refused(folder, command + " --load 'front seat=0' --load 'rear seat=110'", {"envelope", "aft"});
  }
}

TEST_CASE("a card that the aeroplane cannot fly is refused", "[cli]") {
  const Folder folder;
  put(folder / "card.toml", replaced(kCard, "stall_multiple = 1.3 ", "speed_kt = 120 "));
  refused(folder, "rehearse --out out --card card.toml", {"card.toml", "approach"});
}

TEST_CASE("a sortie folder that has something in it is refused and left alone", "[cli]") {
  const Folder folder;
  fs::create_directory(folder / "out");
  put(folder / "out/mine.txt", "mine");
  put(folder / "file", "mine");
  refused(folder, "rehearse --out out", {"--out", "new or empty folder"});
  refused(folder, "rehearse --out file", {"--out", "new or empty folder"});
  refused(folder, "rehearse --out file/deeper", {"--out"});
  refused(folder, "rehearse --out ''", {"--out"});
  CHECK(text_of(folder / "out/mine.txt") == "mine");
  CHECK(text_of(folder / "file") == "mine");
}

TEST_CASE("a spoilt log is refused by reduce in one line and nothing is written", "[cli]") {
  const Folder folder;
  const std::string head =
      "t_s,point,repeat,attempt,recording,forced,in_band,target_kt,mass_kg,flap_deg,impact_pressure_pa,ias_"
      "kt,altitude_"
      "ft,ratio,pitch_deg,bank_deg,pitch_rate_degps,forward_mps2,right_mps2,down_mps2,stick_aft\n";
  const auto rows = [](const std::string& mass) {
    return "0.00,1,1,1,0,0,1,70,600,0,900,75,3000,0.1,2,0,0,0.3,0,-9.8,0.1\n"
           "0.02,1,1,1,0,0,1,70," +
           mass + ",0,900,75,3000,0.1,2,0,0,0.3,0,-9.8,0.1\n";
  };
  const auto spoilt = [&](const std::string& text, const std::vector<std::string>& words) {
    put(folder / "log.csv", text);
    refused(folder, "reduce log.csv --card short --out set-points.json", words);
  };
  spoilt(head + rows("heavy"), {"log.csv:3", "mass_kg", "heavy"});
  spoilt(head + rows("nan"), {"log.csv:3", "mass_kg", "nan"});
  spoilt(head + rows("1e9"), {"log.csv:3", "mass_kg", "expected"});
  spoilt(replaced(head, "mass_kg,", "") + rows("600"), {"log.csv", "mass_kg"});
  spoilt(head + replaced(rows("600"), "0.00,1,", "0.00,9,"), {"log.csv:2", "point", "0 to 4"});
  spoilt(head, {"log.csv"});
  spoilt("", {"log.csv"});
  spoilt(kZeros, {"log.csv"});
  spoilt(head + rows("600").substr(0, 80) + "\n", {"log.csv"});
  put(folder / "log.csv", head + rows("600"));
  refused(folder, "reduce log.csv", {"--card"});
  refused(folder, "reduce log.csv --card shrt", {"short"});
  refused(folder, "reduce log.csv --card short --sensors good", {"ideal", "standard"});
  refused(folder, "reduce missing.csv --card short", {"missing.csv"});
  fs::create_directory(folder / "empty");
  refused(folder, "reduce empty --card short", {"log.csv"});
  refused(folder, "debrief empty", {"sortie.json"});
  refused(folder, "debrief missing", {"sortie.json"});
  refused(folder, "debrief log.csv", {"sortie.json"});
}

}  // namespace stallwright::cli_test
