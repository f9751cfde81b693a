// In steady flight a frame of ours takes nothing from the heap: a pause for memory is a late frame. Dear ImGui, SDL and OpenGL
// have their own ways with memory (malloc); what is counted here is operator new, which all of our own code uses.
#include <catch2/catch.hpp>

#include "render/app/flight_screen.hpp"
#include "tests/render/app/cockpit_run.hpp"
#include "tests/render/app/counted_heap.hpp"
#include "tests/render/input/events.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;
using cli_test::Folder;

namespace {

/// The flight itself flies on a thread of its own in the cockpit; here its ticks are left out of the count.
class Uncounted : public Drive {
 public:
  explicit Uncounted(std::unique_ptr<Drive> drive) : drive_(std::move(drive)) {}
  void hands(const Hands& hands) override { drive_->hands(hands); }
  void rate(double simulated_per_real) override { drive_->rate(simulated_per_real); }
  void pause(bool paused) override { drive_->pause(paused); }
  void frame(double dt_s) override {
    const app_test::NotCounting ticks;
    drive_->frame(dt_s);
  }
  void look(Seen& seen) override { drive_->look(seen); }
  void finish() override { drive_->finish(); }
  Flight& flight() override { return drive_->flight(); }

 private:
  std::unique_ptr<Drive> drive_;
};

std::unique_ptr<Flight> demonstration(const std::filesystem::path& folder) {
  FlightOrder order;
  order.flown.config = study_test::sortie("marram", "current", "standard");
  order.flown.config.air = study_test::air("light");
  order.flown.air = "light";
  order.sources = {find_aircraft_file("marram"), find_card_file("short"),
                   std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets" / "air" / "light.toml"};
  order.folder = folder;
  order.wait_for_set_points = true;
  return std::make_unique<Flight>(order);
}

}  // namespace

TEST_CASE("a frame in steady flight takes nothing from the heap", "[cockpit][steady]") {
  if (!app_test::can_count()) {
    WARN("the address sanitizer has its own operator new: nothing is counted");
    return;
  }
  const Folder folder;
  const app::Options options = app_test::options(folder.path());
  app::Window window(options);
  outside::World world(std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets", outside::Detail::bare);
  ui::Registry registry;
  input::Hands hands{input::Settings{}};
  app::Notices notices;
  app::Context context{window, world, registry, hands, nullptr, notices, false, true};
  std::unique_ptr<Flight> flight = demonstration(folder / "sortie");
  const SortieConfig config = study_test::sortie("marram", "current", "standard");
  app::FlightScreen screen(std::make_unique<Uncounted>(stepped_drive(std::move(flight))),
                           {config, 10.0, true}, context);
  const auto frames = [&](int count, bool drawn) {
    long taken = 0;
    for (int k = 0; k < count; ++k) {
      context.draws = drawn;
      window.begin_frame(0.04);
      registry.begin_frame();
      {
        const app_test::Counting counting;
        screen.frame(context, 0.04);
        taken += counting.so_far();
      }
      window.draw_ui(drawn);
    }
    return taken;
  };
  {
    const app_test::Counting counting;
    const std::string long_one(40, 'x');
    REQUIRE(counting.so_far() == 1);
  }
  frames(1200, false);  // clearing turns, texts as long as they become
  CHECK(frames(100, false) == 0);
  frames(3, true);  // shaders and buffers
  CHECK(frames(10, true) == 0);
  hands.handle(events::down(SDLK_h));
  frames(5, false);
  REQUIRE(registry.find("Close the keys (Escape)") != nullptr);
  // Not steady flight, but the list of keys is not made anew each frame: what is left is one button with a long name.
  CHECK(frames(20, false) <= 20 * 5);
}
