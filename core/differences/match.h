#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace roundwright {

/// Which item of one list has become which of another.
struct Match {
    std::vector<std::optional<std::size_t>> after_of;   ///< one an item of before; nothing: it is gone
    std::vector<std::optional<std::size_t>> before_of;  ///< one an item of after; nothing: it is new

    /// Whether items that are in both stand in the same order.
    [[nodiscard]] bool in_order() const;
};

using IsSame = std::function<bool(std::size_t before, std::size_t after)>;

/// Matches what the first of `ways` calls the same, then, of what is left, what the next one does, and so on;
/// earlier items first.
[[nodiscard]] Match match(std::size_t before, std::size_t after, std::span<const IsSame> ways);

}  // namespace roundwright
