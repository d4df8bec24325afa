#pragma once

#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

enum class StepKind {
    fit_feature,      ///< press its washer on
    begin_stuffing,   ///< and go on as the piece closes
    finish_stuffing,  ///< the last opening that stuffing passes
    stuff,            ///< all of it at once
};

/// Something to do between two rounds.
struct WorkStep {
    int after_round = 0;  ///< from 0
    StepKind kind = StepKind::stuff;
    int feature = -1;  ///< from 0, of `fit_feature`

    friend bool operator==(const WorkStep&, const WorkStep&) = default;
};

/// What a piece's features and stuffing ask for, in the order of its rounds. A washer that never passes the
/// opening is due as soon as its gap is there. `rest_loop_mm`: relaxed length of every loop, the start's
/// first; steps are only known where there is one a round and one more. `fabric_mm`: thickness.
[[nodiscard]] std::vector<WorkStep> work_steps(const Piece& piece, const std::vector<double>& rest_loop_mm,
                                               double fabric_mm);

}  // namespace roundwright
