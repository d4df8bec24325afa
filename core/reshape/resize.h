#pragma once

#include <vector>

#include "core/reshape/piece_form.h"
#include "core/reshape/reshape_code.h"
#include "core/reshape/reshape_task.h"
#include "core/reshape/target.h"
#include "core/reshape/wanted_size.h"
#include "core/toy/toy.h"

namespace roundwright {

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
