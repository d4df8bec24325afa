#include "core/shape/fabric/stand_upright.h"

#include <Eigen/Dense>
#include <Eigen/Geometry>
#include <algorithm>
#include <limits>

namespace roundwright {
namespace {

const Vec3& at(const std::vector<Vec3>& nodes, std::int32_t node) {
    return nodes[static_cast<std::size_t>(node)];
}

Vec3 middle_of(const CellEdge& edge, const std::vector<Vec3>& nodes) {
    Vec3 sum = Vec3::Zero();
    for (std::size_t k = 0; k + 1 < edge.nodes.size(); ++k)
        sum += (edge.nodes[k + 1].at - edge.nodes[k].at) *
               (at(nodes, edge.nodes[k].node) + at(nodes, edge.nodes[k + 1].node)) / 2;
    return sum / edge.loops;
}

double size_of(const std::vector<Vec3>& nodes) {
    Eigen::AlignedBox3d box;
    for (const Vec3& node : nodes) box.extend(node);
    return box.isEmpty() ? 0 : box.diagonal().norm();
}

/// Sum of the triangles' areas as vectors to the outside: 0 for what is closed.
Vec3 facing(const StitchCells& cells, const std::vector<Vec3>& nodes) {
    Vec3 sum = Vec3::Zero();
    for (const FabricTriangle& triangle : cells.problem.triangles)
        sum += (at(nodes, triangle.nodes[1]) - at(nodes, triangle.nodes[0]))
                   .cross(at(nodes, triangle.nodes[2]) - at(nodes, triangle.nodes[0])) /
               2;
    return sum;
}

Vec3 up_of(const StitchCells& cells, const std::vector<Vec3>& nodes) {
    constexpr double flat = 0.02;
    const Vec3 way = middle_of(cells.edges.back(), nodes) - middle_of(cells.edges.front(), nodes);
    const Vec3 inside = -facing(cells, nodes);
    const double size = size_of(nodes);
    // Rows around a chain go past one end of it alone, which moves the middle of their edge aside.
    const bool goes_up = way.norm() > flat * size && !(cells.rows && cells.around_chain);
    if (goes_up || !(inside.norm() > flat * size * size))
        return way.norm() > 0 ? Vec3(way.normalized()) : Vec3(Vec3::UnitY());
    return inside.normalized();
}

/// Sums over the edges the way from their middle to their start.
Vec3 back_of(const StitchCells& cells, const std::vector<Vec3>& nodes) {
    Vec3 sum = Vec3::Zero();
    const std::vector<double>& turns = cells.turns;
    for (std::size_t edge = 1; edge < cells.edges.size(); ++edge) {
        const CellEdge& line = cells.edges[edge];
        const double along = -turns[edge] * line.loops;
        const double wrapped = along - std::floor(along / line.loops) * line.loops;
        const auto nearest = std::ranges::min_element(
            line.nodes, {}, [&](const EdgeNode& node) { return std::abs(node.at - wrapped); });
        sum += at(nodes, nearest->node) - middle_of(line, nodes);
    }
    return sum;
}

Vec3 across_sheet(const StitchCells& cells, const std::vector<Vec3>& nodes) {
    Vec3 sum = Vec3::Zero();
    for (const CellEdge& edge : cells.edges)
        sum += at(nodes, edge.nodes.front().node) - at(nodes, edge.nodes.back().node);
    return sum;
}

/// To the right, and roughly upright on `up`.
Vec3 right_of(const StitchCells& cells, const std::vector<Vec3>& nodes, const Vec3& up) {
    if (cells.rows && !cells.around_chain) return across_sheet(cells, nodes);
    if (!cells.around_chain) return back_of(cells, nodes).cross(up);
    const auto& chain = cells.edges.front();
    const auto turn = std::ranges::lower_bound(chain.nodes, chain.loops / 2, {}, &EdgeNode::at);
    return at(nodes, turn->node) - at(nodes, chain.nodes.front().node);
}

void set_down(std::vector<Vec3>& nodes) {
    double lowest = std::numeric_limits<double>::infinity();
    for (const Vec3& node : nodes) lowest = std::min(lowest, node.y());
    for (Vec3& node : nodes) node.y() -= lowest;
}

}  // namespace

void stand_upright(const StitchCells& cells, std::vector<Vec3>& nodes) {
    const Vec3 up = up_of(cells, nodes);
    Vec3 right = right_of(cells, nodes, up);
    right -= right.dot(up) * up;
    if (!(right.norm() > 1e-9)) right = up.unitOrthogonal();
    right.normalize();
    Eigen::Matrix3d frame;
    frame.row(0) = right;
    frame.row(1) = up;
    frame.row(2) = right.cross(up);
    const Vec3 foot =
        cells.rows && !cells.around_chain
            ? Vec3((middle_of(cells.edges.front(), nodes) + middle_of(cells.edges.back(), nodes)) / 2)
            : middle_of(cells.edges.front(), nodes);
    for (Vec3& node : nodes) node = frame * (node - foot);
    set_down(nodes);
}

void stand_upright_as(std::span<const Vec3> standing, std::vector<Vec3>& nodes) {
    Vec3 to = Vec3::Zero(), from = Vec3::Zero();
    const auto count = static_cast<double>(nodes.size());
    for (std::size_t k = 0; k < nodes.size(); ++k) {
        to += standing[k] / count;
        from += nodes[k] / count;
    }
    Eigen::Matrix3d moments = Eigen::Matrix3d::Zero();
    for (std::size_t k = 0; k < nodes.size(); ++k)
        moments += (standing[k] - to) * (nodes[k] - from).transpose();
    const Eigen::JacobiSVD<Eigen::Matrix3d> svd(moments, Eigen::ComputeFullU | Eigen::ComputeFullV);
    Eigen::Matrix3d sides = Eigen::Matrix3d::Identity();
    sides(2, 2) = (svd.matrixU() * svd.matrixV().transpose()).determinant() < 0 ? -1 : 1;
    const Eigen::Matrix3d turn = svd.matrixU() * sides * svd.matrixV().transpose();
    for (Vec3& node : nodes) node = to + turn * (node - from);
    set_down(nodes);
}

}  // namespace roundwright
