#include "core/differences/match.h"

namespace roundwright {

bool Match::in_order() const {
    std::optional<std::size_t> last;
    for (const auto& before : before_of) {
        if (!before) continue;
        if (last && *before < *last) return false;
        last = before;
    }
    return true;
}

Match match(std::size_t before, std::size_t after, std::span<const IsSame> ways) {
    Match found{std::vector<std::optional<std::size_t>>(before),
                std::vector<std::optional<std::size_t>>(after)};
    for (const IsSame& same : ways) {
        for (std::size_t i = 0; i < before; ++i) {
            for (std::size_t k = 0; k < after && !found.after_of[i]; ++k) {
                if (found.before_of[k] || !same(i, k)) continue;
                found.after_of[i] = k;
                found.before_of[k] = i;
            }
        }
    }
    return found;
}

}  // namespace roundwright
