#include "sim/truth/protection.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/math/units.hpp"
#include "sim/threads/parallel.hpp"
#include "sim/truth/truth_text.hpp"

namespace stallwright {
namespace {

constexpr double kBanks_deg[] = {0.0, 30.0, 45.0};
constexpr double kStep_rad = 0.5 * math::kDegree;
constexpr double kBeyond_rad = 1.0 * math::kDegree;
constexpr double kPoweredBeyond_rad =
    5.0 * math::kDegree;  ///< past the idle stall: beyond, thrust holds the aeroplane up

constexpr const char* kUnwarned = "stalls before the warning";

/// A warning as recorded, and the set it belongs to.
struct Warning {
  std::size_t flap_setting;
  double flap_deg, ratio;
  const TestPoint* point;
};

std::vector<Warning> recorded_warnings(const SetPoints& measured, const TestCard& card) {
  std::vector<Warning> warnings;
  for (const SetPointSet& set : measured.sets)
    for (const SetPoint& p : set.points)
      if (p.name == "warning" && p.found() && p.card_point < card.points.size())
        warnings.push_back(
            {card.points[p.card_point].flap_setting, set.flap_deg, p.ratio, &card.points[p.card_point]});
  return warnings;
}

/// Indicated speed at which a ratio is reached on the way to maximum lift. Below the slowest angle of the sweep, none.
double speed_at_ratio(const std::vector<StaticPoint>& sweep, double ratio) {
  for (std::size_t i = 1; i < sweep.size(); ++i) {
    if (sweep[i].ratio < ratio || sweep[i - 1].ratio > ratio) continue;
    const double share = (ratio - sweep[i - 1].ratio) / (sweep[i].ratio - sweep[i - 1].ratio);
    return (sweep[i - 1].indicated_mps + share * (sweep[i].indicated_mps - sweep[i - 1].indicated_mps)) /
           kKnot;
  }
  return kNone;
}

/// What the sweeps of one flap setting share: where they begin, well below the warning, and where wings have stalled.
struct Angles {
  double from_rad, end_rad;
};

Angles angles_for(const Aircraft& aircraft, double flap_rad, const StillAir& air, double ratio) {
  double from = 10.0 * math::kDegree;
  for (int tries = 0; tries < 8; ++tries, from -= 2.0 * math::kDegree) {
    const auto one = angle_sweep(aircraft, flap_rad, PowerRule::idle, 0.0, air, from, 1.0, 0.0);
    if (!one.empty() && one.front().ratio < ratio - 0.1) break;
  }
  const auto idle = angle_sweep(aircraft, flap_rad, PowerRule::idle, 0.0, air, from, kStep_rad, kBeyond_rad);
  return {from, idle.empty() ? from : maximum_lift(idle).alpha_rad + kPoweredBeyond_rad};
}

/// Where a warning is flown.
struct Flown {
  const Aircraft* aircraft;
  std::size_t flap_setting;
  PowerRule power;
  double bank_deg;
};

ProtectionRow row_for(const Flown& flown, const Warning& warning, const Angles& angles, const StillAir& air) {
  const double flap_rad = flown.aircraft->type.flaps[flown.flap_setting].deflection_rad;
  ProtectionRow row;
  row.flap_deg = flap_rad / math::kDegree;
  row.taught_flap_deg = warning.flap_deg;
  row.power = flown.power;
  row.bank_deg = flown.bank_deg;
  row.mass_kg = flown.aircraft->mass.mass_kg;
  auto sweep = angle_sweep(*flown.aircraft, flap_rad, flown.power, 0.0, air, angles.from_rad, kStep_rad,
                           kBeyond_rad, flown.bank_deg * math::kDegree);
  std::erase_if(sweep, [&](const StaticPoint& p) { return p.alpha_rad > angles.end_rad; });
  // Hanging on the propeller is a steady flight as well, but not the one a step of half a degree leads to.
  const auto jump =
      std::adjacent_find(sweep.begin(), sweep.end(), [](const StaticPoint& a, const StaticPoint& b) {
        return std::abs(b.indicated_mps - a.indicated_mps) > 0.15 * a.indicated_mps;
      });
  if (jump != sweep.end()) sweep.erase(jump + 1, sweep.end());
  if (sweep.size() < 3) {
    row.note = "no steady flight";
    return row;
  }
  const StaticPoint stall = maximum_lift(sweep);
  row.stall_kt = stall.indicated_mps / kKnot;
  row.warning_kt = speed_at_ratio(sweep, warning.ratio);
  if (!std::isfinite(row.warning_kt))
    row.note = warning.ratio > stall.ratio ? kUnwarned : "warns in all slow flight";
  row.margin_kt = row.warning_kt - row.stall_kt;
  return row;
}

const Warning& nearest(const std::vector<Warning>& warnings, double flap_deg) {
  return *std::min_element(warnings.begin(), warnings.end(), [&](const Warning& a, const Warning& b) {
    return std::abs(a.flap_deg - flap_deg) < std::abs(b.flap_deg - flap_deg);
  });
}

std::string described(const ProtectionRow& row) {
  std::string text = row.power == PowerRule::idle ? "at idle" : "with power for level flight";
  text += ", " + flaps_text(row.flap_deg);
  text += row.bank_deg == 0.0 ? ", wings level"
                              : ", in a turn at " + std::to_string(std::lround(row.bank_deg)) + "° of bank";
  return text + ", at " + std::to_string(std::lround(row.mass_kg)) + " kg";
}

std::string sentence_for(const Protection& p) {
  const ProtectionRow* least = p.least();
  if (least == nullptr) return "";
  if (!std::isfinite(least->margin_kt))
    return "as recorded, " + described(*least) + ", the wing " + least->note + ".";
  std::string text = "as recorded, the warning comes " + knots_text(least->margin_kt) + " above the stall " +
                     described(*least);
  const double change = least->margin_kt - p.taught_margin_kt;
  if (std::isfinite(change))
    text += ": " + knots_text(std::abs(change)) + " " + (change < 0.0 ? "closer to the stall" : "earlier") +
            " than in the flight it was taught in";
  return text + ".";
}

}  // namespace

ProtectionRow protected_flight(const Aircraft& aircraft, std::size_t flap_setting, PowerRule power,
                               double bank_deg, double warning_ratio, const StillAir& air) {
  const double flap_rad = aircraft.type.flaps[flap_setting].deflection_rad;
  const Warning warning{flap_setting, flap_rad / math::kDegree, warning_ratio, nullptr};
  return row_for({&aircraft, flap_setting, power, bank_deg}, warning,
                 angles_for(aircraft, flap_rad, air, warning_ratio), air);
}

MassProperties light_mass(const AircraftType& type) {
  Loading loading;
  for (const LoadStation& station : type.mass.stations)
    loading.kg.push_back(loading.kg.empty() ? station.default_kg : 0.0);
  const MassProperties mass = mass_properties(type, loading);
  const CgRange range = envelope_range(type, mass.mass_kg);
  const double cg = std::clamp(mass.cg.x_aft_m, range.forward_m, range.aft_m);
  return cg == mass.cg.x_aft_m ? mass : ballasted(type, mass.mass_kg, cg);
}

MassProperties heavy_mass(const AircraftType& type, double cg_aft_m) {
  const CgRange range = envelope_range(type, type.mass.max_kg);
  return ballasted(type, type.mass.max_kg, std::clamp(cg_aft_m, range.forward_m, range.aft_m));
}

void heed_protection(Judgement& judgement, const Protection& protection, const TestCard& card) {
  const ProtectionRow* least = protection.least();
  if (judgement.verdict != Verdict::keep || least == nullptr || least->margin_kt >= card.wanted_margin_kt)
    return;
  judgement.verdict = Verdict::fly_again;
  judgement.fly_again = {"warning"};
  judgement.reason = protection.sentence;
  if (!judgement.reason.empty() && judgement.reason.back() == '.') judgement.reason.pop_back();
  judgement.reason +=
      "; the card wants " + knots_text(card.wanted_margin_kt) + ": put the warning at a faster speed";
}

const ProtectionRow* Protection::least() const {
  const ProtectionRow* found = nullptr;
  for (const ProtectionRow& row : rows) {
    if (!row.in_use) continue;
    if (row.note == kUnwarned) return &row;
    if (std::isfinite(row.margin_kt) && (found == nullptr || row.margin_kt < found->margin_kt)) found = &row;
  }
  return found;
}

Protection protection(const Aircraft& aircraft, std::uint64_t airframe_seed, const SetPoints& measured,
                      const TestCard& card, const StillAir& air) {
  Protection out;
  const std::vector<Warning> warnings = recorded_warnings(measured, card);
  if (warnings.empty()) return out;
  const AircraftType& type = aircraft.type;
  const Aircraft light = make_aircraft(type, light_mass(type), airframe_seed);
  const Aircraft heavy = make_aircraft(type, heavy_mass(type, aircraft.mass.cg.x_aft_m), airframe_seed);
  std::vector<Flown> flown;
  std::vector<Angles> angles;
  std::vector<Warning> taught;
  for (std::size_t setting = 0; setting < type.flaps.size(); ++setting) {
    const double flap_rad = type.flaps[setting].deflection_rad;
    taught.push_back(nearest(warnings, flap_rad / math::kDegree));
    angles.push_back(angles_for(aircraft, flap_rad, air, taught.back().ratio));
    for (const PowerRule power : {PowerRule::idle, PowerRule::level})
      for (const double bank : kBanks_deg)
        for (const Aircraft* loaded : {&light, &heavy}) flown.push_back({loaded, setting, power, bank});
  }
  out.rows.resize(flown.size());
  for_each_index(static_cast<int>(flown.size()), 0, [&](int k) {
    const Flown& f = flown[static_cast<std::size_t>(k)];
    ProtectionRow row = row_for(f, taught[f.flap_setting], angles[f.flap_setting], air);
    row.heavy = f.aircraft == &heavy;
    row.in_use =
        taught[f.flap_setting].flap_setting == f.flap_setting && f.bank_deg <= card.protected_bank_deg;
    out.rows[static_cast<std::size_t>(k)] = row;
  });
  const Warning& first = warnings.front();
  const PowerRule power = first.point->power == PowerRule::idle ? PowerRule::idle : PowerRule::level;
  out.taught_margin_kt =
      row_for({&aircraft, first.flap_setting, power, 0.0}, first, angles[first.flap_setting], air).margin_kt;
  out.sentence = sentence_for(out);
  return out;
}

}  // namespace stallwright
