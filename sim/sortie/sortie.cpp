#include "sim/sortie/sortie.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <stdexcept>

#include "aircraft/math/units.hpp"

namespace stallwright {
namespace {

static_assert(kTick_s == kStepsPerTick * kStep_s);

/// FNV-1a over the bytes of every number of the state: two flights that agree here agree to the last bit.
std::string state_hash(const FlightState<double>& state) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (double value : std::bit_cast<AsArray<double, FlightState<double>>>(state)) {
    const auto bits = std::bit_cast<std::uint64_t>(value);
    for (int byte = 0; byte < 8; ++byte) hash = (hash ^ ((bits >> (8 * byte)) & 0xffu)) * 0x100000001b3u;
  }
  static constexpr char kHex[] = "0123456789abcdef";
  std::string text(16, '0');
  for (std::size_t k = 0; k < 16; ++k) text[15 - k] = kHex[(hash >> (4 * k)) & 0xfu];
  return text;
}

bool finite(const FlightState<double>& state) {
  for (double value : std::bit_cast<AsArray<double, FlightState<double>>>(state))
    if (!std::isfinite(value)) return false;
  return true;
}

double mean_of(const std::array<double, kStrips>& x, std::size_t first, std::size_t last) {
  double sum = 0.0;
  for (std::size_t i = first; i < last; ++i) sum += x[i];
  return sum / static_cast<double>(last - first);
}

/// Entry rates and early releases of the stalls to come, drawn from the pilot's row.
void draw_stall_habits(const PilotGrade& grade, const random::Key& key, Director::Setup& setup) {
  const random::Stream stream = key.stream(random::Channel::kPilotAim);
  for (std::uint64_t k = 0; k < 32; ++k) {
    const double factor = 1.0 + grade.entry_rate_bias + grade.entry_rate_sd * random::normal(stream, 2 * k);
    setup.entry_rate_factor.push_back(std::clamp(factor, 0.4, 3.0));
    setup.early_release.push_back(random::uniform(key.stream(random::Channel::kPilotReaction), k) <
                                  grade.early_release);
  }
}

Director::Setup director_setup(const SortieConfig& config, double entered_mass_kg) {
  Director::Setup setup;
  setup.card = config.card;
  setup.type = config.type;
  setup.mass_kg = entered_mass_kg;
  setup.qnh_terrain_m = config.card.terrain_ft * kFoot;
  setup.button_delay_s = config.pilot.button_delay_s;
  setup.reaction_s = config.pilot.break_reaction_s;
  setup.by_hand = config.by_hand;
  draw_stall_habits(config.pilot, {config.seed, config.sortie}, setup);
  return setup;
}

}  // namespace

SystematicErrors<double> drawn_errors(const SortieConfig& config) {
  SystematicErrors<double> errors = draw_systematic_errors(config.instruments, {config.seed, config.sortie});
  if (!config.instrument_seed) return errors;
  const double mass_share = errors.mass_share;
  errors = draw_systematic_errors(config.instruments, {*config.instrument_seed, 0});
  errors.mass_share = mass_share;
  return errors;
}

