#include "tests/render/app/golden_picture.hpp"

#include <stb_image.h>
#include <stb_image_write.h>

#include <cstdlib>
#include <stdexcept>

namespace stallwright::app_test {

Picture read_picture(const std::filesystem::path& png) {
  Picture picture;
  int channels = 0;
  stbi_uc* pixels = stbi_load(png.string().c_str(), &picture.width, &picture.height, &channels, 3);
  if (pixels == nullptr) throw std::runtime_error(png.string() + ": no picture that can be read");
  picture.pixels.assign(pixels, pixels + 3 * picture.width * picture.height);
  stbi_image_free(pixels);
  return picture;
}

void write_picture(const std::filesystem::path& png, const Picture& picture) {
  std::filesystem::create_directories(png.parent_path());
  stbi_flip_vertically_on_write(0);
  if (stbi_write_png(png.string().c_str(), picture.width, picture.height, 3, picture.pixels.data(),
                     3 * picture.width) == 0)
    throw std::runtime_error(png.string() + ": cannot be written");
}

Picture smaller(const Picture& picture, int by) {
  Picture out{picture.width / by, picture.height / by, {}};
  out.pixels.reserve(static_cast<std::size_t>(3 * out.width * out.height));
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x)
      for (int channel = 0; channel < 3; ++channel) {
        int sum = 0;
        for (int k = 0; k < by * by; ++k) {
          const int row = y * by + k / by, column = x * by + k % by;
          sum += picture.pixels[static_cast<std::size_t>(3 * (row * picture.width + column) + channel)];
        }
        out.pixels.push_back(static_cast<unsigned char>((sum + by * by / 2) / (by * by)));
      }
  return out;
}

double share_off(const Picture& a, const Picture& b, int most) {
  if (a.width != b.width || a.height != b.height) return 1.0;
  std::size_t off = 0;
  for (std::size_t k = 0; k < a.pixels.size(); ++k)
    off += std::abs(int{a.pixels[k]} - int{b.pixels[k]}) > most ? 1u : 0u;
  return static_cast<double>(off) / static_cast<double>(a.pixels.size());
}

}  // namespace stallwright::app_test
