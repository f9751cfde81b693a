#pragma once

namespace stallwright::outside {

/// How much is drawn. The picture's geometry, the horizon and the fields are the same at each: `bare` is for machines without
/// a graphics processor, `lean` for weak ones.
enum class Detail { bare, lean, full };
inline constexpr int kDetails = 3;

}  // namespace stallwright::outside
