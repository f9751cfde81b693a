#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "sim/air/air_preset.hpp"
#include "sim/air/thermals.hpp"
#include "sim/sortie/sortie.hpp"
#include "tests/published/printed_spectra.hpp"
#include "tests/sim/study/study_setup.hpp"

using namespace stallwright;

namespace {

MixedLayer afternoon() {
  ConvectiveDay day;
  day.hour = 14.0;
  return mixed_layer(day);
}

AirPreset day_at(double hour) {
  return read_air_preset(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/air/day.toml", hour);
}

}  // namespace

TEST_CASE("the mixed layer is shallow in the morning, deep in the afternoon, and gone in the evening",
          "[air]") {
  ConvectiveDay day;
  const auto at = [&](double hour) {
    day.hour = hour;
    return mixed_layer(day);
  };
  CHECK(at(4.0).scale_mps == 0.0);
  CHECK(at(4.0).depth_m == day.morning_depth_m);
  CHECK(at(7.5).depth_m < 700.0);
  CHECK(at(14.0).depth_m > 1200.0);
  CHECK(at(7.5).scale_mps < 0.7 * at(14.0).scale_mps);
  CHECK(at(20.0).scale_mps == 0.0);
  for (double hour = 5.0; hour < 20.0; hour += 0.25) CHECK(at(hour + 0.25).depth_m >= at(hour).depth_m);
  // Growth by encroachment: without entrainment and morning layer the area under the profile, gamma zi^2/2, holds the heat
  // let in; a fifth entrained makes it 1.4 times as much.
  day.morning_depth_m = 0.0;
  const Daylight light = daylight_hours(day);
  const double seconds = (light.set_h - light.rise_h - 2.5) * 3600.0;
  const double heat = day.peak_heat_flux_wpm2 / 1210.0 * seconds * 2.0 / math::kPi;  // a whole half wave
  CHECK(0.5 * day.lapse_K_per_m * at(23.0).depth_m * at(23.0).depth_m == Approx(1.4 * heat).epsilon(1e-9));
}

TEST_CASE("what thermals lift sinks between them, and the field has the variance that it says", "[air]") {
  const MixedLayer layer = afternoon();
  const ThermalField field(layer, {3, 0}, {});
  const double height = 0.4 * layer.depth_m;
  double sum = 0.0, square = 0.0, most = 0.0;
  int n = 0;
  for (double north = 0.0; north < 30.0 * field.cell_m(); north += 23.0)
    for (double east = 0.0; east < 30.0 * field.cell_m(); east += 23.0) {
      const double up = field.at({north, east, 0.0}, height, 0.0).up_mps;
      sum += up;
      square += up * up;
      most = std::max(most, up);
      ++n;
    }
  // 900 thermals at even density: the mean over whole cells is known to about a third of a thermal row at the edges.
  CHECK(sum / n == Approx(0.0).margin(0.15 * field.sink_mps(height)));
  CHECK(square / n == Approx(field.variance(height)).epsilon(0.1));
  CHECK(most > 0.9 * thermal_shape(layer, height).core_mps);
  CHECK(field.variance(height) < std::pow(convective_sigma_w_mps(layer, height), 2.0));
}

TEST_CASE("thermals drift with the wind, and their slopes are those of the field", "[air]") {
  const ThermalField field(afternoon(), {3, 0}, {2.0, -3.0, 0.0});
  const double height = 500.0;
  int steep = 0;
  for (int k = 0; k < 400; ++k) {
    const math::Vec3<double> p{31.0 * k, -17.0 * k, 0.0};
    const Updraft now = field.at(p, height, 0.0),
                  later = field.at({p.x + 200.0, p.y - 300.0, 0.0}, height, 100.0);
    CHECK(later.up_mps == Approx(now.up_mps).margin(1e-9));
    const double ahead = field.at({p.x + 4.0, p.y, 0.0}, height, 0.0).up_mps;
    const double behind = field.at({p.x - 4.0, p.y, 0.0}, height, 0.0).up_mps;
    CHECK(now.per_m_north == Approx((ahead - behind) / 8.0).margin(0.01));
    steep += std::abs(now.per_m_north) > 0.005 ? 1 : 0;
  }
  CHECK(steep > 20);
}

TEST_CASE("other seeds put the thermals elsewhere", "[air]") {
  const ThermalField one(afternoon(), {3, 0}, {}), two(afternoon(), {4, 0}, {});
  int differ = 0;
  for (int k = 0; k < 100; ++k)
    differ +=
        one.at({50.0 * k, 0.0, 0.0}, 500.0, 0.0).up_mps != two.at({50.0 * k, 0.0, 0.0}, 500.0, 0.0).up_mps
            ? 1
            : 0;
  CHECK(differ > 10);
}

TEST_CASE("turbulence of convection adds to that of the severity and leaves other air as it was", "[air]") {
  AirPreset preset = day_at(14.0);
  const double height = 914.4;
  const auto still = turbulence_scales(AirPreset().intensity(), height);
  CHECK(still.sigma_w_mps == 0.0);
  const auto day = turbulence_scales(preset.intensity(), height);
  const MixedLayer layer = mixed_layer(*preset.convection);
  CHECK(day.sigma_u_mps == Approx(0.59 * layer.scale_mps).epsilon(1e-9));
  const double all = convective_sigma_w_mps(layer, height);
  CHECK(day.sigma_w_mps * day.sigma_w_mps + ThermalField(layer, {}, {}).variance(height) ==
        Approx(all * all).epsilon(0.02));
  CHECK(day.length_w_m == Approx(convective_length_m(layer)));
  preset.severity = Severity::kLight;
  const auto both = turbulence_scales(preset.intensity(), height);
  const auto light = turbulence_scales(turbulence_intensity(Severity::kLight), height);
  CHECK(both.sigma_u_mps == Approx(std::hypot(light.sigma_u_mps, day.sigma_u_mps)).epsilon(1e-9));
  CHECK(both.length_u_m > std::min(light.length_u_m, day.length_u_m));
  CHECK(both.length_u_m < std::max(light.length_u_m, day.length_u_m));
}

TEST_CASE("what the shipped day says comes out in SI, and its hour can be taken from elsewhere",
          "[air][files]") {
  const AirPreset preset = read_air_preset(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/air/day.toml");
  REQUIRE(preset.convection);
  CHECK(preset.convection->hour == 10.0);
  CHECK(preset.convection->latitude_rad == Approx(48.0 * math::kDegree));
  CHECK(preset.convection->lapse_K_per_m == Approx(0.0045));
  CHECK(preset.convection->morning_depth_m == Approx(150.0 * 0.3048));
  CHECK(day_at(7.5).convection->hour == 7.5);
}

TEST_CASE("a time of day needs a day with convection", "[air][files]") {
  CHECK_THROWS_AS(read_air_preset(std::string(STALLWRIGHT_SOURCE_DIR) + "/assets/air/calm.toml", 9.0),
                  InputError);
}

TEST_CASE("an early start is worth it: the load factor swings several times as much in the afternoon",
          "[air][sortie]") {
  SortieConfig config = study_test::sortie("marram", "current", "standard");
  config.card.points = {config.card.points[1]};
  const auto swing = [&](double hour) {
    config.air = day_at(hour);
    double square = 0.0, n = 0.0;
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      config.seed = seed;
      MemorySink rows;
      fly_sortie(config, rows);
      for (std::size_t i = 0; i < rows.log.size(); ++i) {
        if (rows.log[i].phase != "record") continue;
        square += std::pow(rows.truth[i].load_factor - 1.0, 2.0);
        n += 1.0;
      }
    }
    return std::sqrt(square / n);
  };
  const double early = swing(6.5), late = swing(14.0);
  CAPTURE(early, late);
  CHECK(early < 0.03);
  CHECK(late > 2.0 * early);
}

TEST_CASE("each model's convective scale length puts its peak at the mixed layer's wavelength",
          "[air][convection]") {
  const MixedLayer layer = mixed_layer(ConvectiveDay{});
  for (const auto model : {TurbulenceModel::kDryden, TurbulenceModel::kVonKarman}) {
    const double length = convective_length_m(layer, model);
    const published::PrintedSpectra printed{model, {1.0, 1.0, 1.0, length, length, length}, 10.0, 1.0};
    double peak = 0.0, most = 0.0;
    for (double w = 1e-5; w < 1.0; w *= 1.002)
      if (w * printed.at(2, w) > most) most = w * printed.at(2, w), peak = w;
    CAPTURE(published::word(model));
    CHECK(2.0 * M_PI / peak == Approx(1.5 * layer.depth_m).epsilon(0.01));
  }
}
