// The `stallwright-cockpit` program: errors become one line and an exit status.
#include <malloc.h>

#include <exception>
#include <iostream>

#include "aircraft/input_error.hpp"
#include "render/app/cockpit.hpp"

int main(int argc, char** argv) {
  // Without these glibc hands heap memory back to the kernel and takes it again in every frame of a software rasteriser,
  // which doubles the time of a frame.
  mallopt(M_MMAP_THRESHOLD, 32 << 20);
  mallopt(M_TRIM_THRESHOLD, 512 << 20);
  mallopt(M_TOP_PAD, 64 << 20);
  const auto complain = [](const std::exception& e, int status) {
    std::cerr << "stallwright-cockpit: " << e.what() << '\n';
    return status;
  };
  try {
    return stallwright::app::Cockpit(stallwright::app::read_options(argc, argv)).run();
  } catch (const stallwright::InputError& e) {
    return complain(e, 2);
  } catch (const std::exception& e) {
    return complain(e, 3);
  }
}
