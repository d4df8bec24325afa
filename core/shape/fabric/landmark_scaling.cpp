#include "core/shape/fabric/landmark_scaling.h"

#include <Eigen/Dense>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include <queue>

namespace roundwright {
namespace {

constexpr std::size_t most_landmarks = 64;
constexpr double far_away = std::numeric_limits<double>::infinity();

/// Ways from node to node: along the sides of triangles, and straight across from one triangle into the next.
class Ways {
  public:
    explicit Ways(const FabricProblem& problem) : from_(static_cast<std::size_t>(problem.nodes)) {
        std::map<std::pair<std::int32_t, std::int32_t>, std::pair<std::size_t, std::size_t>> sides;
        for (std::size_t t = 0; t < problem.triangles.size(); ++t)
            for (std::size_t k = 0; k < 3; ++k) {
                const auto& nodes = problem.triangles[t].nodes;
                sides[{nodes[k], nodes[(k + 1) % 3]}] = {t, k};
            }
        for (const auto& [side, place] : sides) {
            const auto& rest = problem.triangles[place.first].rest;
            const std::size_t k = place.second;
            double length = (rest[(k + 1) % 3] - rest[k]).norm();
            const auto other = sides.find({side.second, side.first});
            if (other != sides.end()) {
                if (side.first > side.second) continue;
                const auto& across = problem.triangles[other->second.first].rest;
                const std::size_t m = other->second.second;
                length = (length + (across[(m + 1) % 3] - across[m]).norm()) / 2;
                add_across(problem, place, other->second);
            }
            add(side.first, side.second, length);
        }
    }

    [[nodiscard]] std::vector<double> lengths_from(std::size_t start) const {
        std::vector<double> length(from_.size(), far_away);
        using Reached = std::pair<double, std::size_t>;
        std::priority_queue<Reached, std::vector<Reached>, std::greater<>> next;
        length[start] = 0;
        next.emplace(0, start);
        while (!next.empty()) {
            const auto [so_far, node] = next.top();
            next.pop();
            if (so_far > length[node]) continue;
            for (const auto& [to, more] : from_[node])
                if (so_far + more < length[to]) {
                    length[to] = so_far + more;
                    next.emplace(length[to], to);
                }
        }
        return length;
    }

  private:
    using Place = std::pair<std::size_t, std::size_t>;

    void add(std::int32_t a, std::int32_t b, double length) {
        from_[static_cast<std::size_t>(a)].emplace_back(static_cast<std::size_t>(b), length);
        from_[static_cast<std::size_t>(b)].emplace_back(static_cast<std::size_t>(a), length);
    }

    /// Both triangles laid side by side in one plane.
    void add_across(const FabricProblem& problem, const Place& here, const Place& there) {
        const FabricTriangle &a = problem.triangles[here.first], &b = problem.triangles[there.first];
        const auto tip = [](const FabricTriangle& of, std::size_t k) {
            const Vec2 side = of.rest[(k + 1) % 3] - of.rest[k], to = of.rest[(k + 2) % 3] - of.rest[k];
            const double length = side.norm();
            return Vec2(to.dot(side) / length, (side.x() * to.y() - side.y() * to.x()) / length);
        };
        const double side = (a.rest[(here.second + 1) % 3] - a.rest[here.second]).norm();
        const Vec2 up = tip(a, here.second), turned = tip(b, there.second);
        const Vec2 down(side - turned.x(), -turned.y());
        const double crossing = up.x() + (down.x() - up.x()) * up.y() / (up.y() - down.y());
        const std::int32_t from = a.nodes[(here.second + 2) % 3], to = b.nodes[(there.second + 2) % 3];
        if (from != to && crossing > 0 && crossing < side) add(from, to, (up - down).norm());
    }

