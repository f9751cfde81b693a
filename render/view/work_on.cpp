#include "render/view/work_on.hpp"

#include <algorithm>
#include <cmath>

#include "sim/report/number_text.hpp"

namespace stallwright::view {
namespace {

std::string times(int count) {
  return count == 1 ? "once" : count == 2 ? "twice" : std::to_string(count) + " times";
}

std::string where(const HoldFigures& record) {
  return record.flap_deg == 0.0 ? record.point
                                : record.point + " (flaps " + shortest(record.flap_deg) + "\u00b0)";
}

std::string where(const PointCount& count) {
  return count.flap_deg == 0.0 ? count.point
                               : count.point + " (flaps " + shortest(count.flap_deg) + "\u00b0)";
}

/// Names of the points for which a count is not nothing, and the sum of it.
struct Tally {
  int sum = 0;
  std::string points;
};
Tally tally(const std::vector<PointCount>& counts, int PointCount::*what) {
  Tally out;
  for (const PointCount& count : counts)
    if (count.*what > 0) {
      out.sum += count.*what;
      out.points += (out.points.empty() ? "" : ", ") + where(count);
    }
  return out;
}

/// The record in which a figure stands worst against what it may be; none where it is nowhere worth a word.
template <class Share>
const HoldFigures* worst(const std::vector<HoldFigures>& records, double least, Share share) {
  const HoldFigures* found = nullptr;
  double most = least;
  for (const HoldFigures& record : records)
    if (const double is = share(record); is > most) {
      most = is;
      found = &record;
    }
  return found;
}

double speed_band_kt(const HoldFigures& r) { return std::min(r.bands.speed_low_kt, r.bands.speed_high_kt); }

void safety(const WorkInput& in, std::vector<WorkItem>& out) {
  if (const Tally t = tally(in.counts, &PointCount::unintended_stalls); t.sum > 0)
    out.push_back({"Stalls nobody asked for",
                   "The wing let go " + times(t.sum) + " without being asked to, at " + t.points +
                       ". Come down to the speed more gently, and lower the nose at the first buffet.",
                   true});
  if (const Tally t = tally(in.counts, &PointCount::knocked_off); t.sum > 0)
    out.push_back({"Knocked off",
                   "A point was knocked off " + times(t.sum) + ", at " + t.points +
                       ": floor, limit or safety was broken. Begin higher and leave room to recover.",
                   true});
}

void records(const WorkInput& in, std::vector<WorkItem>& out) {
  if (const Tally t = tally(in.counts, &PointCount::forced); t.sum > 0)
    out.push_back({"Recorded off condition", "A record was made off condition " + times(t.sum) + ", at " +
                                                 t.points +
                                                 ". Settle first: trim, then wait until every band is met."});
  if (const Tally t = tally(in.counts, &PointCount::left_band); t.sum > 0)
    out.push_back({"Left a band", "A band was left while recording " + times(t.sum) + ", at " + t.points +
                                      ". The record still counts; a steadier one would count for more."});
  if (const Tally t = tally(in.counts, &PointCount::given_up); t.sum > 0)
    out.push_back({"Given up", "A point was given up " + times(t.sum) + ", at " + t.points +
                                   ": nothing was learnt there."});
}

void speed(const WorkInput& in, std::vector<WorkItem>& out) {
  const auto rms = [](const HoldFigures& r) { return r.speed_rms_kt / speed_band_kt(r); };
  if (const HoldFigures* r = worst(in.records, kWorthSayingShare, rms))
    out.push_back({"Speed hold", "At " + where(*r) + " the speed wandered " + fixed(r->speed_rms_kt, 1) +
                                     " kt (rms) about " + fixed(r->target_kt, 0) + " kt; the band is " +
                                     fixed(speed_band_kt(*r), 1) +
                                     " kt. Fly attitude, not the needle: set the nose, trim, and wait."});
  const auto offset = [](const HoldFigures& r) { return std::abs(r.speed_mean_kt); };
  if (const HoldFigures* r = worst(in.records, kOffset_kt, offset))
    out.push_back({"Speed off to one side",
                   "At " + where(*r) + " you flew " + fixed(std::abs(r->speed_mean_kt), 1) + " kt too " +
                       (r->speed_mean_kt > 0.0 ? "fast" : "slow") + " on average: trim to the card's " +
                       fixed(r->target_kt, 0) + " kt before the button."});
}

void attitude(const WorkInput& in, std::vector<WorkItem>& out) {
  const auto bank = [](const HoldFigures& r) { return r.bank_rms_deg / r.bands.bank_deg; };
  if (const HoldFigures* r = worst(in.records, kWorthSayingShare, bank))
    out.push_back({"Bank", "At " + where(*r) + " the wings were " + fixed(r->bank_rms_deg, 1) +
                               "\u00b0 off level (rms); the band is " + fixed(r->bands.bank_deg, 0) +
                               "\u00b0. Bank costs lift, and the ratio reads it as angle."});
  const auto ball = [](const HoldFigures& r) { return r.slip_rms_g / r.bands.slip_g; };
  if (const HoldFigures* r = worst(in.records, kWorthSayingShare, ball))
    out.push_back({"Ball", "At " + where(*r) + " the ball stood " + fixed(r->slip_rms_g, 2) +
                               " g out (rms), mostly to the " + (r->slip_mean_g > 0.0 ? "right" : "left") +
                               "; the band is " + fixed(r->bands.slip_g, 2) + " g. Press the " +
                               (r->slip_mean_g > 0.0 ? "right" : "left") +
                               " pedal until it is in the middle."});
}

void stalls(const WorkInput& in, std::vector<WorkItem>& out) {
  const auto rate = [](const HoldFigures& r) {
    return std::abs(r.entry_rate_ktps - r.entry_wanted_ktps) / r.bands.entry_rate_ktps;
  };
  if (const HoldFigures* r = worst(in.records, 1.0, rate))
    out.push_back({"Entry rate", "At " + where(*r) + " you lost " + fixed(r->entry_rate_ktps, 1) +
                                     " kt/s; the card asks for " + fixed(r->entry_wanted_ktps, 1) +
                                     " \u00b1 " + fixed(r->bands.entry_rate_ktps, 1) + " kt/s. " +
                                     (r->entry_rate_ktps > r->entry_wanted_ktps
                                          ? "Slower hands: the lift lags behind a quick pull."
                                          : "Keep the nose coming up, or the stall never arrives.")});
  const auto released = std::count_if(in.events.begin(), in.events.end(), [](const SortieEvent& e) {
    return e.kind == "no break" && e.text.find("released") != std::string::npos;
  });
  if (released > 0)
    out.push_back({"Let go before the break",
                   "The stick was let go before the wing had stalled " + times(static_cast<int>(released)) +
                       ". Hold it until the nose drops or the stick is at its stop, then lower the nose."});
}

void time_lost(const WorkInput& in, std::vector<WorkItem>& out) {
  if (const Tally t = tally(in.counts, &PointCount::timeouts); t.sum > 0)
    out.push_back({"Slow to settle", "The time for a point ran out " + times(t.sum) + ", at " + t.points +
                                         ". Power first, then attitude, then trim; leave each alone."});
}

}  // namespace

std::vector<WorkItem> work_on(const WorkInput& input) {
  std::vector<WorkItem> out;
  safety(input, out);
  records(input, out);
  speed(input, out);
  attitude(input, out);
  stalls(input, out);
  time_lost(input, out);
  if (out.empty() && !input.records.empty())
    out.push_back({"Nothing stands out",
                   "Every record was on condition, with speed, bank and ball inside half of their bands. Now "
                   "the same in "
                   "rougher air."});
  if (out.empty())
    out.push_back({"No record", "Nothing was recorded, so there is nothing to say of the flying."});
  return out;
}

}  // namespace stallwright::view
