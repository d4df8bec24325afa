#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>

#include <QCoreApplication>
#include <QTemporaryDir>

#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"

namespace roundwright::app {
namespace {

using Clock = std::chrono::steady_clock;

/// A ball of n rounds of increases, n even and n of decreases, 12 n^2 stitches in all, with a pair of eyes.
Toy ball_with_eyes(int n) {
    Toy toy;
    toy.yarns.emplace_back().colour = {150, 160, 170};
    toy.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    for (int i = 0; i < 3 * n - 1; ++i)
        piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i + 1, n, 3 * n - 1 - i})};
    Feature eyes;
    eyes.kind = FeatureKind::safety_eye;
    eyes.round = 3 * n / 2;
    eyes.stitches_apart = n;
    eyes.width_mm = eyes.height_mm = 12;
    piece.features.push_back(eyes);
    return toy;
}

/// One eye of a pair dragged over the shape in the editor's window: what each move of the pointer takes until
/// both eyes and all words about them have followed, and until the picture is painted.
void drag_an_eye(benchmark::State& state) {
    const QTemporaryDir folder;
    DocumentSession session;
    MainWindow window(session, folder.path());
    window.resize(1280, 760);
    window.show();
    session.start(ball_with_eyes(static_cast<int>(state.range(0))));
    const auto settled = [&] { return session.is_up_to_date(0) && !session.solving(); };
    const auto let_through = [&](auto holds) {
        while (!holds()) QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
    };
    let_through([&] { return window.shape().scene() != nullptr && settled(); });
    render::SceneView& scene = *window.shape().scene();
    const QPointF middle = QRectF(scene.widget()->rect()).center();
    double painted = 0;
    int step = 0;
    for (auto _ : state) {
        const QPointF pointer = middle + QPointF(step % 40 - 20, step % 23 - 11);
        ++step;
        const auto start = Clock::now();
        Q_EMIT scene.part_dragged(0, pointer);
        const std::chrono::duration<double> followed = Clock::now() - start;
        scene.widget()->repaint();
        const std::chrono::duration<double> seen = Clock::now() - start;
        state.SetIterationTime(followed.count());
        painted += 1000 * seen.count();
        let_through(settled);
    }
    state.counters["painted_ms"] = benchmark::Counter(painted, benchmark::Counter::kAvgIterations);
    int stitches = 0;
    for (const GraphRound& round : session.study(0)->graph().graph.rounds)
        stitches += static_cast<int>(round.stitches.size());
    state.counters["stitches"] = stitches;
}
BENCHMARK(drag_an_eye)->Arg(6)->Arg(21)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright::app
