#include "core/shape/fabric/nested_dissection.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <numeric>
#include <utility>

namespace roundwright {

namespace {

/// Parts of no more nodes are not divided.
constexpr std::size_t few_nodes = 12;

std::size_t index(std::int32_t i) { return static_cast<std::size_t>(i); }

class Dissection {
  public:
    Dissection(std::size_t nodes, std::span<const std::array<std::int32_t, 2>> pairs,
               std::span<const Vec3> positions)
        : positions_(positions), side_(nodes, outside), first_(nodes + 1, 0) {
        for (const auto& [a, b] : pairs) {
            ++first_[index(a) + 1];
            ++first_[index(b) + 1];
        }
        std::partial_sum(first_.begin(), first_.end(), first_.begin());
        neighbours_.resize(index(first_.back()));
        std::vector<std::int32_t> next(first_.begin(), first_.end() - 1);
        for (const auto& [a, b] : pairs) {
            neighbours_[index(next[index(a)]++)] = b;
            neighbours_[index(next[index(b)]++)] = a;
        }
    }

    std::vector<DissectionPart> run() {
        std::vector<std::int32_t> all(side_.size());
        std::iota(all.begin(), all.end(), 0);
        divide(std::move(all));
        return std::move(parts_);
    }

  private:
    enum Side : char { outside, below, above };

    std::int32_t divide(std::vector<std::int32_t> nodes) {
        DissectionPart part;
        if (nodes.size() > few_nodes) {
            auto [low, high] = halves(nodes);
            take_separator(low, high, part.nodes);
            if (!low.empty()) part.children[0] = divide(std::move(low));
            if (!high.empty()) part.children[1] = divide(std::move(high));
        } else {
            part.nodes = std::move(nodes);
        }
        parts_.push_back(std::move(part));
        return static_cast<std::int32_t>(parts_.size()) - 1;
    }

    [[nodiscard]] Vec3 longest_axis(const std::vector<std::int32_t>& nodes) const {
        Vec3 mean = Vec3::Zero();
        for (const std::int32_t node : nodes) mean += positions_[index(node)];
        mean /= static_cast<double>(nodes.size());
        Eigen::Matrix3d spread = Eigen::Matrix3d::Zero();
        for (const std::int32_t node : nodes) {
            const Vec3 d = positions_[index(node)] - mean;
            spread += d * d.transpose();
        }
        Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver;
        solver.computeDirect(spread);
        return solver.eigenvectors().col(2);
    }

    using Halves = std::pair<std::vector<std::int32_t>, std::vector<std::int32_t>>;
    [[nodiscard]] Halves halves(const std::vector<std::int32_t>& nodes) const {
        const Vec3 axis = longest_axis(nodes);
        std::vector<std::pair<double, std::int32_t>> along;
        along.reserve(nodes.size());
        for (const std::int32_t node : nodes) along.emplace_back(axis.dot(positions_[index(node)]), node);
        const auto middle = along.begin() + static_cast<std::ptrdiff_t>(along.size() / 2);
        std::ranges::nth_element(along, middle);
        Halves out;
        for (auto it = along.begin(); it != along.end(); ++it)
            (it < middle ? out.first : out.second).push_back(it->second);
        return out;
    }

    [[nodiscard]] bool touches(std::int32_t node, Side side) const {
        const auto begin = neighbours_.begin() + first_[index(node)];
        const auto end = neighbours_.begin() + first_[index(node) + 1];
        return std::any_of(begin, end, [&](std::int32_t other) { return side_[index(other)] == side; });
    }

    /// Moves the nodes of one half that touch the other into the separator: of the half that has fewer.
    void take_separator(std::vector<std::int32_t>& low, std::vector<std::int32_t>& high,
                        std::vector<std::int32_t>& separator) {
        for (const std::int32_t node : low) side_[index(node)] = below;
        for (const std::int32_t node : high) side_[index(node)] = above;
        const auto border = [&](const std::vector<std::int32_t>& half, Side other) {
            return std::ranges::count_if(half, [&](std::int32_t node) { return touches(node, other); });
        };
        const bool from_low = border(low, above) <= border(high, below);
        auto& half = from_low ? low : high;
        const Side other = from_low ? above : below;
        const auto rest = std::stable_partition(half.begin(), half.end(),
                                                [&](std::int32_t n) { return !touches(n, other); });
        separator.assign(rest, half.end());
        half.erase(rest, half.end());
        for (const auto* nodes : {&low, &high, &separator})
            for (const std::int32_t node : *nodes) side_[index(node)] = outside;
    }

    std::span<const Vec3> positions_;
    std::vector<char> side_;
    std::vector<std::int32_t> first_;
    std::vector<std::int32_t> neighbours_;
    std::vector<DissectionPart> parts_;
};

}  // namespace

std::vector<DissectionPart> nested_dissection(std::size_t nodes,
                                              std::span<const std::array<std::int32_t, 2>> pairs,
                                              std::span<const Vec3> positions) {
    return Dissection(nodes, pairs, positions).run();
}

}  // namespace roundwright
