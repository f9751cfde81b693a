#pragma once
#include <filesystem>
#include <optional>
#include <string>

#include "sim/air/standard_atmosphere.hpp"
#include "sim/air/turbulence_intensity.hpp"
#include "sim/air/wind.hpp"

namespace stallwright {

/// A weather preset: all that a TOML file in assets/air says.
///
///   format = "stallwright-air-1"
///   name = "Light"                      up to 60 letters
///   severity = "light"                  calm, light, moderate, severe; or instead
///   sigma_mps = 0.5                     0 to 20, the same at every height
///   temperature_offset_K = 0.0          -60 to 60; may be left out (0)
///   qnh_hPa = 1013.25                   800 to 1100; may be left out (1013.25)
///   [wind]                              may be left out (no wind)
///   from_deg, speed_kt                  0 to 360 true, 0 to 100
///   reference_height_ft                 7 to 2000; may be left out (33 ft, 10 m)
///   shear = "none" | "power" | "linear" may be left out (none)
///   power                               0 to 1, with shear = "power"; may be left out (1/7)
///   gradient_kt_per_1000ft              -50 to 50, with shear = "linear"
struct AirPreset {
  std::string name = "Calm";
  std::optional<Severity> severity = Severity::kCalm;  ///< nothing when sigma_mps is given instead
  double sigma_mps = 0.0;                              ///< used only without a severity
  Day day;
  MeanWind wind;
  TurbulenceIntensity intensity() const {
    return severity ? turbulence_intensity(*severity) : uniform_intensity(sigma_mps);
  }
  friend bool operator==(const AirPreset&, const AirPreset&) = default;
};

/// Reads a preset. Throws InputError with one line, `file:line: field: expected X, found Y`.
AirPreset read_air_preset(const std::filesystem::path& file);

}  // namespace stallwright
