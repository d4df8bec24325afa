#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>

#include <QApplication>
#include <QPlainTextEdit>
#include <QTemporaryDir>
#include <QTest>

#include "app/read_pattern/pattern_review.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"

namespace roundwright::app {
namespace {

using Clock = std::chrono::steady_clock;

/// Types keys at a person's pace and tells how long one had to wait until the window took it: the longest
/// turn of the event loop that it could have met, and its own work.
class Typist {
  public:
    template <typename Key>
    void press(Key key) {
        const auto start = Clock::now();
        key();
        add(start);
        const auto until = Clock::now() + std::chrono::milliseconds(90);
        while (Clock::now() < until) {
            const auto turn = Clock::now();
            QCoreApplication::processEvents(QEventLoop::AllEvents, 0);
            add(turn);
            QTest::qSleep(1);
        }
    }
    void tell(benchmark::State& state) const {
        state.counters["longest_ms"] = longest_;
        state.counters["over_a_frame"] = over_;
    }

  private:
    void add(Clock::time_point start) {
        const double ms = std::chrono::duration<double, std::milli>(Clock::now() - start).count();
        longest_ = std::max(longest_, ms);
        over_ += ms > 16.7 ? 1 : 0;
    }

    double longest_ = 0;
    int over_ = 0;
};

/// Typing into a pattern of so many lines while it is read.
void typing_into_a_pasted_pattern(benchmark::State& state) {
    QString text = QStringLiteral("Head\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n");
    const auto lines = static_cast<int>(state.range(0));
    for (int k = 3; k < lines; ++k) {
        if (k % 500 == 0) text += QStringLiteral("\nFin %1\nRnd 1: 12 sc in magic ring (12)\n").arg(k / 500);
        text += QStringLiteral("Rnd %1: sc in each st around (12)\n").arg(k % 500 == 0 ? 2 : k % 500 + 2);
    }
    DocumentSession session;
    session.start(Toy{});
    PatternReview review(session, text);
    review.resize(1040, 680);
    review.show();
    static_cast<void>(QTest::qWaitForWindowActive(&review));
    while (!review.is_read()) QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
    review.source().setFocus();
    Typist typist;
    for (auto _ : state) {
        for (const QChar letter : QStringLiteral("sc 1, inc"))
            typist.press([&] { QTest::keyClick(&review.source(), letter.toLatin1()); });
        for (int k = 0; k < 8; ++k) typist.press([] {});  // a pause, in which it is read and shown
    }
    typist.tell(state);
}
BENCHMARK(typing_into_a_pasted_pattern)->Arg(100)->Arg(10'000)->Unit(benchmark::kMillisecond)->Iterations(3);

/// Counts typed into the table of a ball of 12 n^2 stitches.
void typing_counts(benchmark::State& state) {
    const auto n = static_cast<int>(state.range(0));
    Toy toy;
    toy.yarns.emplace_back().colour = {150, 160, 170};
    toy.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    for (int i = 0; i < 3 * n - 1; ++i)
        piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i + 1, n, 3 * n - 1 - i})};
    const QTemporaryDir folder;
    DocumentSession session;
    MainWindow window(session, folder.path());
    window.resize(1280, 760);
    window.show();
    static_cast<void>(QTest::qWaitForWindowActive(&window));
    session.start(std::move(toy));
    while (window.shape().scene() == nullptr || session.solving())
        QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
    const auto focus = [&] { return window.focusWidget() ? window.focusWidget() : &window.rounds_view(); };
    Typist typist;
    int more = 0;
    for (auto _ : state) {
        window.rounds_view().setFocus();
        session.select_rounds({3 * n / 2});
        for (const QChar digit : QString::number(6 * n + ++more))
            typist.press([&] { QTest::keyClick(focus(), digit.toLatin1()); });
        typist.press([&] { QTest::keyClick(focus(), Qt::Key_Return); });
    }
    typist.tell(state);
}
BENCHMARK(typing_counts)->Arg(10)->Arg(29)->Unit(benchmark::kMillisecond)->Iterations(6);

}  // namespace
}  // namespace roundwright::app
