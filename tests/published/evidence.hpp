#pragma once
#include <string>

/// Checks against outside values, which also say what they held: `tests/evidence` makes EVIDENCE.md of it.
namespace stallwright::evidence {

/// One value of the outside world.
struct Published {
  const char* key;    ///< of the source, as in references.md
  const char* where;  ///< page, table, figure or equation, as far as known
  const char*
      known;  ///< how the number is known: "read in the source", "read in a copy", "worked by hand", "from memory"
};

/// Holds measured against published to within a tolerance (absolute, same unit), as CHECK does, and where STALLWRIGHT_EVIDENCE
/// names a file, adds a line to it. `quantity` is a phrase with its conditions, unique within its source. An unknown key, or
/// one without a source, fails.
void hold(const Published& source, const std::string& quantity, double measured, double published,
          double tolerance, const std::string& unit, const std::string& tolerance_reason);

/// A value that is shown and not held: what stays off, and why.
void show(const Published& source, const std::string& quantity, double measured, double published,
          const std::string& unit, const std::string& why_off);

}  // namespace stallwright::evidence
