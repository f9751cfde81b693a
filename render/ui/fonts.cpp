#include "render/ui/fonts.hpp"

#include <fontconfig/fontconfig.h>

#include <cmath>
#include <filesystem>

#include "render/ui/theme.hpp"

namespace stallwright::ui {
namespace {

// Latin, Latin-1, Greek, general punctuation up to mathematical operators.
constexpr ImWchar kRanges[] = {0x0020, 0x00ff, 0x0370, 0x03ff, 0x2010, 0x22ff, 0};

/// File of a style of B612, or empty. fontconfig never fails but hands out another family, so that is compared.
std::string font_file(const char* style) {
  FcConfig* config = FcInitLoadConfigAndFonts();
  if (config == nullptr) return {};
  FcPattern* wanted = FcPatternBuild(nullptr, FC_FAMILY, FcTypeString, "B612", FC_STYLE, FcTypeString, style,
                                     static_cast<char*>(nullptr));
  FcConfigSubstitute(config, wanted, FcMatchPattern);
  FcDefaultSubstitute(wanted);
  FcResult result = FcResultNoMatch;
  FcPattern* found = FcFontMatch(config, wanted, &result);
  std::string file;
  if (found != nullptr) {
    FcChar8 *family = nullptr, *path = nullptr;
    if (FcPatternGetString(found, FC_FAMILY, 0, &family) == FcResultMatch &&
        std::string(reinterpret_cast<const char*>(family)) == "B612" &&
        FcPatternGetString(found, FC_FILE, 0, &path) == FcResultMatch)
      file = reinterpret_cast<const char*>(path);
    FcPatternDestroy(found);
  }
  FcPatternDestroy(wanted);
  FcConfigDestroy(config);
  return std::filesystem::exists(file) ? file : std::string();
}

/// The stand-in has no letters beyond Latin-1 and would show a question mark: ?0.43 is no way to write a minus.
void use_nearest_letters(ImFontAtlas& atlas) {
  constexpr ImWchar kNearest[][2] = {
      {0x2010, '-'},  {0x2013, '-'}, {0x2014, '-'}, {0x2212, '-'}, {0x2018, '\''}, {0x2019, '\''},
      {0x2022, 0xb7}, {0x2026, '.'}, {0x2190, '<'}, {0x2192, '>'}, {0x2191, '^'},  {0x2193, 'v'},
      {0x2264, '<'},  {0x2265, '>'}, {0x2248, '~'}, {0x2715, 'x'}, {0x25bc, 'v'},  {0x03b1, 'a'},
      {0x03b2, 0xdf}, {0x03c3, 's'}, {0x0394, 'd'}};
  for (ImFont* font : atlas.Fonts)
    for (const auto& [sign, nearest] : kNearest) font->AddRemapChar(sign, nearest, false);
}

}  // namespace

Fonts load_fonts(ImFontAtlas& atlas, float scale) {
  const std::string regular = font_file("Regular"), bold = font_file("Bold");
  Fonts fonts;
  fonts.scale = scale;
  if (regular.empty() || bold.empty())
    fonts.notice = "the typeface B612 was not found (Debian package fonts-b612): a plain one stands in";
  const auto add = [&](const std::string& file, float px) {
    const float size = std::round(px * scale);
    if (!fonts.notice.empty()) {
      ImFontConfig plain;
      plain.SizePixels = size;
      return atlas.AddFontDefault(&plain);
    }
    return atlas.AddFontFromFileTTF(file.c_str(), size, nullptr, kRanges);
  };
  fonts.body = add(regular, kBody_px);
  fonts.small = add(regular, kSmall_px);
  fonts.bold = add(bold, kBody_px);
  fonts.large = add(bold, kLarge_px);
  fonts.huge = add(bold, kHuge_px);
  atlas.Build();
  if (!fonts.notice.empty()) use_nearest_letters(atlas);
  return fonts;
}

void apply_style(float scale) {
  ImGuiStyle style;
  style.WindowRounding = style.FrameRounding = style.GrabRounding = 2.0f;
  style.WindowBorderSize = 0.0f;
  style.FrameBorderSize = 1.0f;
  style.FramePadding = {8.0f, 5.0f};
  style.ItemSpacing = {8.0f, 7.0f};
  style.ScaleAllSizes(scale);
  const auto set = [&](ImGuiCol which, const Colour& c) { style.Colors[which] = c; };
  set(ImGuiCol_Text, kTheme.ivory);
  set(ImGuiCol_TextDisabled, kTheme.soft);
  set(ImGuiCol_WindowBg, kTheme.panel);
  set(ImGuiCol_PopupBg, kTheme.panel);
  set(ImGuiCol_Border, kTheme.edge);
  set(ImGuiCol_FrameBg, kTheme.field);
  set(ImGuiCol_FrameBgHovered, kTheme.field_over);
  set(ImGuiCol_FrameBgActive, kTheme.field_over);
  set(ImGuiCol_Button, kTheme.field);
  set(ImGuiCol_ButtonHovered, kTheme.field_over);
  set(ImGuiCol_ButtonActive, kTheme.edge);
  set(ImGuiCol_Header, kTheme.field_over);
  set(ImGuiCol_HeaderHovered, kTheme.field_over);
  set(ImGuiCol_HeaderActive, kTheme.edge);
  set(ImGuiCol_CheckMark, kTheme.ivory);
  set(ImGuiCol_SliderGrab, kTheme.soft);
  set(ImGuiCol_SliderGrabActive, kTheme.ivory);
  set(ImGuiCol_NavHighlight, kTheme.measured);
  set(ImGuiCol_ModalWindowDimBg, {0.0f, 0.0f, 0.0f, 0.55f});
  ImGui::GetStyle() = style;
}

}  // namespace stallwright::ui
