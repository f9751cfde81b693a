#include "sim/lanes/lane_flight.hpp"

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <exception>
#include <optional>
#include <vector>

namespace stallwright {
namespace {

using One = LaneGroup<double>;

/// Air of one strength at every height, the one like the other in all but that and its name.
bool same_but_for_strength(AirPreset a, const AirPreset& b) {
  if (a.severity || b.severity) return false;
  a.name = b.name;
  a.sigma_mps = b.sigma_mps;
  return a == b;
}

/// The numbers of a group, and single lanes of them seen as plain values.
class LaneNumbers {
 public:
  explicit LaneNumbers(int lanes) : lanes_(static_cast<std::size_t>(lanes)) {
    const std::size_t count = sizeof(One) / sizeof(double) * lanes_;
    memory_.resize(count + kAlign);
    const auto at = reinterpret_cast<std::uintptr_t>(memory_.data());
    first_ = memory_.data() + (kAlign * 8 - at % (kAlign * 8)) % (kAlign * 8) / 8;
  }
  double* data() { return first_; }

  template <class Part>
  void put(std::size_t offset, std::size_t lane, const Part& part) {
    const auto numbers = std::bit_cast<std::array<double, sizeof(Part) / sizeof(double)>>(part);
    double* to = first_ + offset / sizeof(double) * lanes_ + lane;
    for (std::size_t k = 0; k < numbers.size(); ++k) to[k * lanes_] = numbers[k];
  }
  template <class Part>
  void get(std::size_t offset, std::size_t lane, Part& part) const {
    std::array<double, sizeof(Part) / sizeof(double)> numbers;
    const double* from = first_ + offset / sizeof(double) * lanes_ + lane;
    for (std::size_t k = 0; k < numbers.size(); ++k) numbers[k] = from[k * lanes_];
    part = std::bit_cast<Part>(numbers);
  }

 private:
  static constexpr std::size_t kAlign = 8;  ///< doubles: a cache line, and the widest vector
  std::size_t lanes_;
  std::vector<double> memory_;
  double* first_ = nullptr;
};

class Lanes {
 public:
  Lanes(const LaneKernel& kernel, LaneCrew& crew)
      : kernel_(kernel),
        crew_(crew),
        numbers_(kernel.lanes),
        seats_(static_cast<std::size_t>(kernel.lanes)) {}

  void fly() {
    for (;;) {
      if (crew_.stopped()) return;
      take_seats();
      if (leader_ == nullptr) return;
      tick();
    }
  }

 private:
  struct Seat {
    SeatedSortie it;
    Travel travel;  ///< in air that is brought
    bool taken() const { return it.sortie != nullptr; }
  };

  /// Ends what is done and fills empty seats, as far as the next sortie may share the lanes; when nobody is left, the next
  /// one makes a new scene.
  void take_seats() {
    bool any = false;
    for (Seat& seat : seats_) {
      while (seat.taken() && !seat.it.sortie->ready()) leave(seat, "");
      if (!seat.taken()) seat_next(seat);
      any = any || seat.taken();
    }
    if (any) return;
    leader_ = nullptr;
    if (waiting_.sortie) take_seats();
  }

  void seat_next(Seat& seat) {
    while (!seat.taken()) {
      if (!waiting_.sortie) waiting_ = crew_.next();
      if (!waiting_.sortie) return;
      if (leader_ == nullptr) set_scene();
      if (!may_share(*waiting_.sortie)) return;
      seat.it = std::move(waiting_);
      waiting_ = {};
      if (seat.it.sortie->ready())
        board(index_of(seat), *seat.it.sortie);
      else
        leave(seat, "");
    }
  }

  /// The air, instruments and aeroplane of the sortie that waits become those of the lanes. Kept by copy: it will leave.
  void set_scene() {
    const Sortie::Aboard first = waiting_.sortie->aboard();
    leader_ = &first.known;
    air_ = first.air;
    preset_ = first.preset;
    scene_ = {&first.known.aircraft, &air_, first.dryden_alone,
              first.dryden_alone && uniform_sigma(air_.intensity).has_value()};
  }

