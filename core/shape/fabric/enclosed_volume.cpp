#include "core/shape/fabric/enclosed_volume.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <map>
#include <numeric>
#include <set>

namespace roundwright {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Eigen::Map<const Vector3d> at_node(const double* positions, std::int32_t node) {
    return Eigen::Map<const Vector3d>(positions + 3 * static_cast<std::ptrdiff_t>(node));
}
Eigen::Map<Vector3d> at_node(double* positions, std::int32_t node) {
    return Eigen::Map<Vector3d>(positions + 3 * static_cast<std::ptrdiff_t>(node));
}

/// cross(v) w = v x w.
Matrix3d cross(const Vector3d& v) {
    Matrix3d m;
    m << 0, -v.z(), v.y(), v.z(), 0, -v.x(), -v.y(), v.x(), 0;
    return m;
}

Vector3d mean_of(const double* positions, const std::vector<std::int32_t>& nodes) {
    Vector3d sum = Vector3d::Zero();
    for (const std::int32_t node : nodes) sum += at_node(positions, node);
    return sum / static_cast<double>(nodes.size());
}

double share_of(const FabricProblem& problem, std::int32_t triangle) {
    if (triangle == FabricEdge::no_one) return 0;
    return problem.stuffed.empty() ? 1 : problem.stuffed[static_cast<std::size_t>(triangle)];
}

/// Which nodes hang together.
class Groups {
  public:
    std::int32_t of(std::int32_t node) {
        const auto found = above_.find(node);
        if (found == above_.end() || found->second == node) return node;
        return found->second = of(found->second);
    }
    void join(std::int32_t a, std::int32_t b) { above_[of(a)] = of(b); }

  private:
    std::map<std::int32_t, std::int32_t> above_;
};

}  // namespace

EnclosedVolume::EnclosedVolume(const FabricProblem& problem, const FabricTopology& topology) {
    add_faces(problem, topology);
    add_fans(problem, topology);
}

void EnclosedVolume::add_faces(const FabricProblem& problem, const FabricTopology& topology) {
    faces_.reserve(problem.triangles.size());
    for (std::size_t t = 0; t < problem.triangles.size(); ++t)
        if (const double share = share_of(problem, static_cast<std::int32_t>(t)); share != 0)
            faces_.push_back({problem.triangles[t].nodes, share, topology.edges_of_triangle[t]});
}

// The weighted faces leave over, at every edge, the difference of its two shares, run backwards. These edges
// are a cycle in every group that hangs together, so a fan from any point closes the group.
void EnclosedVolume::add_fans(const FabricProblem& problem, const FabricTopology& topology) {
    std::map<std::pair<std::int32_t, std::int32_t>, std::size_t> cap_of_edge;
    for (std::size_t cap = 0; cap < problem.caps.size(); ++cap) {
        const FabricLoop& loop = problem.caps[cap];
        for (std::size_t k = 0; k < loop.size(); ++k)
            cap_of_edge[std::minmax(loop[k], loop[(k + 1) % loop.size()])] = cap;
    }
    const auto cap = [&](const FabricEdge& edge) {
        const auto found = cap_of_edge.find({edge.nodes[0], edge.nodes[1]});
        return found == cap_of_edge.end() ? problem.caps.size() : found->second;
    };
    const auto left_over = [&](const FabricEdge& edge) {
        return share_of(problem, edge.triangles[0]) - share_of(problem, edge.triangles[1]);
    };
    Groups groups;
    for (const FabricEdge& edge : topology.edges)
        if (left_over(edge) != 0 && cap(edge) == problem.caps.size())
            groups.join(edge.nodes[0], edge.nodes[1]);
    std::map<std::pair<std::size_t, std::int32_t>, Fan> fans;
    for (const FabricEdge& edge : topology.edges) {
        const double share = left_over(edge);
        if (share == 0) continue;
        const std::size_t own = cap(edge);
        Fan& fan = fans[{own, own == problem.caps.size() ? groups.of(edge.nodes[0]) : 0}];
        fan.edges.push_back({edge.nodes[1], edge.nodes[0], share});
    }
    for (auto& [key, fan] : fans) {
        std::set<std::int32_t> nodes;
        for (const Fan::Edge& edge : fan.edges) nodes.insert({edge.from, edge.to});
        fan.nodes.assign(nodes.begin(), nodes.end());
        fans_.push_back(std::move(fan));
    }
}

