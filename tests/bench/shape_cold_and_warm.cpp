#include <benchmark/benchmark.h>

#include "core/shape/lie.h"
#include "core/shape/solve_shape.h"
#include "tests/bench/shape_bench_piece.h"

namespace {

using namespace roundwright;
using bench::piece_of_rounds;

void report(benchmark::State& state, const Shape& shape) {
    state.SetComplexityN(state.range(0));
    state.counters["converged"] = shape.termination == Termination::converged;
    state.counters["steps"] = shape.iterations;
}

void cold(benchmark::State& state) {
    const ShapeProblem problem = piece_of_rounds(state.range(0));
    Shape shape;
    for (auto _ : state) benchmark::DoNotOptimize(shape = solve_shape(problem));
    report(state, shape);
}

/// A round in the middle gets three stitches more, as when the maker types.
void warm(benchmark::State& state) {
    ShapeProblem problem = piece_of_rounds(state.range(0));
    const Shape before = solve_shape(problem);
    problem.rest_loop_mm[problem.rest_loop_mm.size() / 2] += 15;
    Shape shape;
    for (auto _ : state) benchmark::DoNotOptimize(shape = solve_shape(problem, {}, &before));
    report(state, shape);
}

/// The same counts without stuffing: a piece that lies limp.
void flat(benchmark::State& state) {
    ShapeProblem problem = piece_of_rounds(state.range(0));
    problem.area_stretch = 0;
    problem.limp = true;
    Shape shape;
    for (auto _ : state) benchmark::DoNotOptimize(shape = solve_shape(problem));
    report(state, shape);
}

void lies(benchmark::State& state) {
    const ShapeProblem problem = piece_of_rounds(state.range(0));
    const Shape shape = solve_shape(problem);
    for (auto _ : state) benchmark::DoNotOptimize(lie_of_rounds(problem, shape));
}

}  // namespace

BENCHMARK(cold)->Arg(15)->Arg(60)->Arg(300)->Arg(3000)->Arg(6000)->Unit(benchmark::kMicrosecond);
BENCHMARK(warm)->Arg(15)->Arg(60)->Arg(300)->Arg(3000)->Arg(6000)->Unit(benchmark::kMicrosecond);
BENCHMARK(flat)->Arg(60)->Arg(300)->Arg(3000)->Unit(benchmark::kMicrosecond);
BENCHMARK(lies)->Arg(60)->Arg(3000)->Unit(benchmark::kMicrosecond);
