// The rules of the house that a compiler does not see: what lies at the top, which way the arrows point, and
// that every source a comment names is described. They read the source tree that was built.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Strings = std::vector<std::string>;
using StringSet = std::set<std::string>;

const fs::path kRoot = STALLWRIGHT_SOURCE_DIR;

Strings lines_of(std::istream& in) {
  Strings lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

Strings lines_of(const fs::path& file) {
  std::ifstream in(file);
  return lines_of(in);
}

Strings lines_of_text(const std::string& text) {
  std::istringstream in(text);
  return lines_of(in);
}

std::string name_in_tree(const fs::path& file) { return fs::relative(file, kRoot).string(); }

/// C++ files below a folder of the tree, sorted; this file is left out, since it quotes what it looks for.
std::vector<fs::path> sources_below(const std::string& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
    const std::string ending = entry.path().extension().string();
    const bool ours = entry.path().filename() == fs::path(__FILE__).filename();
    if (entry.is_regular_file() && (ending == ".cpp" || ending == ".hpp") && !ours)
      files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

Strings includes_in(const Strings& lines) {
  const std::regex include(R"(^\s*#\s*include\s*[<"]([^>"]+)[>"])");
  Strings names;
  std::smatch match;
  for (const auto& line : lines)
    if (std::regex_search(line, match, include)) names.push_back(match[1]);
  return names;
}

/// "file: name" for every include below the folder whose beginning the pattern matches.
Strings forbidden_includes(const std::string& folder, const std::string& pattern) {
  const std::regex forbidden("^(?:\\.\\./)*(?:" + pattern + ")", std::regex::icase);
  Strings found;
  for (const auto& file : sources_below(folder))
    for (const auto& name : includes_in(lines_of(file)))
      if (std::regex_search(name, forbidden)) found.push_back(name_in_tree(file) + ": " + name);
  return found;
}

/// Graphics, sound and window packages, and the folder that uses them.
const std::string kGraphics = "render/|SDL|GL/|GLES|EGL/|epoxy/|imgui|backends/imgui|freetype|ft2build|stb";

/// Keys cited in comments: `[KEY]`, `[KEY eq. 3, p. 5]`, `[KEY; OTHER]`, or the same after `source:`. A key
/// is three or more capitals, digits, hyphens and underscores.
StringSet keys_in(const Strings& lines) {
  const std::regex citation(R"((?:\[([A-Z][A-Z0-9_-]{2,}[^\]]*)\])|(?:\b[Ss]ource: (.*)))");
  const std::regex key(R"((?:^|[,;] )([A-Z][A-Z0-9_-]{2,})(?![\w-]))");
  StringSet keys;
  for (const auto& line : lines) {
    const auto comment = line.find("//");
    if (comment == std::string::npos) continue;
    const std::string text = line.substr(comment);
    for (std::sregex_iterator it(text.begin(), text.end(), citation), end; it != end; ++it) {
      const std::string cited = (*it)[1].matched ? (*it)[1] : (*it)[2];
      for (std::sregex_iterator k(cited.begin(), cited.end(), key); k != end; ++k) keys.insert((*k)[1]);
    }
  }
  return keys;
}

StringSet described_keys() {
  const std::regex heading(R"(^## ([A-Z][A-Z0-9_-]{2,})\s*$)");
  StringSet keys;
  std::smatch match;
  for (const auto& line : lines_of(kRoot / "tests/published/references.md"))
    if (std::regex_match(line, match, heading)) keys.insert(match[1]);
  return keys;
}

}  // namespace

TEST_CASE("the visible top level holds what the design lists and nothing else", "[repository]") {
  const StringSet owed = {"CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "CHANGELOG.md",
                          "LICENSE",        "aircraft",          "assets",    "render",        "sim",
                          "tests"};
  StringSet found;
  for (const auto& entry : fs::directory_iterator(kRoot)) {
    const std::string name = entry.path().filename().string();
    // render/fly puts its sorties into a folder that git does not keep.
    if (name.front() != '.' && name != "sorties") found.insert(name);
  }
  CHECK(found == owed);
}

TEST_CASE("sim includes no graphics package and nothing of render", "[repository]") {
  REQUIRE_FALSE(sources_below("sim").empty());
  CHECK_THAT(forbidden_includes("sim", kGraphics), Catch::Equals(Strings{}));
}

TEST_CASE("aircraft includes no graphics package and nothing of render or sim", "[repository]") {
  REQUIRE_FALSE(sources_below("aircraft").empty());
  CHECK_THAT(forbidden_includes("aircraft", kGraphics + "|sim/"), Catch::Equals(Strings{}));
}

TEST_CASE("what the cockpit's screens show, and its flight, include no window, no OpenGL and no ImGui",
          "[repository]") {
  const std::string screens =
      "SDL|GL/|GLES|EGL/|epoxy/|imgui|backends/imgui|freetype|ft2build|stb|"
      "render/(ui|panel|desk|input|sound|outside|app)/";
  for (const char* folder : {"render/view", "render/flight"}) {
    REQUIRE_FALSE(sources_below(folder).empty());
    CHECK_THAT(forbidden_includes(folder, screens), Catch::Equals(Strings{}));
  }
}

TEST_CASE("each source that a comment cites is described among the references", "[repository]") {
  const StringSet described = described_keys();
  REQUIRE_FALSE(described.empty());
  for (const auto& folder : {"tests", "sim", "aircraft", "render"})
    for (const auto& file : sources_below(folder))
      for (const auto& key : keys_in(lines_of(file))) {
        INFO(name_in_tree(file) << " cites " << key << ", which tests/published/references.md lacks");
        CHECK(described.count(key) == 1);
      }
}

TEST_CASE("each test against an outside source says which", "[repository]") {
  for (const auto& file : sources_below("tests/published")) {
    if (!file.filename().string().ends_with("_tests.cpp")) continue;
    INFO(name_in_tree(file) << " needs a comment with [KEY] or `source: KEY`");
    CHECK_FALSE(keys_in(lines_of(file)).empty());
  }
}

TEST_CASE("the readers of includes and citations see each way of writing them", "[repository]") {
  const auto includes = [](const char* text) { return includes_in(lines_of_text(text)); };
  CHECK(includes("#include <SDL2/SDL.h>\n  # include \"render/view/dial.hpp\"\n// #include <GL/gl.h>") ==
        Strings{"SDL2/SDL.h", "render/view/dial.hpp"});
  const auto keys = [](const char* text) { return keys_in(lines_of_text(text)); };
  CHECK(keys("T = 1;  // [US76 table I, p. 53]") == StringSet{"US76"});
  CHECK(keys("/// x = y  source: MIL-F-8785C, p. 47; SAND80") == StringSet{"MIL-F-8785C", "SAND80"});
  CHECK(keys("/// [GUM] and [STEVENS_LEWIS eq. 2]") == StringSet{"GUM", "STEVENS_LEWIS"});
  CHECK(keys("strips[LAST];  // strips[N] of [0, 1), source: common practice").empty());
}

TEST_CASE("no name of a test has a semicolon, which would cut it in two where tests are listed",
          "[repository]") {
  const std::regex name(R"re(TEST_CASE\(\s*"([^"]*)")re");
  for (const auto& file : sources_below("tests")) {
    std::ifstream in(file);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    for (std::sregex_iterator it(text.begin(), text.end(), name), end; it != end; ++it) {
      INFO(name_in_tree(file) << ": " << (*it)[1]);
      CHECK((*it)[1].str().find(';') == std::string::npos);
    }
  }
}