Sortie::Sortie(const SortieConfig& config, std::shared_ptr<const KnownAircraft> known)
    : config_(config),
      key_{config.seed, config.sortie},
      known_(std::move(known)),
      here_{AirColumn(config.air.day),      config.air.wind,         config.air.intensity(),
            config.card.terrain_ft * kFoot, known_->aircraft.span_m, known_->aircraft.mean_chord_m},
      pilot_(config.pilot, known_->feel, config.seed, config.sortie),
      director_(director_setup(config, entered_mass(known_->aircraft.mass.mass_kg, drawn_errors(config)))),
      errors_(drawn_errors(config)),
      entered_mass_kg_(entered_mass(known_->aircraft.mass.mass_kg, errors_)),
      sampled_(sample_grade(config.instruments)) {
  const double altitude = here_.terrain_m + config.card.working_height_ft * kFoot;
  const double density = here_.column.at(altitude).density_kgpm3;
  const double to_true = math::sqrt(1.225 / density);

  const double start_mps = std::min(
      point_speeds(config.card.points.front(), config.type, entered_mass_kg_).set_up_kt() * kKnot * to_true,
      known_->fastest_mps);
  const Trim trim = known_->starts->level(known_->aircraft, start_mps, altitude, density);
  if (!trim.converged || !trim.within_stops)
    throw std::runtime_error("this aeroplane cannot hold level flight at the card's height and first speed");
  state_ = trim.state;
  controls_ = trim.controls;
  const Vec3<double> wind = wind_velocity_E(config.air.wind, altitude - here_.terrain_m);
  state_.rigid.velocity_B_mps += transpose(rotation_EB(state_.rigid.attitude_EB)) * wind;

  if (config.air.convection)
    if (const MixedLayer layer = mixed_layer(*config.air.convection); layer.scale_mps > 0.0)
      thermals_.emplace(layer, key_, wind);
  const TurbulenceScales<double> scales = turbulence_scales(here_.intensity, altitude - here_.terrain_m);
  turbulence_ = stationary_start(config.air.turbulence, scales, known_->aircraft.span_m, key_);
  gusts_.resize(config.air.gusts.size());
  // Carried along by the gust it starts in, as a flight under way would be, instead of struck by it.
  state_.rigid.velocity_B_mps += gust(turbulence_, scales, known_->aircraft.span_m).v_B_mps;
  const AirSample<double> first = air();
  instruments_ =
      settled_instruments(config_.type, errors_,
                          sensed_truth(here_, state_, first,
                                       felt(known_->aircraft, state_, first,
                                            flight_derivative(known_->aircraft, state_, controls_, first)),
                                       controls_));
}

AirSample<double> Sortie::air() const {
  const double height = height_above_ground(here_, state_.rigid);
  const Gust<double> now = gust(turbulence_, turbulence_scales(here_.intensity, height), here_.span_m);
  AirSample<double> sample = air_sample(here_, state_.rigid, now, shake_);
  if (thermals_) add_thermals(height, sample);
  if (!gusts_.empty()) add_discrete_gusts(sample);
  return sample;
}

/// An updraft and its slopes to the nose and to the right, as gust and gust rates (dryden.hpp says which is which).
void Sortie::add_thermals(double height_m, AirSample<double>& air) const {
  const Updraft u = thermals_->at(state_.rigid.position_E_m, height_m, time_s());
  const auto to_body = transpose(rotation_EB(state_.rigid.attitude_EB));
  air.gust_B_mps += to_body * Vec3<double>{0.0, 0.0, -u.up_mps};
  const Vec3<double> down_slope = to_body * Vec3<double>{-u.per_m_north, -u.per_m_east, 0.0};
  air.gust_rate_B_radps += Vec3<double>{down_slope.y, -down_slope.x, 0.0};
}

void Sortie::add_discrete_gusts(AirSample<double>& air) const {
  const auto to_body = transpose(rotation_EB(state_.rigid.attitude_EB));
  for (std::size_t i = 0; i < gusts_.size(); ++i) {
    const Gust<double> g = gust(config_.air.gusts[i], gusts_[i], to_body);
    air.gust_B_mps += g.v_B_mps;
    air.gust_rate_B_radps += g.omega_B_radps;
  }
}

/// Turbulence and discrete gusts one step on; the heading is that at the end of the step.
void Sortie::step_gusts(double height_m, double airspeed_mps, std::uint64_t step) {
  turbulence_ = advance(turbulence_, turbulence_scales(here_.intensity, height_m), known_->aircraft.span_m,
                        airspeed_mps, kStep_s, key_, step);
  const Vec3<double> forward_E = rotation_EB(state_.rigid.attitude_EB).column(0);
  const double begun_s = kStep_s * static_cast<double>(step);
  for (std::size_t i = 0; i < gusts_.size(); ++i)
    gusts_[i] = advance(config_.air.gusts[i], gusts_[i], begun_s, forward_E, airspeed_mps, kStep_s);
}

