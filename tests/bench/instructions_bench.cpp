#include <benchmark/benchmark.h>
#include <string>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"

namespace {

using namespace roundwright;

// Pieces of a hundred rounds, one after the other.
std::string pattern_of(int lines) {
    static const char* const begin[] = {"6 sc in magic ring (6)", "inc around (12)", "[sc 1, inc] x 6 (18)",
                                        "*2 sc, 2 sc in next st; rep from * around. (24)",
                                        "(sc 3, inc) 6 times - 30 sts"};
    static const char* const body[] = {"sc in each st around (30)", "sc 7, inc, sc 14, inc, sc 7 (32)",
                                       "sc 7, dec, sc 14, dec, sc 7 (30)"};
    std::string text;
    for (int line = 0; line < lines; ++line) {
        const int round = line % 100;
        text += "Rnd " + std::to_string(round + 1) + ": " +
                (round < 5 ? begin[round] : body[(round - 5) % 3]) + "\n";
    }
    return text;
}

void read_and_prove(benchmark::State& state) {
    const int lines = static_cast<int>(state.range(0));
    const std::string text = pattern_of(lines);
    for (auto _ : state) benchmark::DoNotOptimize(read_pattern(text));
    state.SetComplexityN(lines);
}
BENCHMARK(read_and_prove)
    ->Arg(1'000)
    ->Arg(2'000)
    ->Arg(4'000)
    ->Arg(10'000)
    ->Complexity()
    ->Unit(benchmark::kMillisecond);

void write_again(benchmark::State& state) {
    const int lines = static_cast<int>(state.range(0));
    const Toy toy = toy_of(read_pattern(pattern_of(lines)));
    for (auto _ : state) benchmark::DoNotOptimize(write_toy(toy, Terms::us));
    state.SetComplexityN(lines);
}
BENCHMARK(write_again)
    ->Arg(1'000)
    ->Arg(2'000)
    ->Arg(4'000)
    ->Arg(10'000)
    ->Complexity()
    ->Unit(benchmark::kMillisecond);

}  // namespace
