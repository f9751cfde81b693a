#pragma once
#include <functional>

namespace stallwright {

/// Calls work(k) once for every k of 0 .. count - 1, on up to `threads` threads; 0 or less: as many as the
/// machine has. Which thread does which k, and in what order, is left open: `work` writes to a place of its
/// own for each k, and whoever adds up does so afterwards in order. Then the result does not depend on the
/// number of threads. An exception ends the handing out; when all threads are done it is thrown on (of
/// several, the one of the lowest k).
void for_each_index(int count, int threads, const std::function<void(int)>& work);

}  // namespace stallwright
