#include <cmath>

#include "sim/reduction/series.hpp"
#include "sim/reduction/uncertainty.hpp"
#include "sim/study/entry_rate.hpp"

namespace stallwright {

SampleMean sample_mean(const std::vector<double>& values) {
  SampleMean out;
  out.count = static_cast<int>(values.size());
  if (out.count < 2) return out;
  out.value = mean(values);
  out.standard_error = sample_sd(values) / std::sqrt(static_cast<double>(out.count));
  return out;
}

SampleMean difference(const SampleMean& a, const SampleMean& b) {
  return {a.value - b.value, std::hypot(a.standard_error, b.standard_error), a.count + b.count};
}

bool agree(const SampleMean& a, const SampleMean& b) {
  const SampleMean apart = difference(a, b);
  const int dof = a.count + b.count - 4;  // each is a difference of two means
  return dof > 0 && std::abs(apart.value) <= coverage_factor(0.95, dof) * apart.standard_error;
}

}  // namespace stallwright
