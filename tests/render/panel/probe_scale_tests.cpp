// The probe scale read back: needle, pegs and whiskers at their values, names apart.
#include <catch2/catch.hpp>
#include <numbers>
#include <type_traits>

#include "render/panel/probe_scale.hpp"
#include "tests/render/ui_reader.hpp"

using namespace stallwright;
using panel::NeedleLog;
using ui_test::UiFixture;

namespace {

static_assert(std::is_trivially_copyable_v<view::ProbeScaleView>);

/// As a sharp pilot's thorough card leaves them: two sets that lie across each other.
const std::vector<SetPointSoFar> kFlown = {{"fast reference", 0.0, -0.44, -0.46, -0.42},
                                           {"approach", 0.0, -0.10, -0.125, -0.078},
                                           {"warning", 0.0, 0.112, 0.085, 0.139},
                                           {"stall", 0.0, 0.756, 0.68, 0.83},
                                           {"fast reference", 35.0, -0.884, -0.909, -0.859},
                                           {"approach", 35.0, -0.518, -0.546, -0.49},
                                           {"warning", 35.0, -0.333, -0.37, -0.298},
                                           {"stall", 35.0, 0.62, 0.53, 0.71}};

view::ProbeScaleView scale_with(std::size_t points, double ratio = 0.06, double flap_deg = 0.0) {
  Snapshot now;
  now.needles.probe_ratio = ratio;
  now.readings.flap_rad = flap_deg * std::numbers::pi / 180.0;
  now.set_points = std::make_shared<const std::vector<SetPointSoFar>>(
      kFlown.begin(), kFlown.begin() + static_cast<std::ptrdiff_t>(points));
  return view::probe_scale_view(now);
}

NeedleLog draw(UiFixture& ui, const view::ProbeScaleView& view,
               float height_px = panel::kProbeScaleHeight_px) {
  NeedleLog log;
  ui.frame([&] {
    panel::draw_probe_scale(view, ui.fonts(), {0.0f, 300.0f},
                            {ui.screen().to.x, 300.0f + height_px * ui.fonts().scale}, &log);
  });
  return log;
}

/// The ratio that a mark stands at, by the ruler's own figures: between the middles of "0.0" and "1.0".
double read_off(const UiFixture& ui, const panel::NeedleMark& mark) {
  const auto middle = [&](const char* figure) {
    const ui_test::ShownText* text = ui.equal_to(figure);
    REQUIRE(text != nullptr);
    return static_cast<double>(text->line.centre().x);
  };
  return (static_cast<double>(mark.tip.x) - middle("0.0")) / (middle("1.0") - middle("0.0"));
}

/// ImGui puts text on whole px: half of one, on either figure, in ratio.
constexpr double kReadable = 0.004;

}  // namespace

TEST_CASE("the needle stands at the ratio by the ruler's figures, and at the end when beyond",
          "[panel][probe_scale]") {
  UiFixture ui;
  for (const double ratio : {-1.0, -0.31, 0.0, 0.06, 0.93, 1.2}) {
    const NeedleLog log = draw(ui, scale_with(4, ratio));
    CHECK(read_off(ui, *log.find("probe ratio")) == Approx(ratio).margin(kReadable));
  }
  CHECK(read_off(ui, *draw(ui, scale_with(4, 3.0)).find("probe ratio")) == Approx(1.2).margin(kReadable));
  CHECK(ui.equal_to("3.00") != nullptr);
  CHECK(read_off(ui, *draw(ui, scale_with(4, -3.0)).find("probe ratio")) == Approx(-1.0).margin(kReadable));
  CHECK(ui.equal_to("\u22123.00") != nullptr);
  CHECK(ui.equal_to("rehearsal aid, not an") != nullptr);
}

TEST_CASE("whiskers end at the interval and pegs stand at the set point", "[panel][probe_scale]") {
  UiFixture ui;
  const NeedleLog log = draw(ui, scale_with(8, 0.06, 35.0));
  // Dim ones first: the flaps-up set, in the order flown; then the lit ones.
  for (std::size_t k = 0; k < 8; ++k) {
    CAPTURE(kFlown[k].name, kFlown[k].flap_deg);
    CHECK(read_off(ui, log.marks[3 * k]) == Approx(kFlown[k].low).margin(kReadable));
    CHECK(read_off(ui, log.marks[3 * k + 1]) == Approx(kFlown[k].high).margin(kReadable));
    CHECK(read_off(ui, log.marks[3 * k + 2]) == Approx(kFlown[k].ratio).margin(kReadable));
  }
}

TEST_CASE("each lit set point is named above its peg, and without any the scale says so",
          "[panel][probe_scale]") {
  UiFixture ui;
  draw(ui, scale_with(0));
  CHECK(ui.equal_to("no set points yet") != nullptr);
  const NeedleLog log = draw(ui, scale_with(4));
  CHECK(ui.equal_to("no set points yet") == nullptr);
  for (std::size_t k = 0; k < 4; ++k) {
    CAPTURE(kFlown[k].name);
    const ui_test::ShownText* name = ui.equal_to(kFlown[k].name);
    REQUIRE(name != nullptr);
    CHECK(name->line.centre().x == Approx(log.marks[3 * k + 2].tip.x).margin(1.0));
    CHECK(name->line.to.y < log.marks[3 * k + 2].tip.y);
  }
}

TEST_CASE("an interval that is no pair of numbers has no whisker and harms nothing", "[panel][probe_scale]") {
  UiFixture ui;
  view::ProbeScaleView view = scale_with(1);
  view.pegs[0].low = view.pegs[0].high = std::nan("");
  view.ratio = std::nan("");
  const NeedleLog log = draw(ui, view);
  CHECK(log.find("low") == nullptr);
  CHECK(log.find("peg") != nullptr);
  for (int k = 0; k < ImGui::GetDrawData()->CmdListsCount; ++k)
    for (const ImDrawVert& v : ImGui::GetDrawData()->CmdLists[k]->VtxBuffer) REQUIRE(std::isfinite(v.pos.x));
}

TEST_CASE("names keep apart however close the pegs stand, on every screen", "[panel][probe_scale]") {
  for (const auto& [width, height] : {std::pair{1280.0f, 720.0f}, {1920.0f, 1080.0f}, {3840.0f, 2160.0f}}) {
    UiFixture ui(width, height);
    for (const float strip_px : {58.0f, panel::kProbeScaleHeight_px})
      for (int k = 0; k <= 20; ++k) {
        view::ProbeScaleView view = scale_with(8, -1.2 + 0.13 * k, k % 2 == 0 ? 0.0 : 35.0);
        for (std::size_t p = 0; p < view.peg_count; ++p)
          view.pegs[p].ratio = 1.2 - (1.2 - view.pegs[p].ratio) * 0.05 * k;
        draw(ui, view, strip_px);
        CAPTURE(width, strip_px, k);
        const ui_test::Box room = {{0.0f, 300.0f}, {width, 300.0f + strip_px * ui.fonts().scale}};
        CHECK_THAT(ui_test::overlaps(ui.texts()), Catch::Equals(std::vector<std::string>{}));
        CHECK_THAT(ui_test::smaller_than(ui.texts(), 14.0f * ui.fonts().scale),
                   Catch::Equals(std::vector<std::string>{}));
        CHECK_THAT(ui_test::out_of(ui.texts(), room), Catch::Equals(std::vector<std::string>{}));
        for (const char* name : {"fast reference", "approach", "warning", "stall"})
          CHECK(ui.equal_to(name) != nullptr);
      }
  }
}
