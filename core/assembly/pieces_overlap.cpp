#include "core/assembly/pieces_overlap.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double least_share = 0.01;
constexpr int lines_across = 48;

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

/// The volume that a copy may have in common with what it is joined to.
double joined_volume_mm3(const AssembledToy& toy, std::size_t index) {
    const PlacedPiece& placed = toy.placed.pieces[index];
    const SolvedPiece& piece = toy.solved[placed.solved];
    const SolvedPiece& onto = toy.solved[toy.placed.pieces[*placed.onto].solved];
    const Join& join = toy.toy.joins[*placed.join];
    const double fabrics = piece.fabric_mm + onto.fabric_mm;
    const double depth = std::max(0.0, join.sink_mm) + fabrics;
    if (!placed.line || placed.line->empty()) {
        const double radius = piece.measures.width_mm / 2;
        return pi * radius * radius * depth;
    }
    const SewnEdge edge = sewn_edge(piece, join.end);
    if (placed.line->form == SeamForm::straight)
        return edge.stitches_mm / 2 * std::max(piece.measures.depth_mm, fabrics) *
               (depth + bulge(*placed.line));
    const double area = pi * edge.radius_mm * edge.radius_mm;
    if (placed.line->form != SeamForm::ring) return area * (depth + bulge(*placed.line));
    // Which way the ring is entered: towards the nearer end.
    const auto nearer = frame_of_place(onto, join.at);
    const bool upwards = nearer && nearer->out.y() > 0;
    return area * (depth + reach_beyond(*placed.line, onto, upwards));
}

std::optional<std::size_t> joined_one(const AssembledToy& toy, std::size_t one, std::size_t other) {
    if (toy.placed.pieces[other].onto == one) return other;
    if (toy.placed.pieces[one].onto == other) return one;
    return std::nullopt;
}

}  // namespace

std::vector<PieceOverlap> pieces_that_overlap(const AssembledToy& toy) {
    std::vector<double> volumes;
    for (const auto& solid : toy.solids)
        volumes.push_back(solid ? std::max(0.0, measure_volume(*solid).volume_mm3) : 0);
    std::vector<PieceOverlap> found;
    for (std::size_t one = 0; one < toy.solids.size(); ++one) {
        for (std::size_t other = one + 1; other < toy.solids.size(); ++other) {
            const double least = least_share * std::min(volumes[one], volumes[other]);
            if (!(least > 0)) continue;
            const auto joined = joined_one(toy, one, other);
            const double common = overlap_volume_mm3(*toy.solids[one], *toy.solids[other], lines_across);
            if (!(common > least)) continue;
            const double beyond = common - (joined ? joined_volume_mm3(toy, *joined) : 0);
            if (beyond > least) found.push_back({one, other, beyond});
        }
    }
    return found;
}

}  // namespace roundwright
