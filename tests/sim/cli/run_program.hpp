#pragma once
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

/// Runs the real program in a folder of the test's own.
namespace stallwright::cli_test {

namespace fs = std::filesystem;

inline std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void put(const fs::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

/// A new empty folder, removed at the end.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "stallwright-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  ~Folder() {
    std::error_code error;
    fs::remove_all(path_, error);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  fs::path operator/(const std::string& name) const { return path_ / name; }
  const fs::path& path() const { return path_; }

  /// Names in it, one a line: what a command has left behind.
  std::string listing() const {
    std::string names;
    for (const auto& entry : fs::recursive_directory_iterator(path_))
      names += fs::relative(entry.path(), path_).string() + "\n";
    return names;
  }

 private:
  fs::path path_;
};

struct Result {
  int status = -1;
  std::string out, err;
  long err_lines() const { return std::count(err.begin(), err.end(), '\n'); }
};

/// Arguments as for a shell. The streams are caught outside the folder, so that its listing is what the
/// program made.
inline Result run(const Folder& folder, const std::string& arguments) {
  const Folder streams;
  const std::string command = "cd '" + folder.path().string() + "' && '" STALLWRIGHT_PROGRAM "' " +
                              arguments + " >'" + (streams / "out").string() + "' 2>'" +
                              (streams / "err").string() + "'";
  const int status = std::system(command.c_str());
  Result result;
  result.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  result.out = text_of(streams / "out");
  result.err = text_of(streams / "err");
  return result;
}

}  // namespace stallwright::cli_test
