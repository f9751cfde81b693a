#include "sim/study/sensitivity/sensitivity_plan.hpp"

#include <cmath>
#include <exception>

#include "sim/reduction/reduce.hpp"

namespace stallwright {

void lay_out_sensitivity(StudyMap& map) {
  Sensitivity& about = map.sensitivity;
  const SaltelliSample sample = saltelli_sample(kSensitivityInputs, about.base, map.first_seed);
  about.seeds.clear();
  for (const std::size_t place : flying_order(sample, static_cast<std::size_t>(about.loadings)))
    about.seeds.push_back(seed_at(sample.points[place], map.first_seed));
  about.cell.key = std::to_string(map.all_cells() + 1) + "-everything";
  about.cell.sorties = static_cast<int>(about.seeds.size());
}

SensitivityPlan plan_sensitivity(StudyMap& map, const SortieConfig& base, const SensitivityRanges& ranges,
                                 int base_points) {
  SensitivityPlan plan{base, ranges, {}};
  Sensitivity& about = map.sensitivity;
  about = {};
  if (base_points < 1) return plan;
  about.base = base_points;
  about.loadings = static_cast<int>(ranges.loadings.size());
  for (const InputWords& words : input_words(ranges))
    about.inputs.push_back({words.name, words.from, words.to});
  const SaltelliSample sample = saltelli_sample(kSensitivityInputs, base_points, map.first_seed);
  for (const std::size_t place : flying_order(sample, ranges.loadings.size()))
    plan.points.push_back(sample.points[place]);
  lay_out_sensitivity(map);
  return plan;
}

SortieNumbers cut_sortie_numbers(EndedSortie& ended, const SortieConfig& config,
                                 const std::vector<TrueSet>& truth, double share) {
  SortieNumbers out;
  out.failure = ended.failure;
  const std::vector<WindowLine> lines = window_lines(config.card);
  out.lines.resize(lines.size());
  try {
    cut_records(ended.rows.log, config.card, share);
    const Judgement judgement = judge(reduce(ended.rows.log, config.card, config.instruments), truth,
                                      config.card, config.type, ended.outcome);
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (const JudgedPoint* p = lines[i].share == 1.0 ? point_of(lines[i], judgement) : nullptr)
        out.lines[i] = {{true, p->covered, p->error_kt, p->expanded_kt}, 0};
  } catch (const std::exception& e) {
    out.failure += (out.failure.empty() ? "" : "; ") + std::string(e.what());
  }
  return out;
}

void summarise_sensitivity(StudyMap& map, const std::vector<SortieNumbers>& sorties) {
  Sensitivity& about = map.sensitivity;
  const SaltelliSample sample = saltelli_sample(kSensitivityInputs, about.base, map.first_seed);
  const std::vector<std::size_t> order = flying_order(sample, static_cast<std::size_t>(about.loadings));
  about.cell.failed = 0;
  for (const SortieNumbers& sortie : sorties) about.cell.failed += sortie.failure.empty() ? 0 : 1;
  about.indices.assign(map.lines.size(), {});
  for (std::size_t line = 0; line < map.lines.size(); ++line) {
    if (map.lines[line].share != 1.0) continue;
    std::vector<double> outputs(order.size(), kNone);
    for (std::size_t k = 0; k < sorties.size() && k < order.size(); ++k)
      outputs[order[k]] = std::abs(sorties[k].lines.at(line).error_kt);
    // After the streams of the cells' own intervals.
    const auto number =
        map.all_cells() * map.lines.size() + line * static_cast<std::size_t>(kSensitivityInputs);
    about.indices[line] =
        sobol_indices(outputs, kSensitivityInputs,
                      {map.first_seed, static_cast<std::uint32_t>(number), random::Channel::kBootstrap});
  }
}

}  // namespace stallwright
