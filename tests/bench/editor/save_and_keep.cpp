#include <benchmark/benchmark.h>
#include <ctime>

#include <QTemporaryDir>

#include "app/versions/version_keeper.h"

namespace roundwright::app {
namespace {

/// 100 rounds of 100 stitches, in the maker's own words: what takes the most room in a file.
Toy toy_in_words() {
    Toy toy;
    toy.yarns.emplace_back();
    Piece& piece = toy.pieces.emplace_back();
    piece.start = OpenTube{100};
    for (int round = 0; round < 100; ++round)
        piece.rounds.emplace_back().working = AsWritten{"[sc 8, inc, dec, sc 2] x 7, sc 9"};
    return toy;
}

/// Processor time of the calling thread, in seconds.
double thread_seconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// Processor time that the window's thread takes to save a toy, with (1) or without (0) earlier versions.
/// What the background does meanwhile is not counted.
void save_and_keep(benchmark::State& state) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("toy.roundwright"));
    DocumentSession session;
    std::unique_ptr<VersionKeeper> keeper;
    if (state.range(0) == 1) keeper = std::make_unique<VersionKeeper>(session, VersionStore(folder.path()));
    session.start(toy_in_words());
    int number = 0;
    for (auto _ : state) {
        session.edit({}, [&](Toy toy) {
            toy.notes = std::to_string(++number);
            return toy;
        });
        const double start = thread_seconds();
        if (session.save(path)) state.SkipWithError("not saved");
        state.SetIterationTime(thread_seconds() - start);
        if (keeper) keeper->settle();
    }
}
BENCHMARK(save_and_keep)->Arg(0)->Arg(1)->Iterations(200)->UseManualTime()->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace roundwright::app
