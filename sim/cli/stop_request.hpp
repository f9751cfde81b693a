#pragma once
#include <atomic>

namespace stallwright::cli {

inline constexpr int kStopped = 130;  ///< exit status after Ctrl-C, as shells have it

/// While it lives, Ctrl-C (SIGINT) and SIGTERM do not end the program but set `stop`; a second one ends it as usual.
class StopRequest {
 public:
  StopRequest();
  ~StopRequest();
  StopRequest(const StopRequest&) = delete;
  StopRequest& operator=(const StopRequest&) = delete;
  StopRequest(StopRequest&&) = delete;
  StopRequest& operator=(StopRequest&&) = delete;
  const std::atomic<bool>& stop() const;
};

}  // namespace stallwright::cli
