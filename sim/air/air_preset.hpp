#pragma once
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "sim/air/convection.hpp"
#include "sim/air/discrete_gust.hpp"
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
///   turbulence = "dryden"               dryden, von-karman: the form of its spectra; may be left out (dryden)
///   temperature_offset_K = 0.0          -60 to 60; may be left out (0)
///   qnh_hPa = 1013.25                   800 to 1100; may be left out (1013.25)
///   [wind]                              may be left out (no wind)
///   from_deg, speed_kt                  0 to 360 true, 0 to 100
///   reference_height_ft                 7 to 2000; may be left out (33 ft, 10 m)
///   shear = "none" | "power" | "linear" may be left out (none)
///   power                               0 to 1, with shear = "power"; may be left out (1/7)
///   gradient_kt_per_1000ft              -50 to 50, with shear = "linear"
///   [convection]                        may be left out (none): a fair-weather day, see convection.hpp
///   hour                                0 to 24, local solar time
///   latitude_deg, day_of_year           -65 to 65, 1 to 365
///   peak_heat_flux_Wpm2                 0 to 600
///   lapse_K_per_km                      0.5 to 20, of potential temperature above the mixed layer
///   morning_depth_ft                    30 to 3000
///   [[gust]]                            up to 20; may be left out (none): a gust in the flight, see discrete_gust.hpp
///   shape = "one-minus-cosine" | "ramp-and-hold"   may be left out (one-minus-cosine)
///   start_s                             0 to 7200, time of the sortie
///   length_ft, or length_m              3 to 10000, 1 to 3000
///   up_ftps, right_ftps, forward_ftps   -100 to 100 each, or instead
///   up_mps, right_mps, forward_mps      -30 to 30 each; one axis at least
struct AirPreset {
  std::string name = "Calm";
  std::optional<Severity> severity = Severity::kCalm;  ///< nothing when sigma_mps is given instead
  double sigma_mps = 0.0;                              ///< used only without a severity
  TurbulenceModel turbulence = TurbulenceModel::kDryden;
  Day day;
  MeanWind wind;
  std::optional<ConvectiveDay> convection;
  std::vector<DiscreteGust> gusts;
  /// Of the severity, and of the convection that thermals leave out: at least a third of it is small and shapeless (ours).
  TurbulenceIntensity intensity() const;
  friend bool operator==(const AirPreset&, const AirPreset&) = default;
};

/// Reads a preset. Throws InputError with one line, `file:line: field: expected X, found Y`.
///   hour  takes the place of convection.hour; a preset without convection refuses it
AirPreset read_air_preset(const std::filesystem::path& file, std::optional<double> hour = {});

}  // namespace stallwright
