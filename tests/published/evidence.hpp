#pragma once
#include <limits>
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
/// names a file, adds a line to it, which ends with whether it held. `quantity` is a phrase with its conditions, unique within its source. An unknown key, or
/// one without a source, fails.
void hold(const Published& source, const std::string& quantity, double measured, double published,
          double tolerance, const std::string& unit, const std::string& tolerance_reason);

/// A sense that a source gives without a number: "falls", "is lost or reversed". The bounds are ours unless the reason says
/// that they are the source's; both ends belong to it.
struct Sense {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
};
inline Sense below(double bound) { return {-std::numeric_limits<double>::infinity(), bound}; }
inline Sense above(double bound) { return {bound, std::numeric_limits<double>::infinity()}; }
inline Sense between(double low, double high) { return {low, high}; }

/// Holds measured to a sense. The page shows the sense in the place of a published number ("below 1"), so that no number
/// reads as the source's which is not.
void sense(const Published& source, const std::string& quantity, double measured, const Sense& bound,
           const std::string& unit, const std::string& reason);

/// Rows of one table compared by one measure: the row that is furthest off for its tolerance stands for all of them on the
/// page, by its name. If it is within its tolerance, so is every other.
class WorstRow {
 public:
  void row(const std::string& name, double measured, double published, double tolerance);
  /// The same with a tolerance that is a share of the published value.
  void row_relative(const std::string& name, double measured, double published, double share);
  /// For values that agree in more digits than the page prints: the difference itself is held, as a share of the published
  /// value (of which none may be zero) or as it is. The page gives its size to the next power of ten and no row's name, since
  /// rounding decides both.
  void difference_relative(const std::string& name, double measured, double published, double share);
  void difference(const std::string& name, double measured, double published, double tolerance);

  /// Holds the worst row as `quantity, worst of N: name`; without any row it fails. One object, one kind of row.
  void hold(const Published& source, const std::string& quantity, const std::string& unit,
            const std::string& tolerance_reason) const;

 private:
  std::string name_;
  double measured_ = 0.0, published_ = 0.0, tolerance_ = 0.0, off_ = -1.0;
  int rows_ = 0;
  bool differences_ = false;
};

/// A value that is shown and not held: what stays off, and why.
void show(const Published& source, const std::string& quantity, double measured, double published,
          const std::string& unit, const std::string& why_off);

}  // namespace stallwright::evidence
