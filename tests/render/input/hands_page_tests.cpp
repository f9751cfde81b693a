// The page of hands, drawn by ImGui into nothing, pressed by the names of its controls.
#include <algorithm>

#include "render/input/hands_page.hpp"
#include "render/ui/fonts.hpp"
#include "tests/render/input/events.hpp"

using namespace stallwright;
using namespace stallwright::input;
using namespace stallwright::events;

namespace {

/// A page over hands, as the main loop shows it.
class Shown {
 public:
  explicit Shown(const Settings& settings = {}) : hands(settings) {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {1280.0f, 720.0f};
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    fonts_.body = fonts_.small = fonts_.bold = fonts_.large = fonts_.huge = io.Fonts->AddFontDefault();
    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
    ui::apply_style(1.0f);
    for (const auto& [key, scancode] : {std::pair{ImGuiKey_LeftArrow, SDL_SCANCODE_LEFT},
                                        {ImGuiKey_RightArrow, SDL_SCANCODE_RIGHT},
                                        {ImGuiKey_UpArrow, SDL_SCANCODE_UP},
                                        {ImGuiKey_DownArrow, SDL_SCANCODE_DOWN},
                                        {ImGuiKey_Space, SDL_SCANCODE_SPACE},
                                        {ImGuiKey_Enter, SDL_SCANCODE_RETURN},
                                        {ImGuiKey_Escape, SDL_SCANCODE_ESCAPE}})
      io.KeyMap[key] = scancode;
  }
  ~Shown() { ImGui::DestroyContext(); }
  Shown(const Shown&) = delete;
  Shown& operator=(const Shown&) = delete;

  HandsIntent frame() {
    pump(hands);
    hands.update(0.02, {});
    ImGui::GetIO().DeltaTime = 0.02f;
    ImGui::NewFrame();
    registry.begin_frame();
    ImGui::SetNextWindowPos({0.0f, 0.0f});
    ImGui::SetNextWindowSize({1280.0f, 720.0f});
    ImGui::Begin("page");
    HandsIntent intent = draw_hands_page(registry, fonts_, hands.view(), hands.settings(), state);
    ImGui::End();
    ImGui::Render();
    if (intent.changed) hands.set(*intent.changed);
    hands.listen(intent.listen);
    return intent;
  }
  HandsIntent press(const std::string& name) {
    registry.press(name);
    HandsIntent intent = frame();
    INFO(name);
    CHECK_FALSE(registry.press_pending());
    return intent;
  }
  std::string value(const std::string& name) const {
    const ui::Shown* found = registry.find(name);
    return found != nullptr ? found->value : "(not shown)";
  }

  Hands hands;
  HandsPageState state;
  ui::Registry registry;

 private:
  ui::Fonts fonts_;
};

const AxisSetting& setting(const Shown& shown, Axis axis) {
  return shown.hands.settings().axes[place_of(axis)];
}

}  // namespace

TEST_CASE("a key is bound by pressing it on the page, and taken from what had it", "[hands][page]") {
  const Sdl sdl;
  Shown shown;
  shown.frame();
  CHECK(shown.value("key 1 of record") == "R");
  CHECK(shown.press("key 1 of record").listen);
  shown.hands.handle(down(SDLK_k));
  const HandsIntent intent = shown.frame();
  CHECK(intent.changed);
  CHECK_FALSE(intent.listen);
  CHECK(shown.hands.view().now.pressed.count == 0);
  shown.frame();
  CHECK(shown.value("key 1 of record") == "K");
  CHECK(shown.value("key 1 of knock it off") == "none");
}

TEST_CASE("Escape leaves a key as it is, Delete takes it away, and a device's button may stand in",
          "[hands][page]") {
  const Sdl sdl;
  Virtual stick(SDL_JOYSTICK_TYPE_FLIGHT_STICK, 2, 8, 0, "Test stick");
  Shown shown;
  shown.frame();
  shown.press("key 2 of pause");
  shown.hands.handle(down(SDLK_ESCAPE));
  CHECK_FALSE(shown.frame().changed);
  CHECK(shown.value("key 2 of pause") == "Pause");
  shown.press("key 2 of pause");
  shown.hands.handle(down(SDLK_DELETE));
  CHECK(shown.frame().changed);
  CHECK(keys_text(shown.hands.settings().keys, Action::pause) == "P");
  shown.press("key 1 of mute");
  stick.button(7, true);
  CHECK(shown.frame().changed);
  CHECK(buttons_text(shown.hands.settings(), *shown.hands.view().devices, Action::mute) == "button 8");
  CHECK_FALSE(shown.hands.settings().mute);  // it was bound, not used
}

