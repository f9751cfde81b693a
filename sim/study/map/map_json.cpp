#include "sim/study/map/map_json.hpp"

#include "sim/study/map/map_json_parts.hpp"

namespace stallwright {
namespace {

using map_json::Json;
using map_json::number;

Json interval_json(const Interval& interval) { return {number(interval.lower), number(interval.upper)}; }

Json estimate_json(const Estimate& estimate) {
  return {{"value", number(estimate.value)}, {"interval_95", interval_json(estimate.interval)}};
}

Json chance_json(const Chance& chance) {
  return {{"times", chance.times},
          {"of", chance.of},
          {"share", number(chance.share())},
          {"interval_95", interval_json(chance.interval)}};
}

template <class Values>
Json numbers_json(const Values& values) {
  Json list = Json::array();
  for (const double value : values) list.push_back(number(value));
  return list;
}

Json line_json(const LineResult& line) {
  return {{"found", line.found},
          {"mean_error_kt", number(line.mean_error_kt)},
          {"rms_error_kt", estimate_json(line.rms_error_kt)},
          {"p95_error_kt", estimate_json(line.p95_error_kt)},
          {"mean_half_width_kt", number(line.mean_half_width_kt)},
          {"covered", chance_json(line.covered)},
          {"quantiles_kt", numbers_json(line.quantiles_kt)},
          {"histogram", line.histogram},
          {"records_wanted", line.records_wanted}};
}

Json cell_json(const MapCell& cell) {
  Json json = map_json::planned_cell(cell);
  json["failed"] = cell.failed;
  json["verdicts"] = {
      {"keep", cell.verdicts[0]}, {"fly_again", cell.verdicts[1]}, {"wait_for_better_air", cell.verdicts[2]}};
  json["late_warning"] = chance_json(cell.late_warning);
  json["out_of_order"] = chance_json(cell.out_of_order);
  json["kept"] = chance_json(cell.kept);
  json["warning_margin_kt"] = number(cell.warning_margin_kt);
  json["hold_rms_kt"] = number(cell.hold_rms_kt);
  json["gust_rms_mps"] = number(cell.gust_rms_mps);
  json["lines"] = Json::array();
  for (const LineResult& line : cell.lines) json["lines"].push_back(line_json(line));
  return json;
}

Json indices_json(const StudyMap& map) {
  Json lines = Json::array();
  for (std::size_t line = 0; line < map.sensitivity.indices.size(); ++line) {
    Json inputs = Json::array();
    for (const SobolIndex& index : map.sensitivity.indices[line])
      inputs.push_back({{"first_order", estimate_json({index.first, index.first_interval})},
                        {"total", estimate_json({index.total, index.total_interval})},
                        {"base_used", index.used}});
    if (!inputs.empty()) lines.push_back({{"line", line}, {"inputs", inputs}});
  }
  return lines;
}

}  // namespace

std::string map_to_json(const StudyMap& map) {
  Json json = map_json::head(map, "stallwright-map-1");
  json["quantiles"] = numbers_json(kQuantiles);
  json["histogram_classes"] = {{"first_kt", kFirstClass_kt}, {"width_kt", kClass_kt}, {"count", kClasses}};
  json["cells"] = json["varied"] = Json::array();
  for (const MapCell& cell : map.cells) json["cells"].push_back(cell_json(cell));
  for (const MapCell& cell : map.varied) json["varied"].push_back(cell_json(cell));
  json["unvaried"] = map.unvaried.lines.empty() ? Json() : cell_json(map.unvaried);
  if (map.sensitivity.base > 0) {
    json["sensitivity"]["failed"] = map.sensitivity.cell.failed;
    json["sensitivity"]["indices"] = indices_json(map);
  }
  return map_json::text_of(json);
}

}  // namespace stallwright
