#include "sim/air/air_preset.hpp"

#include <algorithm>

#include "aircraft/input_error.hpp"
#include "aircraft/math/units.hpp"
#include "aircraft/toml_reader.hpp"
#include "sim/air/thermals.hpp"

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

ConvectiveDay read_convection(const TomlTable& table) {
  constexpr FileUnit kHour{"h", 1.0}, kDay{"", 1.0}, kWattPerM2{"W/m2", 1.0}, kPerKm{"K/km", 1e-3};
  ConvectiveDay day;
  day.hour = table.number({"hour", kHour, 0.0, 24.0});
  day.latitude_rad = table.number({"latitude_deg", unit::kDegree, -65.0, 65.0});
  day.day_of_year = table.number({"day_of_year", kDay, 1.0, 365.0});
  day.peak_heat_flux_wpm2 = table.number({"peak_heat_flux_Wpm2", kWattPerM2, 0.0, 600.0});
  day.lapse_K_per_m = table.number({"lapse_K_per_km", kPerKm, 0.5, 20.0});
  day.morning_depth_m = table.number({"morning_depth_ft", unit::kFoot, 30.0, 3000.0});
  return day;
}

constexpr FileUnit kFootPerSecond{"ft/s", kFoot};
constexpr NumberField kGustMps[] = {{"forward_mps", kMetrePerSecond, -30.0, 30.0},
                                    {"right_mps", kMetrePerSecond, -30.0, 30.0},
                                    {"up_mps", kMetrePerSecond, -30.0, 30.0}};
constexpr NumberField kGustFtps[] = {{"forward_ftps", kFootPerSecond, -100.0, 100.0},
                                     {"right_ftps", kFootPerSecond, -100.0, 100.0},
                                     {"up_ftps", kFootPerSecond, -100.0, 100.0}};

double gust_length(const TomlTable& table) {
  if (!table.has("length_m")) return table.number({"length_ft", unit::kFoot, 3.0, 10000.0});
  if (table.has("length_ft")) table.reject("length_m", "either length_ft or length_m", "both");
  return table.number({"length_m", unit::kMetre, 1.0, 3000.0});
}

DiscreteGust read_gust(const TomlTable& table) {
  DiscreteGust gust;
  if (table.has("shape") && table.choice("shape", {"one-minus-cosine", "ramp-and-hold"}) == "ramp-and-hold")
    gust.shape = GustShape::kRampAndHold;
  gust.start_s = table.number({"start_s", unit::kSecond, 0.0, 7200.0});
  gust.length_m = gust_length(table);
  double* const axes[] = {&gust.peak_mps.x, &gust.peak_mps.y, &gust.peak_mps.z};
  bool any = false;
  for (int i = 0; i < 3; ++i) {
    const bool metric = table.has(kGustMps[i].key), feet = table.has(kGustFtps[i].key);
    if (metric && feet)
      table.reject(kGustMps[i].key, std::string("either ") + kGustFtps[i].key + " or " + kGustMps[i].key,
                   "both");
    *axes[i] = metric ? table.number(kGustMps[i]) : table.number_or(kGustFtps[i], 0.0);
    any = any || metric || feet;
  }
  if (!any) table.reject("start_s", "a speed beside it (up_ftps, right_ftps or forward_ftps)", "none");
  return gust;
}

}  // namespace

TurbulenceIntensity AirPreset::intensity() const {
  TurbulenceIntensity out = severity ? turbulence_intensity(*severity) : uniform_intensity(sigma_mps);
  out.high_length_m = high_length_m(turbulence);
  if (!convection) return out;
  const MixedLayer layer = mixed_layer(*convection);
  if (layer.scale_mps <= 0.0) return out;
  const ThermalField thermals(layer, {}, {});
  constexpr int kHeights = 24;
  for (int i = 0; i <= kHeights; ++i) {
    const double height = 1.2 * layer.depth_m * i / kHeights;
    const double all = convective_sigma_w_mps(layer, height), whole = all * all;
    out.convective_height_m.push_back(height);
    out.convective_sigma_u_mps.push_back(convective_sigma_u_mps(layer, height));
    out.convective_sigma_w_mps.push_back(
        math::sqrt(std::max(whole / 3.0, whole - thermals.variance(height))));
  }
  out.convective_length_m = convective_length_m(layer, turbulence);
  return out;
}

AirPreset read_air_preset(const std::filesystem::path& file, std::optional<double> hour) {
  const TomlDocument document(file);
  const TomlTable root = document.root();
  root.choice("format", {"stallwright-air-1"});
  AirPreset preset;
  preset.name = root.text("name", 60);
  read_intensity(root, preset);
  if (root.has("turbulence") && root.choice("turbulence", {"dryden", "von-karman"}) == "von-karman")
    preset.turbulence = TurbulenceModel::kVonKarman;
  preset.day.temperature_offset_K = root.number_or({"temperature_offset_K", kKelvin, -60.0, 60.0}, 0.0);
  preset.day.qnh_Pa = root.number_or({"qnh_hPa", kHectopascal, 800.0, 1100.0}, preset.day.qnh_Pa);
  if (root.has("wind")) preset.wind = read_wind(root.table("wind"));
  if (root.has("convection")) preset.convection = read_convection(root.table("convection"));
  if (root.has("gust"))
    for (const TomlTable& table : root.tables("gust", 1, 20)) preset.gusts.push_back(read_gust(table));
  document.reject_unknown_keys();
  if (!hour) return preset;
  if (!preset.convection)
    throw InputError(file.string() + ": expected a [convection] table to go with a time of day, found none");
  preset.convection->hour = *hour;
  return preset;
}

}  // namespace stallwright
