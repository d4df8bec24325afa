#include "core/mesh/coiled_fabric.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace roundwright {
namespace {

using std::numbers::pi;

/// Of the way from a turn to the next one, how deep its other side lies: the cords of both need the rest.
constexpr double share_of_a_turn = 0.6;

}  // namespace

CoiledFabric::CoiledFabric(Coil coil, std::vector<double> loops, bool turned_over)
    : coil_(std::move(coil)), loops_(std::move(loops)), turned_over_(turned_over) {}

FabricEnds CoiledFabric::ends() const {
    FabricEnds ends;
    ends.rounds = RoundEnds::nowhere;
    return ends;
}

double CoiledFabric::girth_radius_mm(std::size_t round, double up) const {
    return ((1 - up) * coil_.edge_mm(round) + up * coil_.edge_mm(round + 1)) / (2 * pi);
}

double CoiledFabric::room_below_mm(std::size_t edge) const {
    const double radius = coil_.radii_mm[edge];
    const double upright = radius / std::hypot(radius, coil_.climb_mm);
    return share_of_a_turn * 2 * pi * coil_.climb_mm * upright;
}

FabricPoint CoiledFabric::at(double share, double radius_mm, double lift_mm) const {
    const double angle = pi + share * coil_.radians;
    const double sine = std::sin(angle), cosine = std::cos(angle), q = coil_.climb_mm;
    FabricPoint point;
    point.normal = Vec3(-q * cosine, radius_mm, q * sine) / std::hypot(radius_mm, q);
    point.place =
        Vec3(radius_mm * sine, share * coil_.length_mm(), radius_mm * cosine) + lift_mm * point.normal;
    if (!turned_over_) return point;
    point.place = {-point.place.x(), coil_.length_mm() - point.place.y(), point.place.z()};
    point.normal = {-point.normal.x(), -point.normal.y(), point.normal.z()};
    return point;
}

void CoiledFabric::place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const {
    const double radius = (1 - row.up) * coil_.radii_mm[row.round] + row.up * coil_.radii_mm[row.round + 1];
    for (std::size_t q = 0; q < row.columns; ++q) {
        const double across = static_cast<double>(q) / static_cast<double>(row.columns);
        const double below = row.below_first + across * (row.below_last - row.below_first);
        const double above = row.above_first + across * (row.above_last - row.above_first);
        const double share =
            (1 - row.up) * below / loops_[row.round] + row.up * above / loops_[row.round + 1];
        const FabricPoint point = at(share, radius, lifts_mm[q]);
        places[q] = point.place;
        if (normals) normals[q] = point.normal;
    }
}

FabricPoint CoiledFabric::on_edge(std::size_t edge, double loops_along, double lift_mm, std::uint32_t) const {
    return at(loops_along / loops_[edge], coil_.radii_mm[edge], lift_mm);
}

std::unique_ptr<FabricGeometry> CoiledFabric::coarser(const std::vector<std::size_t>& kept,
                                                      const std::vector<double>& cells) const {
    Coil coil = coil_;
    coil.radii_mm.clear();
    for (const std::size_t edge : kept) coil.radii_mm.push_back(coil_.radii_mm[edge]);
    return std::make_unique<CoiledFabric>(std::move(coil), cells, turned_over_);
}

}  // namespace roundwright
