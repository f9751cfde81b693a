// The whole test program's operator new, in a file of its own: seen together with their callers, g++ 12 warns of malloc's
// memory that is given back by delete.
#include "tests/render/app/counted_heap.hpp"

#include <cstdlib>
#include <new>

namespace {

/// Of this thread; negative: not counting.
thread_local long allocations = -1;

}  // namespace

#ifndef __SANITIZE_ADDRESS__
void* operator new(std::size_t size) {
  if (allocations >= 0) ++allocations;
  if (void* memory = std::malloc(size == 0 ? 1 : size)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }
#endif

namespace stallwright::app_test {

Counting::Counting() { allocations = 0; }
Counting::~Counting() { allocations = -1; }
long Counting::so_far() const { return allocations; }

NotCounting::NotCounting() : kept_(allocations) { allocations = -1; }
NotCounting::~NotCounting() { allocations = kept_; }

bool can_count() {
#ifdef __SANITIZE_ADDRESS__
  return false;
#else
  return true;
#endif
}

}  // namespace stallwright::app_test
