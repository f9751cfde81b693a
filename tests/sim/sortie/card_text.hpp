#pragma once
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

/// A small card that is right, as text, and a folder for what tests make of it.
namespace stallwright::card_text {

// The numbers of lines matter: tests say on which a mistake stands.
inline const std::string kGood = R"(format = "stallwright-card-1"
[card]
name = "Test"
summary = "Three points."
working_height_ft = 3000
floor_ft = 1500
[[point]]
name = "approach"
flap_setting = 0
power = "level"
stall_multiple = 1.3
record_s = 12.5
[[point]]
name = "warning"
flap_setting = 0
power = "level"
above_stall_kt = 7
past_limit = "give up"
[point.bands]
speed_low_kt = 2.0
[[point]]
name = "stall"
flap_setting = 0
power = "idle"
slow_to_break_ktps = 1
repeats = 2
)";

/// The good card with one piece of text replaced; a piece that is not there is a slip in the test.
inline std::string with(const std::string& old_text, const std::string& new_text, std::string text = kGood) {
  return text.replace(text.find(old_text), old_text.size(), new_text);  // throws if not found
}

class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "stallwright-cards-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder could be made");
    path_ = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::filesystem::path path() const { return path_; }
  std::filesystem::path write(const std::string& text, const std::string& name = "card.toml") const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return path_ / name;
  }

 private:
  std::filesystem::path path_;
};

}  // namespace stallwright::card_text
