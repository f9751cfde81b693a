#pragma once
#include <array>
#include <string>
#include <vector>

/// What the tests of stall manners hold at single angles, over the whole range, as a picture for the page of
/// evidence.
namespace stallwright::published {

/// The range that the list of stall manners asks for, and as much below the stall as the tests compare with
/// [CFR14-60 appendix A, attachment 7].
inline constexpr double kBelowStall_deg = -8.0, kPastStall_deg = 10.0, kCurveStep_deg = 0.5;

/// One plot of the picture.
struct StallPlot {
  const char* name;  ///< with its unit, and which side of zero is stable
  bool from_zero;    ///< zero belongs to its scale
};
inline constexpr std::array<StallPlot, 8> kStallPlots = {
    {{"Lift coefficient", false},
     {"Drag coefficient", true},
     {"Pitch-moment slope, 1/rad (stable below 0)", true},
     {"Grip of elevator: pitch, 1/rad", true},
     {"Roll by sideslip, 1/rad (stable below 0)", true},
     {"Grip of aileron: roll, 1/rad", true},
     {"Yaw by sideslip, 1/rad (stable above 0)", true},
     {"Grip of rudder: yaw, 1/rad", true}}};

/// One aeroplane from below its stall to past it; columns in the order of kStallPlots, each as long as past_deg.
struct StallCurves {
  std::string type;
  double stall_deg = 0.0;        ///< angle of attack of the greatest lift
  std::vector<double> past_deg;  ///< angle of attack less that
  std::array<std::vector<double>, kStallPlots.size()> columns;
};

/// The even aeroplane held in a steady stream, flow settled at each angle as it rises.
StallCurves stall_curves(const std::string& type);

/// Form first, colour second: the curves are told apart without colour.
struct CurveForm {
  const char* dash;  ///< empty: a whole line
  const char* colour;
};
inline constexpr std::array<CurveForm, 3> kCurveForms = {
    {{"", "#0072B2"}, {"9 4", "#D55E00"}, {"2 3", "#009E73"}}};

/// All of it as one SVG picture on white paper, one plot a quantity, one curve an aeroplane.
std::string stall_picture(const std::array<StallCurves, kCurveForms.size()>& aeroplanes);

}  // namespace stallwright::published
