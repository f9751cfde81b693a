#pragma once
#include <string>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/toml_reader.hpp"

/// What the values of an aeroplane's type file must be together. Each check throws InputError at the line of
/// the value to look at first.
namespace stallwright::type_checks {

/// A value as found, for messages: six figures hide the round-off of unit conversion.
std::string shown(double value);

/// A flap or control must lie on its surface: the strips take their shares from these two numbers.
void check_extent(const TomlTable& table, double inboard_m, double outboard_m,
                  const LiftingSurfaceType& surface);

/// Three moments of inertia belong to a real body only if none exceeds the sum of the other two.
void check_inertia(const TomlTable& table, const MassType& mass);

/// Limits of the centre of gravity in order at each mass, ending at the maximum; reference mass between the
/// two.
void check_envelope_lists(const TomlTable& table, const MassType& mass);

/// The default loading may be flown.
void check_default_loading(const TomlTable& table, const AircraftType& type);

/// Speeds of a flight manual stand in one order; a swap is a slip of the pen that later reads as bad physics.
void check_limits(const TomlTable& table, const AircraftType& type);

}  // namespace stallwright::type_checks
