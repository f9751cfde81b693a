#pragma once
#include <imgui.h>

#include "render/panel/dial_scale.hpp"
#include "render/panel/needle_log.hpp"
#include "render/ui/fonts.hpp"
#include "render/ui/theme.hpp"

/// The strokes that round dials are made of. Angles in degrees clockwise from the top; lengths as shares of the radius,
/// widths in px at scale 1.
namespace stallwright::panel {

struct Dial {
  ImDrawList& list;
  const ui::Fonts& fonts;
  ImVec2 centre;
  float radius;              ///< px
  NeedleLog* log = nullptr;  ///< may be null

  float px(float at_scale_1) const { return at_scale_1 * fonts.scale; }
  ImVec2 at(double angle_deg, float share) const;
  ImVec2 offset(float right_share, float down_share) const;
  /// Of the figures round the rim: the body size where the dial is large enough for it.
  ImFont* figures() const;
};

/// Near-black disc with a rim.
void face(const Dial& dial);
void tick(const Dial& dial, double angle_deg, float from_share, float to_share, float width,
          const ui::Colour& colour = ui::kTheme.ivory);
void arc(const Dial& dial, double from_deg, double to_deg, float share, float width_share,
         const ui::Colour& colour);
/// Text with its middle at a point.
void text(const Dial& dial, ImFont* font, ImVec2 middle, const char* words,
          const ui::Colour& colour = ui::kTheme.ivory);
/// The same with a whole number.
void figure(const Dial& dial, double angle_deg, float share, int number);
/// A framed window with figures in it, as of a counter.
void counter(const Dial& dial, ImFont* font, ImVec2 middle, const char* words, const char* widest);
/// A tapered needle from the middle of the dial, entered in the log.
void needle(const Dial& dial, const char* name, double value, double angle_deg, float length_share);
/// The same from another pivot; no tail.
void needle_from(const Dial& dial, const char* name, double value, ImVec2 pivot, double angle_deg,
                 float length_share);

}  // namespace stallwright::panel
