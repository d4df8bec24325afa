#pragma once

#include <cstdint>
#include <stop_token>
#include <vector>

#include "core/study/study_stages.h"

namespace roundwright {

/// Everything computed from one piece of a toy, but for its mesh: what the editor shows and the command line
/// prints. Copies are cheap: they share the stages.
struct PieceStudy {
    Gauge gauge;              ///< the one used
    bool gauge_known = true;  ///< false: the maker has given none, and a usual one for the hook stands in
    Shared<StitchStage> stitches = no_stage<StitchStage>();
    Shared<ShapeStage> shape = no_stage<ShapeStage>();
    Shared<SizeStage> sizes = no_stage<SizeStage>();
    Shared<CheckStage> checked = no_stage<CheckStage>();
    FabricThickness fabric{};  ///< of the thickest yarn in it

    [[nodiscard]] const PieceGraph& graph() const& { return stitches->graph; }
    [[nodiscard]] const ShapeProblem& problem() const& { return shape->problem; }
    [[nodiscard]] const PieceMeasures& measures() const& { return shape->measures; }
    /// For what is about surfaces of revolution alone: the meridian of the shape and its loops. Not usable
    /// where the shape is of another kind (`measures().fidelity`), or where there is none.
    [[nodiscard]] const Shape& revolved() const& { return shape->revolved; }
    /// The round solver's shape, also where a finer one took its place: for what asks how the piece would
    /// come out at another gauge or with other rounds, which that solver answers.
    [[nodiscard]] const Shape& round_solved() const& { return round_stage(*shape).revolved; }
    [[nodiscard]] const std::vector<RoundLie>& lies() const& { return shape->lies; }
    [[nodiscard]] const SizeRange& size() const& { return sizes->size; }
    [[nodiscard]] const std::vector<Check>& checks() const& { return checked->checks; }

    // Of a study that is gone with the line it is made in: copies, so that nothing dangles.
    [[nodiscard]] PieceGraph graph() const&& { return stitches->graph; }
    [[nodiscard]] ShapeProblem problem() const&& { return shape->problem; }
    [[nodiscard]] PieceMeasures measures() const&& { return shape->measures; }
    [[nodiscard]] Shape revolved() const&& { return shape->revolved; }
    [[nodiscard]] std::vector<RoundLie> lies() const&& { return shape->lies; }
    [[nodiscard]] SizeRange size() const&& { return sizes->size; }
    [[nodiscard]] std::vector<Check> checks() const&& { return checked->checks; }
};

/// `before` (may be null): the study of the piece before an edit. What it was computed from and has not
/// changed is shared with it; a new shape is solved from the one before. `graph` (may be null): of the piece,
/// where it is known.
[[nodiscard]] PieceStudy study_piece(const Toy& toy, std::size_t piece, const PieceStudy* before = nullptr,
                                     std::stop_token stop = {}, const SharedGraph* graph = nullptr);

/// The stitches and the shape alone, without range of sizes or checks: what a surface is made from.
[[nodiscard]] PieceStudy study_shape(const Toy& toy, std::size_t piece, const PieceStudy* before = nullptr,
                                     std::stop_token stop = {}, const SharedGraph* graph = nullptr);

/// A study of the same piece with the next stage: the range of its sizes, and its checks, which take longest.
[[nodiscard]] PieceStudy with_sizes(PieceStudy study, const Toy& toy, std::size_t piece,
                                    const PieceStudy* before = nullptr);
[[nodiscard]] PieceStudy with_checks(PieceStudy study, const Toy& toy, std::size_t piece,
                                     const PieceStudy* before = nullptr, std::stop_token stop = {});

/// How many graphs were derived so far, in all threads, of cured pieces that were tried.
[[nodiscard]] std::uint64_t graphs_of_cures();

/// The piece as it is before it is stuffed; without checks. `before` (may be null): the last such study.
[[nodiscard]] PieceStudy unstuffed(const PieceStudy& study, const Piece& piece,
                                   const PieceStudy* before = nullptr, std::stop_token stop = {});

/// The study with another shape in the place of its own, if that may take it (`takes_the_place_of`); sizes
/// and checks are to be worked out again then.
[[nodiscard]] PieceStudy with_shape(PieceStudy study, Shared<ShapeStage> next);
/// The study with the round solver's shape and its sizes, where it has a finer one; checks are of that
/// anyway.
[[nodiscard]] PieceStudy as_round_solved(PieceStudy study);

/// The measures of a studied piece at another gauge, taken as exact, by the round solver; those of a finer
/// shape change in the same proportion. Not usable where the round solver found no shape.
[[nodiscard]] PieceMeasures measures_at(const Gauge& gauge, const Piece& piece, const PieceStudy& study);

}  // namespace roundwright