  bool may_share(const Sortie& sortie) const {
    const Sortie::Aboard a = sortie.aboard();
    if (&a.known != leader_) return false;
    return scene_.own_sigma ? a.dryden_alone && same_but_for_strength(a.preset, preset_)
                            : a.preset == preset_;
  }

  void board(std::size_t lane, Sortie& sortie) {
    const Sortie::Aboard a = sortie.aboard();
    One start{};
    start.flight = sortie.flight();
    start.controls = sortie.controls();
    if (const auto* dryden = std::get_if<DrydenState<double>>(&a.turbulence)) start.turbulence = *dryden;
    start.shake = a.shake;
    start.key = random::noise_key(a.key);
    start.errors = a.errors;
    start.grade = a.grade;
    start.sigma_mps = uniform_sigma(a.air.intensity).value_or(0.0);
    start.instruments = a.instruments;
    numbers_.put(0, lane, start);
  }

  void leave(Seat& seat, const std::string& failure) {
    crew_.ended(seat.it, failure);
    seat.it = {};
  }

  std::size_t index_of(const Seat& seat) const { return static_cast<std::size_t>(&seat - seats_.data()); }

  /// Does one thing for every sortie under way; an exception ends that sortie alone.
  template <class Do>
  void each(Do&& act) {
    for (std::size_t lane = 0; lane < seats_.size(); ++lane) {
      Seat& seat = seats_[lane];
      if (!seat.taken()) continue;
      try {
        act(lane, seat, *seat.it.sortie);
      } catch (const std::exception& e) {
        leave(seat, e.what());
      }
    }
  }

  /// What the kernel does not make: thermals, discrete gusts, other turbulence.
  void bring_air(std::size_t lane, Seat& seat, const Sortie& sortie) {
    if (scene_.makes_air) return;
    const AirSample<double> air = sortie.air();
    seat.travel = sortie.travel_in(air);
    numbers_.put(offsetof(One, air), lane, air);
  }

  Moment moment(std::size_t lane, Sortie& sortie) const {
    Moment now;
    numbers_.get(offsetof(One, flight), lane, sortie.flight());
    numbers_.get(offsetof(One, air), lane, now.air);
    numbers_.get(offsetof(One, felt), lane, now.felt);
    numbers_.get(offsetof(One, sensed), lane, now.sensed);
    return now;
  }

  void act(std::size_t lane, const Seat& seat, Sortie& sortie) {
    Readings<double> readings;
    double attached = 0.0;
    numbers_.get(offsetof(One, readings), lane, readings);
    numbers_.get(offsetof(One, attached_root), lane, attached);
    sortie.act(
        readings, attached, [&] { return moment(lane, sortie); }, *seat.it.sink);
    numbers_.put(offsetof(One, controls), lane, sortie.controls());
  }

  void tick() {
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) { bring_air(lane, seat, sortie); });
    kernel_.observe(scene_, numbers_.data());
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) { act(lane, seat, sortie); });
    kernel_.first_step(scene_, numbers_.data());
    if (!scene_.makes_air)
      each([&](std::size_t lane, Seat& seat, Sortie& sortie) {
        numbers_.get(offsetof(One, flight), lane, sortie.flight().rigid);
        sortie.follow(seat.travel, 0);
        bring_air(lane, seat, sortie);
      });
    kernel_.second_step(scene_, numbers_.data());
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) {
      double unsound = 0.0;
      numbers_.get(offsetof(One, unsound), lane, unsound);
      numbers_.get(offsetof(One, flight), lane, sortie.flight().rigid);
      if (!scene_.makes_air) sortie.follow(seat.travel, 1);
      sortie.close_tick(unsound == 0.0);
    });
  }

  const LaneKernel& kernel_;
  LaneCrew& crew_;
  LaneNumbers numbers_;
  std::vector<Seat> seats_;
  SeatedSortie waiting_;
  const KnownAircraft* leader_ = nullptr;  ///< of the sorties in the lanes; none: nobody is there
  SortieAir air_;
  AirPreset preset_;
  LaneScene scene_;
};

}  // namespace

void fly_in_lanes(const LaneKernel& kernel, LaneCrew& crew) { Lanes(kernel, crew).fly(); }

}  // namespace stallwright
