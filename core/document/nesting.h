#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace roundwright {

/// Deeper than any document needs; a text nested deeper is refused before it is parsed, since every level
/// costs memory.
inline constexpr int deepest_nesting = 64;

/// Byte at which a JSON text first goes deeper than `deepest_nesting` objects and lists.
[[nodiscard]] std::optional<std::size_t> too_deep_at(std::string_view json);

}  // namespace roundwright
