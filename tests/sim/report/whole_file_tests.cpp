#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "sim/report/whole_file.hpp"

using namespace stallwright;
namespace fs = std::filesystem;

namespace {

/// A folder of its own for one test.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "stallwright-test-XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  Folder(Folder&&) = delete;
  Folder& operator=(Folder&&) = delete;

  fs::path operator/(const char* name) const { return path_ / name; }
  std::size_t files() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
  }

 private:
  fs::path path_;
};

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

}  // namespace

TEST_CASE("a whole file holds exactly the text, and nothing else is left beside it", "[report][files]") {
  const Folder folder;
  const std::string text = std::string("a\0b\r\n", 5) + std::string(3000000, 'x');
  write_whole_file(folder / "debrief.html", text);
  CHECK(contents(folder / "debrief.html") == text);
  write_whole_file(folder / "debrief.html", "short");
  CHECK(contents(folder / "debrief.html") == "short");
  CHECK(folder.files() == 1);
}

TEST_CASE("a whole file may be read by whom the umask allows", "[report][files]") {
  const Folder folder;
  const mode_t before = ::umask(022);
  write_whole_file(folder / "f", "x");
  ::umask(before);
  CHECK((fs::status(folder / "f").permissions() & fs::perms::mask) == static_cast<fs::perms>(0644));
}

TEST_CASE("an open old file keeps its text while a new one takes its name", "[report][files]") {
  const Folder folder;
  write_whole_file(folder / "f", "old text");
  std::ifstream reader(folder / "f");
  write_whole_file(folder / "f", "new");
  CHECK(std::string(std::istreambuf_iterator<char>(reader), {}) == "old text");
}

TEST_CASE("what cannot be written throws one line and harms nothing", "[report][files]") {
  const Folder folder;
  CHECK_THROWS_WITH(write_whole_file(folder / "no/such/folder/f", "x"), Catch::Contains("cannot write"));
  fs::create_directories(folder / "taken/inside");
  CHECK_THROWS_WITH(write_whole_file(folder / "taken", "x"), Catch::Contains("taken: cannot write"));
  CHECK(fs::is_directory(folder / "taken/inside"));
  CHECK(folder.files() == 1);
}

TEST_CASE("an existing file is unharmed when the disk takes only a part of the new one", "[report][files]") {
  const Folder folder;
  write_whole_file(folder / "f", "old");
  // A limit on the size of files stands for a full disk: the first write is short, the next is refused.
  rlimit before{};
  REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
  const rlimit small{4096, before.rlim_max};
  const auto handler = std::signal(SIGXFSZ, SIG_IGN);
  ::setrlimit(RLIMIT_FSIZE, &small);
  std::string message;
  try {
    write_whole_file(folder / "f", std::string(100000, 'n'));
  } catch (const std::runtime_error& error) {
    message = error.what();
  }
  ::setrlimit(RLIMIT_FSIZE, &before);
  std::signal(SIGXFSZ, handler);
  CHECK_THAT(message, Catch::Contains("f: cannot write"));
  CHECK(contents(folder / "f") == "old");
  CHECK(folder.files() == 1);
}
