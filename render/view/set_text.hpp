#pragma once
#include <cstdarg>
#include <cstdio>
#include <string>

namespace stallwright::view {

/// printf into a string that is used again from frame to frame: it keeps its memory, so steady frames allocate nothing.
/// Longer than 250 bytes is cut.
__attribute__((format(printf, 2, 3))) inline void set_text(std::string& text, const char* format, ...) {
  char buffer[251];
  va_list arguments;
  va_start(arguments, format);
  std::vsnprintf(buffer, sizeof buffer, format, arguments);
  va_end(arguments);
  text.assign(buffer);
}

}  // namespace stallwright::view
