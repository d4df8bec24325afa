// Every stitch solved: a ball of n rounds up, n even and n down has 12 n^2 stitches. Cold starts where the
// round solve has it; warm starts from the shape before an edit: one round fewer in the middle, or firmer.
// Times are of the processor.

#include <benchmark/benchmark.h>

#include "core/shape/fabric/solve_fabric.h"
#include "tests/support/fabric_piece.h"

namespace {

using namespace roundwright;
using namespace roundwright::test;

void note(benchmark::State& state, const FabricShape& shape, int stitches) {
    state.counters["stitches"] = stitches;
    state.counters["steps"] = shape.iterations;
    state.counters["factors"] = shape.factorizations;
    state.counters["cg"] = shape.cg_steps;
    if (shape.termination != Termination::converged) state.SkipWithError("did not converge");
}

void cold(benchmark::State& state) {
    const std::vector<int> counts = ball_counts(static_cast<int>(state.range(0)));
    const FabricPiece piece = round_piece(counts);
    FabricShape shape;
    for (auto step : state) benchmark::DoNotOptimize(shape = solve_fabric(piece.problem, piece.start));
    note(state, shape, stitches_of(counts));
}

/// The nodes of what is left, from a piece that had one round more, ring by ring and by their share around.
std::vector<Vec3> start_without_a_round(const FabricPiece& before, const FabricShape& shape,
                                        const FabricPiece& after, std::size_t round) {
    std::vector<Vec3> start = after.start;
    const Vec3 up = (shape.nodes.back() - shape.nodes.front()).normalized();
    const auto at = [&](std::size_t ring, std::size_t k, std::size_t of) {
        const auto& nodes = before.rings[ring];
        return shape.nodes[static_cast<std::size_t>(nodes[k * nodes.size() / of])];
    };
    const double gap = up.dot(at(round, 0, 1) - at(round - 1, 0, 1));
    for (std::size_t i = 0; i < after.rings.size(); ++i) {
        const std::size_t from = i < round ? i : i + 1;
        const Vec3 down = i < round ? Vec3::Zero() : Vec3(-gap * up);
        for (std::size_t k = 0; k < after.rings[i].size(); ++k)
            start[static_cast<std::size_t>(after.rings[i][k])] = at(from, k, after.rings[i].size()) + down;
    }
    for (const auto& [node, a, b] : after.middles)
        start[static_cast<std::size_t>(node)] =
            (start[static_cast<std::size_t>(a)] + start[static_cast<std::size_t>(b)]) / 2;
    start.front() = shape.nodes.front();
    start.back() = shape.nodes.back() - gap * up;
    return start;
}

void warm_after_an_edit(benchmark::State& state) {
    const int n = static_cast<int>(state.range(0));
    std::vector<int> counts = ball_counts(n);
    const FabricPiece before = round_piece(counts);
    const FabricShape shape = solve_fabric(before.problem, before.start);
    const auto middle = static_cast<std::size_t>(n + n / 2);
    counts.erase(counts.begin() + static_cast<std::ptrdiff_t>(middle));
    const FabricPiece after = round_piece(counts);
    const std::vector<Vec3> start = start_without_a_round(before, shape, after, middle);
    FabricShape found;
    for (auto step : state) benchmark::DoNotOptimize(found = solve_fabric(after.problem, start));
    note(state, found, stitches_of(counts));
}

void warm_and_firmer(benchmark::State& state) {
    const std::vector<int> counts = ball_counts(static_cast<int>(state.range(0)));
    FabricPiece piece = round_piece(counts);
    const FabricShape before = solve_fabric(piece.problem, piece.start);
    piece.problem.area_stretch = 0.06;
    FabricShape shape;
    for (auto step : state) benchmark::DoNotOptimize(shape = solve_fabric(piece.problem, before.nodes));
    note(state, shape, stitches_of(counts));
}

BENCHMARK(cold)->Arg(5)->Arg(10)->Arg(20)->Arg(40)->Unit(benchmark::kMillisecond);
BENCHMARK(warm_after_an_edit)->Arg(5)->Arg(10)->Arg(20)->Unit(benchmark::kMillisecond);
BENCHMARK(warm_and_firmer)->Arg(5)->Arg(10)->Arg(20)->Unit(benchmark::kMillisecond);

}  // namespace
