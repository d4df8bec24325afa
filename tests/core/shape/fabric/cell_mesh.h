#pragma once

#include <cmath>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "core/shape/fabric/stitch_cells.h"

namespace roundwright::test {

/// What the triangles of cells must satisfy, by their nodes alone.
struct CellMesh {
    std::size_t doubled = 0;  ///< edges run twice in the same direction
    std::size_t open = 0;     ///< edges with one triangle
    std::size_t pinched = 0;  ///< nodes whose triangles are not one fan
    std::size_t unused = 0;   ///< nodes without a triangle
    std::size_t turned = 0;   ///< triangles whose relaxed shape is empty or not anticlockwise
    long euler_characteristic = 0;
};

inline double rest_area(const FabricTriangle& triangle) {
    const Vec2 a = triangle.rest[1] - triangle.rest[0], b = triangle.rest[2] - triangle.rest[0];
    return (a.x() * b.y() - a.y() * b.x()) / 2;
}

inline double rest_area(const StitchCells& cells, std::size_t round, std::size_t cell) {
    double area = 0;
    for (auto t = cells.first_triangle[round][cell]; t < cells.first_triangle[round][cell + 1]; ++t)
        area += rest_area(cells.problem.triangles[static_cast<std::size_t>(t)]);
    return area;
}

inline double rest_area(const StitchCells& cells, std::size_t round) {
    double area = 0;
    for (std::size_t c = 0; c + 1 < cells.first_triangle[round].size(); ++c)
        area += rest_area(cells, round, c);
    return area;
}

inline CellMesh mesh_of(const StitchCells& cells) {
    CellMesh mesh;
    std::map<std::pair<int, int>, int> run;
    std::map<int, std::map<int, int>> around;  // [node][one neighbour]: the next
    std::set<int> used;
    for (const FabricTriangle& triangle : cells.problem.triangles) {
        mesh.turned += !(rest_area(triangle) > 0);
        for (std::size_t k = 0; k < 3; ++k) {
            const int a = triangle.nodes[k], b = triangle.nodes[(k + 1) % 3], c = triangle.nodes[(k + 2) % 3];
            ++run[{a, b}];
            around[a][b] = c;
            used.insert(a);
        }
    }
    long edges = 0;
    for (const auto& [edge, times] : run) {
        const bool back = run.contains({edge.second, edge.first});
        mesh.doubled += times > 1;
        mesh.open += !back;
        edges += !back || edge.first < edge.second;
    }
    for (const auto& [node, next] : around) {
        std::set<int> entered;
        for (const auto& [from, to] : next) entered.insert(to);
        auto at = next.begin()->first;
        for (const auto& [from, to] : next)
            if (!entered.contains(from)) at = from;
        std::size_t steps = 0;
        for (; steps < next.size() && next.contains(at); ++steps) at = next.at(at);
        mesh.pinched += steps != next.size();
    }
    mesh.unused = static_cast<std::size_t>(cells.problem.nodes) - used.size();
    mesh.euler_characteristic =
        static_cast<long>(used.size()) - edges + static_cast<long>(cells.problem.triangles.size());
    return mesh;
}

}  // namespace roundwright::test
