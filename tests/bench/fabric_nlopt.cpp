#include <cmath>
#include <nlopt.h>

#include "tests/bench/fabric_arena.h"

namespace roundwright::bench {

namespace {

struct Search {
    const FabricArena& arena;
    nlopt_opt optimiser;
    double begin;
    double patience;
    Run& run;
};

double value_at(unsigned count, const double* x, double* gradient, void* data) {
    auto& search = *static_cast<Search*>(data);
    const Positions at(x, x + count);
    const double value = search.arena.value(at);
    if (note(search.arena, std::isfinite(value) ? value : 1e30, search.begin, search.patience, search.run))
        nlopt_force_stop(search.optimiser);
    if (!std::isfinite(value)) return 1e30;
    if (gradient != nullptr) search.arena.gradient(at, gradient);
    return value;
}

/// It gives up by itself now and then, short of the least, and goes on from where it stood.
Run by_nlopt(const FabricArena& arena, nlopt_algorithm algorithm, double patience) {
    constexpr int most_times = 50;
    Run run;
    nlopt_opt optimiser = nlopt_create(algorithm, static_cast<unsigned>(arena.start.size()));
    Search search{arena, optimiser, Clock::now(), patience, run};
    nlopt_set_min_objective(optimiser, value_at, &search);
    Positions x = arena.start;
    double value = 0;
    for (int again = 0; again < most_times && !run.reached && run.seconds < patience; ++again)
        nlopt_optimize(optimiser, x.data(), &value);
    nlopt_destroy(optimiser);
    return run;
}

}  // namespace

Run fabric_by_nlopt_lbfgs(const FabricArena& arena, double patience) {
    return by_nlopt(arena, NLOPT_LD_LBFGS, patience);
}

Run fabric_by_nlopt_truncated_newton(const FabricArena& arena, double patience) {
    return by_nlopt(arena, NLOPT_LD_TNEWTON_PRECOND_RESTART, patience);
}

}  // namespace roundwright::bench
