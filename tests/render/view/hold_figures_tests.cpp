#include <catch2/catch.hpp>

#include "render/view/hold_figures.hpp"

using namespace stallwright;
using namespace stallwright::view;

namespace {

/// Ten seconds before a record, ten in it at a steady offset, ten after.
std::vector<LogRow> rows(double offset_kt, double right_mps2) {
  std::vector<LogRow> out;
  for (int i = 0; i < 1500; ++i) {
    LogRow row;
    row.t_s = 0.02 * i;
    row.point = row.repeat = row.attempt = 1;
    row.recording = i >= 500 && i < 1000 ? 1 : 0;
    row.target_kt = 62.0;
    row.ias_kt = row.recording != 0 ? 62.0 + offset_kt + (i % 2 == 0 ? 1.0 : -1.0) : 90.0;
    row.bank_deg = row.recording != 0 ? 3.0 : 40.0;
    row.right_mps2 = right_mps2;
    out.push_back(row);
  }
  return out;
}

TestCard card() {
  TestCard c;
  c.points.resize(1);
  c.points[0].name = "approach";
  return c;
}

SetPoints recorded() {
  SetPoint point;
  point.name = "approach";
  RecordWindow window;
  window.begin_s = 10.0;
  window.end_s = 19.98;
  point.windows = {window};
  SetPointSet set;
  set.points = {point};
  SetPoints all;
  all.sets = {set};
  return all;
}

}  // namespace

TEST_CASE("a record's figures are those of its own rows alone", "[view][hold]") {
  const auto figures = hold_figures(rows(0.5, 0.0), recorded(), card());
  REQUIRE(figures.size() == 1);
  CHECK(figures[0].target_kt == 62.0);
  CHECK(figures[0].speed_mean_kt == Approx(0.5));
  CHECK(figures[0].speed_rms_kt == Approx(std::sqrt(0.25 + 1.0)));
  CHECK(figures[0].bank_rms_deg == Approx(3.0));
}

TEST_CASE("pushed to the left the ball lies to the right", "[view][hold]") {
  const auto figures = hold_figures(rows(0.0, -0.5), recorded(), card());
  CHECK(figures[0].slip_mean_g == Approx(0.5 / 9.80665));
}

TEST_CASE("the hold of a flight counts rows of records alone", "[view][hold]") {
  CHECK(hold_rms_kt(rows(0.0, 0.0)) == Approx(1.0));
  CHECK(std::isnan(hold_rms_kt({})));
}
