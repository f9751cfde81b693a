// Four moments of one demonstration at three sizes of the window, held against pictures in tests/render/golden.
//
// A picture is kept at 640 x 360, the mean of each square of the screen's pixels, so that the files stay small. It may differ
// from the kept one in 0.1 % of its channels by more than 6 of 255: processors round a software rasteriser's pixels
// differently (the same scene under older CPU features: 0.8 % of the channels by 1 or 2, none by more), while a word or a
// needle in another place is far over it. A golden shows change, not truth.
//
// After a change that was meant, write them anew and LOOK at each:
//   STALLWRIGHT_UPDATE_GOLDENS=1 .build/release/tests/stallwright_tests "[golden][cockpit]"
// The test asks Mesa for its software rasteriser, whatever the machine has.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/golden_picture.hpp"
#include "tests/render/app/screen_reading.hpp"

using namespace stallwright;
using app_test::Picture;
using cli_test::Folder;
namespace fs = std::filesystem;

namespace {

constexpr int kMostOff = 6;
constexpr double kShareOff = 0.001;
const fs::path kGoldens = fs::path(STALLWRIGHT_TESTS_DIR) / "render" / "golden";

struct Size {
  int width, height, by;
};
constexpr Size kSizes[] = {{2560, 1440, 4}, {1920, 1080, 3}, {1280, 720, 2}};

/// Takes one moment at all three sizes, a few frames for each: the window changes, the type is made anew, the picture is taken.
class Album {
 public:
  explicit Album(fs::path folder) : folder_(std::move(folder)) {}
  bool taking() const { return !moment_.empty(); }
  void begin(const std::string& moment) {
    moment_ = moment;
    frame_ = 0;
  }
  void frame(app::Cockpit& cockpit) {
    if (!taking()) return;
    const int k = frame_ / 4;
    if (k == static_cast<int>(std::size(kSizes))) {
      app_test::resize(kSizes[0].width, kSizes[0].height);
      return moment_.clear();
    }
    if (frame_ % 4 == 0) app_test::resize(kSizes[k].width, kSizes[k].height);
    if (frame_ % 4 == 2) cockpit.take_picture(folder_ / name(moment_, kSizes[k]));
    ++frame_;
  }
  static std::string name(const std::string& moment, const Size& size) {
    return moment + "-" + std::to_string(size.height) + ".png";
  }

 private:
  fs::path folder_;
  std::string moment_;
  int frame_ = 0;
};

constexpr const char* kMoments[] = {"start", "on-condition", "recovery", "verdict"};

/// The demonstration with its pictures in `folder`. Time runs at four times, so that it is soon over.
void take_pictures(const fs::path& folder) {
  app::Options options = app_test::options(
      folder, {"--demonstrate", "sharp", "--seed", "1", "--detail", "lean", "--frames", "40000"});
  // Off the screen the framebuffer keeps its first size, so the largest comes first; smaller windows are drawn in its corner.
  options.width = kSizes[0].width;
  options.height = kSizes[0].height;
  Album album(folder);
  std::size_t next = 0;
  long count = 0;
  app::Cockpit cockpit(options);
  cockpit.run([&](app::Cockpit& c) {
    ++count;
    const bool was_taking = album.taking();
    album.frame(c);
    if (album.taking()) return;
    if (was_taking && ++next == std::size(kMoments)) return c.quit();
    if (next == 0 && count == 4) return album.begin(kMoments[0]);
    if (next == 1 && c.flight() == nullptr) return c.registry().press("Watch it flown");
    if (next == 3 && c.registry().find("Fly it again") != nullptr) return album.begin(kMoments[3]);
    if (c.flight() == nullptr) return;
    const Snapshot& now = c.flight()->now;
    // Each tap doubles the rate.
    if (now.time_s > 0.0 && c.flight()->wanted_rate < 4.0) app_test::tap(SDLK_PERIOD);
    if (next == 1 && now.marks.phase == Phase::settle && now.settled_share >= 0.4) album.begin(kMoments[1]);
    if (next == 2 && now.marks.phase == Phase::broken) album.begin(kMoments[2]);
  });
}

}  // namespace

TEST_CASE("the screens look as they did, at three sizes", "[cockpit][golden]") {
  const Folder folder;
  ::setenv("LIBGL_ALWAYS_SOFTWARE", "1", 1);
  take_pictures(folder.path());
  const char* update = std::getenv("STALLWRIGHT_UPDATE_GOLDENS");
  for (const char* moment : kMoments)
    for (const Size& size : kSizes) {
      const std::string name = Album::name(moment, size);
      CAPTURE(name);
      REQUIRE(fs::exists(folder / name));
      const Picture taken = app_test::smaller(app_test::read_picture(folder / name), size.by);
      if (update != nullptr && *update == '1') {
        app_test::write_picture(kGoldens / name, taken);
        continue;
      }
      const double off = app_test::share_off(taken, app_test::read_picture(kGoldens / name), kMostOff);
      CAPTURE(off);
      CHECK(off <= kShareOff);
      if (off > kShareOff) {
        const fs::path kept = fs::temp_directory_path() / ("stallwright-golden-" + name);
        app_test::write_picture(kept, taken);
        WARN("what it looks like now: " << kept.string());
      }
    }
}

TEST_CASE("a golden picture tells a moved word from a processor's rounding", "[cockpit][golden]") {
  Picture a{64, 64, std::vector<unsigned char>(3 * 64 * 64, 100)}, b = a;
  for (unsigned char& value : b.pixels) value = 102;
  CHECK(app_test::share_off(a, b, kMostOff) == 0.0);
  for (std::size_t k = 0; k < 30; ++k) b.pixels[k] = 200;
  CHECK(app_test::share_off(a, b, kMostOff) > kShareOff);
  CHECK(app_test::share_off(a, app_test::smaller(a, 2), kMostOff) == 1.0);
  CHECK(app_test::smaller(b, 2).pixels.front() == 151);
}
