#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "sim/sortie/sortie.hpp"
#include "sim/study/sensitivity/saltelli_sample.hpp"

namespace stallwright {

/// What is varied all at once to see what matters most. Each input is a number u between 0 and 1:
///   air            strength of the gusts, 0 to the recipe's roughest air, even in sigma; no thermals, standard day
///   hands          sharp to rusty (pilot_grade_at)
///   entry rate     of the stalls, 0.5 to 2 kt/s
///   mass           one of a few loadings, each with the same share of u
///   sensors        0 to 1 times every error, lag, noise and step of the standard grade; tubes lag all the same
///   record length  the first 0.25 to 1 of each steady record
///   seed           everything that chance decides: noise
enum class SensitivityInput { air, hands, entry_rate, mass, sensors, record_length, seed };
inline constexpr int kSensitivityInputs = 7;

/// What u = 0 and 1 stand for in a study.
struct SensitivityRanges {
  double roughest_mps = 0.0;  ///< sigma of vertical gusts
  std::vector<std::string> loading_names;
  std::vector<Loading> loadings;
  std::uint64_t first_seed = 1;
};

/// The grade with every number times `scale`, 0 to 1.
InstrumentGrade scaled_errors(const InstrumentGrade& grade, double scale);

/// Number of the loading that a point takes, of `loadings`.
std::size_t loading_at(const std::vector<double>& point, std::size_t loadings);

/// The sortie of a point; its aeroplane, card and airframe are those of `base`.
SortieConfig sensitivity_sortie(const SortieConfig& base, const SensitivityRanges& ranges,
                                const std::vector<double>& point);

/// first_seed + u 2^32, rounded down: points with the same u share their chance.
std::uint64_t seed_at(const std::vector<double>& point, std::uint64_t first_seed);

double record_share_at(const std::vector<double>& point);

/// In which order the points are flown: all of one loading one after the other, and within it as in the sample. Entry k is the
/// place in the sample of sortie k.
std::vector<std::size_t> flying_order(const SaltelliSample& sample, std::size_t loadings);

/// Name of an input, and what it goes from and to, in words.
struct InputWords {
  std::string name, from, to;
};
std::vector<InputWords> input_words(const SensitivityRanges& ranges);

}  // namespace stallwright
