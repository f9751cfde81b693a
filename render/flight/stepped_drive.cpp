#include "render/flight/drive.hpp"
#include "render/flight/pace.hpp"

namespace stallwright {
namespace {

class SteppedDrive : public Drive {
 public:
  explicit SteppedDrive(std::unique_ptr<Flight> flight)
      : flight_(std::move(flight)),
        hands_(flight_->first_hands()),
        before_(flight_->snapshot()),
        now_(flight_->snapshot()) {}

  void hands(const Hands& hands) override {
    const Presses kept = hands_.presses;
    hands_ = hands;
    hands_.presses = both(kept, hands.presses);
  }
  void rate(double simulated_per_real) override { rate_ = simulated_per_real; }
  void pause(bool paused) override { paused_ = paused; }
  void finish() override { flight_->leave(); }
  Flight& flight() override { return *flight_; }

  void frame(double dt_s) override {
    for (int ticks = pace_.due(dt_s, paused_ ? 0.0 : rate_); ticks > 0 && !over_; --ticks) {
      const Hands hands = hands_;
      hands_.presses = {};
      over_ = !flight_->tick(hands);
      before_ = now_;
      now_ = flight_->snapshot();
    }
  }

  void look(Seen& seen) override {
    seen.before = before_;
    seen.now = now_;
    seen.share = 1.0;
    seen.achieved_rate = seen.wanted_rate = rate_;
    seen.given_up_s = pace_.given_up_s();
    seen.paused = paused_;
    seen.over = over_;
    seen.trouble = flight_->trouble();
  }

 private:
  std::unique_ptr<Flight> flight_;
  Hands hands_;
  Snapshot before_, now_;
  Pace pace_;
  double rate_ = 1.0;
  bool paused_ = false, over_ = false;
};

}  // namespace

std::unique_ptr<Drive> stepped_drive(std::unique_ptr<Flight> flight) {
  return std::make_unique<SteppedDrive>(std::move(flight));
}

}  // namespace stallwright
