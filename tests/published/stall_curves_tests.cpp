// The picture of stall manners [CFR14-60 appendix A, attachment 7]: what it must hold. tests/evidence runs the
// first test with STALLWRIGHT_CURVES naming the file to draw.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <regex>
#include <sstream>

#include "sim/report/svg.hpp"
#include "tests/published/stall_curves.hpp"
#include "tests/sim/report/page_checks.hpp"

using namespace stallwright::published;
namespace page_checks = stallwright::page_checks;

namespace {

constexpr std::size_t kPoints = 37;  // from -8 to +10 deg, both ends, by halves

/// Points of the curves of a form, "x,y x,y ...", in drawing order; a curve with a gap is not among them.
std::vector<std::string> curves_of(const std::string& picture, const CurveForm& form) {
  const std::regex path(R"re(<path d="M([^"M]*)" fill="none"[^>]*stroke="([^"]*)"([^>]*)>)re");
  const std::string dash = " stroke-dasharray=\"" + std::string(form.dash) + '"';
  std::vector<std::string> found;
  for (std::sregex_iterator it(picture.begin(), picture.end(), path), end; it != end; ++it) {
    const std::string rest = (*it)[3];
    const bool dashed = rest.find("dasharray") != std::string::npos;
    const bool same = *form.dash == '\0' ? !dashed : rest.find(dash) != std::string::npos;
    if (same && (*it)[2] == form.colour) found.push_back((*it)[1]);
  }
  return found;
}

/// How many curves of a form reach through all points.
std::size_t whole_curves(const std::string& picture, const CurveForm& form) {
  const auto curves = curves_of(picture, form);
  return static_cast<std::size_t>(std::count_if(curves.begin(), curves.end(), [](const std::string& points) {
    return page_checks::count_of(points, ",") == kPoints;
  }));
}

/// Where a point of each curve of a form stands across the picture, px, as printed.
std::vector<std::string> across(const std::string& picture, const CurveForm& form, std::size_t point) {
  std::vector<std::string> found;
  for (const std::string& points : curves_of(picture, form)) {
    std::istringstream in(points);
    std::string pair;
    for (std::size_t k = 0; k <= point; ++k) in >> pair;
    found.push_back(pair.substr(0, pair.find(',')));
  }
  return found;
}

/// The same of the words under the axes; a regular expression.
std::vector<std::string> across(const std::string& picture, const std::string& words) {
  const std::regex text(R"re(<text x="([^"]*)"[^>]*>)re" + words + "</text>");
  std::vector<std::string> found;
  for (std::sregex_iterator it(picture.begin(), picture.end(), text), end; it != end; ++it)
    found.push_back((*it)[1]);
  return found;
}

StallCurves sloping(const std::string& type) {
  StallCurves curves{type, 15.0, {}, {}};
  for (std::size_t k = 0; k < kPoints; ++k) {
    curves.past_deg.push_back(kBelowStall_deg + kCurveStep_deg * static_cast<double>(k));
    for (auto& column : curves.columns) column.push_back(0.1 * static_cast<double>(k));
  }
  return curves;
}

void keep(const std::string& picture) {
  const char* file = std::getenv("STALLWRIGHT_CURVES");
  if (file == nullptr || *file == '\0') return;
  std::ofstream out(file);
  out << picture;
  out.close();
  INFO("STALLWRIGHT_CURVES=" << file);
  CHECK(out.good());
}

}  // namespace

TEST_CASE("stall manners of each type are drawn without a gap from 8 deg below the stall to 10 deg past it",
          "[aircraft][published][curves]") {
  const std::array aeroplanes = {stall_curves("marram"), stall_curves("sarsen"), stall_curves("tarnfell")};
  for (const StallCurves& one : aeroplanes) {
    INFO(one.type);
    REQUIRE(one.past_deg.size() == kPoints);
    CHECK(one.past_deg.front() == -8.0);
    CHECK(one.past_deg.back() == 10.0);
    for (std::size_t i = 0; i < kStallPlots.size(); ++i) {
      INFO(kStallPlots[i].name);
      CHECK(std::count_if(one.columns[i].begin(), one.columns[i].end(),
                          [](double value) { return std::isfinite(value); }) == kPoints);
    }
  }
  const std::string picture = stall_picture(aeroplanes);
  for (const CurveForm& form : kCurveForms) CHECK(whole_curves(picture, form) == kStallPlots.size());
  CHECK(page_checks::imbalance(picture).empty());
  keep(picture);
}

TEST_CASE("a picture of stall manners that lacks a point lacks a whole curve", "[published][curves]") {
  std::array aeroplanes = {sloping("one"), sloping("two"), sloping("three")};
  const std::string whole = stall_picture(aeroplanes);
  for (const CurveForm& form : kCurveForms) CHECK(whole_curves(whole, form) == 8);
  aeroplanes[1].columns[5][20] = std::numeric_limits<double>::quiet_NaN();
  aeroplanes[2].past_deg.pop_back();
  const std::string broken = stall_picture(aeroplanes);
  CHECK(whole_curves(broken, kCurveForms[0]) == 8);
  CHECK(whole_curves(broken, kCurveForms[1]) == 7);
  CHECK(whole_curves(broken, kCurveForms[2]) == 0);
}

TEST_CASE("each plot of the picture of stall manners says what it shows and where the stall is",
          "[published][curves]") {
  const std::string picture = stall_picture({sloping("one"), sloping("two"), sloping("three")});
  for (const StallPlot& plot : kStallPlots)
    CHECK(page_checks::count_of(picture, ">" + std::string(plot.name) + "<") == 1);
  CHECK(across(picture, "stall").size() == kStallPlots.size());
  for (const CurveForm& form : kCurveForms) {
    CHECK(across(picture, form, 0) == across(picture, "\u22128"));
    CHECK(across(picture, form, 16) == across(picture, "stall"));
    CHECK(across(picture, form, kPoints - 1) == across(picture, "[+]10"));
  }
  for (const char* type : {"one", "two", "three"})
    CHECK(page_checks::count_of(picture, std::string(type) + ", stall at 15.00") == 1);
}

TEST_CASE("no text of the picture of stall manners runs out of it, in a wide fount either",
          "[published][curves]") {
  const std::string picture = stall_picture({sloping("one"), sloping("two"), sloping("three")});
  const std::regex text(
      R"re(<text x="([^"]*)" y="[^"]*" font-size="([^"]*)" fill="[^"]*"( font-weight="bold")?>([^<]*)<)re");
  const std::regex width(R"re( width="([^"]*)")re");
  std::smatch whole;
  REQUIRE(std::regex_search(picture, whole, width));
  std::size_t texts = 0;
  for (std::sregex_iterator it(picture.begin(), picture.end(), text), end; it != end; ++it, ++texts) {
    INFO((*it)[4]);
    CHECK(std::stod((*it)[1]) + stallwright::text_width((*it)[4].str(), std::stod((*it)[2])) <
          std::stod(whole[1]));
  }
  CHECK(texts == 4 + kCurveForms.size() + kStallPlots.size());
}
