// The identical energy, from the identical start, by this program's solver and by general-purpose optimisers,
// in one run. Everyone gets the same value and gradient (core/shape/membrane.h).
//
// Stuffed: E - c ln V for the amount of stuffing c that a 4 % stretch takes. Unstuffed: E alone, which is a
// sum of squares, so that a least-squares solver with a sparse Cholesky factorization can be tried as well.
//
// All stop when their energy is within 1e-8 of the least, relatively (a second line has this solver go on to
// a relative gradient of 1e-9, and a third is the whole cold solve of the program, which goes on as far and
// also has to find c: more than is asked of the others). One that takes longer than the patience is stopped:
// its ratio is then a lower bound, and its energy says how far it had come.

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <functional>
#include <new>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

#include "tests/bench/shape_growth.h"
#include "tests/bench/shape_optimisers.h"

namespace {

using namespace roundwright;
using namespace roundwright::bench;

struct Row {
    const char* name;
    Run run;
};

/// The fastest of a first run and as many more as make it easy to read off a clock: all do the same work
/// every time, and whatever else the machine does can only add to it.
Run fastest_after(Run fastest, const std::function<Run()>& once) {
    double total = fastest.seconds;
    for (int runs = 1; total < patience_seconds / 2 && (runs < 3 || (total < 0.2 && runs < 1000)); ++runs) {
        const Run run = once();
        total += run.seconds;
        if (run.seconds < fastest.seconds) fastest = run;
    }
    return fastest;
}

Run timed(const std::function<Run()>& once) { return fastest_after(once(), once); }

/// Reading the clock takes a few hundredths of a short solve, so several go between two readings.
constexpr int solves_a_reading = 8;

/// In scratch memory that is kept, as the program keeps it.
Run by_this_solver(const Arena& arena, double relative_gradient) {
    static MinimiseWorkspace<Membrane> workspace;
    Equilibrium state;
    const auto begin = Clock::now();
    for (int i = 0; i < solves_a_reading; ++i) {
        state.x = arena.start;
        state.stuffing = arena.stuffing;
        state.holds_stuffing = arena.stuffed;
        minimise(arena.membrane, 0, {relative_gradient, 500, {}}, workspace, state);
    }
    Run run{seconds_since(begin) / solves_a_reading, arena.value(state.x), state.iterations, false};
    run.reached = run.energy <= arena.target();
    return run;
}

/// The coarsest relative gradient whose energy is within the others' tolerance.
double gradient_for_energy(const Arena& arena) {
    double gradient = 1;
    while (gradient > 1e-9 && !by_this_solver(arena, gradient).reached) gradient /= 10;
    return gradient;
}

/// As the program runs it: coarse to fine, with the stretch to find as well.
Run by_whole_solve(const Arena& arena) {
    Shape shape;
    const auto begin = Clock::now();
    for (int i = 0; i < solves_a_reading; ++i) shape = solve_shape(arena.problem);
    return {seconds_since(begin) / solves_a_reading, shape.energy, shape.iterations,
            shape.termination == Termination::converged};
}

using Optimiser = void (*)(const Arena&, Run&);

/// In a process of its own, whose memory and time are limited by nothing it does between two evaluations.
Run in_a_child(Optimiser optimiser, const Arena& arena) {
    void* shared = mmap(nullptr, sizeof(Run), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (shared == MAP_FAILED) return {};
    Run* run = new (shared) Run;
    const pid_t child = fork();
    if (child == 0) {
        alarm(static_cast<unsigned>(20 * patience_seconds));  // of the clock on the wall
        optimiser(arena, *run);
        // Once more from the start and again, if that was short: a new process is slow at first.
        *run = fastest_after(*run, [&] {
            Run again;
            optimiser(arena, again);
            return again;
        });
        _exit(0);
    }
    waitpid(child, nullptr, 0);
    const Run result = *run;
    munmap(shared, sizeof(Run));
    return result;
}

void print(const Arena& arena, const std::vector<Row>& rows) {
    std::printf("\n%s, %zu rounds, least energy %.10g\n", arena.stuffed ? "stuffed" : "unstuffed",
                arena.problem.rest_height_mm.size(), arena.least);
    std::printf("  %-26s %12s %10s %14s %16s %12s\n", "", "time", "steps", "energy - least", "times this",
                "times cold");
    for (const auto& [name, run] : rows) {
        const char* bound = run.reached ? "" : ">";
        std::printf("  %-26s %9.3f ms %10ld %14.1e %9s%.1f %9s%.1f%s\n", name, 1e3 * run.seconds,
                    run.evaluations, (run.energy - arena.least) / std::abs(arena.least), bound,
                    run.seconds / rows[0].run.seconds, bound, run.seconds / rows[2].run.seconds,
                    run.reached ? "" : "   stopped");
    }
    std::fflush(stdout);
}

void compare(std::int64_t rounds, bool stuffed) {
    const Arena arena(rounds, stuffed);
    const double enough = gradient_for_energy(arena);
    std::vector<Row> rows{{"this solver", timed([&] { return by_this_solver(arena, enough); })},
                          {"this solver, to 1e-9", timed([&] { return by_this_solver(arena, 1e-9); })},
                          {"this program's cold solve", timed([&] { return by_whole_solve(arena); })}};
    const auto add = [&](const char* name, Optimiser optimiser) {
        rows.push_back({name, in_a_child(optimiser, arena)});
    };
    add("Ceres L-BFGS", run_ceres_lbfgs);
    add("NLopt L-BFGS", run_nlopt_lbfgs);
    add("NLopt truncated Newton", run_nlopt_truncated_newton);
    add("NLopt variable metric", run_nlopt_variable_metric);
    if (!stuffed) add("Ceres least squares", run_ceres_least_squares);
    print(arena, rows);
}

}  // namespace

int main(int count, char** arguments) {
    std::vector<std::int64_t> rounds;
    for (int i = 1; i < count; ++i) rounds.push_back(std::atoll(arguments[i]));
    if (rounds.empty()) rounds = {15, 60, 300, 3000};
    report_growth();
    report_profile(300);
    for (const std::int64_t n : rounds)
        for (const bool stuffed : {true, false}) compare(n, stuffed);
}
