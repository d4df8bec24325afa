#include "core/assembly/worked_pieces.h"

#include <algorithm>

#include "core/assembly/solid.h"
#include "core/assembly/study_solved.h"
#include "core/study/study_surface.h"
#include "core/toy/stuffed_part.h"

namespace roundwright {
namespace {

constexpr double sewn_ring = 0.5;

double last_edge_mm(const std::vector<int>& counts, const Gauge& gauge) {
    return counts.empty() ? 0 : counts.back() * gauge.stitch_width_mm;
}

double widest_mm(const std::vector<int>& counts, const Gauge& gauge) {
    return counts.empty() ? 0 : std::ranges::max(counts) * gauge.stitch_width_mm;
}

/// The seam of one copy.
double seam_mm(const SewingStep& step, const std::vector<int>& counts, const Gauge& gauge) {
    const double edge = step.edge_stitches * gauge.stitch_width_mm;
    if (step.seam == Seam::hung || step.seam == Seam::worked_on) return 0;
    if (step.curls) return 2 * gauge.round_height_mm * static_cast<double>(counts.size());
    if (step.seam == Seam::straight) return edge / 2;
    if (edge > 0) return edge;
    return step.onto_open ? step.onto_stitches * gauge.stitch_width_mm : sewn_ring * widest_mm(counts, gauge);
}

/// Of edges that are flattened and closed, those that no join sews on.
int closed_by_themselves(const Toy& toy, std::size_t piece, const std::vector<SewingStep>& steps) {
    const Piece& made = toy.pieces[piece];
    if (made.end != End::sewn_straight || made.joining == Joining::rows) return 0;
    int left = made.make;
    for (const SewingStep& step : steps)
        if (step.piece == piece && step.seam == Seam::straight && toy.joins[step.join].end == JoinedEnd::end)
            left -= step.copies;
    return std::max(0, left);
}

}  // namespace

double stuffed_volume_mm3(const SolvedPiece& piece) {
    if (!piece.stuffed) return 0;
    return piece.stuffed == piece.solid ? piece.measures.volume_mm3
                                        : measure_volume(*piece.stuffed).volume_mm3;
}

double stuffed_volume_mm3(const Piece& piece, const PieceStudy& study) {
    if (!(piece.area_stretch > 0) || !study.measures().usable()) return 0;
    const auto part = stuffed_part(piece);
    if (!part) return study.measures().volume_mm3;
    const auto fabric = study_fabric(piece, study);
    if (!fabric) return 0;
    const auto edge = [](int round) { return static_cast<std::size_t>(round); };
    return measure_volume(solid_of(*fabric, {edge(part->first), edge(part->last + 1)})).volume_mm3;
}

std::vector<double> seams_mm(const Toy& toy, RoundCounts counts, const Gauge& gauge) {
    std::vector<double> sewn(toy.pieces.size(), 0);
    const std::vector<SewingStep> steps = sewing_steps(toy, counts, gauge);
    for (const SewingStep& step : steps)
        sewn[step.piece] += step.copies * seam_mm(step, counts[step.piece], gauge);
    for (std::size_t piece = 0; piece < sewn.size(); ++piece)
        sewn[piece] += closed_by_themselves(toy, piece, steps) * last_edge_mm(counts[piece], gauge) / 2;
    return sewn;
}

std::vector<WorkedPiece> worked_pieces(const Toy& toy, std::span<const PieceStudy> studies) {
    std::vector<std::vector<int>> counts;
    for (const PieceStudy& study : studies) counts.push_back(stitch_counts(study.graph().graph));
    const Gauge gauge = studies.empty() ? Gauge{} : studies.front().gauge;
    const std::vector<double> sewn = seams_mm(toy, counts, gauge);
    std::vector<WorkedPiece> worked;
    for (std::size_t i = 0; i < studies.size(); ++i) {
        const Piece& piece = toy.pieces[i];
        const int edges = static_cast<int>(worked_on_edges(toy, i).size());
        worked.push_back({.piece = &piece,
                          .graph = &studies[i].graph().graph,
                          .gauge = studies[i].gauge,
                          .volume_mm3 = stuffed_volume_mm3(piece, studies[i]),
                          .gaps_between_edges = edges > 0 ? edges - 1 : 1,
                          .seams_mm = sewn[i]});
    }
    return worked;
}

}  // namespace roundwright
