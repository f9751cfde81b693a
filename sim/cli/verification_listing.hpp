#pragma once
#include <string>

#include "sim/report/verification_report.hpp"

namespace stallwright::cli {

/// What came of a verifying sortie, for terminals: a line a point, verdict, reason, caution; at most 100 columns.
std::string verification_listing(const VerificationDebrief& debrief);

}  // namespace stallwright::cli
