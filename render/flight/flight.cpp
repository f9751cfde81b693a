#include "render/flight/flight.hpp"

#include <algorithm>
#include <cmath>

#include "aircraft/input_error.hpp"
#include "aircraft/math/table.hpp"
#include "aircraft/math/units.hpp"
#include "sim/truth/ready_sortie.hpp"

namespace stallwright {
namespace {

/// Mean over the wing of how far each section's flow has let go.
double separated_share(const AirframeState<double>& state) {
  double attached = 0.0;
  for (const double x : state.separation) attached += x / static_cast<double>(state.separation.size());
  return std::clamp(1.0 - attached, 0.0, 1.0);
}

class Rows : public SortieSink {
 public:
  Rows(SortieFolder* folder, SetPointsSoFar& so_far, std::string& trouble)
      : folder_(folder), so_far_(so_far), trouble_(trouble) {}
  void row(const LogRow& log, const TruthRow& truth) override {
    so_far_.add(log);
    if (!trouble_.empty()) return;
    try {
      folder_->row(log, truth);
    } catch (const std::exception& e) {
      trouble_ = e.what();
    }
  }

 private:
  SortieFolder* folder_;
  SetPointsSoFar& so_far_;
  std::string& trouble_;
};

}  // namespace

Flight::Flight(const FlightOrder& order)
    : flown_(order.flown),
      sortie_((require_new_folder(order.folder), ready_sortie(order.flown.config))),
      folder_path_(order.folder),
      set_points_(order.flown.config.card, order.flown.config.instruments, order.wait_for_set_points),
      first_hands_(sortie_.first_hands()),
      arm_m_(head_place(order.flown.config.type, order.flown.config.loading)) {
  flown_.outcome.entered_mass_kg = sortie_.outcome().entered_mass_kg;
  folder_ = std::make_unique<SortieFolder>(order.folder, order.sources, flown_);
  if (flown_.taught) set_points_.start_with(flown_.taught->set_points);
  shown_.set_points = set_points_.list();
  shown_.rigid = sortie_.state().rigid;
  shown_.controls = sortie_.controls();
  shown_.altimeter_setting_hpa = flown_.config.air.day.qnh_Pa / 100.0;
}

void Flight::keep(const Hands& hands) {
  if (!trouble_.empty()) return;
  try {
    folder_->hands(sortie_.time_s(), hands);
  } catch (const std::exception& e) {
    trouble_ = e.what();
  }
}

bool Flight::tick(const Hands& given) {
  if (over_) return false;
  const Hands hands = as_recorded(given);
  Rows rows(folder_.get(), set_points_, trouble_);
  const double before_s = sortie_.time_s();
  if (sortie_.director().done()) {
    close(sortie_.outcome());
    return false;
  }
  keep(hands);
  const bool goes_on = sortie_.tick(rows, hands);
  if (sortie_.time_s() > before_s) update();
  if (!goes_on) close(sortie_.outcome());
  return goes_on;
}

void Flight::leave() {
  if (over_) return;
  SortieOutcome outcome = sortie_.outcome();
  if (!outcome.finished && outcome.failure.empty()) outcome.failure = "the pilot ended the flight";
  close(outcome);
}

void Flight::close(const SortieOutcome& outcome) {
  over_ = true;
  shown_.airborne = false;
  shown_.done = outcome.finished;
  shown_.failure = outcome.failure;
  if (!trouble_.empty()) return;
  try {
    folder_->close(outcome);
  } catch (const std::exception& e) {
    trouble_ = e.what();
  }
}

/// Attitude and power that hold what is asked for, as somebody who knows the aeroplane remembers them.
void Flight::remember_usual(const CrewTask& asked) {
  shown_.usual_pitch_deg = shown_.usual_throttle = kUnset;
  if (asked.remembered == nullptr || asked.manner != CrewTask::Manner::hold || asked.full_power) return;
  const SteadyCurve& curve = *asked.remembered;
  shown_.usual_pitch_deg =
      math::interpolate(curve.speed_mps, curve.pitch_rad, asked.speed_mps) / math::kDegree;
  shown_.usual_throttle = math::interpolate(curve.speed_mps, curve.throttle, asked.speed_mps);
}

void Flight::update() {
  const TickSeen& seen = sortie_.seen();
  const FlightState<double>& state = sortie_.state();
  const Director& director = sortie_.director();
  const double flap_rad = state.airframe.flap_rad;
  seat_ = advance(seat_,
                  acceleration_at(seen.specific_force_B_mps2, state.rigid.rate_B_radps,
                                  seen.angular_acceleration_B_radps2, arm_m_),
                  kTick_s);
  horn_ = advance(horn_, flown_.config.type, seen.alpha_rad, flap_rad, seen.true_airspeed_mps, kTick_s);
  const Standing standing = director.standing(sortie_.time_s(), seen.readings);
  shown_.time_s = sortie_.time_s();
  shown_.rigid = state.rigid;
  shown_.readings = seen.readings;
  shown_.needles = advance(shown_.needles, seen.readings, kTick_s);
  shown_.controls = sortie_.controls();
  shown_.marks = director.marks();
  shown_.asked = seen.asked;
  remember_usual(seen.asked);
  shown_.asked.remembered = nullptr;  // belongs to the sortie; a value must not point into it
  shown_.propeller_radps = state.airframe.propeller_radps;
  shown_.power_share = state.airframe.throttle;
  shown_.airspeed_mps = seen.true_airspeed_mps;
  shown_.seat_shake_mps2 = seat_.shake_mps2;
  shown_.buffet_g = seat_.buffet_g() * buffet_share(separated_share(state.airframe));
  shown_.horn = horn_.sounds;
  shown_.tone = seen.tone;
  shown_.out_of_band = standing.out_of_band;
  shown_.settled_share = standing.settled_share;
  shown_.record_share = standing.record_share;
  shown_.turned_out = standing.turned_out;
  shown_.refusal = standing.refusal;
  shown_.events = director.events().size();
  if (!director.events().empty()) shown_.last_event = director.events().back();
  shown_.set_points = set_points_.list();
}

}  // namespace stallwright
