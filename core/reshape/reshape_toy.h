#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/reshape/continue_from_here.h"
#include "core/reshape/frog_back.h"
#include "core/reshape/resize.h"
#include "core/toy/toy.h"

namespace roundwright {

/// The same toy worked with another hook. What was measured keeps the hook it was measured with, so the gauge
/// scales as `gauge_from` says; a gauge given outright is scaled likewise.
[[nodiscard]] Toy with_hook(const Toy& toy, double hook_mm);

/// The same toy in yarn of another weight, its gauge estimated from the published table.
[[nodiscard]] Toy with_yarn_weight(const Toy& toy, YarnWeight weight);

[[nodiscard]] std::vector<std::size_t> all_pieces(const Toy& toy);

/// One piece of a reshaped toy.
struct ReshapedPiece {
    std::size_t piece = 0;
    Reshaped made;
    FrogBack back;  ///< for what is worked so far
};

struct ReshapedToy {
    Toy toy;  ///< with the new pieces where there are any; their progress is what is kept
    std::vector<ReshapedPiece> pieces;

    [[nodiscard]] bool all_met() const;
};

/// Gives pieces of `toy` new rounds for a target, to be worked with the hook and gauge of `worked_as` (which
/// may be the same toy). A gauge in the target is not looked at: it is that of `worked_as`. If both gauges
/// are the same and the target is empty, `nothing_wanted`.
[[nodiscard]] ReshapedToy reshape_toy(const Toy& toy, const Toy& worked_as,
                                      const std::vector<std::size_t>& pieces, Target target,
                                      const ReshapeOptions& options = {});

/// The same pieces, stitch for stitch, worked with the hook and gauge of `worked_as`: what size they come out
/// at. `met`; or `unchanged` if both gauges are the same; or `unusable_piece`.
[[nodiscard]] ReshapedToy same_rounds(const Toy& toy, const Toy& worked_as,
                                      const std::vector<std::size_t>& pieces,
                                      const ReshapeOptions& options = {});

/// `continue_from_here` from what is worked of a piece of `toy`, with the yarn that each way gives back.
[[nodiscard]] std::vector<WayOn> ways_on_for(const Toy& toy, const PieceForm& form, const Target& target,
                                             int most_ripped, const ReshapeOptions& options = {});

/// What has to be undone of a piece for another one; everything if the gauge is another.
[[nodiscard]] FrogBack frog_back_for(const Toy& toy, const PieceForm& old, const PieceForm& made);

}  // namespace roundwright
