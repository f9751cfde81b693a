#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "aircraft/input_error.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/air_preset.hpp"

using namespace stallwright;

namespace {

/// A preset file that exists for one test.
class PresetFile {
 public:
  explicit PresetFile(const std::string& text)
      : path_(std::filesystem::temp_directory_path() /
              ("air_preset_tests_" + std::to_string(counter(text)) + ".toml")) {
    std::ofstream(path_) << text;
  }
  ~PresetFile() { std::filesystem::remove(path_); }
  const std::filesystem::path& path() const { return path_; }

 private:
  static std::size_t counter(const std::string& text) { return std::hash<std::string>{}(text); }
  std::filesystem::path path_;
};

std::string error_of(const std::string& text) {
  const PresetFile file(text);
  try {
    read_air_preset(file.path());
  } catch (const InputError& error) {
    return error.what();
  }
  return "no error";
}

const std::string kHead = "format = \"stallwright-air-1\"\nname = \"Test\"\n";

}  // namespace

TEST_CASE("each shipped air preset reads, and is named for its severity", "[air][files]") {
  for (const auto severity : {Severity::kCalm, Severity::kLight, Severity::kModerate, Severity::kSevere}) {
    const auto preset = read_air_preset(std::filesystem::path(STALLWRIGHT_SOURCE_DIR) / "assets/air" /
                                        (severity_name(severity) + ".toml"));
    CHECK(preset.severity == severity);
    CHECK_FALSE(preset.name.empty());
  }
}

TEST_CASE("a preset's numbers come out in SI", "[air][files]") {
  const PresetFile file(
      kHead +
      "sigma_mps = 0.7\ntemperature_offset_K = 12\nqnh_hPa = 1003.5\n[wind]\nfrom_deg = 90\nspeed_kt = "
      "10\nreference_height_ft = 100\nshear = \"linear\"\ngradient_kt_per_1000ft = 5\n");
  const auto preset = read_air_preset(file.path());
  CHECK_FALSE(preset.severity);
  CHECK(preset.intensity() == uniform_intensity(0.7));
  CHECK(preset.day == Day{12.0, 100350.0});
  CHECK(preset.wind.from_rad == Approx(math::kPi / 2.0));
  CHECK(wind_speed(preset.wind, 400.0 * kFoot) == Approx((10.0 + 0.3 * 5.0) * kKnot));
}

TEST_CASE("a preset that says little is a standard day without wind", "[air][files]") {
  const PresetFile file(kHead + "severity = \"light\"\n");
  const auto preset = read_air_preset(file.path());
  CHECK(preset.day == Day{});
  CHECK(preset.wind == MeanWind{});
  CHECK(preset.turbulence == TurbulenceModel::kDryden);
  CHECK(preset.gusts.empty());
}

TEST_CASE("a preset chooses its spectra, and the scale length above 2000 ft with them", "[air][files]") {
  const PresetFile dryden(kHead + "severity = \"light\"\nturbulence = \"dryden\"\n");
  CHECK(read_air_preset(dryden.path()).intensity() == turbulence_intensity(Severity::kLight));
  const PresetFile file(kHead + "severity = \"light\"\nturbulence = \"von-karman\"\n");
  const auto preset = read_air_preset(file.path());
  CHECK(preset.turbulence == TurbulenceModel::kVonKarman);
  CHECK(turbulence_scales(preset.intensity(), 1000.0).length_w_m == Approx(2500.0 * kFoot));
  CHECK(turbulence_scales(preset.intensity(), 200.0).length_w_m == Approx(200.0));
}

TEST_CASE("gusts of a preset come out in SI, in either unit", "[air][files][gust]") {
  const PresetFile file(kHead +
                        "severity = \"calm\"\n[[gust]]\nstart_s = 30\nlength_ft = 100\nup_ftps = -25\n"
                        "[[gust]]\nshape = \"ramp-and-hold\"\nstart_s = 60\nlength_m = 120\nright_mps = 4\n"
                        "forward_ftps = 10\n");
  const auto gusts = read_air_preset(file.path()).gusts;
  REQUIRE(gusts.size() == 2);
  CHECK(gusts[0] == DiscreteGust{GustShape::kOneMinusCosine, 30.0, 100.0 * kFoot, {0.0, 0.0, -25.0 * kFoot}});
  CHECK(gusts[1] == DiscreteGust{GustShape::kRampAndHold, 60.0, 120.0, {10.0 * kFoot, 4.0, 0.0}});
}

TEST_CASE("a mistake in spectra or gusts is one line", "[air][files][gust]") {
  using Catch::Contains;
  const std::string head = kHead + "severity = \"light\"\n", gust = head + "[[gust]]\nstart_s = 5\n";
  const auto one_line = [](const std::string& text, const std::vector<std::string>& words) {
    const std::string error = error_of(text);
    CHECK(error.find('\n') == std::string::npos);
    for (const std::string& word : words) CHECK_THAT(error, Contains(word));
  };
  one_line(head + "turbulence = \"von karman\"\n", {":4: turbulence: expected", "von-karman", "von karman"});
  one_line(head + "turbulence = 3\n", {":4: turbulence: expected"});
  one_line(head + "[gust]\nstart_s = 5\n", {":4:", "gust: expected", "[[gust]]"});
  one_line(gust + "up_ftps = 10\n", {"gust[1].length_ft: expected"});
  one_line(gust + "length_ft = 80\n", {"gust[1]", "up_ftps", "none"});
  one_line(gust + "length_ft = 80\nup_ftps = 400\n", {":7: gust[1].up_ftps: expected", "100"});
  one_line(gust + "length_ft = 80\nlength_m = 25\nup_ftps = 4\n", {":7: gust[1].length_m: expected", "both"});
  one_line(gust + "length_ft = 80\nup_mps = 4\nup_ftps = 4\n", {":7: gust[1].up_mps: expected", "both"});
  one_line(gust + "length_ft = 80\nup_ftps = 4\nshape = \"box\"\n",
           {":8: gust[1].shape: expected", "ramp-and-hold"});
  one_line(gust + "length_ft = 80\nup_ftps = 4\nspan_ft = 3\n", {":8:", "span_ft"});
}

TEST_CASE("a mistake in a preset is one line with file, line, field, expected and found", "[air][files]") {
  using Catch::Contains;
  const std::string wrong_word = error_of(kHead + "severity = \"lihgt\"\n");
  CHECK_THAT(wrong_word, Contains(":3: severity: expected") && Contains("light") && Contains("lihgt"));
  CHECK(wrong_word.find('\n') == std::string::npos);
  CHECK_THAT(error_of(kHead + "severity = \"light\"\nqnh_hPa = 29.92\n"),
             Contains(":4: qnh_hPa: expected") && Contains("29.92"));
  CHECK_THAT(error_of(kHead + "severity = \"light\"\nsigma_mps = 1\n"), Contains(":4: sigma_mps: expected"));
  CHECK_THAT(error_of(kHead + "severity = \"light\"\n[wind]\nfrom_deg = 10\nspeed_kt = 5\npower = 0.2\n"),
             Contains(":7: wind.power: expected"));
  CHECK_THAT(error_of(kHead + "severity = \"light\"\nsevereness = 3\n"), Contains("severeness"));
  CHECK_THAT(error_of("format = \"something-else\"\n"), Contains(":1: format: expected"));
  CHECK_THAT(error_of(kHead), Contains("severity"));
}
