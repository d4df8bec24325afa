#pragma once

#include <span>
#include <string_view>

namespace roundwright {

/// One hook of the trade. Only the millimetres are a size: letters differ from maker to maker (G is 4.0
/// or 4.25), so everything is computed with mm and the names are shown beside it.
struct Hook {
    double mm = 0;
    std::string_view us;  ///< "G-6"; empty where none is printed
    std::string_view uk;  ///< "8"; empty where none is printed
};

/// The hooks of the published tables, thinnest first.
[[nodiscard]] std::span<const Hook> hooks();

/// The hook of exactly this size (to a hundredth of a mm), or null.
[[nodiscard]] const Hook* find_hook(double mm);

/// Thinnest and thickest hook that a toy may be worked with, mm.
inline constexpr double least_hook_mm = 0.5;
inline constexpr double most_hook_mm = 50;

}  // namespace roundwright
