#pragma once

#include "tests/bench/shape_arena.h"

namespace roundwright::bench {

/// General-purpose optimisers on an arena's energy, from its start. Each keeps `run` up to date while it
/// works, so that what it has reached is known even of one that never comes back.
void run_ceres_lbfgs(const Arena& arena, Run& run);
/// Levenberg and Marquardt with a sparse Cholesky factorization, on the unstuffed piece.
void run_ceres_least_squares(const Arena& arena, Run& run);
void run_nlopt_lbfgs(const Arena& arena, Run& run);
void run_nlopt_truncated_newton(const Arena& arena, Run& run);
void run_nlopt_variable_metric(const Arena& arena, Run& run);

/// Takes a value that was met into the run; true once the search may stop, at the least or out of patience.
/// Reading the clock takes as long as an evaluation of a few rounds, so it is not read for each.
inline bool note_value(const Arena& arena, double value, Clock::time_point begin, Run& run) {
    constexpr long evaluations_a_look = 128;
    if (value < run.energy) run.energy = value;
    run.reached = run.energy <= arena.target();
    if (++run.evaluations % evaluations_a_look == 0) run.seconds = seconds_since(begin);
    return run.reached || run.seconds > patience_seconds;
}

}  // namespace roundwright::bench