TEST_CASE("an axis is chosen by moving it, and turned round on its own", "[hands][page]") {
  const Sdl sdl;
  Virtual stick(SDL_JOYSTICK_TYPE_FLIGHT_STICK, 6, 2, 0, "Test stick");
  Shown shown;
  shown.frame();
  shown.press("Find pedals");
  CHECK_FALSE(shown.frame().changed);
  stick.axis(2, 9000);  // touched
  CHECK_FALSE(shown.frame().changed);
  stick.axis(5, 22000);  // moved
  CHECK(shown.frame().changed);
  CHECK(setting(shown, Axis::pedals).device == stick.guid());
  CHECK(setting(shown, Axis::pedals).axis == 5);
  shown.frame();
  const double before = shown.hands.view().now.pedal_right;
  CHECK(before > 0.3);
  shown.press("turned round of pedals");
  shown.frame();
  CHECK(shown.hands.view().now.pedal_right == Approx(-before));
  shown.press("Keyboard pedals");
  CHECK(setting(shown, Axis::pedals).device == kKeyboard);
  shown.frame();
  shown.press("Automatic pedals");
  CHECK(setting(shown, Axis::pedals) == AxisSetting{});
}

TEST_CASE("calibrating takes the ends that were reached and the place of rest, and only of what was moved",
          "[hands][page]") {
  const Sdl sdl;
  Virtual stick(SDL_JOYSTICK_TYPE_FLIGHT_STICK, 4, 2, 0, "Test stick");
  Shown shown;
  shown.frame();
  shown.press("Calibrate");
  for (const int raw : {-20000, 25000, 700}) {
    stick.axis(1, raw);
    shown.frame();
  }
  CHECK(shown.press("Done calibrating").changed);
  const AxisShape shape = setting(shown, Axis::pitch).shape;
  CHECK(shape.low == -20000);
  CHECK(shape.centre == 700);
  CHECK(shape.high == 25000);
  CHECK(setting(shown, Axis::roll) == AxisSetting{});
  stick.axis(1, 25000);
  shown.frame();
  CHECK(shown.hands.view().now.stick_aft == Approx(1.0));
}

TEST_CASE("the switches switch, and everything as delivered is asked twice", "[hands][page]") {
  const Sdl sdl;
  Shown shown;
  shown.frame();
  CHECK(shown.press("Feet follow the ball where there are no pedals").changed->feet_assist == false);
  shown.frame();
  CHECK(shown.press("Mute").changed->mute);
  CHECK_FALSE(shown.press("Everything as delivered").changed);
  shown.frame();
  shown.press("No");
  CHECK(shown.hands.settings().mute);
  shown.frame();
  shown.press("Everything as delivered");
  shown.press("Yes, lose my own settings");
  CHECK(shown.hands.settings() == Settings{});
  CHECK(shown.press("Back to the flight").close);
}

TEST_CASE("the keyboard alone walks from the devices to the keys and presses there", "[hands][page]") {
  const Sdl sdl;
  Shown shown;
  const auto type = [&](SDL_Scancode key) {
    ImGui::GetIO().KeysDown[key] = true;
    shown.frame();
    ImGui::GetIO().KeysDown[key] = false;
    for (int k = 0; k < 3; ++k) shown.frame();
  };
  for (int k = 0; k < 3; ++k) shown.frame();
  for (int k = 0; k < 3; ++k) type(SDL_SCANCODE_DOWN);
  for (int k = 0; k < 6; ++k) type(SDL_SCANCODE_RIGHT);
  for (int k = 0; k < 4; ++k) type(SDL_SCANCODE_DOWN);
  type(SDL_SCANCODE_SPACE);
  CHECK(shown.state.waiting.has_value());
}
