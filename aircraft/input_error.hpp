#pragma once
#include <stdexcept>

namespace stallwright {

/// Something wrong in what a person or a file gave us. The text is one line that can be shown as it is:
/// `file:line: field: expected X, found Y`. Thrown only at the edge, where input is read; exit status 2.
class InputError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace stallwright
