#include <benchmark/benchmark.h>
#include <chrono>
#include <cstdint>
#include <memory>

#include <QApplication>
#include <QScreen>
#include <QVBoxLayout>
#include <QWidget>

#include "core/mesh/ray_cast.h"
#include "render/raster/corner_vertices.h"
#include "render/raster/software_picture.h"
#include "render/scene/scene_view.h"
#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

using Clock = std::chrono::steady_clock;

constexpr std::int64_t small = 5'000, middle = 50'000, large = 200'000;

StitchSurface ball(std::int64_t triangles, Colour colour) {
    const int n = triangles < 10'000 ? 6 : 10;
    return test::striped_ball_surface(n, {colour}, static_cast<std::size_t>(triangles));
}

/// A window with the view, and the colour it shows in its middle.
class Stage {
  public:
    explicit Stage(const char* drawn_by) {
        qputenv("ROUNDWRIGHT_VIEW", drawn_by);
        view_ = make_scene_view(&window_);
        auto* layout = new QVBoxLayout(&window_);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->addWidget(view_->widget());
        window_.setGeometry(0, 0, 800, 640);
        window_.show();
    }
    [[nodiscard]] SceneView& view() const { return *view_; }

    /// Seconds until the middle is redder than blue, or the other way round, on the screen itself.
    double seconds_until(bool red, Clock::time_point start) const {
        while (true) {
            QApplication::processEvents(QEventLoop::AllEvents, 1);
            const QRgb seen =
                window_.screen()->grabWindow(window_.winId(), 400, 300, 1, 1).toImage().pixel(0, 0);
            const std::chrono::duration<double> passed = Clock::now() - start;
            if ((qRed(seen) > qBlue(seen) + 20) == red && (qRed(seen) + 20 < qBlue(seen)) == !red)
                return passed.count();
            if (passed.count() > 5) return passed.count();
        }
    }

  private:
    QWidget window_;
    SceneView* view_;
};

constexpr Colour red{190, 60, 50}, blue{50, 60, 190};

void surface_to_screen(benchmark::State& state, const char* drawn_by) {
    if (qgetenv("DISPLAY").isEmpty()) return state.SkipWithError("needs a display");
    const Stage stage(drawn_by);
    const StitchSurface surfaces[] = {ball(state.range(0), blue), ball(state.range(0), red)};
    stage.view().set_surface(surfaces[0]);
    stage.seconds_until(false, Clock::now());
    bool is_red = false;
    for (auto _ : state) {
        is_red = !is_red;
        StitchSurface next = surfaces[is_red ? 1 : 0];
        const auto start = Clock::now();
        stage.view().set_surface(std::move(next));
        state.SetIterationTime(stage.seconds_until(is_red, start));
    }
    state.counters["triangles"] = static_cast<double>(surfaces[0].mesh.triangle_count());
}

void software_picture(benchmark::State& state) {
    const StitchSurface surface = ball(state.range(0), red);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            picture_of(surface, {}, ViewDirection::three_quarter, {800, 640}, Qt::white));
    }
}

void large_picture(benchmark::State& state) {
    const StitchSurface surface = ball(large, red);
    const QSize size(static_cast<int>(state.range(0)), static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(picture_of(surface, {}, ViewDirection::three_quarter, size, Qt::white));
}

void corner_vertices_of(benchmark::State& state) {
    const StitchSurface surface = ball(state.range(0), red);
    for (auto _ : state) benchmark::DoNotOptimize(corner_vertices(surface.mesh));
}

void build_ray_caster(benchmark::State& state) {
    const StitchSurface surface = ball(state.range(0), red);
    for (auto _ : state) benchmark::DoNotOptimize(RayCaster(surface.mesh));
}

BENCHMARK_CAPTURE(surface_to_screen, qt3d, "qt3d")
    ->Arg(small)
    ->Arg(middle)
    ->Arg(large)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(surface_to_screen, painter, "painter")
    ->Arg(small)
    ->Arg(middle)
    ->Arg(large)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK(software_picture)->Arg(small)->Arg(large)->Unit(benchmark::kMillisecond);
BENCHMARK(large_picture)->Arg(4'000)->Iterations(1)->Unit(benchmark::kMillisecond);
BENCHMARK(corner_vertices_of)->Arg(large)->Unit(benchmark::kMillisecond);
BENCHMARK(build_ray_caster)->Arg(middle)->Arg(large)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright::render

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT3D_RENDERER", "opengl");
    const QApplication application(argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
