#pragma once
#include <SDL.h>

#include <filesystem>
#include <string>
#include <vector>

#include "render/app/options.hpp"
#include "render/ui/fonts.hpp"

namespace stallwright::app {

/// The window, its OpenGL context and ImGui on them. One at a time.
class Window {
 public:
  /// Throws std::runtime_error, one line, where there is no screen (and --headless was not given) or no OpenGL 3.3.
  explicit Window(const Options& options);
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  void begin_frame(double dt_s);  ///< after all events were given to handle()
  void handle(const SDL_Event& event);
  void draw_ui(bool onto_framebuffer);  ///< ImGui::Render, and onto the framebuffer
  void present();

  int width() const { return width_; }  ///< of the framebuffer, px
  int height() const { return height_; }
  const ui::Fonts& fonts() const { return fonts_; }
  void set_user_scale(double scale);  ///< on top of the window's
  const std::string& renderer() const { return renderer_; }
  bool software() const {
    return renderer_.find("llvmpipe") != std::string::npos || renderer_.find("softpipe") != std::string::npos;
  }
  bool headless() const { return headless_; }
  void toggle_full_screen();

  /// Writes what the framebuffer holds, before present(). Throws std::runtime_error where it cannot be written.
  void save_picture(const std::filesystem::path& file) const;

 private:
  void measure();
  void make_fonts();

  SDL_Window* window_ = nullptr;
  SDL_GLContext context_ = nullptr;
  int width_ = 0, height_ = 0;
  double fixed_scale_ = 0.0, user_scale_ = 1.0;
  float made_scale_ = 0.0f;
  bool headless_ = false;
  std::string renderer_;
  ui::Fonts fonts_;
  std::vector<SDL_Scancode> pressed_;  ///< since the last frame
  std::vector<SDL_Event> let_go_;      ///< of those, already up again
};

}  // namespace stallwright::app
