#pragma once
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "render/flight/snapshot.hpp"
#include "sim/report/sortie_json.hpp"

namespace stallwright::view {

/// A flight that was flown, to be looked at again. Reads log.csv and, where it is there, truth.csv; the two end with the
/// shorter one. Attitude, height and the motion through the air are the truth's; without it those of the recorder stand in.
/// The place over the ground is not in any file, so it is added up:
///   dr_E/dt = R_EB (V cos(a) cos(b) + g_x, V sin(b) + g_y, V sin(a) cos(b) + g_z) + W(h)      north and east
///   V true airspeed, a and b angle of attack and sideslip with the gusts in them, g gusts (body axes), W mean wind
/// by the trapezium rule from the place above which the flight began; without truth, along the heading at GPS speed.
/// Headings are the recorder's in either case.
class ReplayTrack {
 public:
  struct Event {
    double time_s = 0.0;
    std::string kind, text, point;
    bool danger = false;
  };
  struct Span {
    double begin_s = 0.0, end_s = 0.0;
    std::string name;
  };

  /// Throws InputError, one line, for a folder that is not a sortie's or whose log has fewer than two whole lines. A line that
  /// is cut short at the end of a file, as after a power cut, is left out.
  explicit ReplayTrack(const std::filesystem::path& folder);

  double begin_s() const { return rows_.front().t_s; }
  double end_s() const { return rows_.back().t_s; }
  const FlownSortie& flown() const { return flown_; }
  const std::vector<Event>& events() const { return events_; }
  const std::vector<Span>& records() const { return records_; }
  bool has_truth() const { return has_truth_; }

  /// The flight at a moment: between two lines of the files a straight line, angles the short way round; marks and the like as
  /// they stood on the line before. Before the beginning and after the end, the first and the last line.
  /// Needles stand at the readings: whoever draws dials lets them lag. No set points, no coach's words.
  Snapshot at(double time_s) const;

 private:
  /// What a replay needs of one line of both files; angles run on past a full turn.
  struct Row {
    double t_s, north_m, east_m, altitude_m;
    double roll_rad, pitch_rad, yaw_rad;
    double tas_mps, climb_mps, alpha_rad;
    Vec3<double> through_air_B_mps;  ///< gusts included, so against the mean air
    Readings<double> seen;
    double target_kt;
    int point, repeat, attempt;
    bool recording, forced, in_band, tone;
    Phase phase;
  };
  void read_log(const std::filesystem::path& file);
  void read_truth(const std::filesystem::path& file);
  void add_up_places();
  void find_records();
  Vec3<double> over_ground(const Row& row) const;

  FlownSortie flown_;
  std::vector<Row> rows_;
  std::vector<Event> events_;
  std::vector<Span> records_;
  bool has_truth_ = false;
  std::shared_ptr<const std::vector<SetPointSoFar>> no_set_points_;
};

}  // namespace stallwright::view
