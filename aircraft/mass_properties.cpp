#include "aircraft/mass_properties.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>

#include "aircraft/input_error.hpp"

namespace stallwright {
namespace {

using Vector = math::Vec3<double>;

std::string fixed(double value, int digits) {
  char text[40];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

/// From the centre of gravity to a station, body axes: structural x and z point the other way.
Vector from_cg(const Station3& at, const Station3& cg) {
  return {cg.x_aft_m - at.x_aft_m, at.y_right_m - cg.y_right_m, cg.z_up_m - at.z_up_m};
}

void add_point_mass(math::Mat3<double>& inertia, double mass_kg, const Vector& r) {
  const double r2 = math::dot(r, r);
  const double c[3] = {r.x, r.y, r.z};
  for (int i = 0; i < 3; ++i) {
    for (int j = 0; j < 3; ++j) inertia(i, j) += mass_kg * ((i == j ? r2 : 0.0) - c[i] * c[j]);
  }
}

void check_fits(const AircraftType& type, const Loading& loading) {
  if (loading.kg.size() != type.mass.stations.size()) {
    throw InputError("loading: expected a mass for each of the " + std::to_string(type.mass.stations.size()) +
                     " stations of " + type.name + ", found " + std::to_string(loading.kg.size()));
  }
  for (std::size_t i = 0; i < loading.kg.size(); ++i) {
    if (!std::isfinite(loading.kg[i]) || loading.kg[i] < 0) {
      throw InputError("loading: " + type.mass.stations[i].name + ": expected a mass from 0 to " +
                       fixed(type.mass.stations[i].max_kg, 1) + " kg, found " + fixed(loading.kg[i], 1));
    }
  }
}

double lever(double x, const std::vector<double>& xs, const std::vector<double>& ys) {
  if (x <= xs.front()) return ys.front();
  for (std::size_t i = 1; i < xs.size(); ++i) {
    if (x <= xs[i]) return ys[i - 1] + (ys[i] - ys[i - 1]) * (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
  }
  return ys.back();
}

/// Fills the stations in order of x until the load is used up; stations at one x share what they get.
Loading filled(const AircraftType& type, double load_kg, bool from_the_front) {
  const auto& stations = type.mass.stations;
  std::vector<std::size_t> order(stations.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto x = [&](std::size_t i) { return stations[i].at.x_aft_m * (from_the_front ? 1 : -1); };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return x(a) < x(b); });
  Loading out{std::vector<double>(stations.size(), 0.0)};
  for (std::size_t k = 0; k < order.size();) {
    std::size_t end = k;
    double room_kg = 0;
    while (end < order.size() && x(order[end]) == x(order[k])) room_kg += stations[order[end++]].max_kg;
    const double share = room_kg > 0 ? std::min(1.0, load_kg / room_kg) : 0.0;
    for (; k < end; ++k) out.kg[order[k]] = share * stations[order[k]].max_kg;
    load_kg = std::max(0.0, load_kg - room_kg);
  }
  return out;
}

double cg_x(const AircraftType& type, const Loading& loading) {
  return mass_properties(type, loading).cg.x_aft_m;
}

double load_within_reach(const AircraftType& type, double mass_kg) {
  double most_kg = type.mass.empty_kg;
  for (const auto& station : type.mass.stations) most_kg += station.max_kg;
  if (!(mass_kg >= type.mass.empty_kg && mass_kg <= most_kg)) {
    throw InputError("loading: expected a mass of " + type.name + " from " + fixed(type.mass.empty_kg, 1) +
                     " to " + fixed(most_kg, 1) + " kg, found " + fixed(mass_kg, 1));
  }
  return mass_kg - type.mass.empty_kg;
}

void add_breach(std::vector<EnvelopeBreach>& out, EnvelopeBreach::Limit limit, double by,
                std::string sentence) {
  if (by > 1e-9)
    out.push_back({limit, by, std::move(sentence)});  // round-off at the limit itself is not a breach
}

}  // namespace

Loading default_loading(const AircraftType& type) {
  Loading out;
  for (const auto& station : type.mass.stations) out.kg.push_back(station.default_kg);
  return out;
}

MassProperties mass_properties(const AircraftType& type, const Loading& loading) {
  check_fits(type, loading);
  const MassType& m = type.mass;
  double mass_kg = m.empty_kg;
  double x = m.empty_kg * m.empty_cg.x_aft_m, y = m.empty_kg * m.empty_cg.y_right_m,
         z = m.empty_kg * m.empty_cg.z_up_m;
  for (std::size_t i = 0; i < loading.kg.size(); ++i) {
    const Station3& at = m.stations[i].at;
    mass_kg += loading.kg[i];
    x += loading.kg[i] * at.x_aft_m;
    y += loading.kg[i] * at.y_right_m;
    z += loading.kg[i] * at.z_up_m;
  }
  MassProperties out{mass_kg, {x / mass_kg, y / mass_kg, z / mass_kg}, {}};
  const double ixz = m.empty_ixz_kgm2;
  out.inertia = {{m.empty_ixx_kgm2, 0, -ixz, 0, m.empty_iyy_kgm2, 0, -ixz, 0, m.empty_izz_kgm2}};
  add_point_mass(out.inertia, m.empty_kg, from_cg(m.empty_cg, out.cg));
  for (std::size_t i = 0; i < loading.kg.size(); ++i) {
    add_point_mass(out.inertia, loading.kg[i], from_cg(m.stations[i].at, out.cg));
  }
  return out;
}

std::vector<EnvelopeBreach> check_envelope(const AircraftType& type, const MassProperties& mass) {
  using Limit = EnvelopeBreach::Limit;
  std::vector<EnvelopeBreach> out;
  const double over_kg = mass.mass_kg - type.mass.max_kg;
  add_breach(out, Limit::kMaximumMass, over_kg,
             "mass " + fixed(over_kg, 1) + " kg above the maximum of " + fixed(type.mass.max_kg, 1) + " kg");
  const CgRange range = envelope_range(type, mass.mass_kg);
  const double ahead_m = range.forward_m - mass.cg.x_aft_m, behind_m = mass.cg.x_aft_m - range.aft_m;
  add_breach(out, Limit::kForward, ahead_m,
             "centre of gravity " + fixed(ahead_m, 3) + " m ahead of the forward limit of " +
                 fixed(range.forward_m, 3) + " m");
  add_breach(out, Limit::kAft, behind_m,
             "centre of gravity " + fixed(behind_m, 3) + " m behind the aft limit of " +
                 fixed(range.aft_m, 3) + " m");
  return out;
}

std::vector<EnvelopeBreach> check_envelope(const AircraftType& type, const Loading& loading) {
  auto out = check_envelope(type, mass_properties(type, loading));
  for (std::size_t i = 0; i < loading.kg.size(); ++i) {
    const LoadStation& station = type.mass.stations[i];
    const double over_kg = loading.kg[i] - station.max_kg;
    add_breach(out, EnvelopeBreach::Limit::kStationMass, over_kg,
               station.name + " " + fixed(over_kg, 1) + " kg above its maximum of " +
                   fixed(station.max_kg, 1) + " kg");
  }
  return out;
}

CgRange envelope_range(const AircraftType& type, double mass_kg) {
  const MassType& m = type.mass;
  return {lever(mass_kg, m.envelope_mass_kg, m.envelope_forward_m),
          lever(mass_kg, m.envelope_mass_kg, m.envelope_aft_m)};
}

CgRange reachable_range(const AircraftType& type, double mass_kg) {
  const double load_kg = load_within_reach(type, mass_kg);
  return {cg_x(type, filled(type, load_kg, true)), cg_x(type, filled(type, load_kg, false))};
}

Loading loading_for(const AircraftType& type, double mass_kg, double cg_x_aft_m) {
  const CgRange range = reachable_range(type, mass_kg);
  constexpr double kSlack = 1e-9;  // a limit read back from reachable_range must be accepted
  if (!(cg_x_aft_m >= range.forward_m - kSlack && cg_x_aft_m <= range.aft_m + kSlack)) {
    throw InputError("loading: expected a centre of gravity of " + type.name + " from " +
                     fixed(range.forward_m, 3) + " to " + fixed(range.aft_m, 3) + " m at " +
                     fixed(mass_kg, 1) + " kg, found " + fixed(cg_x_aft_m, 3));
  }
  // Mass is the same in both and the moment is linear in the loads, so the mix meets both conditions exactly.
  const double spread = range.aft_m - range.forward_m;
  const double t = spread > kSlack ? std::clamp((cg_x_aft_m - range.forward_m) / spread, 0.0, 1.0) : 0.0;
  const double load_kg = load_within_reach(type, mass_kg);
  Loading out = filled(type, load_kg, true);
  const Loading aft = filled(type, load_kg, false);
  for (std::size_t i = 0; i < out.kg.size(); ++i) out.kg[i] += t * (aft.kg[i] - out.kg[i]);
  return out;
}

MassProperties ballasted(const AircraftType& type, double mass_kg, double cg_x_aft_m) {
  const CgRange range = reachable_range(type, mass_kg);
  MassProperties out =
      mass_properties(type, loading_for(type, mass_kg, std::clamp(cg_x_aft_m, range.forward_m, range.aft_m)));
  out.cg.x_aft_m = cg_x_aft_m;
  return out;
}

}  // namespace stallwright
