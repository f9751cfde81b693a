// A worked example of a weighted mean. source: TAYLOR-1997 (from memory)
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "sim/reduction/combine_sorties.hpp"
#include "sim/reduction/pooled_mean.hpp"
#include "tests/published/evidence.hpp"

using namespace stallwright;

namespace {

constexpr evidence::Published kPrinted{"TAYLOR-1997", "section 7.2", "from memory; worked by hand"};
constexpr const char* kDigit = "half of the last printed digit";

// 11 +- 1, 12 +- 1 and 10 +- 3 ohm. Weights 1, 1, 1/9: (11 + 12 + 10/9)/(2 + 1/9) = 24.1111/2.1111 = 11.4211,
// u = 1/sqrt(2.1111) = 0.6882; printed 11.42 and 0.69. Tolerance half of the last printed digit.
const std::vector<double> kOhm = {11.0, 12.0, 10.0}, kU = {1.0, 1.0, 3.0};

/// A sortie that knows one point so well, from its records alone.
SetPoints sortie(double ratio, double u) {
  SetPoint p;
  p.name = "approach";
  p.ratio = ratio;
  p.target_kt = p.speed_kt = 60.0;
  p.slope_per_kt = -0.02;
  p.budget = {{"scatter of the record", 'A', u, 30.0, ""}};
  SetPointSet set;
  set.mass_kg = 600.0;
  set.points = {p};
  return {"Card", "", {set}, {}};
}

}  // namespace

TEST_CASE("three measurements of one resistance pool to the printed 11.42 and 0.69 ohm",
          "[reduction][published]") {
  const PooledMean mean = pooled_mean(kOhm, kU);
  evidence::hold(kPrinted, "three students: weighted mean", mean.value, 11.42, 0.005, "ohm", kDigit);
  evidence::hold(kPrinted, "three students: its uncertainty", mean.u_internal, 0.69, 0.005, "ohm", kDigit);
}

TEST_CASE("sorties combine as the printed weighted mean does", "[reduction][published]") {
  std::vector<SetPoints> sorties;
  for (std::size_t i = 0; i < kOhm.size(); ++i) sorties.push_back(sortie(kOhm[i], kU[i]));
  const SetPoint p = combine_sorties(sorties, {"a", "b", "c"}, {}).sets[0].points[0];
  evidence::hold(kPrinted, "three students as three sorties: combined ratio", p.ratio, 11.42, 0.005, "1",
                 kDigit);
  evidence::hold(kPrinted, "three students as three sorties: its uncertainty", p.u, 0.69, 0.005, "1", kDigit);
}
