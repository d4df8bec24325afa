#include "core/assembly/seam_measures.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "core/assembly/seam_line.h"

namespace roundwright {
namespace {

int stitches_on_edge(const SolvedPiece& piece, JoinedEnd end) {
    if (end == JoinedEnd::end) return piece.stitches.empty() ? 0 : piece.stitches.back();
    if (const auto* tube = std::get_if<OpenTube>(&piece.piece->start)) return tube->chains;
    if (const auto* on = std::get_if<WorkedOn>(&piece.piece->start)) return on->stitches;
    return 0;
}

/// The gap between rounds that a line so far along the fabric lies in, the nearer one.
int gap_at(const FaceSurface& surface, double along_mm) {
    int nearest = 0;
    for (int loop = 1; loop < surface.loops(); ++loop)
        if (std::abs(surface.along_of_loop(loop) - along_mm) <
            std::abs(surface.along_of_loop(nearest) - along_mm))
            nearest = loop;
    return nearest - 1;
}

}  // namespace

std::optional<SeamMeasures> seam_measures(const Toy& toy, const PlacedToy& placed,
                                          std::span<const SolvedPiece> solved, std::size_t index) {
    const PlacedPiece& piece = placed.pieces[index];
    if (!piece.line || piece.line->empty() || piece.mirrored || piece.line->form == SeamForm::patch)
        return {};
    const JoinedEnd end = toy.joins[*piece.join].end;
    const SewnEdge edge = sewn_edge(solved[piece.solved], end);
    SeamMeasures found;
    found.line_mm = piece.line->length_mm;
    found.stitches_mm = piece.line->form == SeamForm::straight ? edge.stitches_mm / 2 : edge.stitches_mm;
    found.stitches = stitches_on_edge(solved[piece.solved], end);
    const FaceSurface& onto = solved[placed.pieces[*piece.onto].solved].surface;
    const auto [low, high] = std::ranges::minmax(piece.line->places, {}, &SurfacePlace::along_mm);
    found.lowest_round = gap_at(onto, low.along_mm);
    found.highest_round = gap_at(onto, high.along_mm);
    const Pose to_onto = placed.pieces[*piece.onto].pose.inverse() * piece.pose;
    const auto points = edge_points(solved[piece.solved], end);
    for (std::size_t k = 0; k < points.size(); ++k)
        found.lean_over_mm =
            std::max(found.lean_over_mm, (piece.line->points[k].place - to_onto * points[k]).norm());
    return found;
}

}  // namespace roundwright