TruthRow Sortie::truth_row(const Moment& moment) const {
  const auto& [air, felt, sensed] = moment;
  const Vec3<double>& v = sensed.flow.velocity_B_mps;
  const double speed = norm(v);
  const auto& x = state_.airframe.separation;
  TruthRow row;
  row.t_s = as_printed(time_s(), 2);
  row.alpha_deg = math::atan2(v.z, v.x) / math::kDegree;
  row.beta_deg = math::asin(std::clamp(v.y / std::max(speed, 1.0), -1.0, 1.0)) / math::kDegree;
  row.tas_kt = speed / kKnot;
  row.altitude_ft = sensed.altitude_m / kFoot;
  row.load_factor = norm(felt.specific_force_B_mps2) / kStandardGravity_mps2;
  const double area = known_->aircraft.wing_area_m2;
  row.lift_coefficient = known_->aircraft.mass.mass_kg * norm(felt.specific_force_B_mps2) /
                         (0.5 * air.density_kgpm3 * speed * speed * area);
  const StaticReadings<double> ideal = static_readings(config_.type, sensed.flow);
  row.static_ratio = ideal.probe_ratio;
  row.ideal_impact_pa = ideal.impact_pressure_pa;
  row.ideal_forward_mps2 = felt.specific_force_B_mps2.x;
  row.ideal_right_mps2 = felt.specific_force_B_mps2.y;
  row.ideal_down_mps2 = felt.specific_force_B_mps2.z;
  row.attached_root = attached_root(state_.airframe);
  row.attached_left = mean_of(x, 0, kWingStrips / 2);
  row.attached_right = mean_of(x, kWingStrips / 2, kWingStrips);
  row.gust_forward_mps = air.gust_B_mps.x;
  row.gust_right_mps = air.gust_B_mps.y;
  row.gust_down_mps = air.gust_B_mps.z;
  row.climb_mps = felt.climb_mps;
  row.roll_deg = sensed.attitude_rad.x / math::kDegree;
  row.pitch_deg = sensed.attitude_rad.y / math::kDegree;
  row.thrust_n = felt.thrust_n;
  if (tick_ % 50 == 0) row.state_hash = state_hash(state_);
  return row;
}

/// Starts and ends the twin with the record, and writes down what ideal instruments aboard it show.
void Sortie::follow_with_twin(const AirSample<double>& air, TruthRow& row) {
  // A card that verifies makes no set points whose errors could be taken apart.
  if (!director_.marks().recording || config_.card.verifies || !config_.smooth_twin) {
    twin_.end();
    return;
  }
  if (!twin_.flying()) twin_.begin(state_, air);
  const AirSample<double> smooth = SmoothTwin::without_gusts(air);
  const FlightState<double>& twin = twin_.state();
  const FlightDerivative<double> now = flight_derivative(known_->aircraft, twin, controls_, smooth);
  const RelativeFlow<double> flow = relative_flow(twin.rigid, smooth);
  const SensedFlow<double> sensed{flow.velocity_B,
                                  probe_velocity(known_->aircraft, flow, now.loads.circulation_m2ps),
                                  air.density_kgpm3, here_.column.at(-twin.rigid.position_E_m.z).pressure_Pa};
  const StaticReadings<double> readings = static_readings(config_.type, sensed);
  row.smooth_ratio = readings.probe_ratio;
  row.smooth_impact_pa = readings.impact_pressure_pa;
  row.smooth_forward_mps2 = now.specific_force_B_mps2.x;
  row.smooth_right_mps2 = now.specific_force_B_mps2.y;
  row.smooth_down_mps2 = now.specific_force_B_mps2.z;
  row.smooth_thrust_n = now.loads.thrust_n;
}

Hands Sortie::first_hands() const {
  Hands hands;
  hands.stick_aft = controls_.stick_aft;
  hands.stick_right = controls_.stick_right;
  hands.pedal_right = controls_.pedal_right;
  hands.throttle = controls_.throttle;
  return as_recorded(hands);
}

bool Sortie::ready() {
  if (director_.done() || !failure_.empty()) return false;
  if (time_s() < config_.longest_s) return true;
  failure_kind_ = SortieOutcome::Failure::time_limit;
  failure_ =
      "the card was not finished within " + std::to_string(static_cast<long>(config_.longest_s)) + " s";
  return false;
}

CrewTask Sortie::act(const Readings<double>& readings, double attached, const std::function<Moment()>& moment,
                     SortieSink& sink, const Hands& hands) {
  unit_ = advance(config_.unit, unit_, readings, kTick_s);
  CrewTask task = director_.step(time_s(), readings, unit_.tone, hands.presses);
  task.remembered = known_->remembered(director_.flap_setting(), task.power, task.descent_mps);
  if (sink.wants(director_.marks(), attached)) {
    const Moment now = moment();
    TruthRow truth = truth_row(now);
    follow_with_twin(now.air, truth);
    round_as_printed(truth);
    LogRow log = log_row(time_s(), readings, director_.marks(), entered_mass_kg_);
    log.tone = unit_.tone ? 1 : 0;
    sink.row(log, truth);
  } else {
    twin_.end();
  }
  if (config_.by_hand && hands.feet_assisted && director_.marks().recording)
    director_.remark(time_s(), "feet assisted", "no pedals: the program kept the ball in the middle");
  if (config_.by_hand)
    controls_ = {
        hands.stick_aft, hands.stick_right, hands.pedal_right, hands.throttle,
        config_.type.flaps[std::min(hands.flap_setting, config_.type.flaps.size() - 1)].deflection_rad};
  else
    controls_ = pilot_.step(crew_, task, readings, time_s());
  return task;
}

