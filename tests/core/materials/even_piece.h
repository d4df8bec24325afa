#pragma once

#include <cstdint>
#include <vector>

#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright::testing {

/// A graph of plain stitches: as many a round as `counts` says, round i in yarn `yarns[i]` (absent: 0).
inline StitchGraph plain_graph(const std::vector<int>& counts, const std::vector<int>& yarns = {},
                               StitchKind kind = StitchKind::single_crochet) {
    StitchGraph graph;
    for (std::size_t i = 0; i < counts.size(); ++i) {
        GraphRound round;
        round.loops_left = counts[i];
        Stitch stitch;
        stitch.kind = kind;
        stitch.yarn = static_cast<std::uint16_t>(i < yarns.size() ? yarns[i] : 0);
        round.stitches.assign(counts[i], GraphStitch{stitch, 0});
        graph.rounds.push_back(round);
    }
    return graph;
}

}  // namespace roundwright::testing
