#include "sim/report/whole_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <stdexcept>
#include <string>

namespace stallwright {
namespace {

constexpr std::string_view kUnfinished = ".stallwright-";

[[noreturn]] void fail(const std::filesystem::path& file) {
  throw std::runtime_error(file.string() + ": cannot write: " + std::strerror(errno));
}

/// An open temporary file that removes itself unless it was renamed.
class Temporary {
 public:
  explicit Temporary(const std::filesystem::path& target) : target_(target) {
    // Not mkstemp: its files are private, and asking for the umask is not safe beside other threads.
    constexpr int kMostTries = 1000;
    const std::string stem = std::string(kUnfinished) + std::to_string(::getpid()) + "-";
    for (int i = 0; i < kMostTries && descriptor_ < 0; ++i) {
      name_ = target.parent_path() / (stem + std::to_string(i));
      descriptor_ = ::open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      if (descriptor_ < 0 && errno != EEXIST) break;
    }
    if (descriptor_ < 0) fail(target_);
  }
  ~Temporary() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!renamed_) ::unlink(name_.c_str());
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  Temporary(Temporary&&) = delete;
  Temporary& operator=(Temporary&&) = delete;

  void write(std::string_view text) const {
    while (!text.empty()) {
      const ssize_t written = ::write(descriptor_, text.data(), text.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) fail(target_);
      text.remove_prefix(static_cast<std::size_t>(written));
    }
  }

  void settle() {
    if (::fsync(descriptor_) != 0) fail(target_);
    const int descriptor = descriptor_;
    descriptor_ = -1;
    if (::close(descriptor) != 0) fail(target_);
  }

  void rename() {
    if (::rename(name_.c_str(), target_.c_str()) != 0) fail(target_);
    renamed_ = true;
  }

 private:
  std::filesystem::path target_, name_;
  int descriptor_ = -1;
  bool renamed_ = false;
};

/// The rename itself must reach the disk. A file system that cannot do this for folders is left as it is.
void settle_folder(const std::filesystem::path& folder) {
  const int descriptor = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

void write_whole_file(const std::filesystem::path& file, std::string_view text) {
  Temporary temporary(file);
  temporary.write(text);
  temporary.settle();
  temporary.rename();
  settle_folder(file.parent_path());
}

bool is_unfinished_file(const std::filesystem::path& file) {
  const std::string name = file.filename().string();
  std::error_code error;
  return name.rfind(kUnfinished, 0) == 0 &&
         name.find_first_not_of("0123456789-", kUnfinished.size()) == std::string::npos &&
         !std::filesystem::is_directory(file, error);
}

}  // namespace stallwright
