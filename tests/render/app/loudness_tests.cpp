#include <catch2/catch.hpp>

#include "render/input/settings_file.hpp"
#include "render/ui/screen_text.hpp"
#include "tests/render/app/cockpit_run.hpp"

using namespace stallwright;

TEST_CASE("keys for loudness act once, are said, and are remembered", "[cockpit][sound]") {
  const cli_test::Folder folder;
  const app::Options options = app_test::options(folder.path(), {"--frames", "12"});
  const double before = input::Settings{}.volume;
  int frames = 0;
  bool said = false;
  app::Cockpit cockpit(options);
  cockpit.run([&](app::Cockpit& c) {
    SDL_Event e{};
    e.type = SDL_KEYDOWN;
    e.key.keysym.sym = frames == 2 ? SDLK_v : SDLK_m;
    e.key.keysym.scancode = SDL_GetScancodeFromKey(e.key.keysym.sym);
    if (frames == 2 || frames == 6) {
      SDL_PushEvent(&e);
      e.type = SDL_KEYUP;
      SDL_PushEvent(&e);
    }
    if (frames > 0) said = said || ui::shows(*ImGui::GetDrawData(), "sound off");
    ++frames;
    (void)c;
  });
  CHECK(said);
  const input::Settings kept = input::load_settings(folder.path() / "settings" / "hands.toml").settings;
  CHECK(kept.mute);
  CHECK(kept.volume == Approx(before + 0.1));
}
