#include <benchmark/benchmark.h>

#include <QGuiApplication>

#include "render/pages/pdf/pdf_export.h"
#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::piece_of;

/// A body of sixty rounds as toys have it: ten of increases, forty even, ten of decreases; 3,000 stitches.
Toy sixty_rounds() {
    std::vector<int> counts;
    for (int i = 1; i <= 10; ++i) counts.push_back(6 * i);
    for (int i = 0; i < 40; ++i) counts.push_back(60);
    for (int i = 10; i >= 1; --i) counts.push_back(6 * i);
    Toy toy = ball(4);
    toy.pieces = {piece_of("Body", counts)};
    return toy;
}

void export_pattern(benchmark::State& state, const Toy& toy) {
    qsizetype bytes = 0;
    for (auto _ : state) {
        const auto pages = PatternPages::compose(toy, {});
        const auto pdf = pdf_of(*pages, QDateTime(QDate(2026, 3, 14), QTime(9, 0), Qt::UTC));
        bytes = pdf->size();
    }
    state.counters["KiB"] = static_cast<double>(bytes) / 1024;
}

void compose_pattern(benchmark::State& state, const Toy& toy) {
    for (auto _ : state) benchmark::DoNotOptimize(PatternPages::compose(toy, {}));
}

BENCHMARK_CAPTURE(export_pattern, sixty_rounds, sixty_rounds())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(export_pattern, wide_ball_of_59_rounds, ball(20))->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(export_pattern, small_ball, ball(6))->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(compose_pattern, sixty_rounds, sixty_rounds())->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright::render

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
}
