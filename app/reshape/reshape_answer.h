#pragma once

#include <optional>
#include <vector>

#include "core/reshape/reshape_toy.h"
#include "core/reshape/resize.h"

namespace roundwright::app {

/// All that an answer depends on, for the thread that works it out.
struct ReshapeQuestion {
    Toy toy;
    PieceForm form;
    Target target;
    std::optional<Toy> worked_as;  ///< the toy in another yarn or with another hook
    bool keeps_rounds = false;     ///< there, the rounds stay and not the size
    bool all_pieces = false;       ///< the others become as much larger or smaller
    ReshapeOptions options;
    std::size_t piece = 0;
};

/// What may be applied: one piece, or all of them, for another yarn or hook, or alike.
struct ReshapeProposal {
    Reshaped made;
    FrogBack back;
    std::optional<Toy> whole_toy;
    std::vector<std::size_t> missed;  ///< other pieces whose size is not met
};

struct ReshapeAnswer {
    ReshapeProposal proposal;
    std::vector<WayOn> ways;  ///< that undo less; none for a piece that is not begun
};

[[nodiscard]] ReshapeAnswer answer_to(const ReshapeQuestion& question);

}  // namespace roundwright::app
