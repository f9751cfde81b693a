#include "render/app/window.hpp"

#include <epoxy/gl.h>
#include <imgui.h>
#include <stb_image_write.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <stdexcept>
#include <vector>
#if __has_include(<backends/imgui_impl_sdl2.h>)
#include <backends/imgui_impl_sdl2.h>
#else
#include <backends/imgui_impl_sdl.h>
#endif
#include <backends/imgui_impl_opengl3.h>

namespace stallwright::app {
namespace {

[[noreturn]] void fail(const std::string& what) { throw std::runtime_error(what + ": " + SDL_GetError()); }

bool given(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr && *value != '\0';
}

/// Without a screen SDL would silently draw for nobody.
void require_screen(bool headless) {
  if (headless) {
    SDL_SetHint(SDL_HINT_VIDEODRIVER, "offscreen");
    return;
  }
  if (given("SDL_VIDEODRIVER") || given("DISPLAY") || given("WAYLAND_DISPLAY")) return;
  throw std::runtime_error("expected a screen, found none; --headless draws without one");
}

/// The same where a screen is named but does not answer: SDL goes down its list to the driver that draws for nobody.
void require_seen(bool headless) {
  const std::string driver = SDL_GetCurrentVideoDriver();
  if (headless || given("SDL_VIDEODRIVER") || (driver != "offscreen" && driver != "dummy")) return;
  throw std::runtime_error("expected a screen, found none that answers; --headless draws without one");
}

}  // namespace

Window::Window(const Options& options) : fixed_scale_(options.scale), headless_(options.headless) {
  require_screen(options.headless);
  SDL_SetHint(SDL_HINT_JOYSTICK_ALLOW_BACKGROUND_EVENTS, "1");
  if (SDL_Init(SDL_INIT_VIDEO | SDL_INIT_GAMECONTROLLER | SDL_INIT_JOYSTICK) != 0)
    fail("no screen could be opened");
  require_seen(options.headless);
  if (!options.silent) SDL_InitSubSystem(SDL_INIT_AUDIO);  // going on in silence is the speaker's matter
  SDL_InitSubSystem(SDL_INIT_HAPTIC);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_PROFILE_MASK, SDL_GL_CONTEXT_PROFILE_CORE);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MAJOR_VERSION, 3);
  SDL_GL_SetAttribute(SDL_GL_CONTEXT_MINOR_VERSION, 3);
  SDL_GL_SetAttribute(SDL_GL_DEPTH_SIZE, 24);
  SDL_GL_SetAttribute(SDL_GL_DOUBLEBUFFER, 1);
  Uint32 flags = SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI;
  if (options.full_screen) flags |= SDL_WINDOW_FULLSCREEN_DESKTOP;
  window_ = SDL_CreateWindow("Stallwright", SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED, options.width,
                             options.height, flags);
  if (window_ == nullptr) fail("no window could be opened");
  SDL_SetWindowMinimumSize(window_, 960, 540);
  context_ = SDL_GL_CreateContext(window_);
  if (context_ == nullptr) fail("no OpenGL 3.3 could be had");
  SDL_GL_SetSwapInterval(headless_ ? 0 : 1);
  renderer_ = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  ImGui_ImplSDL2_InitForOpenGL(window_, context_);
  ImGui_ImplOpenGL3_Init("#version 330 core");
  measure();
  make_fonts();
}

Window::~Window() {
  ImGui_ImplOpenGL3_Shutdown();
  ImGui_ImplSDL2_Shutdown();
  ImGui::DestroyContext();
  SDL_GL_DeleteContext(context_);
  SDL_DestroyWindow(window_);
  SDL_Quit();
}

void Window::measure() { SDL_GL_GetDrawableSize(window_, &width_, &height_); }

/// Type grows with the window; it is made anew only when that matters, in steps of an eighth.
void Window::make_fonts() {
  const double by_window = std::min(width_ / 1280.0, height_ / 720.0);
  const double wanted = fixed_scale_ > 0.0 ? fixed_scale_ : std::max(by_window, 0.75) * user_scale_;
  const float scale = static_cast<float>(std::max(std::floor(wanted * 8.0) / 8.0, 0.75));
  if (scale == made_scale_) return;
  made_scale_ = scale;
  ImGui::GetIO().Fonts->Clear();
  fonts_ = ui::load_fonts(*ImGui::GetIO().Fonts, scale);
  ui::apply_style(scale);
  ImGui_ImplOpenGL3_DestroyFontsTexture();
  ImGui_ImplOpenGL3_CreateFontsTexture();
}

void Window::set_user_scale(double scale) { user_scale_ = std::clamp(scale, 0.8, 2.0); }

void Window::toggle_full_screen() {
  const bool full = (SDL_GetWindowFlags(window_) & SDL_WINDOW_FULLSCREEN_DESKTOP) != 0;
  SDL_SetWindowFullscreen(window_, full ? 0 : SDL_WINDOW_FULLSCREEN_DESKTOP);
}

/// ImGui looks at keys once a frame: one that goes down and up between two frames would be lost on it, and frames are long
/// where no graphics card draws them. Its way up waits until a frame has seen it down.
void Window::handle(const SDL_Event& event) {
  if (event.type == SDL_KEYDOWN) pressed_.push_back(event.key.keysym.scancode);
  if (event.type == SDL_KEYUP && std::count(pressed_.begin(), pressed_.end(), event.key.keysym.scancode) > 0)
    return let_go_.push_back(event);
  ImGui_ImplSDL2_ProcessEvent(&event);
}

void Window::begin_frame(double dt_s) {
  measure();
  make_fonts();
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplSDL2_NewFrame();
  ImGuiIO& io = ImGui::GetIO();
  io.DeltaTime = static_cast<float>(std::max(dt_s, 1e-4));
  // Everything is laid out in the framebuffer's own pixels; the pointer comes in the window's.
  int wide = 0, high = 0;
  SDL_GetWindowSize(window_, &wide, &high);
  if (wide > 0 && high > 0 && (wide != width_ || high != height_) && io.MousePos.x > -1e6f) {
    io.MousePos.x *= static_cast<float>(width_) / static_cast<float>(wide);
    io.MousePos.y *= static_cast<float>(height_) / static_cast<float>(high);
  }
  io.DisplaySize = {static_cast<float>(width_), static_cast<float>(height_)};
  io.DisplayFramebufferScale = {1.0f, 1.0f};
  ImGui::NewFrame();
  for (const SDL_Event& event : let_go_) ImGui_ImplSDL2_ProcessEvent(&event);
  let_go_.clear();
  pressed_.clear();
}

void Window::draw_ui(bool onto_framebuffer) {
  ImGui::Render();
  if (!onto_framebuffer) return;
  glViewport(0, 0, width_, height_);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

void Window::present() {
  // Off the screen the swap does not wait: frames would queue up and times mean nothing.
  if (headless_) glFinish();
  SDL_GL_SwapWindow(window_);
}

void Window::save_picture(const std::filesystem::path& file) const {
  glFinish();
  std::vector<unsigned char> pixels(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_) * 3);
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width_, height_, GL_RGB, GL_UNSIGNED_BYTE, pixels.data());
  stbi_flip_vertically_on_write(1);
  if (stbi_write_png(file.string().c_str(), width_, height_, 3, pixels.data(), width_ * 3) == 0)
    throw std::runtime_error(file.string() + ": the picture could not be written");
}

}  // namespace stallwright::app
