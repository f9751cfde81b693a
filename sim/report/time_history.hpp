#pragma once
#include <string>
#include <vector>

namespace stallwright {

/// A sortie as curves over time, in the units of the page: what the recorder saw, and from the truth what it
/// could not. All columns are as long as `t_s`, or empty when there is no such column; a NaN leaves a gap in
/// the curve.
struct TimeHistory {
  std::vector<double> t_s;  ///< rising
  // What the recorder saw.
  std::vector<double> ias_kt, altitude_ft;  ///< indicated; altitude on the QNH set
  std::vector<double> ratio;                ///< probe ratio
  std::vector<double> pitch_deg, bank_deg;
  std::vector<double> entry_ktps;  ///< speed lost per second, filtered; positive while slowing down
  // What only the simulator knows.
  std::vector<double> alpha_deg;      ///< of the aeroplane, against the air without gusts
  std::vector<double> true_speed_kt;  ///< calibrated airspeed
  std::vector<double> separation;     ///< mean over the wing, 1 attached to 0 separated

  /// A record window.
  struct Window {
    double begin_s = 0.0, end_s = 0.0;
    std::string name;  ///< of the point, with its repeat where there are several
    bool is_stall = false;
    bool left_band = false, forced = false;
  };

  /// What was to be held, and when. A NaN limit is not drawn.
  struct Band {
    double begin_s = 0.0, end_s = 0.0;
    std::string name;
    double low_kt = 0.0, high_kt = 0.0;
    double low_ft = 0.0, high_ft = 0.0;  ///< indicated altitude, as the column
  };

  /// A break that the log shows.
  struct Break {
    double t_s = 0.0;
    std::string name;  ///< of the point
    std::string sign;  ///< by which it was known
  };

  std::vector<Window> windows;
  std::vector<Band> bands;
  std::vector<Break> breaks;
};

}  // namespace stallwright
