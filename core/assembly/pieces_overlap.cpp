#include "core/assembly/pieces_overlap.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/assembly/held_solids.h"

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double least_share = 0.01;
constexpr int lines_across = 48;
constexpr double steepest_lean_degrees = 45;

/// How far what a ring goes around reaches beyond it, into the piece that is sewn there.
double reach_beyond(const SeamLine& line, const SolvedPiece& onto, bool upwards) {
    const double ring = line.middle().y();
    double reach = 0;
    for (const Vec3& point : onto.solid->points)
        reach = std::max(reach, upwards ? point.y() - ring : ring - point.y());
    return reach;
}

/// How deep the line lies below its own highest point: the surface bulges that far through its edge.
double bulge(const SeamLine& line) {
    Vec3 out = Vec3::Zero();
    for (const SurfaceSpot& spot : line.points) out += spot.normal;
    if (!(out.norm() > 1e-9)) return 0;
    out.normalize();
    // A cap over an edge whose surface leans by an angle a is at most r tan(a / 2) high; that of a circle on
    // a ball is exactly so high.
    double radius = 0, lean = 0;
    const Vec3 middle = line.middle();
    for (const SurfaceSpot& spot : line.points) {
        radius = std::max(radius, (spot.place - middle).norm());
        lean = std::max(lean, std::acos(std::clamp(spot.normal.dot(out), -1.0, 1.0)));
    }
    return radius * std::tan(std::min(lean, 3.0) / 2);
}

/// Where an edge leans it goes in on one side: a wedge under half a disc, 2/3 r^3 tan(lean). A piece that
/// lies on its side is not accounted for by that.
double wedge_mm3(const Join& join, double radius) {
    const double lean =
        std::min(std::hypot(join.lean_degrees, join.lean_right_degrees), steepest_lean_degrees);
    return 2.0 / 3 * radius * radius * radius * std::tan(lean * pi / 180);
}

/// The volume that a copy may have in common with what it is joined to, both as they are before their edges
/// bend; nothing where they lie on each other as one.
std::optional<double> joined_volume_mm3(const AssembledToy& toy, std::size_t index) {
    const PlacedPiece& placed = toy.placed.pieces[index];
    const SolvedPiece& piece = toy.solved[placed.solved];
    const SolvedPiece& onto = toy.solved[toy.placed.pieces[*placed.onto].solved];
    const Join& join = toy.toy.joins[*placed.join];
    if (join.seam == Seam::worked_on || join.seam == Seam::layers) return std::nullopt;
    const double depth = std::max(0.0, join.sink_mm) + (piece.fabric_mm + onto.fabric_mm) / 2;
    if (!placed.line || placed.line->empty()) {
        const double radius = piece.measures.width_mm / 2;
        return pi * radius * radius * depth;
    }
    const double radius = sewn_edge(piece, join.end).radius_mm;
    const double area = pi * radius * radius;
    if (placed.line->form != SeamForm::ring)
        return area * (depth + bulge(*placed.line)) + wedge_mm3(join, radius);
    // Which way the ring is entered: towards the nearer end.
    const auto nearer = frame_of_place(onto, join.at);
    const bool upwards = nearer && nearer->out.y() > 0;
    return area * (depth + reach_beyond(*placed.line, onto, upwards)) + wedge_mm3(join, radius);
}

Solid rigid_solid(const AssembledToy& toy, std::size_t index) {
    return placed_solid(*toy.solved[toy.placed.pieces[index].solved].solid,
                        PlacedForm(toy.placed.pieces[index].pose));
}

std::optional<std::size_t> joined_one(const AssembledToy& toy, std::size_t one, std::size_t other) {
    if (toy.placed.pieces[other].onto == one) return other;
    if (toy.placed.pieces[one].onto == other) return one;
    return std::nullopt;
}

double common_beyond_join(const AssembledToy& toy, std::size_t one, std::size_t other) {
    const auto joined = joined_one(toy, one, other);
    if (!joined) return overlap_volume_mm3(*toy.solids[one], *toy.solids[other], lines_across);
    const auto meant = joined_volume_mm3(toy, *joined);
    if (!meant) return 0;
    return overlap_volume_mm3(rigid_solid(toy, one), rigid_solid(toy, other), lines_across) - *meant;
}

}  // namespace

HeldSolids held_solids(const AssembledToy& toy, std::size_t one, std::size_t other) {
    const auto joined = joined_one(toy, one, other);
    if (!joined) return {*toy.solids[one], *toy.solids[other], joined};
    return {rigid_solid(toy, one), rigid_solid(toy, other), joined};
}

std::vector<PieceOverlap> pieces_that_overlap(const AssembledToy& toy) {
    std::vector<double> volumes;
    for (const auto& solid : toy.solids)
        volumes.push_back(solid ? std::max(0.0, measure_volume(*solid).volume_mm3) : 0);
    std::vector<PieceOverlap> found;
    for (std::size_t one = 0; one < toy.solids.size(); ++one) {
        for (std::size_t other = one + 1; other < toy.solids.size(); ++other) {
            const double least = least_share * std::min(volumes[one], volumes[other]);
            if (!(least > 0) || !toy.solids[one] || !toy.solids[other]) continue;
            const double beyond = common_beyond_join(toy, one, other);
            if (beyond > least) found.push_back({one, other, beyond});
        }
    }
    return found;
}

}  // namespace roundwright
