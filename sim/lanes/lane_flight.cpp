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
      if (!aircraft_) return;
      tick();
    }
  }

 private:
  struct Seat {
    SeatedSortie it;
    AirSample<double> air;
    Travel travel;
    bool taken() const { return it.sortie != nullptr; }
  };

  /// Ends what is done, fills empty seats as far as the next sortie flies the same aeroplane.
  void take_seats() {
    bool any = false;
    for (Seat& seat : seats_) {
      while (seat.taken() && !seat.it.sortie->ready()) leave(seat, "");
      if (!seat.taken()) seat_next(seat);
      any = any || seat.taken();
    }
    if (any) return;
    aircraft_ = nullptr;
    if (waiting_.sortie) aircraft_ = &waiting_.sortie->aircraft();
    if (aircraft_ != nullptr) take_seats();
  }

  void seat_next(Seat& seat) {
    while (!seat.taken()) {
      if (!waiting_.sortie) waiting_ = crew_.next();
      if (!waiting_.sortie) return;
      if (aircraft_ == nullptr) aircraft_ = &waiting_.sortie->aircraft();
      if (&waiting_.sortie->aircraft() != aircraft_) return;
      seat.it = std::move(waiting_);
      waiting_ = {};
      if (!seat.it.sortie->ready()) {
        leave(seat, "");
        continue;
      }
      numbers_.put(offsetof(One, flight), index_of(seat), seat.it.sortie->flight());
    }
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

  void meet_air(std::size_t lane, Seat& seat, const Sortie& sortie) {
    seat.air = sortie.air();
    seat.travel = sortie.travel_in(seat.air);
    numbers_.put(offsetof(One, air), lane, seat.air);
  }

  void tick() {
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) { meet_air(lane, seat, sortie); });
    kernel_.look(*aircraft_, numbers_.data());
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) {
      Felt<double> felt;
      numbers_.get(offsetof(One, felt), lane, felt);
      sortie.observe(seat.air, felt, *seat.it.sink);
      numbers_.put(offsetof(One, controls), lane, sortie.controls());
    });
    kernel_.step_from_slope(*aircraft_, numbers_.data());
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) {
      numbers_.get(offsetof(One, flight), lane, sortie.flight().rigid);
      sortie.follow(seat.travel, 0);
      meet_air(lane, seat, sortie);
    });
    kernel_.step(*aircraft_, numbers_.data());
    each([&](std::size_t lane, Seat& seat, Sortie& sortie) {
      numbers_.get(offsetof(One, flight), lane, sortie.flight());
      sortie.follow(seat.travel, 1);
      sortie.close_tick();
    });
  }

  const LaneKernel& kernel_;
  LaneCrew& crew_;
  LaneNumbers numbers_;
  std::vector<Seat> seats_;
  SeatedSortie waiting_;
  const Aircraft* aircraft_ = nullptr;
};

}  // namespace

void fly_in_lanes(const LaneKernel& kernel, LaneCrew& crew) { Lanes(kernel, crew).fly(); }

}  // namespace stallwright
