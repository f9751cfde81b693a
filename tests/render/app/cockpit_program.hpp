#pragma once
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <string>
#include <thread>

#include "tests/sim/cli/run_program.hpp"

/// The real program in a process of its own, in a folder of the test's own: what it remembers, writes and says on standard
/// error all lands there.
namespace stallwright::app_test {

/// The environment of somebody without a screen and without any settings.
inline constexpr const char* kBare =
    "env -u DISPLAY -u WAYLAND_DISPLAY -u SDL_VIDEODRIVER -u XDG_CONFIG_HOME HOME=\"$PWD\"";

/// Leaks are looked for in the tests' own process (kept_libraries.cpp): in the program the driver's would count, too.
inline constexpr const char* kSanitizer =
#ifdef __SANITIZE_ADDRESS__
    "export ASAN_OPTIONS=detect_leaks=0; ";
#else
    "";
#endif

/// Runs it to its end: `ENVIRONMENT program ARGUMENTS`, as a shell would. One that hangs is killed after two minutes
/// and has status 137.
inline cli_test::Result run_cockpit(const cli_test::Folder& folder, const std::string& arguments,
                                    const std::string& environment = kBare) {
  const cli_test::Folder streams;
  const std::string command = "cd '" + folder.path().string() + "' && " + kSanitizer + environment +
                              " timeout -s KILL 120 '" STALLWRIGHT_COCKPIT_PROGRAM "' " + arguments + " >'" +
                              (streams / "out").string() + "' 2>'" + (streams / "err").string() + "'";
  const int status = std::system(command.c_str());
  cli_test::Result result;
  result.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  result.out = cli_test::text_of(streams / "out");
  result.err = cli_test::text_of(streams / "err");
  return result;
}

/// One under way, to send signals to. Killed at the end if it has not ended.
class RunningCockpit {
 public:
  RunningCockpit(const cli_test::Folder& folder, const std::string& arguments,
                 const std::string& environment = kBare) {
    const std::string command = "cd '" + folder.path().string() + "' && " + kSanitizer + "exec " +
                                environment + " '" STALLWRIGHT_COCKPIT_PROGRAM "' " + arguments +
                                " >/dev/null 2>stderr.txt";
    pid_ = ::fork();
    if (pid_ != 0) return;
    ::execl("/bin/sh", "sh", "-c", command.c_str(), static_cast<char*>(nullptr));
    ::_exit(127);
  }
  ~RunningCockpit() {
    if (pid_ > 0) end(SIGKILL);
  }
  RunningCockpit(const RunningCockpit&) = delete;
  RunningCockpit& operator=(const RunningCockpit&) = delete;

  /// Looks every few milliseconds until it is so, for a minute and a half at most; false: it never was, or the program has ended.
  template <class Holds>
  bool wait_until(Holds&& holds) {
    for (int k = 0; k < 9000; ++k) {
      if (holds()) return true;
      if (::waitpid(pid_, &status_, WNOHANG) == pid_) {
        pid_ = -1;
        return false;
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    return false;
  }

  /// Sends the signal and waits for the end: exit status, or 128 and the signal that ended it.
  int end(int signal) {
    if (pid_ > 0) {
      ::kill(pid_, signal);
      ::waitpid(pid_, &status_, 0);
      pid_ = -1;
    }
    return WIFEXITED(status_) ? WEXITSTATUS(status_) : 128 + WTERMSIG(status_);
  }

 private:
  pid_t pid_ = -1;
  int status_ = 0;
};

/// Size of a file, 0 where there is none.
inline std::uintmax_t size_of(const std::filesystem::path& file) {
  std::error_code error;
  const std::uintmax_t size = std::filesystem::file_size(file, error);
  return error ? 0 : size;
}

}  // namespace stallwright::app_test
