#pragma once
#include "aircraft/math/elementary.hpp"
#include "aircraft/math/units.hpp"
#include "sim/air/turbulence_model.hpp"

/// A fair-weather day over land: the ground warms, mixes the air above it and sends up thermals.
///
///   declination   23.45 deg sin(2 pi (284 + n)/365)   n day of the year   (Cooper 1969, from memory)
///   half the day  acos(-tan(latitude) tan(declination)) 12 h/pi about noon, local solar time
///   heat flux     peak sin(pi (t - t1)/(t2 - t1))   from an hour after sunrise to an hour and a half before sunset,
///                 when it changes sign (from memory); none outside
///   mixed depth   zi^2 = z0^2 + 2 (1 + 2 A)/gamma integral of Q dt   growth into a layer of lapse gamma with an
///                 entrained share A = 0.2 of the flux (Tennekes 1973, Stull 1988, from memory)
///   w*            (g/theta Q zi)^(1/3)   [DEARDORFF]
///   Q = heat flux/(rho c_p), K m/s, with rho c_p = 1210 J/(m3 K)
/// When the flux has gone the air is taken as still at once; in nature it takes half an hour.
namespace stallwright {

struct ConvectiveDay {
  double latitude_rad = 45.0 * math::kDegree;
  double day_of_year = 172.0;
  double peak_heat_flux_wpm2 = 250.0;
  double lapse_K_per_m = 0.0045;  ///< of potential temperature above the mixed layer
  double morning_depth_m = 50.0;  ///< z0
  double potential_temperature_K = 295.0;
  double hour = 12.0;  ///< local solar time
  friend bool operator==(const ConvectiveDay&, const ConvectiveDay&) = default;
};

/// Sunrise and sunset, hours of local solar time. In polar day 0 and 24, in polar night 12 and 12.
struct Daylight {
  double rise_h, set_h;
};
Daylight daylight_hours(const ConvectiveDay& day);

/// What the day has made of the air at its hour.
struct MixedLayer {
  double heat_flux_wpm2 = 0.0, depth_m = 0.0;
  double scale_mps = 0.0;  ///< w*; 0: no convection
};
MixedLayer mixed_layer(const ConvectiveDay& day);

/// Standard deviation of the vertical wind, m/s: w* sqrt(1.8) zeta^(1/3) (1 - 0.8 zeta) up to zeta = z/zi = 1
/// [LENSCHOW], above in a straight line to nothing at 1.2 (ours).
double convective_sigma_w_mps(const MixedLayer& layer, double height_m);

/// The same of each horizontal component: 0.59 w* at all heights (Caughey and Palmer 1979, from memory), above zi in a
/// straight line to nothing at 1.2 zi (ours).
double convective_sigma_u_mps(const MixedLayer& layer, double height_m);

/// Scale length for a spectrum of the vertical wind, m. Times its frequency, the spectrum of the mixed layer has its peak
/// at a wavelength of 1.5 zi (Caughey and Palmer 1979, from memory); Dryden's has it at omega L/V = 1.47: L = 0.35 zi, von
/// Karman's at 1.33: L = 0.32 zi.
double convective_length_m(const MixedLayer& layer, TurbulenceModel model = TurbulenceModel::kDryden);

}  // namespace stallwright
