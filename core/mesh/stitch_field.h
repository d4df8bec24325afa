#pragma once

#include <vector>

#include "core/mesh/stitch_cords.h"

namespace roundwright {

/// The fine relief of a face, sampled at the middles of `size` x `size` squares, row 0 at the foot and column
/// 0 at u = 0. Its edges meet: a face stands among others like it, whose cords reach into it.
struct StitchField {
    static constexpr int size = 128;

    std::vector<float> height;  ///< over the deepest hollow, in stitch widths
    std::vector<float> twist;   ///< 1 on the back of a ply, 0 where plies meet; 1 where no cord lies

    /// Beyond the edges it goes on as it began.
    [[nodiscard]] static std::size_t at(int column, int row) {
        static_assert((size & (size - 1)) == 0);
        return static_cast<std::size_t>((row & (size - 1)) * size + (column & (size - 1)));
    }
};

/// Made when it is first asked for, and kept; any thread may ask.
[[nodiscard]] const StitchField& stitch_field(StitchFace face);

}  // namespace roundwright
