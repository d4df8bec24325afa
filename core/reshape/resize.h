#pragma once

#include <optional>
#include <stop_token>
#include <string_view>
#include <vector>

#include "core/pattern/toy.h"
#include "core/reshape/piece_form.h"
#include "core/reshape/target.h"

namespace roundwright {

enum class ReshapeCode {
    met,             ///< width and height within half a round or 2 %
    unchanged,       ///< it is that size already
    width_not_met,   ///< the piece is the nearest that was found
    height_not_met,  ///< as above
    size_not_met,    ///< neither width nor height; as above
    nothing_wanted,
    conflicting_target,  ///< a scale beside a size, or a circumference beside a width
    unusable_target,  ///< a size that is not a positive finite number, or a silhouette that encloses nothing
    too_small,        ///< smaller than a few stitches around, or less than a round high
    too_large,        ///< more rounds or stitches than a piece may have
    unusable_piece,   ///< no rounds, rounds that do not come out, or no shape to start from
    cancelled,
};

/// A name for machines: "met", "width_not_met", ...
[[nodiscard]] std::string_view reshape_code_name(ReshapeCode code);

/// Whether there is a new piece to show (which may be the nearest only).
[[nodiscard]] bool has_piece(ReshapeCode code);

struct ReshapeOptions {
    double tidiness = 0.5;  ///< 0: likeness alone; 1: tidy rounds wherever they can be worked
    std::stop_token stop;
    /// A silhouette's own counts: in each round the whole number nearest to the stitches that lie around the
    /// silhouette there which can be worked (`choose_counts` without tidiness), in the number of rounds that
    /// comes nearest to its size, whatever that then is. Only for a target with a silhouette.
    bool as_drawn = false;
};

/// A target as a task for `fit_rounds`, or what is wrong with it.
struct ReshapeTask {
    ReshapeCode code = ReshapeCode::unusable_piece;  ///< `met`: the task can be tried
    Size wanted;
    PieceForm base;  ///< the piece, its ends changed where an outline asks for it
    FitProblem problem;
};
[[nodiscard]] ReshapeTask reshape_task(const PieceForm& form, const Target& target,
                                       const ReshapeOptions& options);

/// `met`, or what of a wanted size was not.
[[nodiscard]] ReshapeCode verdict(const Size& reached, const Size& wanted, const Gauge& gauge);

struct Reshaped {
    ReshapeCode code = ReshapeCode::unusable_piece;
    Size before;
    Size wanted;
    PieceForm form;  ///< the new piece, its stitches and its shape, confirmed by the forward solve
    std::vector<int> rewritten;  ///< old rounds (from 0) whose words could not be kept
    ProfileScale scale;          ///< of the old profile, as found
    /// Brought back to its old size it comes within one round of it; tried where that is not plain. False
    /// where few or coarse rounds meet the wanted size too roughly; not asked in another yarn or outline.
    bool returns_within_a_round = true;

    [[nodiscard]] Size reached() const { return form.size(); }
};

/// The size a target asks of a piece.
struct WantedSize {
    ReshapeCode code = ReshapeCode::met;  ///< or what is wrong with the target
    Size size;
    bool in_proportion = true;  ///< the piece's own proportions are kept
};
[[nodiscard]] WantedSize wanted_size(const PieceForm& form, const Target& target);

/// The factor that a target asks of a piece, for others to follow. Nothing for a target that changes the
/// proportions, asks for no size, or is wrong.
[[nodiscard]] std::optional<double> scale_wanted(const PieceForm& form, const Target& target);

/// New rounds for a wanted size or outline: whole stitches, no more than doubled or halved from round to
/// round, tidy where that costs little likeness (`choose_counts`), confirmed by the forward solve and
/// corrected until width and height are within half a round or 2 % of what is wanted, or else the nearest
/// found and a code that says so. What the maker said of the rounds goes with them (`carry_over`);
/// `Piece::worked` is left as it is.
[[nodiscard]] Reshaped resize(const PieceForm& form, const Target& target,
                              const ReshapeOptions& options = {});
[[nodiscard]] Reshaped resize(const Toy& toy, std::size_t piece, const Target& target,
                              const ReshapeOptions& options = {});

}  // namespace roundwright
