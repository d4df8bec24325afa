#pragma once

#include <cstdint>
#include <numeric>
#include <utility>
#include <vector>

namespace roundwright {

/// Places that turn out to be one node (disjoint sets with path halving; Tarjan and van Leeuwen, J. ACM 31
/// (1984) 245-281).
class NodeClasses {
  public:
    explicit NodeClasses(std::int32_t places = 0) : parent_(static_cast<std::size_t>(places)) {
        std::iota(parent_.begin(), parent_.end(), 0);
    }

    [[nodiscard]] std::int32_t size() const { return static_cast<std::int32_t>(parent_.size()); }

    /// The least place of the class.
    [[nodiscard]] std::int32_t of(std::int32_t place) {
        while (parent(place) != place) {
            parent(place) = parent(parent(place));
            place = parent(place);
        }
        return place;
    }

    void join(std::int32_t a, std::int32_t b) {
        a = of(a);
        b = of(b);
        if (a > b) std::swap(a, b);
        parent(b) = a;
    }

  private:
    std::int32_t& parent(std::int32_t place) { return parent_[static_cast<std::size_t>(place)]; }

    std::vector<std::int32_t> parent_;
};

}  // namespace roundwright
