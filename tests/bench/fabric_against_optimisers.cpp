// The identical energy of every stitch, from the identical start, by this program's solver and by
// general-purpose optimisers, in one run: E - c ln V for the amount of stuffing c that a stretch of 4 %
// takes. This program's solver finds c as well; the others are given it. All stop where this program's usual
// tolerances do. Times are of the processor (other work on the machine does not count), on one thread, the
// fastest of several runs; who takes longer than the patience is stopped, and its ratio is a lower bound.

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include "core/shape/fabric/block_factor.h"
#include "tests/bench/fabric_arena.h"

namespace {

using namespace roundwright;
using namespace roundwright::bench;

constexpr double patience = 60;

Run fastest(const std::function<Run()>& once) {
    Run best = once();
    double total = best.seconds;
    for (int k = 1; k < 5 && total < 2; ++k) {
        const Run run = once();
        total += run.seconds;
        if (run.seconds < best.seconds) best = run;
    }
    return best;
}

Run by_this_solver(const FabricArena& arena, std::span<const Vec3> start) {
    const auto begin = Clock::now();
    const FabricShape shape = solve_fabric(arena.piece.problem, start);
    Run run{seconds_since(begin), 0, shape.iterations, shape.termination == Termination::converged};
    run.energy = arena.value(flat(shape.nodes));
    return run;
}

void compare(int rounds) {
    const FabricArena arena(rounds);
    std::printf("\n%d stitches, %zu nodes, least energy %.8g, enough %.1e above\n", arena.stitches,
                arena.energy.nodes(), arena.least, (arena.enough - arena.least) / std::abs(arena.least));
    const Run own = fastest([&] { return by_this_solver(arena, arena.piece.start); });
    const auto print = [&](const char* name, const Run& run) {
        std::printf("  %-34s %10.2f ms %8ld steps %12.1e above %s%9.1f times\n", name, 1e3 * run.seconds,
                    run.evaluations, (run.energy - arena.least) / std::abs(arena.least),
                    run.reached ? " " : ">", run.seconds / own.seconds);
        std::fflush(stdout);
    };
    print("this program, cold", own);
    print("stock Newton, minimum degree",
          fastest([&] { return fabric_by_stock_newton(arena, StockOrdering::minimum_degree, patience); }));
    if (has_metis())
        print("stock Newton, METIS",
              fastest([&] { return fabric_by_stock_newton(arena, StockOrdering::metis, patience); }));
    print("Ceres L-BFGS", fastest([&] { return fabric_by_ceres_lbfgs(arena, patience); }));
    print("NLopt L-BFGS", fastest([&] { return fabric_by_nlopt_lbfgs(arena, patience); }));
    print("NLopt truncated Newton",
          fastest([&] { return fabric_by_nlopt_truncated_newton(arena, patience); }));
}

}  // namespace

int main(int count, char** arguments) {
    std::vector<int> rounds;
    for (int i = 1; i < count; ++i) rounds.push_back(std::atoi(arguments[i]));
    if (rounds.empty()) rounds = {5, 10, 20};
    for (const int n : rounds) compare(n);
}
