#pragma once
#include "sim/sortie/sortie.hpp"

namespace stallwright {

/// Keeps the rows of records, and the one after each so that two in a row stay two: all that is reduced and judged, and a
/// small part of a sortie.
class RecordSink : public MemorySink {
 public:
  bool wants(const Marks& marks, double /*attached_root*/) override {
    const bool wanted = marks.recording || recording_;
    recording_ = marks.recording;
    return wanted;
  }

 private:
  bool recording_ = false;
};

}  // namespace stallwright
