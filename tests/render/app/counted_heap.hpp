#pragma once

/// How often this thread has taken memory by operator new, while somebody counts.
namespace stallwright::app_test {

/// Counts for its life. One at a time.
class Counting {
 public:
  Counting();
  ~Counting();
  Counting(const Counting&) = delete;
  Counting& operator=(const Counting&) = delete;
  long so_far() const;
};

/// Nothing is counted for its life.
class NotCounting {
 public:
  NotCounting();
  ~NotCounting();
  NotCounting(const NotCounting&) = delete;
  NotCounting& operator=(const NotCounting&) = delete;

 private:
  long kept_;
};

/// False under the address sanitizer, which has its own operator new.
bool can_count();

}  // namespace stallwright::app_test
