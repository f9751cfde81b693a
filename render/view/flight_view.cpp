// The flight over time, as the debrief draws it.
#include "render/view/flight_view.hpp"

#include <algorithm>
#include <cmath>

namespace stallwright::view {
namespace {

Panel panel(const char* name, const char* unit, int decimals, double least_span) {
  Panel p;
  p.name = name;
  p.unit = unit;
  p.decimals = decimals;
  p.least_span = least_span;
  return p;
}

void add(Panel& p, const char* name, bool truth, const std::vector<double>& values, std::size_t rows) {
  if (values.size() == rows) p.traces.push_back({name, truth, values});
}

}  // namespace

FlightView flight_view(const TimeHistory& history, const SortieSummary& summary) {
  FlightView view;
  view.t_s = history.t_s;
  view.windows = history.windows;
  view.bands = history.bands;
  const std::size_t rows = view.t_s.size();
  Panel speed = panel("Airspeed", "kt", 1, 10.0);
  add(speed, "indicated", false, history.ias_kt, rows);
  add(speed, "truth, calibrated", true, history.true_speed_kt, rows);
  speed.bands_speed = true;
  Panel ratio = panel("Probe ratio", "no unit", 2, 0.2);
  add(ratio, "as measured", false, history.ratio, rows);
  Panel height = panel("Altitude", "ft", 0, 200.0);
  add(height, "indicated, on the QNH set", false, history.altitude_ft, rows);
  height.floor_value = summary.floor_altitude_ft;
  height.bands_height = true;
  Panel bank = panel("Bank", "\u00b0, right +", 1, 10.0);
  add(bank, "as measured", false, history.bank_deg, rows);
  Panel pitch = panel("Pitch", "\u00b0, nose up +", 1, 10.0);
  add(pitch, "as measured", false, history.pitch_deg, rows);
  Panel entry = panel("Speed lost", "kt/s", 1, 2.0);
  add(entry, "from the airspeed", false, history.entry_ktps, rows);
  Panel alpha = panel("Angle of attack", "\u00b0", 1, 5.0);
  add(alpha, "without the gusts", true, history.alpha_deg, rows);
  Panel flow = panel("Attached flow", "share of the wing", 2, 1.0);
  add(flow, "mean over the wing", true, history.separation, rows);
  for (Panel* p : {&speed, &ratio, &height, &bank, &pitch, &entry, &alpha, &flow})
    if (!p->traces.empty()) view.panels.push_back(std::move(*p));
  view.events = summary.events;
  const auto is_break = [](const SortieEvent& e) { return e.kind == "break"; };
  if (std::none_of(view.events.begin(), view.events.end(), is_break))
    for (const TimeHistory::Break& b : history.breaks)
      view.events.push_back({b.t_s, "break", b.name, b.sign, false});
  std::stable_sort(view.events.begin(), view.events.end(),
                   [](const SortieEvent& a, const SortieEvent& b) { return a.t_s < b.t_s; });
  return view;
}

}  // namespace stallwright::view