double EnclosedVolume::value(const double* positions) const {
    double sum = 0;
    for (const Face& face : faces_)
        sum +=
            face.share * at_node(positions, face.nodes[0])
                             .dot(at_node(positions, face.nodes[1]).cross(at_node(positions, face.nodes[2])));
    for (const Fan& fan : fans_) {
        const Vector3d apex = mean_of(positions, fan.nodes);
        for (const auto& [from, to, share] : fan.edges)
            sum += share * apex.dot(at_node(positions, from).cross(at_node(positions, to)));
    }
    return sum / 6;
}

void EnclosedVolume::add_gradient(const double* positions, double factor, double* out) const {
    for (const Face& face : faces_) {
        const double c = factor * face.share / 6;
        const Vector3d a = at_node(positions, face.nodes[0]);
        const Vector3d b = at_node(positions, face.nodes[1]);
        const Vector3d d = at_node(positions, face.nodes[2]);
        at_node(out, face.nodes[0]) += c * b.cross(d);
        at_node(out, face.nodes[1]) += c * d.cross(a);
        at_node(out, face.nodes[2]) += c * a.cross(b);
    }
    for (const Fan& fan : fans_) {
        const Vector3d apex = mean_of(positions, fan.nodes);
        Vector3d by_apex = Vector3d::Zero();
        for (const auto& [from, to, share] : fan.edges) {
            const double c = factor * share / 6;
            const Vector3d a = at_node(positions, from);
            const Vector3d b = at_node(positions, to);
            at_node(out, from) += c * b.cross(apex);
            at_node(out, to) += c * apex.cross(a);
            by_apex += c * a.cross(b);
        }
        for (const std::int32_t node : fan.nodes)
            at_node(out, node) += by_apex / static_cast<double>(fan.nodes.size());
    }
}

// d/dx1 of (x1 x x2) / 6, the gradient by x0, is -cross(x2) / 6: the third node's.
void EnclosedVolume::add_hessian(const double* positions, double factor, BlockMatrix& out) const {
    for (const Face& face : faces_) {
        for (std::size_t k = 0; k < 3; ++k) {
            const std::int32_t first = face.nodes[k];
            const std::int32_t second = face.nodes[(k + 1) % 3];
            const double c = first < second ? -factor * face.share / 6 : factor * face.share / 6;
            out.beside(static_cast<std::size_t>(face.edges[k])) +=
                c * cross(at_node(positions, face.nodes[(k + 2) % 3]));
        }
    }
}

void EnclosedVolume::add_fans_product(const double* positions, const double* vector, double factor,
                                      double* out) const {
    for (const Fan& fan : fans_) {
        const Vector3d apex = mean_of(positions, fan.nodes);
        const Vector3d apex_moves = mean_of(vector, fan.nodes);
        Vector3d by_apex = Vector3d::Zero();
        for (const auto& [from, to, share] : fan.edges) {
            const double c = factor * share / 6;
            const Vector3d a = at_node(positions, from);
            const Vector3d b = at_node(positions, to);
            const Vector3d da = at_node(vector, from);
            const Vector3d db = at_node(vector, to);
            at_node(out, from) += c * (db.cross(apex) + b.cross(apex_moves));
            at_node(out, to) += c * (apex_moves.cross(a) + apex.cross(da));
            by_apex += c * (da.cross(b) + a.cross(db));
        }
        for (const std::int32_t node : fan.nodes)
            at_node(out, node) += by_apex / static_cast<double>(fan.nodes.size());
    }
}

}  // namespace roundwright
