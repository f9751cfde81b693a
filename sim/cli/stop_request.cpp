#include "sim/cli/stop_request.hpp"

#include <csignal>

namespace stallwright::cli {
namespace {

// A signal handler can reach nothing but what is at namespace scope; this is the one such variable of the program.
std::atomic<bool> asked{false};
static_assert(std::atomic<bool>::is_always_lock_free);

void ask(int) { asked = true; }

void handle(void (*with)(int), unsigned flags) {
  struct sigaction action {};
  action.sa_handler = with;
  action.sa_flags = static_cast<int>(flags);
  for (const int signal : {SIGINT, SIGTERM}) ::sigaction(signal, &action, nullptr);
}

}  // namespace

StopRequest::StopRequest() {
  asked = false;
  handle(ask, static_cast<unsigned>(SA_RESETHAND) | static_cast<unsigned>(SA_RESTART));
}

StopRequest::~StopRequest() { handle(SIG_DFL, 0); }

const std::atomic<bool>& StopRequest::stop() const { return asked; }

}  // namespace stallwright::cli
