#pragma once
#include <string>
#include <vector>

#include "aircraft/aircraft_type.hpp"
#include "aircraft/math/vec3.hpp"

namespace stallwright {

/// What was put into the aeroplane: kilograms at each load station of the type, in the type's order.
struct Loading {
  std::vector<double> kg;
  bool operator==(const Loading&) const = default;
};

/// Mass, centre of gravity (structural axes), inertia tensor about it (body axes: forward, right, down), kg
/// m2.
///   inertia = [ Ixx -Ixy -Ixz; -Ixy Iyy -Iyz; -Ixz -Iyz Izz ],  Ixy = integral of x y dm, and so on
struct MassProperties {
  double mass_kg = kUnset;
  Station3 cg;
  math::Mat3<double> inertia;
};

/// A limit of the mass and centre-of-gravity envelope that the loading breaks, and by how much.
struct EnvelopeBreach {
  enum class Limit { kMaximumMass, kForward, kAft, kStationMass };
  Limit limit;
  double by = kUnset;    ///< kg for masses, m for the centre of gravity; positive
  std::string sentence;  ///< `centre of gravity 0.012 m ahead of the forward limit of 0.330 m`
};

/// The type's default loading.
Loading default_loading(const AircraftType& type);

/// Mass properties of the empty aeroplane plus point masses at its load stations, by the parallel-axis
/// theorem
///   I = sum_i I_i + m_i (r_i.r_i E - r_i r_i^T),  r_i from the common centre of gravity.
/// People and bags count as points: their own inertia (about 5 kg m2 a person) is under 1 % of the total.
/// Throws InputError if the loading does not fit the type's list of stations, or a mass is negative or not
/// finite.
MassProperties mass_properties(const AircraftType& type, const Loading& loading);

/// All limits that the loading breaks; empty if it may be flown. Envelope limits are interpolated linearly in
/// mass; below the lightest mass of the envelope its first values hold.
std::vector<EnvelopeBreach> check_envelope(const AircraftType& type, const Loading& loading);
std::vector<EnvelopeBreach> check_envelope(const AircraftType& type, const MassProperties& mass);

/// Forward and aft limits of the envelope at a mass, m aft of the datum.
struct CgRange {
  double forward_m = kUnset, aft_m = kUnset;
};
CgRange envelope_range(const AircraftType& type, double mass_kg);

/// Most forward and most aft centre of gravity that loading within the stations' limits can reach at a mass.
/// Throws InputError, giving the masses possible, if no loading makes this mass.
CgRange reachable_range(const AircraftType& type, double mass_kg);

/// A loading with this mass and centre of gravity (x aft of the datum). Throws InputError, giving the
/// reachable range, if the stations' limits do not allow it. Of the many loadings it is the mix of the most
/// forward and the most aft one. Stations left and right of the centre line at the same x are filled alike.
Loading loading_for(const AircraftType& type, double mass_kg, double cg_x_aft_m);

/// Mass properties at a mass and centre of gravity, ballasted where the stations alone do not reach it, as
/// flight tests at the corners of an envelope are: the inertia is that of the nearest loading that can be
/// reached.
MassProperties ballasted(const AircraftType& type, double mass_kg, double cg_x_aft_m);

}  // namespace stallwright