Sortie::Aboard Sortie::aboard() const {
  const bool alone = std::holds_alternative<DrydenState<double>>(turbulence_) && !thermals_ && gusts_.empty();
  return {*known_, here_, sampled_, config_.air, turbulence_, shake_, instruments_, errors_, key_, alone};
}

Travel Sortie::travel_in(const AirSample<double>& air) const {
  return {norm(relative_flow(state_.rigid, air).velocity_B), height_above_ground(here_, state_.rigid)};
}

void Sortie::follow(const Travel& travel, int step_of_tick) {
  const std::uint64_t step = tick_ * kStepsPerTick + static_cast<std::uint64_t>(step_of_tick);
  step_gusts(travel.height_m, travel.airspeed_mps, step);
  shake_ = advance_shake(shake_, travel.airspeed_mps, known_->aircraft.mean_chord_m, kStep_s,
                         shake_noise(key_, step));
}

bool Sortie::close_tick(bool finite) {
  ++tick_;
  if (!finite) {
    failure_kind_ = SortieOutcome::Failure::not_finite;
    failure_ = "the state was no longer finite at " + std::to_string(time_s()) + " s (last stick aft " +
               std::to_string(controls_.stick_aft) + ", throttle " + std::to_string(controls_.throttle) + ")";
  } else if (state_.rigid.position_E_m.z > -here_.terrain_m) {
    failure_kind_ = SortieOutcome::Failure::met_the_ground;
    failure_ = "the aeroplane met the ground at " + std::to_string(time_s()) + " s";
  }
  return failure_.empty();
}

bool Sortie::tick(SortieSink& sink, const Hands& hands) {
  if (!ready()) return false;
  AirSample<double> met = air();
  const FlightDerivative<double> now = flight_derivative(known_->aircraft, state_, controls_, met);
  const Felt<double> felt_now = felt(known_->aircraft, state_, met, now);
  const Moment moment{met, felt_now, sensed_truth(here_, state_, met, felt_now, controls_)};
  const Sensed<double> sensed =
      advance(config_.type, sampled_, errors_, sensor_noise(key_, tick_), instruments_, moment.sensed, tick_);
  instruments_ = sensed.state;
  const CrewTask task = act(
      sensed.readings, attached_root(state_.airframe), [&] { return moment; }, sink, hands);
  const Vec3<double>& v = moment.sensed.flow.velocity_B_mps;
  seen_ = {sensed.readings,
           task,
           felt_now.specific_force_B_mps2,
           felt_now.angular_acceleration_B_radps2,
           math::atan2(v.z, v.x),
           norm(v),
           unit_.tone};
  for (int k = 0; k < kStepsPerTick; ++k) {
    if (k > 0) met = air();
    const Travel travel = travel_in(met);
    state_ = k == 0 ? flight_step_from(now.rate, known_->aircraft, state_, controls_, met)
                    : flight_step(known_->aircraft, state_, controls_, met);
    if (twin_.flying()) twin_.step(known_->aircraft, controls_, met, state_);
    follow(travel, k);
  }
  return close_tick(finite(state_));
}

SortieOutcome Sortie::outcome() const {
  SortieOutcome out;
  out.finished = director_.done();
  out.failure = failure_;
  out.failure_kind = failure_kind_;
  out.ended_s = time_s();
  out.entered_mass_kg = entered_mass_kg_;
  out.events = director_.events();
  out.tallies = director_.tallies();
  out.errors = errors_;
  return out;
}

SortieOutcome fly_sortie(const SortieConfig& config, SortieSink& sink) {
  Sortie sortie(config);
  while (sortie.tick(sink)) {
  }
  return sortie.outcome();
}

}  // namespace stallwright
