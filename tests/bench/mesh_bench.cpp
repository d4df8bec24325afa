#include <algorithm>
#include <benchmark/benchmark.h>
#include <cmath>
#include <numeric>

#include "core/mesh/ray_cast.h"
#include "core/mesh/revolve.h"
#include "core/mesh/files/write_glb.h"
#include "core/mesh/files/write_obj.h"
#include "core/mesh/files/write_stl.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/solve_shape.h"

namespace roundwright {
namespace {

/// A ball of n rounds up, n even, n down: about 12 n^2 stitches.
struct Ball {
    Toy toy;
    Piece piece;
    StitchGraph graph;
    Shape shape;
    double stitches = 0;

    explicit Ball(int n) {
        piece.end = End::drawn_closed;
        for (int i = 1; i <= 3 * n - 1; ++i)
            piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i, n, 3 * n - i})};
        toy.yarns.emplace_back();
        graph = piece_graph(piece).graph;
        for (const auto& round : graph.rounds) stitches += static_cast<double>(round.stitches.size());
        shape = solve_shape(shape_problem(piece, graph, {5, 5, 0, 0}));
    }
    [[nodiscard]] StitchSurface surface(std::size_t most_triangles) const {
        RevolveOptions options;
        options.most_triangles = most_triangles;
        return revolve(toy, piece, graph, shape, {}, {}, options);
    }
};

void revolve_ball(benchmark::State& state) {
    const Ball ball(static_cast<int>(state.range(0)));
    std::size_t triangles = 0;
    for (auto _ : state) {
        const auto surface = ball.surface(static_cast<std::size_t>(state.range(1)));
        triangles = surface.mesh.triangle_count();
        benchmark::DoNotOptimize(surface.mesh.positions.data());
    }
    state.counters["stitches"] = ball.stitches;
    state.counters["triangles"] = static_cast<double>(triangles);
}
BENCHMARK(revolve_ball)
    ->ArgsProduct({{4, 6, 13, 20}, {50'000, 200'000}})
    ->Args({40, 200'000})
    ->Args({120, 200'000})
    ->Unit(benchmark::kMillisecond);

void build_ray_caster(benchmark::State& state) {
    const auto surface = Ball(13).surface(static_cast<std::size_t>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(RayCaster(surface.mesh));
    state.counters["triangles"] = static_cast<double>(surface.mesh.triangle_count());
}
BENCHMARK(build_ray_caster)->Arg(20'000)->Arg(200'000)->Unit(benchmark::kMillisecond);

void cast_one_ray(benchmark::State& state) {
    const auto surface = Ball(20).surface(200'000);
    const RayCaster caster(surface.mesh);
    double angle = 0;
    for (auto _ : state) {
        angle += 0.7;
        const Vec3 from(300 * std::sin(angle), 40 + 30 * std::sin(3 * angle), 300 * std::cos(angle));
        benchmark::DoNotOptimize(caster.first_hit({from, Vec3(0, 50, 0) - from}));
    }
}
BENCHMARK(cast_one_ray)->Unit(benchmark::kMicrosecond);

template <std::string (*write)(std::span<const NamedMesh>)>
void write_mesh(benchmark::State& state) {
    const auto surface = Ball(8).surface(100'000);
    const std::vector<NamedMesh> meshes = {{"ball", &surface.mesh, Vec3::Zero()}};
    for (auto _ : state) benchmark::DoNotOptimize(write(meshes));
}
BENCHMARK(write_mesh<write_obj>)->Unit(benchmark::kMillisecond);
BENCHMARK(write_mesh<write_stl>)->Unit(benchmark::kMillisecond);
BENCHMARK(write_mesh<write_glb>)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright
