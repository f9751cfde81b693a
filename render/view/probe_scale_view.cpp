#include "render/view/probe_scale_view.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numbers>

namespace stallwright::view {
namespace {

/// A letter of UTF-8 goes on as long as its bytes begin with the bits 10.
bool goes_on(char byte) { return (static_cast<unsigned char>(byte) & 0xc0u) == 0x80u; }

void put_name(Peg& peg, const std::string& name) {
  std::size_t size = std::min(name.size(), peg.name.size() - 1);
  if (size < name.size())
    while (size > 0 && goes_on(name[size])) --size;
  std::memcpy(peg.name.data(), name.data(), size);
}

double nearest_flap_deg(const std::vector<SetPointSoFar>& points, double flap_deg) {
  double nearest = flap_deg, least = INFINITY;
  for (const SetPointSoFar& point : points)
    if (std::abs(point.flap_deg - flap_deg) < least) {
      least = std::abs(point.flap_deg - flap_deg);
      nearest = point.flap_deg;
    }
  return nearest;
}

void widen(ProbeScaleView& view, double ratio) {
  if (!std::isfinite(ratio)) return;
  // Whole steps from the usual ends, so that a figure never stands between two ticks; a hair less than the quotient, so that
  // rounding never takes a step too many.
  const auto steps = [](double beyond) { return std::ceil(beyond / kRulerStep - 1e-9); };
  if (ratio < view.from) view.from = kRulerFrom - kRulerStep * steps(kRulerFrom - ratio);
  if (ratio > view.to) view.to = kRulerTo + kRulerStep * steps(ratio - kRulerTo);
}

}  // namespace

ProbeScaleView probe_scale_view(const Snapshot& now) {
  ProbeScaleView view;
  view.ratio = now.needles.probe_ratio;
  view.from = kRulerFrom;
  view.to = kRulerTo;
  if (now.set_points == nullptr) return view;
  const double lit_deg = nearest_flap_deg(*now.set_points, now.readings.flap_rad * 180.0 / std::numbers::pi);
  for (const SetPointSoFar& point : *now.set_points) {
    if (view.peg_count == kPegs) break;
    Peg& peg = view.pegs[view.peg_count++];
    put_name(peg, point.name);
    peg.ratio = point.ratio;
    peg.low = point.low;
    peg.high = point.high;
    peg.flap_deg = point.flap_deg;
    peg.lit = std::abs(point.flap_deg - lit_deg) < 0.5;  // one setting, written in degrees by whoever
    widen(view, std::min(point.low, point.ratio));
    widen(view, std::max(point.high, point.ratio));
  }
  return view;
}

}  // namespace stallwright::view
