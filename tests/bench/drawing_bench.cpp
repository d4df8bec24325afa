#include <algorithm>
#include <benchmark/benchmark.h>

#include <QBuffer>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>

#include "core/mesh/mean_surface.h"
#include "core/mesh/revolve.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/solve_shape.h"
#include "render/chart/round_chart.h"
#include "render/illustration/piece_drawing.h"
#include "render/illustration/silhouette.h"

namespace roundwright::render {
namespace {

/// A ball of n rounds up, n even, n down.
struct Ball {
    Piece piece;
    StitchGraph graph;
    Shape shape;
    StitchSurface surface;

    explicit Ball(int n) {
        piece.end = End::drawn_closed;
        for (int i = 1; i <= 3 * n - 1; ++i)
            piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i, n, 3 * n - i})};
        graph = piece_graph(piece).graph;
        RevolveOptions options;
        options.most_triangles = 60'000;
        shape = solve_shape(shape_problem(piece, graph, {5, 5, 0, 0}));
        surface = revolve({}, piece, graph, shape, {}, {}, options);
    }
};

/// One picture 90 mm wide in a PDF; the bytes are the file's.
void draw_piece_in_pdf(benchmark::State& state) {
    const Ball ball(static_cast<int>(state.range(0)));
    qsizetype size = 0;
    for (auto _ : state) {
        QByteArray bytes;
        QBuffer buffer(&bytes);
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer(&buffer);
        writer.setResolution(1200);
        QPainter painter(&writer);
        DrawOptions options;
        options.target = QRectF(0, 0, 4250, 4250);
        draw_piece(painter, ball.surface, options);
        painter.end();
        size = bytes.size();
    }
    state.counters["stitches"] = static_cast<double>(ball.surface.stitches.size());
    state.counters["bytes"] = static_cast<double>(size);
}
BENCHMARK(draw_piece_in_pdf)->Arg(5)->Arg(10)->Arg(20)->Unit(benchmark::kMillisecond);

void find_silhouette(benchmark::State& state) {
    const Ball ball(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(silhouette(
            smooth_mesh(mean_surface(*revolved_fabric(ball.piece, ball.graph, ball.shape, {}), 128), 6), {}));
}
BENCHMARK(find_silhouette)->Arg(5)->Arg(20)->Unit(benchmark::kMillisecond);

void lay_and_draw_chart(benchmark::State& state) {
    const Ball ball(static_cast<int>(state.range(0)));
    QImage image(1000, 1000, QImage::Format_RGB32);
    for (auto _ : state) {
        QPainter painter(&image);
        ChartOptions options;
        options.target = QRectF(0, 0, 1000, 1000);
        for (const auto& part : chart_parts(ball.piece, ball.graph))
            draw_chart(painter, chart_layout(ball.piece, ball.graph, part), options);
    }
}
BENCHMARK(lay_and_draw_chart)->Arg(5)->Arg(20)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright::render

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
}
