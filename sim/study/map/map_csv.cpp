#include "sim/study/map/map_csv.hpp"

#include "sim/reduction/csv.hpp"

namespace stallwright {
namespace {

constexpr const char* kHeader =
    "air,pilot,varied,value,set_point,flap_deg,window_s,sorties,failed,found,mean_error_kt,rms_error_kt,rms_"
    "low_kt,"
    "rms_high_kt,p95_error_kt,p95_low_kt,p95_high_kt,mean_half_width_kt,coverage,coverage_low,coverage_high,"
    "late_warning,late_warning_low,late_warning_high,out_of_order,out_of_order_low,out_of_order_high,"
    "kept,kept_low,kept_high,"
    "warning_margin_kt,hold_rms_kt,gust_rms_mps\n";

/// Fields of one row, one after the other.
class Row {
 public:
  void text(const std::string& value) { put(csv_field(std::string_view(value))); }
  void number(double value) { put(csv_field(value)); }
  void count(int value) { put(std::to_string(value)); }
  void estimate(const Estimate& e) {
    number(e.value);
    number(e.interval.lower);
    number(e.interval.upper);
  }
  void chance(const Chance& c) { estimate({c.share(), c.interval}); }
  std::string ended() const { return text_ + "\n"; }

 private:
  void put(const std::string& field) {
    if (begun_) text_ += ',';
    text_ += field;
    begun_ = true;
  }
  std::string text_;
  bool begun_ = false;
};

std::string row_of(const StudyMap& map, const MapCell& cell, std::size_t line) {
  const MapLine& about = map.lines[line];
  const LineResult& result = cell.lines.at(line);
  Row row;
  row.text(map.airs[cell.air].name);
  row.text(map.hands[cell.hand]);
  row.text(cell.varied);
  row.text(cell.value);
  row.text(about.name);
  row.number(about.flap_deg);
  row.number(about.window_s);
  row.count(cell.sorties);
  row.count(cell.failed);
  row.count(result.found);
  row.number(result.mean_error_kt);
  row.estimate(result.rms_error_kt);
  row.estimate(result.p95_error_kt);
  row.number(result.mean_half_width_kt);
  row.chance(result.covered);
  row.chance(cell.late_warning);
  row.chance(cell.out_of_order);
  row.chance(cell.kept);
  row.number(cell.warning_margin_kt);
  row.number(cell.hold_rms_kt);
  row.number(cell.gust_rms_mps);
  return row.ended();
}

}  // namespace

std::string map_to_csv(const StudyMap& map) {
  std::string text = kHeader;
  for (std::size_t i = 0; i < map.all_cells(); ++i)
    for (std::size_t line = 0; line < map.lines.size(); ++line) text += row_of(map, map.any_cell(i), line);
  return text;
}

}  // namespace stallwright
