#include <cstdio>
#include <cstdlib>
#include <string>

#include <QGuiApplication>
#include <QStringList>

#include "render/wording/translations.h"
#include "tests/support/random_cases.h"
#include "tests/torture/random_toys/trial.h"

// random_toys [FIRST [COUNT]]: sends random toys through shape, checks and a share of the exports, and says
// how they ended. Without numbers it tries a few, by ROUNDWRIGHT_RANDOM_CASES_PERCENT.
namespace {

using namespace roundwright;

constexpr int few = 1'000;

void print(const torture::Tally& tally, long toys) {
    std::printf("%ld toys\n", toys);
    for (const auto& [how, often] : tally.ends) std::printf("  %-28s %ld\n", how.c_str(), often);
    std::printf("  slowest: toy %llu, %.2f s\n", static_cast<unsigned long long>(tally.slowest),
                tally.slowest_seconds);
    std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    speak_language_of_system();
    const QStringList words = QGuiApplication::arguments();
    const auto first = words.size() > 1 ? words[1].toULongLong() : 0;
    const auto count = words.size() > 2 ? words[2].toLong() : testing::random_cases(few);
    torture::Tally tally;
    std::size_t said = 0;
    for (long k = 0; k < count; ++k) {
        torture::try_toy(first + static_cast<std::uint64_t>(k), {}, tally);
        for (; said < tally.faults.size(); ++said) std::printf("%s\n", tally.faults[said].c_str());
        if ((k + 1) % 10'000 == 0) print(tally, k + 1);
    }
    print(tally, count);
    return tally.faults.empty() ? EXIT_SUCCESS : EXIT_FAILURE;
}
