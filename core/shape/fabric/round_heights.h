#pragma once

#include <vector>

#include "core/stitches/stitch_graph.h"
#include "core/stitches/stitch_layout.h"

namespace roundwright {

/// What a round's ends are joined to.
struct SideKind {
    bool spiral = false;
    bool first = false, last = false;
    bool closed_end = false;
};

/// Heights of the sides between the stitches of a round, mm: cells + 1 of them, from the side before the
/// first to the one after the last. In a spiral, how far up the side after the last stitch of the first round
/// the first round's edge begins, and how far up the side before the first stitch of the last one the edge
/// below it ends; 0 where none does.
struct SideHeights {
    std::vector<double> heights;
    double node_before = 0, node_after = 0;
};

/// Heights of a piece's stitches by their kind. A side that two stitches share is as high as the mean of
/// both; a chain is as high as its neighbours, or as the round's other stitches on the mean, since it hangs
/// from their tops.
class RoundHeights {
  public:
    /// `shares` of each round's height that it has; empty: all of it.
    RoundHeights(const StitchGraph& graph, const std::vector<LaidRound>& rounds, double round_height_mm,
                 const std::vector<double>& shares = {});

    [[nodiscard]] SideHeights sides(std::size_t round, const SideKind& kind, bool rows) const;

  private:
    [[nodiscard]] double between_rounds(std::size_t below) const;

    std::vector<std::vector<double>> cells_;  ///< mm
};

}  // namespace roundwright
