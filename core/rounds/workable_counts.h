#pragma once

namespace roundwright {

/// How many stitches can be worked over so many loops: at most two in each loop (an increase), at least one
/// over two (a decrease). Common practice: three in a loop or three together are special stitches, which a
/// maker writes in words. Both bounds are the same rule seen from either round, so the counts that can be
/// worked over n loops are those over which n can be worked.
inline constexpr int most_stitches_in_a_loop = 2;
inline constexpr int most_loops_in_a_stitch = 2;

/// Stitch counts from `least` to `most`.
struct CountRange {
    int least = 0;
    int most = 0;

    [[nodiscard]] constexpr bool holds(int stitches) const { return stitches >= least && stitches <= most; }
    friend bool operator==(const CountRange&, const CountRange&) = default;
};

/// The counts of a round over `loops_below` loops, at least 1.
[[nodiscard]] constexpr CountRange workable_counts(int loops_below) {
    return {(loops_below + most_loops_in_a_stitch - 1) / most_loops_in_a_stitch,
            most_stitches_in_a_loop * loops_below};
}

/// Whether `stitches` can be worked over `loops_below` loops: any number into a ring, which has none.
[[nodiscard]] constexpr bool can_be_worked(int loops_below, int stitches) {
    return loops_below <= 0 || workable_counts(loops_below).holds(stitches);
}

}  // namespace roundwright
