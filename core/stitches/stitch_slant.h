#pragma once

namespace roundwright {

/// How far a column of stitches drifts to the right with each round, seen from outside, in stitches: the top
/// of a single crochet sits a little to one side of its foot. To the right for a right-handed maker, who
/// works to the left; less than nothing for a left-handed one. That it drifts is common practice; how far is
/// a guess, since it differs from maker to maker. Rows lean to and fro, and columns stay.
inline constexpr double usual_slant_stitches = 0.2;
/// More than this is no slant of single crochet.
inline constexpr double largest_slant_stitches = 1;

}  // namespace roundwright
