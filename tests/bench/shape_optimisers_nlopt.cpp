#include <cmath>
#include <nlopt.h>

#include "tests/bench/shape_optimisers.h"

namespace roundwright::bench {

namespace {

struct Search {
    const Arena* arena;
    nlopt_opt optimiser;
    Clock::time_point begin;
    Run* run;
};

double value_at(unsigned count, const double* x, double* gradient, void* data) {
    const auto& search = *static_cast<Search*>(data);
    const Positions at(x, x + count);
    const double value = search.arena->value(at);
    const bool is_done =
        note_value(*search.arena, std::isfinite(value) ? value : 1e30, search.begin, *search.run);
    if (is_done) nlopt_force_stop(search.optimiser);
    if (!std::isfinite(value)) return 1e30;
    if (gradient != nullptr) search.arena->gradient(at, gradient);
    return value;
}

/// It gives up by itself now and then, short of the least, and goes on from where it stood.
void run_nlopt(const Arena& arena, nlopt_algorithm algorithm, Run& run) {
    constexpr int most_times = 50;
    nlopt_opt optimiser = nlopt_create(algorithm, static_cast<unsigned>(arena.start.size()));
    Search search{&arena, optimiser, Clock::now(), &run};
    nlopt_set_min_objective(optimiser, value_at, &search);
    Positions x = arena.start;
    double value = 0;
    for (int again = 0; again < most_times && !run.reached && run.seconds < patience_seconds; ++again)
        nlopt_optimize(optimiser, x.data(), &value);
    run.seconds = seconds_since(search.begin);
    nlopt_destroy(optimiser);
}

}  // namespace

void run_nlopt_lbfgs(const Arena& arena, Run& run) { run_nlopt(arena, NLOPT_LD_LBFGS, run); }

void run_nlopt_truncated_newton(const Arena& arena, Run& run) {
    run_nlopt(arena, NLOPT_LD_TNEWTON_PRECOND_RESTART, run);
}

void run_nlopt_variable_metric(const Arena& arena, Run& run) { run_nlopt(arena, NLOPT_LD_VAR2, run); }

}  // namespace roundwright::bench
