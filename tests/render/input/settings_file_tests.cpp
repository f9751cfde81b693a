#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "aircraft/input_error.hpp"
#include "render/input/settings_file.hpp"

using namespace stallwright;
using namespace stallwright::input;

namespace {

namespace fs = std::filesystem;

class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "stallwright-hands-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder could be made");
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  fs::path file() const { return path_ / "stallwright" / "hands.toml"; }
  fs::path write(const std::string& text) const {
    fs::create_directories(file().parent_path());
    std::ofstream(file()) << text;
    return file();
  }

 private:
  fs::path path_;
};

std::string contents(const fs::path& file) {
  std::ostringstream out;
  out << std::ifstream(file).rdbuf();
  return out.str();
}

const std::string kGuid = "030000006d04000015c2000010010000";

Settings unusual() {
  Settings s;
  s.axes[place_of(Axis::pitch)] = {
      kGuid, "A \"quoted\" stick \\ with a slash", 1, {-20000, 512, 30000, true, 0.07, 0.35}};
  s.axes[place_of(Axis::pedals)].device = kKeyboard;
  bind(s.keys, Action::record, 0, {SDLK_F5, false, true, false});
  bind(s.keys, Action::mute, 0, {});
  s.buttons = {{kGuid, 7, Action::knock_it_off}, {kGuid, kHatButtons + 2, Action::flaps_up}};
  s.mouse_stick = true;
  s.feet_assist = s.rumble = false;
  s.volume = 0.35;
  s.mute = true;
  s.ui_scale = 1.25;
  return s;
}

}  // namespace

TEST_CASE("settings read back from their file as they were, the usual ones and unusual ones",
          "[hands][settings]") {
  const Folder folder;
  for (const Settings& s : {Settings{}, unusual()}) {
    CHECK(save_settings(folder.file(), s).empty());
    CHECK(read_settings(folder.file()) == s);
    CHECK(load_settings(folder.file()).notice.empty());
  }
}

TEST_CASE("no file means the usual settings and no notice", "[hands][settings]") {
  const Folder folder;
  const LoadedSettings loaded = load_settings(folder.file());
  CHECK(loaded.settings == Settings{});
  CHECK(loaded.notice.empty());
}

TEST_CASE("what a file leaves out is as usual", "[hands][settings]") {
  const Folder folder;
  const auto file =
      folder.write("format = \"stallwright-hands-1\"\nvolume = 0.2\n[throttle]\ndevice = \"keyboard\"\n");
  Settings wanted;
  wanted.volume = 0.2;
  wanted.axes[place_of(Axis::throttle)].device = kKeyboard;
  CHECK(read_settings(file) == wanted);
}

TEST_CASE("a file that gives a usual key of one action to another takes it from there", "[hands][settings]") {
  const Folder folder;
  const auto file =
      folder.write("format = \"stallwright-hands-1\"\n[[key]]\naction = \"mute\"\nfirst = \"R\"\n");
  const Settings s = read_settings(file);
  CHECK_FALSE(conflict(s.keys));
  CHECK(keys_text(s.keys, Action::mute) == "R");
  CHECK(keys_text(s.keys, Action::record) == "no key");
  CHECK(keys_text(s.keys, Action::trim_nose_up) == keys_text(default_keys(), Action::trim_nose_up));
}

TEST_CASE("each mistake in the file is named with its line, what was expected and what was found",
          "[hands][settings]") {
  struct Case {
    const char *text, *message;
  };
  const auto c = GENERATE(
      Case{"format = \"stallwright-hands-1\"\nvolume = 1.5\n",
           ":2: volume: expected a number from 0 to 1, found 1.5"},
      Case{"format = \"stallwright-hands-9\"\n",
           ":1: format: expected stallwright-hands-1, found \"stallwright-hands-9\""},
      Case{"format = \"stallwright-hands-1\"\n\nmute = 3\n", ":3: mute: expected true or false, found 3"},
      Case{"format = \"stallwright-hands-1\"\n[pitch]\ndevice = \"my stick\"\n",
           ":3: pitch.device: expected automatic, keyboard or 32 hexadecimal digits, found \"my stick\""},
      Case{"format = \"stallwright-hands-1\"\n[roll]\ndevice = \"automatic\"\naxis = 1.5\n",
           ":4: roll.axis: expected a whole number, found 1.5"},
      Case{"format = \"stallwright-hands-1\"\n[roll]\ndevice = \"automatic\"\nlow = 5\nhigh = 5\n",
           ":5: roll.high: expected a number above low (5), found 5"},
      Case{"format = \"stallwright-hands-1\"\n[[key]]\naction = \"mute\"\nfirst = \"Shuft+R\"\n",
           ":4: key[1].first: expected the name of a key, such as \"R\", \"Shift+R\" or \"none\", found "
           "\"Shuft+R\""},
      Case{"format = \"stallwright-hands-1\"\n[[key]]\naction = \"mute\"\nfirst = \"R\"\n[[key]]\naction = "
           "\"pause\"\nfirst = "
           "\"R\"\n",
           ":7: key[2].first: expected a key that no other action has, found \"R\""},
      Case{"format = \"stallwright-hands-1\"\n[[key]]\naction = \"mute\"\nfirst = \"R\"\n[[key]]\naction = "
           "\"mute\"\n",
           ":6: key[2].action: expected each action once, found \"mute\" again"},
      Case{"format = \"stallwright-hands-1\"\n[[button]]\ndevice = \"xyz\"\nbutton = 1\naction = \"mute\"\n",
           ":3: button[1].device: expected 32 hexadecimal digits, found \"xyz\""},
      Case{"format = \"stallwright-hands-1\"\nvolum = 0.5\n", ":2: volum: unknown key"});
  const Folder folder;
  const auto file = folder.write(c.text);
  const std::string wanted = file.string() + c.message;
  CHECK_THROWS_MATCHES(read_settings(file), InputError,
                       Catch::Predicate<InputError>([&](const InputError& e) {
                         UNSCOPED_INFO(e.what());
                         return std::string(e.what()).rfind(wanted, 0) == 0;
                       }));
  const LoadedSettings loaded = load_settings(file);
  CHECK(loaded.settings == Settings{});
  CHECK_THAT(loaded.notice, Catch::Contains(c.message));
  CHECK(loaded.notice.find('\n') == std::string::npos);
  // The owner may want to mend it.
  CHECK_THAT(save_settings(file, Settings{}), Catch::Contains(c.message));
  CHECK(contents(file) == c.text);
}

TEST_CASE("where nothing can be written the settings are not kept, and a line says so", "[hands][settings]") {
  // Not a folder without permission: the tests may run as root, whom that does not stop.
  const std::string notice = save_settings("/proc/stallwright/hands.toml", Settings{});
  CHECK_THAT(notice, Catch::StartsWith("the settings were not kept: "));
  CHECK(notice.find('\n') == std::string::npos);
}
