#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "app/cli/arguments.h"
#include "core/gauge/yarn_standard.h"
#include "core/reshape/resize.h"

namespace roundwright::app {

/// What the resize command is asked for.
struct ResizeWish {
    Target target;
    std::optional<double> hook_mm;
    std::optional<YarnWeight> weight;
    bool alike = false;        ///< the other pieces become as much larger or smaller
    bool keep_rounds = false;  ///< the rounds stay, in another yarn or with another hook
    ReshapeOptions options;
    int most_ripped = -1;  ///< ways on are wanted up to that many rounds; -1: not asked for
    std::optional<WorkedSoFar> worked;
};

[[nodiscard]] ResizeWish wish_from(const Arguments& arguments);

/// The pieces meant: the one named, by name or by number; the only one; all, where no size of one is asked
/// for.
[[nodiscard]] std::vector<std::size_t> pieces_meant(const Arguments& arguments, const Toy& toy,
                                                    const ResizeWish& wish);

/// The toy worked with the hook and in the yarn wished for.
[[nodiscard]] Toy worked_as(const Toy& toy, const ResizeWish& wish);

}  // namespace roundwright::app
