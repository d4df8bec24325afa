#pragma once

#include <optional>
#include <vector>

#include "core/shape/piece_measures.h"
#include "core/shape/shape_problem.h"
#include "core/shape/size_range.h"

namespace roundwright {

/// A strip that curls by itself, as a tail: a chain, and back along it several stitches in every chain.
struct CurledStrip {
    double stitches_a_chain = 0;  ///< on its outer edge, over those on its inner one: k
    double inner_mm = 0;          ///< length of its inner edge
    double outer_mm = 0;          ///< and of its outer one
    double height_mm = 0;         ///< from the one to the other
    double inner_radius_mm = 0;
    double outer_radius_mm = 0;
    double turns = 0;
    double length_mm = 0;  ///< along its axis, its turns lying on each other
};

/// The strip whose edges are so long and h apart everywhere, of a fabric `fabric_mm` thick. Nothing where it
/// does not curl (k <= 1).
///
/// A ring's part, of radii r and r + h, has edges in the ratio r / (r + h) = 1 / k, so that r = h / (k - 1),
/// and goes around inner / (2 pi r) times. Round upon round it lies on itself and grows along its axis by its
/// thickness a turn: a corkscrew (`Coil`), whose edges lean so little that the plane's figures are right to
/// a few hundredths.
[[nodiscard]] std::optional<CurledStrip> curled_strip(double inner_mm, double outer_mm, double height_mm,
                                                      double fabric_mm);

/// Whether a piece is one, by its counts after each row: worked in rows on a chain, with at least two
/// stitches on its last row for each chain. Fewer are a curve, not a coil.
[[nodiscard]] bool curls(const Piece& piece, const std::vector<int>& stitches);
/// The same by the problem that its stitches pose, and the strip that it is.
[[nodiscard]] std::optional<CurledStrip> curled_strip(const Piece& piece, const ShapeProblem& problem,
                                                      double fabric_mm);

/// The corkscrew that the strip makes: a straight line at right angles to an axis, h long, that turns about
/// it and climbs evenly. Both its edges are as long as the strip's:
///
///     theta sqrt(r^2 + q^2) = inner,   theta sqrt((r + h)^2 + q^2) = k inner,
///
/// with q = fabric / 2 pi for turns that lie on each other, so that
/// r = (h + sqrt(k^2 h^2 - (k^2 - 1)^2 q^2)) / (k^2 - 1): h / (k - 1) where the fabric is thin. Where it is
/// so thick that there is none, its turns are pressed together until there is.
struct Coil {
    double inner_radius_mm = 0;    ///< r
    double height_mm = 0;          ///< h
    double radians = 0;            ///< theta, from the start of its first row to its end
    double climb_mm = 0;           ///< q, a radian
    std::vector<double> radii_mm;  ///< of its edges: the chain's, then the one that each row leaves
    [[nodiscard]] double outer_radius_mm() const { return inner_radius_mm + height_mm; }
    [[nodiscard]] double length_mm() const { return radians * climb_mm; }
    [[nodiscard]] double edge_mm(std::size_t edge) const;
};
/// `row_heights_mm`: their sum is the strip's.
[[nodiscard]] Coil coil_of(const CurledStrip& strip, const std::vector<double>& row_heights_mm,
                           double fabric_mm);
[[nodiscard]] std::optional<Coil> coil_of(const Piece& piece, const ShapeProblem& problem, double fabric_mm);

/// The measures of a piece that curls, its axis upright: sizes are those of the box about the middle of its
/// fabric, which holds nothing.
[[nodiscard]] PieceMeasures coil_measures(const Coil& coil, const ShapeProblem& problem);

/// The sizes that the errors of the gauge allow, as `size_range` has them. `problem` was posed at `gauge`.
[[nodiscard]] SizeRange coil_size_range(const Piece& piece, const ShapeProblem& problem, const Gauge& gauge,
                                        double fabric_mm);

}  // namespace roundwright
