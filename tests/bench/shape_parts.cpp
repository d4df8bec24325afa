#include <algorithm>
#include <benchmark/benchmark.h>
#include <cstdint>

#include "core/shape/cold_start.h"
#include "core/shape/membrane.h"
#include "tests/bench/shape_bench_piece.h"

// Where a Newton step's time goes. Items are nodes, so that items a second can be set against the arithmetic:
// the factor takes about 80 multiplications and additions a node, a solve for two right sides about 88.

namespace {

using namespace roundwright;

struct Parts {
    explicit Parts(std::int64_t rounds)
        : meridian(meridian_of(bench::piece_of_rounds(rounds))),
          membrane(meridian, {}),
          x(start_from_counts(meridian)),
          walls(membrane.nodes() - 1),
          vector(membrane.unknowns(), 1.0) {
        membrane.take_walls(x, walls);
        matrix.resize(membrane.unknowns());
    }
    Meridian meridian;
    Membrane membrane;
    Positions x;
    LyingWalls walls;
    BandMatrix matrix;
    std::vector<double> vector;
};

void count_nodes(benchmark::State& state, const Parts& parts) {
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(parts.membrane.nodes()));
}

void energy(benchmark::State& state) {
    const Parts parts(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(parts.membrane.energy(parts.x));
    count_nodes(state, parts);
}

void volume(benchmark::State& state) {
    const Parts parts(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(parts.membrane.volume(parts.x));
    count_nodes(state, parts);
}

void walls(benchmark::State& state) {
    Parts parts(state.range(0));
    for (auto _ : state) parts.membrane.take_walls(parts.x, parts.walls);
    count_nodes(state, parts);
}

void energy_gradient(benchmark::State& state) {
    Parts parts(state.range(0));
    for (auto _ : state) parts.membrane.energy_gradient(parts.x, parts.walls, parts.vector.data());
    count_nodes(state, parts);
}

void volume_gradient(benchmark::State& state) {
    Parts parts(state.range(0));
    for (auto _ : state) parts.membrane.volume_gradient(parts.x, parts.vector.data());
    count_nodes(state, parts);
}

void stretch_gradient(benchmark::State& state) {
    Parts parts(state.range(0));
    for (auto _ : state) parts.membrane.area_stretch_gradient(parts.x, parts.walls, parts.vector.data());
    count_nodes(state, parts);
}

void hessian(benchmark::State& state) {
    Parts parts(state.range(0));
    for (auto _ : state) parts.membrane.hessian(parts.x, parts.walls, 1e-3, Curvature::exact, parts.matrix);
    count_nodes(state, parts);
}

void factor(benchmark::State& state) {
    Parts parts(state.range(0));
    parts.membrane.hessian(parts.x, parts.walls, 0, Curvature::projected, parts.matrix);
    const BandMatrix matrix = parts.matrix;
    for (auto _ : state) {
        parts.matrix = matrix;  // a copy of 6 numbers an unknown
        benchmark::DoNotOptimize(parts.matrix.factor(1e-12));
    }
    count_nodes(state, parts);
}

void solve(benchmark::State& state) {
    Parts parts(state.range(0));
    parts.membrane.hessian(parts.x, parts.walls, 0, Curvature::projected, parts.matrix);
    parts.matrix.factor(1e-12);
    std::vector<double> another = parts.vector;
    for (auto _ : state) {
        std::fill(parts.vector.begin(), parts.vector.end(), 1.0);
        std::fill(another.begin(), another.end(), 2.0);
        parts.matrix.solve(parts.vector.data(), another.data());
    }
    count_nodes(state, parts);
}

}  // namespace

#define PART(name) BENCHMARK(name)->Arg(60)->Arg(3000)
PART(energy);
PART(volume);
PART(walls);
PART(energy_gradient);
PART(volume_gradient);
PART(stretch_gradient);
PART(hessian);
PART(factor);
PART(solve);
