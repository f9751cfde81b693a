#include "sim/air/air_preset.hpp"

#include "aircraft/math/units.hpp"
#include "aircraft/toml_reader.hpp"

namespace stallwright {

namespace {

constexpr FileUnit kKelvin{"K", 1.0}, kHectopascal{"hPa", 100.0}, kMetrePerSecond{"m/s", 1.0};
constexpr FileUnit kKnotPer1000Ft{"kt/1000 ft", kKnot / (1000.0 * kFoot)};

void read_intensity(const TomlTable& root, AirPreset& preset) {
  if (root.has("sigma_mps")) {
    if (root.has("severity")) root.reject("sigma_mps", "either severity or sigma_mps", "both");
    preset.severity.reset();
    preset.sigma_mps = root.number({"sigma_mps", kMetrePerSecond, 0.0, 20.0});
    return;
  }
  const auto word = root.choice("severity", {"calm", "light", "moderate", "severe"});
  preset.severity = severity_from_name(word);
}

MeanWind read_wind(const TomlTable& table) {
  MeanWind wind;
  wind.from_rad = table.number({"from_deg", unit::kDegree, 0.0, 360.0});
  wind.speed_mps = table.number({"speed_kt", unit::kKnot, 0.0, 100.0});
  wind.reference_height_m =
      table.number_or({"reference_height_ft", unit::kFoot, 7.0, 2000.0}, wind.reference_height_m);
  const std::string shear = table.has("shear") ? table.choice("shear", {"none", "power", "linear"}) : "none";
  // A number for a law that is not in force would be taken for one that is: refuse it rather than ignore it.
  if (shear != "power" && table.has("power"))
    table.reject("power", "this only with shear = \"power\"", "shear = \"" + shear + "\"");
  if (shear != "linear" && table.has("gradient_kt_per_1000ft"))
    table.reject("gradient_kt_per_1000ft", "this only with shear = \"linear\"", "shear = \"" + shear + "\"");
  if (shear == "power") {
    wind.law = ShearLaw::kPower;
    wind.power = table.number_or({"power", unit::kNone, 0.0, 1.0}, wind.power);
  } else if (shear == "linear") {
    wind.law = ShearLaw::kLinear;
    wind.gradient_per_s = table.number({"gradient_kt_per_1000ft", kKnotPer1000Ft, -50.0, 50.0});
  }
  return wind;
}

}  // namespace

AirPreset read_air_preset(const std::filesystem::path& file) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  root.choice("format", {"stallwright-air-1"});
  AirPreset preset;
  preset.name = root.text("name", 60);
  read_intensity(root, preset);
  preset.day.temperature_offset_K = root.number_or({"temperature_offset_K", kKelvin, -60.0, 60.0}, 0.0);
  preset.day.qnh_Pa = root.number_or({"qnh_hPa", kHectopascal, 800.0, 1100.0}, preset.day.qnh_Pa);
  if (root.has("wind")) preset.wind = read_wind(root.table("wind"));
  document.reject_unknown_keys();
  return preset;
}

}  // namespace stallwright
