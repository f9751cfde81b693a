#pragma once

namespace stallwright::theme {

/// Colours by meaning, the Okabe-Ito set (M. Okabe and K. Ito, "Color Universal Design", 2008: safe for
/// colour-blind readers). None ever stands alone: each has its own mark, dash or word as well, so the page
/// reads in grey.
inline constexpr const char* kMeasured = "#56B4E9";  ///< sky blue; round marks, whole lines
inline constexpr const char* kWithin = "#009E73";    ///< bluish green; dash-dot
inline constexpr const char* kOutside = "#E69F00";   ///< orange; dots
inline constexpr const char* kDanger = "#D55E00";    ///< vermilion; crosses, heavy lines
inline constexpr const char* kTruth = "#CC79A7";     ///< reddish purple; diamonds, long dashes

inline constexpr const char* kInk = "#221f1c";      ///< text, axes, outlines
inline constexpr const char* kSoftInk = "#5d564f";  ///< second-rank text
inline constexpr const char* kGrid = "#d9d4cc";
inline constexpr const char* kShade = "#ece8e1";  ///< record windows
inline constexpr const char* kPaper = "#ffffff";

inline constexpr const char* kTruthDash = "9 4";
inline constexpr const char* kWithinDash = "7 3 1.5 3";
inline constexpr const char* kOutsideDash = "1.5 2.5";

inline constexpr const char* kFonts = "B612, 'DejaVu Sans', Verdana, sans-serif";

}  // namespace stallwright::theme
