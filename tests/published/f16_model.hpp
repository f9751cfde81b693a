#pragma once
#include <functional>

#include "sim/motion/flight_model.hpp"
#include "tests/published/f16_tables.hpp"

/// The condensed subsonic F-16 of the published tables, as a model for trim and linearise: a test's aeroplane, about
/// which everything is known from outside. Its data are in feet, slugs and degrees; its state is in our units.
namespace stallwright::published {

inline constexpr double kFoot_m = 0.3048;
inline constexpr double kPound_n = 4.4482216152605;
inline constexpr double kSlug_kg = kPound_n / kFoot_m;
inline constexpr double kSlugFoot2_kgm2 = kSlug_kg * kFoot_m * kFoot_m;
inline constexpr double kDegree = math::kPi / 180.0;

struct F16State {
  RigidState<double> rigid;
  double power_pct = 0.0;
  /// Trailing edge down; left aileron down and rudder right as the tables count them.
  double elevator_rad = 0.0, aileron_rad = 0.0, rudder_rad = 0.0;
  double throttle = 0.0;
};

struct F16Air {
  double density_slugpft3, sound_ftps;
};

/// Air of the book, and the standard atmosphere (geometric height, ft).
F16Air book_air(double height_ft);
F16Air standard_air(double height_ft);

/// What moments do to the rates. The book rounds nine constants made of the moments of inertia; rounded, they belong
/// to no single body: roll and yaw need one, pitch another.
struct F16Inertia {
  Inertia<double> roll_yaw, pitch;
};

/// Mass in slug, exact moments of inertia 9496, 55814, 63100 and 982 slug ft2.
F16Inertia exact_inertia(double mass_slug);
/// The book's mass, 1/1.57e-3 slug, and its c1 to c9.
F16Inertia book_inertia();

struct F16 {
  using State = F16State;
  static constexpr std::size_t kMemory = 1;

  F16Tables tables = f16_tables(F16Source::textbook);
  F16Engine engine;
  F16Inertia inertia = book_inertia();
  double xcg = 0.35;  ///< share of the chord; tables are about 0.35
  double gravity_ftps2 = 32.17;
  std::function<F16Air(double)> air = book_air;

  /// Aerodynamic force and moment about the centre of gravity, lbf and ft lbf.
  struct Loads {
    Vec3<double> force_lbf, moment_ftlbf;
    double thrust_lbf;
  };
  Loads loads(const State& s) const;
  State rate(const State& s) const;
  double gravity_mps2(double) const { return gravity_ftps2 * kFoot_m; }

  template <class S, class Visit>
  static void each_memory(S& s, Visit&& visit) {
    visit(s.power_pct, 100.0);
  }
  template <class S, class Visit>
  static void each_input(S& s, Visit&& visit) {
    visit(s.elevator_rad);
    visit(s.aileron_rad);
    visit(s.rudder_rad);
    visit(s.throttle);
  }
};
static_assert(FlightModel<F16>);

}  // namespace stallwright::published
