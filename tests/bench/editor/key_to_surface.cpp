#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>
#include <ctime>

#include <QApplication>
#include <QTemporaryDir>
#include <QTest>

#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"

namespace roundwright::app {
namespace {

using Clock = std::chrono::steady_clock;

/// Processor time of this thread or of the whole process.
double processor_ms(clockid_t of) {
    timespec now{};
    clock_gettime(of, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

double milliseconds_since(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// A ball of `rounds` rounds: a third of increases, a third even, a third of decreases.
Toy ball(int rounds) {
    Toy toy;
    toy.yarns.emplace_back().colour = {150, 160, 170};
    toy.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    const int third = rounds / 3;
    for (int i = 0; i < rounds; ++i)
        piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i + 1, third, rounds - i})};
    return toy;
}

/// The editor's window on a ball, the middle round under the cursor.
class Stage {
  public:
    explicit Stage(int rounds) : window_(session_, folder_.path()), middle_(rounds / 2) {
        window_.resize(1280, 760);
        window_.show();
        static_cast<void>(QTest::qWaitForWindowActive(&window_));
        session_.start(ball(rounds));
        let_through([this] { return window_.shape().scene() != nullptr && settled(); });
        QObject::connect(&session_, &DocumentSession::surface_ready, &window_, [this] { arrived_ = true; });
    }

    /// A new count typed in the middle round, up to its last key.
    void type_count(int stitches) {
        window_.rounds_view().setFocus();
        session_.select_rounds({middle_});
        for (const QChar digit : QString::number(stitches)) QTest::keyClick(focus(), digit.toLatin1());
    }

    /// As a person pauses: what was typed so far is on show, and the full picture of it has been drawn.
    void pause() {
        const auto until = Clock::now() + std::chrono::milliseconds(400);
        let_through([&] { return Clock::now() > until && !session_.solving(); });
    }

    /// Milliseconds from the last key until the view holds the new surface, and until it has painted it; and
    /// the processor time that the second took, of the window's thread and of all.
    struct Taken {
        double held, painted, key, until_held, window_thread, all_threads;
    };
    Taken enter() {
        arrived_ = false;
        const double window_thread = processor_ms(CLOCK_THREAD_CPUTIME_ID);
        const double all_threads = processor_ms(CLOCK_PROCESS_CPUTIME_ID);
        const auto start = Clock::now();
        QTest::keyClick(focus(), Qt::Key_Return);
        const double key = processor_ms(CLOCK_THREAD_CPUTIME_ID) - window_thread;
        // What was on show already needs no other surface.
        let_through([this] { return arrived_ || settled(); });
        const double until_held = processor_ms(CLOCK_THREAD_CPUTIME_ID) - window_thread;
        const double held = milliseconds_since(start);
        window_.shape().scene()->widget()->repaint();
        const double painted = milliseconds_since(start);
        const Taken taken{held,
                          painted,
                          key,
                          until_held,
                          processor_ms(CLOCK_THREAD_CPUTIME_ID) - window_thread,
                          processor_ms(CLOCK_PROCESS_CPUTIME_ID) - all_threads};
        let_through([this] { return settled(); });
        return taken;
    }

    [[nodiscard]] std::size_t triangles() const { return session_.surface(0)->mesh.triangle_count(); }

  private:
    /// Where keys go; with no window manager, nothing may have the focus of itself.
    [[nodiscard]] QWidget* focus() {
        QWidget* focused = window_.focusWidget();
        return focused ? focused : &window_.rounds_view();
    }
    [[nodiscard]] bool settled() const { return session_.is_up_to_date(0) && !session_.solving(); }

    template <typename Holds>
    static void let_through(Holds holds) {
        while (!holds()) QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
    }

    QTemporaryDir folder_;
    DocumentSession session_;
    MainWindow window_;
    int middle_;
    bool arrived_ = false;
};

void measure(benchmark::State& state, bool pauses) {
    const int rounds = static_cast<int>(state.range(0));
    Stage stage(rounds);
    const int usual = 6 * (rounds / 3);
    double painted = 0, key = 0, until_held = 0, window_thread = 0, all_threads = 0;
    int more = 0;
    for (auto _ : state) {
        more = 1 - more;
        stage.type_count(usual + more);
        if (pauses) stage.pause();
        const auto taken = stage.enter();
        state.SetIterationTime(taken.held / 1000);
        painted += taken.painted;
        key += taken.key;
        until_held += taken.until_held;
        window_thread += taken.window_thread;
        all_threads += taken.all_threads;
    }
    state.counters["triangles"] = static_cast<double>(stage.triangles());
    const auto mean = [](double sum) { return benchmark::Counter(sum, benchmark::Counter::kAvgIterations); };
    state.counters["painted_ms"] = mean(painted);
    state.counters["window_thread_key_ms"] = mean(key);
    state.counters["window_thread_held_ms"] = mean(until_held);
    state.counters["window_thread_ms"] = mean(window_thread);
    state.counters["all_threads_ms"] = mean(all_threads);
}
void key_to_surface(benchmark::State& state) { measure(state, false); }
void key_to_surface_after_a_pause(benchmark::State& state) { measure(state, true); }
BENCHMARK(key_to_surface_after_a_pause)
    ->Arg(60)
    ->UseManualTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(20);
BENCHMARK(key_to_surface)->Arg(15)->Arg(60)->Arg(300)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace roundwright::app
