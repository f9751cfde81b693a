#include "sim/sortie/card_check.hpp"

#include <cmath>
#include <cstdio>
#include <map>

#include "aircraft/toml_reader.hpp"
#include "sim/sortie/card_speeds.hpp"

namespace stallwright {
namespace {

std::string kt(double speed_kt) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f kt", speed_kt);
  return text;
}

std::vector<std::string> speed_problems(const TestPoint& point, const PointSpeeds& speeds,
                                        const AircraftType& type) {
  std::vector<std::string> out;
  const double v_no_kt = type.limits.v_no_mps / unit::kKnot.si;
  if (!speeds.note.empty()) out.push_back("too near the flap limit: " + speeds.note);
  if (type.flaps[point.flap_setting].deflection_rad == 0 && speeds.band_high_kt > v_no_kt) {
    out.push_back("its band reaches " + kt(speeds.band_high_kt) + ", above V_NO, " + kt(v_no_kt));
  }
  // A stall that starts below its own entry speed was cut to the flap limit and is told of above.
  const double lowest_kt =
      point.is_steady() ? speeds.band_low_kt : std::fmin(speeds.stop_kt, speeds.band_low_kt);
  if (lowest_kt <= speeds.stall_kt) {
    out.push_back("its band reaches down to " + kt(lowest_kt) + ", and the book stall there is " +
                  kt(speeds.stall_kt));
  }
  if (!point.is_steady() && !point.is_stall() && speeds.stop_kt >= speeds.entry_kt) {
    out.push_back("it would begin at " + kt(speeds.entry_kt) + " and end no slower, at " +
                  kt(speeds.stop_kt));
  }
  return out;
}

}  // namespace

std::vector<std::string> card_check(const TestCard& card, const AircraftType& type) {
  std::vector<std::string> out;
  std::map<std::size_t, double> slowest_kt;  // by flap setting: target of the steady point before
  for (std::size_t i = 0; i < card.points.size(); ++i) {
    const TestPoint& point = card.points[i];
    const auto tell = [&](const std::string& what) {
      out.push_back("point[" + std::to_string(i + 1) + "] \"" + point.name + "\": " + what);
    };
    if (point.flap_setting >= type.flaps.size()) {
      tell("flap setting " + std::to_string(point.flap_setting) + ", but " + type.name + " has 0 to " +
           std::to_string(type.flaps.size() - 1));
      continue;
    }
    if (point.is_stall() && !type.limits.stalls_permitted) {
      tell("the flight manual of " + type.name + " does not permit intentional stalls");
    }
    const PointSpeeds speeds = point_speeds(point, type, type.mass.reference_kg);
    for (const auto& problem : speed_problems(point, speeds, type)) tell(problem);
    if (!point.is_steady()) continue;
    const auto before = slowest_kt.find(point.flap_setting);
    if (before != slowest_kt.end() && speeds.target_kt > before->second - kLeastGap_kt) {
      tell("its target, " + kt(speeds.target_kt) + ", is not " + kt(kLeastGap_kt) +
           " slower than that of the point before it in its set, " + kt(before->second));
    }
    slowest_kt[point.flap_setting] = speeds.target_kt;
  }
  return out;
}

}  // namespace stallwright
