#include "sim/cli/plan_floor.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/sortie/sortie.hpp"

namespace stallwright::cli {
namespace {

constexpr int kStalls = 2;  ///< of each kind, one after the other with the same hands

/// Heights of stalls, from the truth: an altimeter lags.
class HeightWatch : public SortieSink {
 public:
  explicit HeightWatch(StallFlown& flown) : flown_(flown) {}
  void row(const LogRow& log, const TruthRow& truth) override {
    if (log.phase == "slow") {
      if (!slowing_) now_ = {.entry_ft = truth.altitude_ft};
      slowing_ = true;
    }
    const bool stalled = log.phase == "broken" || log.phase == "recover" || log.phase == "climb";
    if (stalled && slowing_) follow(log, truth);
  }
  bool done() const { return flown_.flown == kStalls; }

 private:
  struct Heights {
    double entry_ft = kUnset, break_ft = kUnset, lowest_ft = kUnset, bank_deg = 0.0;
  };
  void follow(const LogRow& log, const TruthRow& truth) {
    if (!(now_.break_ft == now_.break_ft)) now_.break_ft = now_.lowest_ft = truth.altitude_ft;
    now_.lowest_ft = std::min(now_.lowest_ft, truth.altitude_ft);
    now_.bank_deg = std::max(now_.bank_deg, std::abs(truth.roll_deg));
    // The climb away is established when height has grown again.
    if (log.phase != "climb" || truth.altitude_ft < now_.lowest_ft + 20.0) return;
    slowing_ = false;
    ++flown_.flown;
    flown_.recovery_ft = std::fmax(flown_.recovery_ft, now_.break_ft - now_.lowest_ft);
    flown_.from_entry_ft = std::fmax(flown_.from_entry_ft, now_.entry_ft - now_.lowest_ft);
    flown_.greatest_bank_deg = std::max(flown_.greatest_bank_deg, now_.bank_deg);
  }

  StallFlown& flown_;
  Heights now_;
  bool slowing_ = false;
};

/// A card of one stall at the working altitude, with so much air below it that the ground has no say.
TestCard stall_card(const TestCard& card, TestPoint stall) {
  constexpr double kPlenty_ft = 5000.0;
  TestCard out = card;
  out.terrain_ft = card.terrain_ft + card.working_height_ft - kPlenty_ft;
  out.working_height_ft = kPlenty_ft;
  out.floor_ft = 500.0;
  out.clearing_turns = false;
  stall.power = PowerRule::idle;
  stall.repeats = kStalls;
  stall.attempts = 1;
  stall.settle_s = 1.0;
  out.points = {stall};
  return out;
}

SortieConfig stall_config(const AircraftType& type, const Loading& loading, const TestCard& card,
                          const Day& day, const TestPoint& point) {
  constexpr double kLongest_s = 600.0;
  SortieConfig config;
  config.type = type;
  config.loading = loading;
  config.card = stall_card(card, point);
  config.air.day = day;
  config.pilot = pilot_grade("current");
  config.instruments = standard_instruments();
  config.longest_s = kLongest_s;
  config.smooth_twin = false;
  return config;
}

}  // namespace

std::vector<TestPoint> stalls_of(const TestCard& card) {
  std::vector<TestPoint> stalls;
  std::set<std::size_t> settings, stalled;
  std::set<std::pair<std::size_t, double>> seen;
  for (const TestPoint& point : card.points) {
    settings.insert(point.flap_setting);
    if (!point.is_stall()) continue;
    stalled.insert(point.flap_setting);
    if (seen.insert({point.flap_setting, point.entry_rate_ktps}).second) stalls.push_back(point);
  }
  for (const std::size_t setting : settings) {
    if (stalled.contains(setting)) continue;
    TestPoint stall;
    stall.name = "stall";
    stall.flap_setting = setting;
    stall.target = TargetKind::slow_to_break;
    stall.timeout_s = 180.0;
    stalls.push_back(stall);
  }
  return stalls;
}

StallFlown fly_stall(const AircraftType& type, const Loading& loading, const TestCard& card, const Day& day,
                     const TestPoint& point) {
  StallFlown stall;
  stall.flap_deg = type.flaps[point.flap_setting].deflection_rad / math::kDegree;
  stall.entry_rate_ktps = point.entry_rate_ktps;
  try {
    HeightWatch watch(stall);
    Sortie sortie(stall_config(type, loading, card, day, point));
    while (!watch.done() && sortie.tick(watch)) {
    }
    if (!watch.done()) stall.failure = "no climb away; " + sortie.outcome().failure;
  } catch (const std::runtime_error& e) {
    stall.failure = e.what();  // no steady flight up there: the plan says so and is a no
  }
  return stall;
}

double indicated_for(const TestCard& card, const Day& day, double height_ft) {
  const AirColumn column(day);
  const auto reads_ft = [&](double altitude_ft) {
    return indicated_altitude(column.at(altitude_ft * kFoot).pressure_Pa, day.qnh_Pa) / kFoot;
  };
  const double shown_ft = reads_ft(card.terrain_ft + height_ft) - reads_ft(card.terrain_ft);
  const double kept_ft = card.terrain_ft + std::max(height_ft, shown_ft);
  return 10.0 * std::ceil((kept_ft - 0.5) / 10.0);
}

FloorPlan plan_floor(const TestCard& card, const Day& day, std::vector<StallFlown> stalls) {
  FloorPlan floor;
  floor.stalls = std::move(stalls);
  for (const StallFlown& stall : floor.stalls) {
    floor.recovery_ft = std::fmax(floor.recovery_ft, stall.recovery_ft);
    floor.from_entry_ft = std::fmax(floor.from_entry_ft, stall.from_entry_ft);
  }
  floor.measured_need_ft = kLateHand * floor.recovery_ft + kReserve_ft;
  floor.needed_ft = std::fmax(kRecoveredBy_ft, floor.measured_need_ft);
  floor.lowest_entry_ft = card.floor_ft + std::fmax(floor.from_entry_ft, floor.recovery_ft);
  floor.indicated_ft = indicated_for(card, day, card.floor_ft);
  floor.lowest_entry_indicated_ft = indicated_for(card, day, floor.lowest_entry_ft);
  return floor;
}

}  // namespace stallwright::cli
