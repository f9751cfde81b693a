#pragma once
#include "aircraft/math/elementary.hpp"

/// U.S. Standard Atmosphere 1976 up to 20 km, with the day's temperature offset and QNH.   [USSA-1976]
///
///   H = r0 h / (r0 + h)                  geopotential height, m, from altitude h above sea level
///   z = H + Hp(QNH)                      height in the standard column whose foot is the QNH
///   T = T0 + dT - L min(z, z11)
///   p = QNH (T / T_foot)^(g0 / (R L)) exp(-g0 max(z - z11, 0) / (R T11))
///   rho = p / (R T),   a = sqrt(gamma R T)
///     dT  temperature offset, K, the same at every height;  T_foot  T at sea level
///     z11 = 11,000 m, T11 = T there
///
/// Every day is in exact hydrostatic balance, dp = -rho g dh. On a day with dT = 0 an altimeter set to QNH
/// reads the geopotential height exactly, whatever the QNH; on a warm day it reads low, on a cold day high,
/// as in life (about 4 % for 11 K). The offset is thus counted against the standard temperature at the same
/// height above the QNH level, not at the same pressure altitude; at 10,000 ft and 20 K the two differ by
/// about 1.3 K.
/// Valid for z from -1 to 20 km. Past either end the end layer's law goes on (no error in the state path).
namespace stallwright {

namespace ussa1976 {
inline constexpr double kGasConstant = 8314.32 / 28.9644;  ///< J/(kg K): R* / M0, table 2 of [USSA-1976]
inline constexpr double kGravity = 9.80665;                ///< m/s2, g0
inline constexpr double kEarthRadius = 6356766.0;          ///< m, r0 of geopotential height
inline constexpr double kGamma = 1.4;                      ///< ratio of specific heats
inline constexpr double kTemperature = 288.15;             ///< K, sea level
inline constexpr double kPressure = 101325.0;              ///< Pa, sea level
inline constexpr double kLapse = 0.0065;                   ///< K/m of geopotential height
inline constexpr double kTropopause = 11000.0;             ///< m, geopotential
inline constexpr double kTropopauseTemperature = kTemperature - kLapse * kTropopause;
inline constexpr double kDensity = kPressure / (kGasConstant * kTemperature);  ///< kg/m3, sea level
inline constexpr double kPressurePower = kGravity / (kGasConstant * kLapse);   ///< 5.2559
inline constexpr double kSoundSpeed = 340.2941077869353;  ///< m/s, math::sqrt(gamma R T0)
inline constexpr double kTropopausePressureRatio =
    0.22336110509215829;  ///< (T11/T0)^5.2559, checked by a test
}  // namespace ussa1976

/// The day as a pilot gets it: degrees off standard, and the altimeter setting.
struct Day {
  double temperature_offset_K = 0.0;
  double qnh_Pa = ussa1976::kPressure;
  friend bool operator==(const Day&, const Day&) = default;
};

template <class T>
struct AtmosphereState {
  T temperature_K, pressure_Pa, density_kgpm3, speed_of_sound_mps;
};

/// Acceleration of gravity at altitude_m, m/s2:  g0 (r0 / (r0 + h))^2.
template <class T>
constexpr T gravity(const T& altitude_m) {
  const T ratio = T(ussa1976::kEarthRadius) / (T(ussa1976::kEarthRadius) + altitude_m);
  return T(ussa1976::kGravity) * ratio * ratio;
}

/// Geopotential height, m, of a geometric altitude, m.
template <class T>
constexpr T geopotential_height(const T& altitude_m) {
  return T(ussa1976::kEarthRadius) * altitude_m / (T(ussa1976::kEarthRadius) + altitude_m);
}

/// Geometric altitude, m, of a geopotential height, m.
template <class T>
constexpr T geometric_altitude(const T& geopotential_m) {
  return T(ussa1976::kEarthRadius) * geopotential_m / (T(ussa1976::kEarthRadius) - geopotential_m);
}

/// Pressure altitude, m: the geopotential height at which the standard atmosphere has this pressure (Pa,
/// above 0).
template <class T>
T pressure_altitude(const T& pressure_Pa);

/// Density altitude, m: the geopotential height at which the standard atmosphere has this density (kg/m3,
/// above 0).
template <class T>
T density_altitude(const T& density_kgpm3);

/// What an altimeter set to `setting_Pa` shows, m:  Hp(p) - Hp(setting).
template <class T>
T indicated_altitude(const T& pressure_Pa, const T& setting_Pa) {
  return pressure_altitude(pressure_Pa) - pressure_altitude(setting_Pa);
}

/// The air above one place on one day; what does not change during a flight is computed once.
class AirColumn {
 public:
  /// Throws std::invalid_argument unless QNH is 80,000 to 110,000 Pa and the offset is within 60 K.
  explicit AirColumn(const Day& day = {});

  /// The air at a geometric altitude above sea level, m.
  template <class T>
  AtmosphereState<T> at(const T& altitude_m) const;

  const Day& day() const { return day_; }

 private:
  Day day_;
  double foot_m_;              ///< pressure altitude of the QNH
  double foot_temperature_K_;  ///< at sea level
  double top_temperature_K_;   ///< at and above 11 km
};

/// The same in one call, for use outside the step.
template <class T>
AtmosphereState<T> atmosphere(const Day& day, const T& altitude_m) {
  return AirColumn(day).at(altitude_m);
}

template <class T>
AtmosphereState<T> AirColumn::at(const T& altitude_m) const {
  using namespace ussa1976;
  const T z = geopotential_height(altitude_m) + T(foot_m_);
  const T above = math::max(z - T(kTropopause), T(0.0));
  const T temperature = T(foot_temperature_K_) - T(kLapse) * (z - above - T(foot_m_));
  // One exponential serves both layers: above the tropopause the first term stands still.
  const T exponent = T(kPressurePower) * math::log(temperature / T(foot_temperature_K_)) -
                     above * T(kGravity / (kGasConstant * top_temperature_K_));
  const T pressure = T(day_.qnh_Pa) * math::exp(exponent);
  return {temperature, pressure, pressure / (T(kGasConstant) * temperature),
          math::sqrt(T(kGamma * kGasConstant) * temperature)};
}

template <class T>
T pressure_altitude(const T& pressure_Pa) {
  using namespace ussa1976;
  const T log_ratio = math::log(pressure_Pa / T(kPressure));
  const T low = T(kTemperature / kLapse) * (T(1.0) - math::exp(log_ratio / T(kPressurePower)));
  const T high = T(kTropopause) - (log_ratio - math::log(T(kTropopausePressureRatio))) *
                                      T(kGasConstant * kTropopauseTemperature / kGravity);
  return math::where(low < T(kTropopause), low, high);
}

template <class T>
T density_altitude(const T& density_kgpm3) {
  using namespace ussa1976;
  const T log_ratio = math::log(density_kgpm3 / T(kDensity));
  const T low = T(kTemperature / kLapse) * (T(1.0) - math::exp(log_ratio / T(kPressurePower - 1.0)));
  const double top = kTropopausePressureRatio * kTemperature / kTropopauseTemperature;
  const T high =
      T(kTropopause) - (log_ratio - math::log(T(top))) * T(kGasConstant * kTropopauseTemperature / kGravity);
  return math::where(low < T(kTropopause), low, high);
}

}  // namespace stallwright
