#include "sim/cli/plan_floor.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "aircraft/math/angle.hpp"
#include "aircraft/math/units.hpp"
#include "sim/sortie/sortie.hpp"
#include "sim/threads/parallel.hpp"

namespace stallwright::cli {
namespace {

constexpr int kHands = 3;

/// Heights of one stall, from the truth: an altimeter lags.
class HeightWatch : public SortieSink {
 public:
  void row(const LogRow& log, const TruthRow& truth) override {
    if (log.phase == "slow" && !(entry_ft_ == entry_ft_)) entry_ft_ = truth.altitude_ft;
    const bool stalled = log.phase == "broken" || log.phase == "recover" || log.phase == "climb";
    if (!stalled) return;
    if (!(break_ft_ == break_ft_)) break_ft_ = lowest_ft_ = truth.altitude_ft;
    lowest_ft_ = std::min(lowest_ft_, truth.altitude_ft);
    bank_deg_ = std::max(bank_deg_, std::abs(truth.roll_deg));
    if (log.phase == "climb" && !(climb_s_ == climb_s_)) climb_s_ = log.t_s;
    // The climb is established when the height has grown again.
    away_ = climb_s_ == climb_s_ && truth.altitude_ft > lowest_ft_ + 20.0;
  }
  bool away() const { return away_; }
  double recovery_ft() const { return break_ft_ - lowest_ft_; }
  double from_entry_ft() const { return entry_ft_ - lowest_ft_; }
  double bank_deg() const { return bank_deg_; }

 private:
  double entry_ft_ = kUnset, break_ft_ = kUnset, lowest_ft_ = kUnset, climb_s_ = kUnset, bank_deg_ = 0.0;
  bool away_ = false;
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
  stall.repeats = stall.attempts = 1;
  out.points = {stall};
  return out;
}

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

void fly(SortieConfig config, StallFlown& flown) {
  constexpr double kLongest_s = 400.0;
  config.longest_s = kLongest_s;
  for (int hand = 1; hand <= kHands; ++hand) {
    config.seed = static_cast<std::uint64_t>(hand);
    HeightWatch watch;
    Sortie sortie(config);
    while (!watch.away() && sortie.tick(watch)) {
    }
    if (!watch.away()) {
      flown.failure = sortie.outcome().failure.empty() ? "no climb away" : sortie.outcome().failure;
      return;
    }
    ++flown.flown;
    flown.recovery_ft = std::fmax(flown.recovery_ft, watch.recovery_ft());
    flown.from_entry_ft = std::fmax(flown.from_entry_ft, watch.from_entry_ft());
    flown.greatest_bank_deg = std::max(flown.greatest_bank_deg, watch.bank_deg());
  }
}

}  // namespace

std::vector<StallFlown> fly_stalls(const AircraftType& type, const Loading& loading, const TestCard& card,
                                   const Day& day) {
  const std::vector<TestPoint> points = stalls_of(card);
  std::vector<StallFlown> flown(points.size());
  for_each_index(static_cast<int>(points.size()), 0, [&](int k) {
    const TestPoint& point = points[static_cast<std::size_t>(k)];
    StallFlown& stall = flown[static_cast<std::size_t>(k)];
    stall.flap_deg = type.flaps[point.flap_setting].deflection_rad / math::kDegree;
    stall.entry_rate_ktps = point.entry_rate_ktps;
    SortieConfig config;
    config.type = type;
    config.loading = loading;
    config.card = stall_card(card, point);
    config.air.day = day;
    config.pilot = pilot_grade("current");
    config.instruments = standard_instruments();
    try {
      fly(config, stall);
    } catch (const std::runtime_error& e) {
      stall.failure = e.what();  // no steady flight up there: the plan says so and is a no
    }
  });
  return flown;
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
  floor.lowest_entry_ft = card.floor_ft + floor.from_entry_ft;
  floor.indicated_ft = indicated_for(card, day, card.floor_ft);
  floor.lowest_entry_indicated_ft = indicated_for(card, day, floor.lowest_entry_ft);
  return floor;
}

}  // namespace stallwright::cli
