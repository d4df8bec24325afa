#include <algorithm>
#include <benchmark/benchmark.h>
#include <chrono>
#include <ctime>

#include <QCoreApplication>
#include <QTemporaryDir>

#include "app/files/autosave.h"
#include "app/session/document_session.h"

namespace roundwright::app {
namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

/// Processor time of this thread: on a busy machine, waking another one may cost this one its turn.
double worked_seconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// A ball of n rounds of increases, n even and n of decreases: 12 n^2 stitches.
Toy ball(int n) {
    Toy toy;
    toy.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    for (int i = 0; i < 3 * n - 1; ++i)
        piece.rounds.emplace_back().working = WorkedEvenly{6 * std::min({i + 1, n, 3 * n - 1 - i})};
    return toy;
}

/// What keeping an edit costs the window's thread: telling that something changed, then copying the toy and
/// handing it on. `written_ms`: until it is safely on disk, in the background.
void keeping_an_edit(benchmark::State& state) {
    const QTemporaryDir folder;
    DocumentSession session;
    session.start(ball(static_cast<int>(state.range(0))));
    Autosave autosave(session, folder.path());
    autosave.set_interval_ms(600'000);
    double told = 0;
    double written = 0;
    int more = 0;
    for (auto _ : state) {
        more = 1 - more;
        session.edit_piece({}, [&](Piece& piece) {
            std::get<WorkedEvenly>(piece.rounds[piece.rounds.size() / 2].working).stitches += more ? 1 : -1;
        });
        const auto start = Clock::now();
        const double worked = worked_seconds();
        autosave.set_pending({QStringLiteral("24x%1").arg(more), 0});
        told += 1000 * (worked_seconds() - worked);
        autosave.keep_soon();
        state.SetIterationTime(worked_seconds() - worked);
        while (!autosave.all_kept()) QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
        written += 1000 * seconds_since(start);
    }
    state.counters["told_ms"] = benchmark::Counter(told, benchmark::Counter::kAvgIterations);
    state.counters["written_ms"] = benchmark::Counter(written, benchmark::Counter::kAvgIterations);
    autosave.give_up();
}
BENCHMARK(keeping_an_edit)->Arg(29)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(100);

/// Two hundred such pieces in one toy: the largest there is.
void keeping_an_edit_of_the_largest_toy(benchmark::State& state) {
    const QTemporaryDir folder;
    DocumentSession session;
    Toy toy = ball(29);
    while (toy.pieces.size() < 200) toy.pieces.push_back(ball(29).pieces[0]);
    session.start(std::move(toy));
    Autosave autosave(session, folder.path());
    autosave.set_interval_ms(600'000);
    double written = 0;
    int step = 0;
    for (auto _ : state) {
        session.edit_piece({}, [&](Piece& piece) { piece.name = std::to_string(++step); });
        const auto start = Clock::now();
        const double worked = worked_seconds();
        autosave.keep_soon();
        state.SetIterationTime(worked_seconds() - worked);
        while (!autosave.all_kept()) QCoreApplication::processEvents(QEventLoop::AllEvents, 1);
        written += 1000 * seconds_since(start);
    }
    state.counters["written_ms"] = benchmark::Counter(written, benchmark::Counter::kAvgIterations);
    autosave.give_up();
}
BENCHMARK(keeping_an_edit_of_the_largest_toy)->UseManualTime()->Unit(benchmark::kMillisecond)->Iterations(20);

}  // namespace
}  // namespace roundwright::app
