#include "render/panel/peg_names.hpp"

#include <algorithm>
#include <cstdio>

namespace stallwright::panel {
namespace {

struct Placing {
  PegNames& placed;
  int rows;
  float gap_px, left_px, right_px;

  bool free(int row, float x, float width) const {
    for (std::size_t k = 0; k < placed.count; ++k) {
      const PegName& other = placed.names[k];
      if (other.row == row && x < other.x + other.width + gap_px && other.x < x + width + gap_px)
        return false;
    }
    return true;
  }

  /// Over the peg, or moved by `aside` px where that stays on the ruler; the lower row first.
  bool put(PegName name, float peg_x, float aside) {
    const float least = left_px, most = std::max(right_px - name.width, left_px);
    name.x = std::clamp(peg_x - name.width / 2.0f + aside, least, most);
    for (name.row = rows - 1; name.row >= 0; --name.row)
      if (free(name.row, name.x, name.width)) {
        placed.names[placed.count++] = name;
        return true;
      }
    return false;
  }
};

PegName named(const view::Peg& peg, std::size_t index, ImFont& font) {
  PegName name;
  name.peg = index;
  if (peg.lit)
    std::snprintf(name.words.data(), name.words.size(), "%s", peg.name.data());
  else
    std::snprintf(name.words.data(), name.words.size(), "%s %.0f\u00b0", peg.name.data(), peg.flap_deg);
  name.width = font.CalcTextSizeA(font.FontSize, FLT_MAX, 0.0f, name.words.data()).x;
  return name;
}

}  // namespace

PegNames place_names(const view::ProbeScaleView& view, ImFont& font, int rows, float gap_px, float left_px,
                     float right_px) {
  std::array<std::size_t, view::kPegs> order{};
  for (std::size_t k = 0; k < view.peg_count; ++k) order[k] = k;
  std::sort(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(view.peg_count),
            [&](std::size_t a, std::size_t b) {
              const view::Peg &p = view.pegs[a], &q = view.pegs[b];
              return p.lit != q.lit ? p.lit : p.ratio != q.ratio ? p.ratio < q.ratio : a < b;
            });
  PegNames placed;
  Placing placing{placed, rows, gap_px, left_px, right_px};
  for (std::size_t k = 0; k < view.peg_count; ++k) {
    const view::Peg& peg = view.pegs[order[k]];
    const PegName name = named(peg, order[k], font);
    const double share = std::clamp((peg.ratio - view.from) / (view.to - view.from), 0.0, 1.0);
    const float x = left_px + static_cast<float>(share) * (right_px - left_px);
    if (placing.put(name, x, 0.0f) || !peg.lit) continue;
    for (float aside = gap_px; aside < right_px - left_px; aside += gap_px)
      if (placing.put(name, x, aside) || placing.put(name, x, -aside)) break;
  }
  return placed;
}

}  // namespace stallwright::panel
