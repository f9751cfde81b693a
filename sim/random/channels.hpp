#pragma once
#include <cstdint>

namespace stallwright::random {

/// What a random number is for. Each purpose has its own stream, so adding a purpose, or drawing more or
/// fewer numbers for one, leaves every other number of the sortie as it was.
///
/// The values are part of what makes an old seed fly the same sortie again: never change or reuse one; add
/// new ones at the end of their group. Values stay below 65536 (see philox.hpp). One channel is read either
/// by uniform() or by normal(), not by both.
enum class Channel : std::uint32_t {
  // The air; for kGustU to kGustP one pair of normal numbers a tick, dryden.hpp says which filter gets which.
  kGustU = 0x0100,
  kGustV,
  kGustW,
  kGustP,
  kGustStart,  ///< stationary start of the gust filters; index numbers the pair
  kThermal,
  kDiscreteGust,
  kVonKarman,       ///< all of its filters; von_karman.hpp says which gets which; index numbers the pair
  kVonKarmanStart,  ///< their stationary start; index numbers the pair

  // The aeroplane.
  kBuffet = 0x0200,
  kAirframeAsymmetry,  ///< strip differences; keyed by the airframe's own seed, so truth does not move with
                       ///< the sortie
  kSeparationOnset,

  // Whoever holds the stick.
  kPilotRemnant = 0x0300,
  kPilotScan,
  kPilotDelay,
  kPilotButton,
  kPilotReaction,
  kPilotTrim,
  kPilotPower,
  kPilotAim,

  // Noise of the readings, one number a sample.
  kSensorIas = 0x0400,
  kSensorAltitude,
  kSensorRatio,
  kSensorAttitude,      ///< index 0, 1, 2: roll, pitch, yaw
  kSensorRates,         ///< index 0, 1, 2: p, q, r
  kSensorAcceleration,  ///< index 0, 1, 2: x, y, z
  kSensorGps,           ///< index 0, 1, 2: north, east, down
  kSensorTemperature,
  kSensorDropout,
  kSensorVerticalSpeed,
  kSensorDrift,

  // Systematic effects, drawn once a sortie (tick 0).
  kDrawPositionError = 0x0500,
  kDrawProbeOffset,
  kDrawProbeMounting,
  kDrawProbeScale,
  kDrawAccelerationBias,
  kDrawMass,
  kDrawRateBias,
  kDrawAttitudeBias,
  kDrawIasBias,
  kDrawAltitudeBias,
  kDrawTemperatureBias,
  kDrawGpsBias,

  // The flight as planned.
  kCard = 0x0600,
  kStudy,
  kTruthSet,
  kBootstrap,    ///< resampling of a study's results; sortie numbers cell and line
  kSensitivity,  ///< scrambling of the sample for Sobol' indices; tick numbers its dimension
};

}  // namespace stallwright::random
