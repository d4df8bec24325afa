#include "core/materials/materials.h"

#include <numeric>

#include "core/materials/stuffing.h"
#include "core/materials/working_time.h"
#include "core/materials/yarn_use.h"

namespace roundwright {
namespace {

int stitches_of(const StitchGraph& graph) {
    std::size_t stitches = 0;
    for (const GraphRound& round : graph.rounds) stitches += round.stitches.size();
    return static_cast<int>(stitches);
}

/// What the piece is fastened off in.
std::size_t last_yarn(const Piece& piece, std::size_t yarns) {
    const std::size_t yarn = piece.rounds.empty() ? 0 : piece.rounds.back().yarn;
    return yarn < yarns ? yarn : 0;
}

void add_yarn(Materials& sum, const Toy& toy, const WorkedPiece& worked, const std::vector<double>& use) {
    const std::vector<int> ends = yarn_ends(*worked.piece, *worked.graph, use.size());
    const Estimate stitch_mm = single_crochet_yarn_mm(worked.gauge, toy.making);
    for (std::size_t i = 0; i < use.size(); ++i) {
        const Estimate mm = stitch_mm * use[i] + exactly(ends[i] * tail_mm);
        sum.yarns[i].metres += mm * (worked.piece->make / 1000.0);
    }
    const Estimate sewing = seam_yarn_mm(worked.seams_mm, worked.piece->make);
    sum.yarns[last_yarn(*worked.piece, use.size())].metres += sewing * (1 / 1000.0);
}

void add_piece(Materials& sum, const Toy& toy, const WorkedPiece& worked) {
    const std::vector<double> use =
        single_crochets_of_yarn(*worked.piece, *worked.graph, sum.yarns.size(), worked.gaps_between_edges);
    add_yarn(sum, toy, worked, use);
    const double single_crochets = std::accumulate(use.begin(), use.end(), 0.0);
    sum.minutes += working_minutes(single_crochets * worked.piece->make, toy.making);
    sum.stuffing_g +=
        stuffing_grams(worked.volume_mm3, worked.piece->area_stretch, toy.making) * worked.piece->make;
    if (worked.piece->weight_grams > 0) {
        sum.pellets_g += worked.piece->weight_grams * worked.piece->make;
        sum.pellet_bags += worked.piece->make;
    }
    sum.stitches += stitches_of(*worked.graph) * worked.piece->make;
}

}  // namespace

Materials materials(const Toy& toy, const std::vector<WorkedPiece>& pieces) {
    const std::vector<Yarn> yarns = toy.yarns.empty() ? std::vector<Yarn>(1) : toy.yarns;
    Materials sum;
    sum.yarns.resize(yarns.size());
    for (const WorkedPiece& worked : pieces) add_piece(sum, toy, worked);
    std::vector<Estimate> grams;
    for (std::size_t i = 0; i < yarns.size(); ++i) {
        YarnUse& use = sum.yarns[i];
        use.grams = yarn_grams(yarns[i], use.metres);
        use.balls = balls_to_buy(yarns[i], use.grams);
        grams.push_back(use.grams);
    }
    sum.cost = cost(yarns, grams, sum.stuffing_g, sum.minutes, toy.making);
    return sum;
}

}  // namespace roundwright
