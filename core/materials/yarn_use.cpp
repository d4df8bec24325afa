#include "core/materials/yarn_use.h"

#include <algorithm>
#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/shape/size_range.h"
#include "core/stitches/stitch_measure.h"

namespace roundwright {
namespace {

std::size_t yarn_index(std::size_t yarn, std::size_t yarns) { return yarn < yarns ? yarn : 0; }

double foundation_chains(const Start& start, int gaps_between_edges) {
    if (const auto* ring = std::get_if<ChainRing>(&start)) return ring->chains;
    if (const auto* tube = std::get_if<OpenTube>(&start)) return tube->chains;
    if (const auto* oval = std::get_if<OvalChain>(&start)) return oval->chains;
    if (const auto* on = std::get_if<WorkedOn>(&start)) return on->chains_between * gaps_between_edges;
    return 0;
}

double joining_yarn(Joining joining) {
    switch (joining) {
        case Joining::spiral:
            return 0;
        case Joining::joined:
            return yarn_in_sc(StitchKind::slip_stitch) + yarn_in_sc(StitchKind::chain);
        case Joining::rows:
            return yarn_in_sc(StitchKind::chain);
    }
    return 0;
}

/// A yarn taken up in a round and worked until the next one is.
struct Stretch {
    std::size_t yarn;
    std::size_t round;
};
std::vector<Stretch> stretches(const StitchGraph& graph, std::size_t yarns) {
    std::vector<Stretch> all;
    for (std::size_t round = 0; round < graph.rounds.size(); ++round) {
        for (const GraphStitch& stitch : graph.rounds[round].stitches) {
            const std::size_t yarn = yarn_index(stitch.stitch.yarn, yarns);
            if (all.empty() || all.back().yarn != yarn) all.push_back({yarn, round});
        }
    }
    return all;
}

/// The published range; where it is open, a quarter beyond its printed end stands in. None is published for
/// jumbo: an estimate of our own, below super bulky.
Range usual_metres_per_100_g(YarnWeight weight) {
    const Range range = yarn_standard(weight).metres_per_100_g;
    if (range.low <= 0 && range.high <= 0) return {30, 60};
    return {range.low > 0 ? range.low : range.high * 0.75, range.high > 0 ? range.high : range.low * 1.25};
}

/// Nine makers in ten have a stitch width between its ends, as sizes have their ranges.
Estimate stitch_width(const Gauge& gauge) {
    const double w = gauge.stitch_width_mm;
    const double error = std::clamp(gauge.stitch_width_error_mm, 0.0, w);
    if (!(w > 0)) return exactly(w);
    const double reach = range_deviations / deviations_in_half_width * error / w;
    return {w, w * std::exp(-reach), w * std::exp(reach)};
}

/// Rounds that a yarn may rest and still be carried up.
constexpr std::size_t carried_rounds = 2;

}  // namespace

Estimate single_crochet_yarn_mm(const Gauge& gauge, const Making& making) {
    if (making.yarn_per_ten_stitches_mm) {
        const double measured = *making.yarn_per_ten_stitches_mm / 10;
        return {measured, measured * (1 - measured_yarn_error), measured * (1 + measured_yarn_error)};
    }
    return yarn_over_stitch_width * stitch_width(gauge);
}

Estimate seam_yarn_mm(double seams_mm, int copies) {
    const double tails = std::max(0, copies) * tail_mm;
    const Estimate sewn = yarn_over_seam * seams_mm;
    const auto beyond = [&](double mm) { return std::max(0.0, mm - tails); };
    return {beyond(sewn.likely), beyond(sewn.low), beyond(sewn.high)};
}

std::vector<double> single_crochets_of_yarn(const Piece& piece, const StitchGraph& graph, std::size_t yarns,
                                            int gaps_between_edges) {
    std::vector<double> use(yarns, 0.0);
    if (yarns == 0) return use;
    const std::size_t first = piece.rounds.empty() ? 0 : yarn_index(piece.rounds.front().yarn, yarns);
    use[first] += foundation_chains(piece.start, gaps_between_edges) * yarn_in_sc(StitchKind::chain);
    for (const GraphRound& round : graph.rounds) {
        for (const GraphStitch& stitch : round.stitches) {
            use[yarn_index(stitch.stitch.yarn, yarns)] += yarn_in_sc(stitch.stitch);
        }
        if (!round.stitches.empty()) {
            const std::size_t last = yarn_index(round.stitches.back().stitch.yarn, yarns);
            use[last] += joining_yarn(piece.joining);
        }
    }
    return use;
}

std::vector<int> yarn_ends(const Piece&, const StitchGraph& graph, std::size_t yarns) {
    std::vector<int> ends(yarns, 0);
    if (yarns == 0) return ends;
    std::vector<std::size_t> dropped(yarns, 0);
    std::vector<bool> begun(yarns, false);
    const std::vector<Stretch> all = stretches(graph, yarns);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Stretch& stretch = all[i];
        const bool carried = begun[stretch.yarn] && stretch.round <= dropped[stretch.yarn] + carried_rounds;
        if (!carried) ends[stretch.yarn] += 2;
        begun[stretch.yarn] = true;
        dropped[stretch.yarn] = i + 1 < all.size() ? all[i + 1].round : graph.rounds.size();
    }
    return ends;
}

Estimate yarn_grams(const Yarn& yarn, const Estimate& metres) {
    if (yarn.metres_per_100_g && *yarn.metres_per_100_g > 0) return metres * (100 / *yarn.metres_per_100_g);
    const Range range = usual_metres_per_100_g(yarn.weight);
    const double likely = range.middle();
    return {metres.likely * 100 / likely, metres.low * 100 / range.high, metres.high * 100 / range.low};
}

}  // namespace roundwright
