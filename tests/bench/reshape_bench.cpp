#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>
#include <cmath>
#include <vector>

#include "core/reshape/continue_from_here.h"
#include "core/reshape/sculpt.h"

namespace roundwright {
namespace {

const Gauge five_mm{5, 5, 0, 0};

// The ball of common practice: n rounds up, n even, n down.
PieceForm ball(int n) {
    Piece piece;
    piece.end = End::drawn_closed;
    const auto add = [&](int count) {
        Round round;
        round.working = WorkedEvenly{count};
        piece.rounds.push_back(round);
    };
    for (int i = 1; i <= n; ++i) add(6 * i);
    for (int i = 0; i < n; ++i) add(6 * n);
    for (int i = n - 1; i >= 1; --i) add(6 * i);
    return piece_form(piece, five_mm);
}

double milliseconds_since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

// A frame of a drag: the outline moves by a millimetre or two, the rounds and the shape follow. The slowest
// of a hundred frames must stay below the 16 ms of a screen at 60 frames a second.
void drag_sixty_rounds(benchmark::State& state) {
    const SculptStart start = sculpt_start(ball(20));
    std::vector<double> frames;
    Shape shape = start.form.shape;
    int frame = 0;
    for (auto _ : state) {
        const auto began = std::chrono::steady_clock::now();
        const double by = 25 * std::sin(0.05 * frame++);
        const Sculpted made = sculpt(start, dragged(start.outline, 30, Vec2(by, 0), 80), 0.5, &shape);
        benchmark::DoNotOptimize(made.usable);
        if (made.usable) shape = made.shape;
        frames.push_back(milliseconds_since(began));
    }
    std::sort(frames.begin(), frames.end());
    state.counters["p99_ms"] = frames[frames.size() * 99 / 100];
    state.counters["worst_ms"] = frames.back();
}
BENCHMARK(drag_sixty_rounds)->Unit(benchmark::kMillisecond)->MinTime(2);

// Must stay below 100 ms.
void resize_three_hundred_rounds(benchmark::State& state) {
    const PieceForm form = ball(100);
    Target target;
    target.scale = 0.01 * static_cast<double>(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(resize(form, target).code);
}
BENCHMARK(resize_three_hundred_rounds)->Unit(benchmark::kMillisecond)->Arg(80)->Arg(97)->Arg(113);

void resize_a_head(benchmark::State& state) {
    const PieceForm form = ball(6);
    Target target;
    target.width_mm = static_cast<double>(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(resize(form, target).code);
}
BENCHMARK(resize_a_head)->Unit(benchmark::kMillisecond)->Arg(42)->Arg(57)->Arg(90);

void ways_on_from_eleven_rounds(benchmark::State& state) {
    const PieceForm form = ball(6);
    Target target;
    target.width_mm = 45;
    for (auto _ : state) benchmark::DoNotOptimize(continue_from_here(form, target, {11, 0, {}}, 7).size());
}
BENCHMARK(ways_on_from_eleven_rounds)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright
