#include "sim/crew/pilot_grade.hpp"

#include <algorithm>
#include <iterator>

#include "aircraft/input_error.hpp"

namespace stallwright {
namespace {

// name      delay  arm   pitch roll  speed remn. scan  kt   ft   bank  trim  power button react  bias  sd    early
const PilotGrade kGrades[] = {
    {"sharp", 0.18, 0.10, 2.2, 2.4, 0.32, 0.15, 0.5, 0.3, 10.0, 0.5, 6.0, 0.010, 0.4, 0.5, 0.00, 0.05, 0.00},
    {"current", 0.23, 0.13, 1.8, 2.0, 0.25, 0.30, 0.9, 0.8, 20.0, 1.0, 9.0, 0.025, 0.7, 0.8, 0.05, 0.12,
     0.03},
    {"rusty", 0.30, 0.18, 1.4, 1.6, 0.18, 0.55, 1.6, 1.6, 40.0, 2.0, 14.0, 0.050, 1.1, 1.2, 0.20, 0.30, 0.10},
};

constexpr double PilotGrade::*kNumbers[] = {&PilotGrade::delay_s,
                                            &PilotGrade::neuromuscular_s,
                                            &PilotGrade::pitch_crossover_radps,
                                            &PilotGrade::roll_crossover_radps,
                                            &PilotGrade::speed_crossover_radps,
                                            &PilotGrade::remnant_deg,
                                            &PilotGrade::scan_s,
                                            &PilotGrade::speed_band_kt,
                                            &PilotGrade::altitude_band_ft,
                                            &PilotGrade::bank_band_deg,
                                            &PilotGrade::trim_time_s,
                                            &PilotGrade::power_sd,
                                            &PilotGrade::button_delay_s,
                                            &PilotGrade::break_reaction_s,
                                            &PilotGrade::entry_rate_bias,
                                            &PilotGrade::entry_rate_sd,
                                            &PilotGrade::early_release};
// A number of a grade that is not in the list would stay as in the first of two rows.
static_assert(sizeof(PilotGrade) == sizeof(std::string) + sizeof(double) * std::size(kNumbers));

PilotGrade between(const PilotGrade& a, const PilotGrade& b, double share) {
  PilotGrade grade = a;
  grade.name = a.name + "-" + b.name;
  for (double PilotGrade::*number : kNumbers) grade.*number = (1.0 - share) * a.*number + share * b.*number;
  return grade;
}

}  // namespace

PilotGrade pilot_grade(const std::string& name) {
  for (const PilotGrade& grade : kGrades)
    if (grade.name == name) return grade;
  for (std::size_t i = 1; i < std::size(kGrades); ++i)
    if (const PilotGrade grade = between(kGrades[i - 1], kGrades[i], 0.5); grade.name == name) return grade;
  throw InputError("pilot: expected one of " + std::string(kPilotGrades) + ", found \"" + name + "\"");
}

PilotGrade pilot_grade_at(double place) {
  const double within = std::clamp(place, 0.0, static_cast<double>(std::size(kGrades) - 1));
  const auto row = std::min(static_cast<std::size_t>(within), std::size(kGrades) - 2);
  const double share = within - static_cast<double>(row);
  if (share == 0.0) return kGrades[row];
  if (share == 1.0) return kGrades[row + 1];
  return between(kGrades[row], kGrades[row + 1], share);
}

PilotGrade by_hand_grade() {
  PilotGrade grade = pilot_grade("current");
  grade.name = kByHand;
  grade.break_reaction_s = 0.5;
  return grade;
}

std::string pilot_words(const std::string& grade_name) {
  return grade_name == kByHand ? "flown by hand" : grade_name + " pilot";
}

}  // namespace stallwright
