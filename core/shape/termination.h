#pragma once

namespace roundwright {

/// How the search for a shape ended.
enum class Termination {
    converged,
    iteration_limit,  ///< the positions are the best so far
    line_search_failed,
    cancelled,
    unusable_problem,  ///< no rounds, or a length that is not a positive finite number: nothing was computed
};

}  // namespace roundwright