    std::vector<std::vector<std::pair<std::size_t, double>>> from_;
};

/// Lengths of the ways from landmarks to all nodes, each landmark as far as can be from those before it.
std::vector<std::vector<double>> landmark_lengths(const Ways& ways, std::size_t nodes,
                                                  std::vector<std::size_t>& landmarks) {
    std::vector<std::vector<double>> lengths;
    std::vector<double> nearest = ways.lengths_from(0);
    std::size_t next = static_cast<std::size_t>(std::ranges::max_element(nearest) - nearest.begin());
    std::ranges::fill(nearest, far_away);
    while (lengths.size() < std::min(most_landmarks, nodes)) {
        landmarks.push_back(next);
        lengths.push_back(ways.lengths_from(next));
        for (std::size_t k = 0; k < nodes; ++k) nearest[k] = std::min(nearest[k], lengths.back()[k]);
        next = static_cast<std::size_t>(std::ranges::max_element(nearest) - nearest.begin());
        if (!(nearest[next] > 0)) break;
    }
    return lengths;
}

double area_of(const FabricProblem& problem, const std::vector<Vec3>& nodes) {
    double area = 0;
    for (const FabricTriangle& triangle : problem.triangles) {
        const Vec3& a = nodes[static_cast<std::size_t>(triangle.nodes[0])];
        const Vec3 b = nodes[static_cast<std::size_t>(triangle.nodes[1])] - a;
        const Vec3 c = nodes[static_cast<std::size_t>(triangle.nodes[2])] - a;
        area += b.cross(c).norm() / 2;
    }
    return area;
}

double rest_area_of(const FabricProblem& problem) {
    double area = 0;
    for (const FabricTriangle& triangle : problem.triangles) {
        const Vec2 b = triangle.rest[1] - triangle.rest[0], c = triangle.rest[2] - triangle.rest[0];
        area += (b.x() * c.y() - b.y() * c.x()) / 2;
    }
    return area;
}

}  // namespace

std::vector<Vec3> landmark_scaling(const FabricProblem& problem) {
    const auto count = static_cast<std::size_t>(problem.nodes);
    std::vector<Vec3> nodes(count, Vec3::Zero());
    if (count < 4) return nodes;
    std::vector<std::size_t> landmarks;
    const auto lengths = landmark_lengths(Ways(problem), count, landmarks);
    const auto m = static_cast<Eigen::Index>(landmarks.size());
    Eigen::MatrixXd squares(m, m);
    for (Eigen::Index a = 0; a < m; ++a)
        for (Eigen::Index b = 0; b < m; ++b) {
            const double way = lengths[static_cast<std::size_t>(a)][landmarks[static_cast<std::size_t>(b)]];
            squares(a, b) = way * way;
        }
    const Eigen::VectorXd mean = squares.rowwise().mean();
    const Eigen::MatrixXd centred =
        -0.5 * ((squares.colwise() - mean).rowwise() - mean.transpose()).array() - 0.5 * mean.mean();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(centred);
    Eigen::MatrixXd to_place = Eigen::MatrixXd::Zero(3, m);
    const double largest = std::max(eigen.eigenvalues()(m - 1), 1e-12);
    for (Eigen::Index axis = 0; axis < std::min<Eigen::Index>(3, m); ++axis) {
        const double value = eigen.eigenvalues()(m - 1 - axis);
        if (value > 1e-9 * largest)
            to_place.row(axis) = eigen.eigenvectors().col(m - 1 - axis).transpose() / std::sqrt(value);
    }
    Eigen::VectorXd off(m);
    for (std::size_t k = 0; k < count; ++k) {
        for (Eigen::Index a = 0; a < m; ++a) {
            const double way = lengths[static_cast<std::size_t>(a)][k];
            off(a) = way * way - mean(a);
        }
        nodes[k] = -0.5 * to_place * off;
    }
    const double area = area_of(problem, nodes);
    const double scale = area > 0 ? std::sqrt(rest_area_of(problem) / area) : 1;
    for (Vec3& node : nodes) node *= scale;
    return nodes;
}

}  // namespace roundwright
