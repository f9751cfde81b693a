#pragma once
#include <Eigen/Core>
#include <vector>

#include "render/view/outside_view.hpp"

namespace stallwright::outside {

/// The measures of the aeroplane around the pilot; body axes from the eye. Lengths in m.
struct ShellShape {
  double eye_to_nose_m = 0.0, cowling_drop_m = 0.0, cowling_width_m = 0.0;
  bool high_wing = true;
  double half_span_m = 0.0, wing_chord_m = 0.0;
  bool operator==(const ShellShape&) const = default;
};

ShellShape shell_shape(const view::OutsideView& view);

/// A corner of the aeroplane's own parts.
struct ShellVertex {
  Eigen::Vector3f place_B;   ///< from the eye
  Eigen::Vector3f normal_B;  ///< outwards
  Eigen::Vector3f colour;    ///< as seen, 0 .. 1
  float across =
      0.0f;  ///< -1 .. 1 from one edge of a bar to the other, for a smooth edge; 0 within a surface
};

/// Triangles of cowling, glareshield, windscreen posts, cabin sides and wings.
std::vector<ShellVertex> make_shell(const ShellShape& shape);

/// The propeller's disc: middle and radius.
struct PropellerDisc {
  Eigen::Vector3f middle_B;
  float radius_m = 0.0f;
};
PropellerDisc propeller_disc(const ShellShape& shape);

}  // namespace stallwright::outside
