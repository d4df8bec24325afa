#include "core/base/slips.h"

#include <algorithm>
#include <array>

namespace roundwright {

int slips_between(std::string_view a, std::string_view b) {
    constexpr std::size_t longest = 32;
    constexpr int too_many = 3;
    if (a.size() > longest || b.size() > longest) return too_many;
    if (a.size() > b.size() + 2 || b.size() > a.size() + 2) return too_many;
    std::array<std::array<int, longest + 1>, longest + 1> d{};
    for (std::size_t i = 0; i <= a.size(); ++i)
        for (std::size_t j = 0; j <= b.size(); ++j) {
            if (i == 0 || j == 0) {
                d[i][j] = static_cast<int>(i + j);
                continue;
            }
            const int change = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            d[i][j] = std::min({change, d[i - 1][j] + 1, d[i][j - 1] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return std::min(d[a.size()][b.size()], too_many);
}

}  // namespace roundwright
