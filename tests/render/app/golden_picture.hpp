#pragma once
#include <filesystem>
#include <string>
#include <vector>

/// Pictures that a screen is held against.
namespace stallwright::app_test {

/// Eight bits a channel, red green blue, rows from the top.
struct Picture {
  int width = 0, height = 0;
  std::vector<unsigned char> pixels;
};

/// Throws std::runtime_error for what is not a picture.
Picture read_picture(const std::filesystem::path& png);
void write_picture(const std::filesystem::path& png, const Picture& picture);

/// Smaller by a whole number: the mean of each square, so that a line of another place or weight still shows.
Picture smaller(const Picture& picture, int by);

/// Share of the channels that differ by more than `most`; 1 for pictures of different sizes.
double share_off(const Picture& a, const Picture& b, int most);

}  // namespace stallwright::app_test
