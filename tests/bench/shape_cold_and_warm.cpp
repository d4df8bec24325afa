#include <benchmark/benchmark.h>
#include <cmath>
#include <numbers>

#include "core/shape/lie.h"
#include "core/shape/solve_shape.h"

// A stuffed piece of n rounds with what real ones have: a growing base, a waist, a head and a drawn end. Its
// counts keep their proportions as n grows.

namespace {

using namespace roundwright;

double circumference(double t) {
    return 0.1 + std::sin(std::numbers::pi * t) * (1.1 + 0.4 * std::sin(7 * t));
}

ShapeProblem piece(std::int64_t rounds) {
    ShapeProblem problem;
    problem.rest_loop_mm.push_back(0);
    const auto n = static_cast<double>(rounds);
    for (std::int64_t i = 1; i <= rounds; ++i) {
        const double stitches = std::round(2 * n * circumference(static_cast<double>(i) / n));
        problem.rest_loop_mm.push_back(5 * std::max(6.0, stitches));
        problem.rest_height_mm.push_back(5);
    }
    problem.last = MeridianEnd::drawn_closed;
    problem.fan_height_mm = 2.5;
    problem.area_stretch = 0.04;
    problem.stitch_width_mm = 5;
    return problem;
}

void report(benchmark::State& state, const Shape& shape) {
    state.SetComplexityN(state.range(0));
    state.counters["converged"] = shape.termination == Termination::converged;
    state.counters["steps"] = shape.iterations;
}

void cold(benchmark::State& state) {
    const ShapeProblem problem = piece(state.range(0));
    Shape shape;
    for (auto _ : state) benchmark::DoNotOptimize(shape = solve_shape(problem));
    report(state, shape);
}

/// A round in the middle gets three stitches more, as when the maker types.
void warm(benchmark::State& state) {
    ShapeProblem problem = piece(state.range(0));
    const Shape before = solve_shape(problem);
    problem.rest_loop_mm[problem.rest_loop_mm.size() / 2] += 15;
    Shape shape;
    for (auto _ : state) benchmark::DoNotOptimize(shape = solve_shape(problem, {}, &before));
    report(state, shape);
}

void lies(benchmark::State& state) {
    const ShapeProblem problem = piece(state.range(0));
    const Shape shape = solve_shape(problem);
    for (auto _ : state) benchmark::DoNotOptimize(lie_of_rounds(problem, shape));
}

}  // namespace

BENCHMARK(cold)->Arg(15)->Arg(60)->Arg(300)->Arg(3000)->Arg(6000)->Unit(benchmark::kMicrosecond);
BENCHMARK(warm)->Arg(15)->Arg(60)->Arg(300)->Arg(3000)->Arg(6000)->Unit(benchmark::kMicrosecond);
BENCHMARK(lies)->Arg(60)->Arg(3000)->Unit(benchmark::kMicrosecond);
