#pragma once

#include <vector>

#include "core/gauge/gauge.h"
#include "core/materials/estimate.h"
#include "core/stitches/stitch_graph.h"
#include "core/toy/toy.h"

namespace roundwright {

/// Yarn in a single crochet over its width. Published measurements that could be found give 5.5, 6.6 and 7.9;
/// their middle, and a band that holds them.
inline constexpr Estimate yarn_over_stitch_width{6.6, 5, 8};

/// Half width of the range left when the maker has undone ten stitches and measured the yarn, over the
/// measure.
inline constexpr double measured_yarn_error = 0.05;

/// Left hanging at each end of a yarn, to be woven in or sewn with, mm (common practice: 15 cm).
inline constexpr double tail_mm = 150;

/// Yarn that sews a seam, over its length (common practice: three times; the band is our own).
inline constexpr Estimate yarn_over_seam{3, 2, 4};

/// Yarn for the seams of a piece, mm, beyond the tails that its copies have anyway. `seams_mm`: of all copies
/// together.
[[nodiscard]] Estimate seam_yarn_mm(double seams_mm, int copies);

/// Yarn of one single crochet, mm: ten stitches as the maker measured them, or the band above.
[[nodiscard]] Estimate single_crochet_yarn_mm(const Gauge& gauge, const Making& making);

/// Single crochets' worth of yarn in one piece, by yarn: stitches (by `yarn_in_sc`), foundation chains, and
/// what joining or turning a round adds (a slip stitch and a chain; a chain). An index past `yarns` counts as
/// the first. A piece that is worked on the edges of others has its chains in each of the gaps between them.
[[nodiscard]] std::vector<double> single_crochets_of_yarn(const Piece& piece, const StitchGraph& graph,
                                                          std::size_t yarns, int gaps_between_edges = 1);

/// Ends of each yarn in one piece: two for every stretch worked without a break. A yarn laid down for at
/// most two rounds is carried up the inside.
[[nodiscard]] std::vector<int> yarn_ends(const Piece& piece, const StitchGraph& graph, std::size_t yarns);

/// Grams that `metres` of a yarn weigh, by its label, or by the published range of its weight.
[[nodiscard]] Estimate yarn_grams(const Yarn& yarn, const Estimate& metres);

}  // namespace roundwright
