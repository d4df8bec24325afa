#pragma once

#include <optional>
#include <vector>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// One copy of a piece among all the copies of a toy, before anything is placed.
struct JoinedCopy {
    PieceCopy copy;
    std::size_t piece = 0;            ///< index into `Toy::pieces`
    std::optional<std::size_t> join;  ///< index into `Toy::joins`; none: it stands by itself
    std::optional<std::size_t> onto;  ///< index into `JoinTree::copies`, before this one
    bool mirrored = false;
};

struct JoinTree {
    std::vector<JoinedCopy> copies;  ///< each after what it is joined to
    std::vector<JoinProblem> problems;
};

/// Who is joined to whom: every copy once. Of two joins of one copy the first holds; joins that lead round in
/// a circle hold nothing. Linear in copies and joins, but for sorting.
[[nodiscard]] JoinTree join_tree(const Toy& toy);

}  // namespace roundwright
