#include <algorithm>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/document/json_document.h"
#include "tests/core/document/mutated_file.h"
#include "tests/core/document/random_toy.h"
#include "tests/support/random_cases.h"
#include "tests/support/sanitizers.h"

namespace roundwright {
namespace {

// Of processor time, so that a busy machine makes no difference; sanitizers take their share.
constexpr double most_seconds = 2 * test::slowdown;
constexpr long most_mib = 512;

double processor_seconds() {
    std::timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

std::vector<std::string> sample_files() {
    std::vector<std::string> files;
    for (const char* folder : {SAMPLE_FILES, FILES_OF_VERSION_1}) {
        for (const auto& entry : std::filesystem::directory_iterator(folder)) {
            if (entry.path().extension() != ".roundwright") continue;
            std::ifstream file(entry.path(), std::ios::binary);
            std::ostringstream text;
            text << file.rdbuf();
            files.push_back(text.str());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

/// What came of the files of one child.
struct Outcome {
    int read = 0;
    int refused = 0;
    double slowest_seconds = 0;
    long peak_mib = 0;
    int wrong = -1;  ///< the seed of the first file that breaks a promise
    char why[256] = "";

    void fail(unsigned seed, const std::string& what) {
        if (wrong >= 0) return;
        wrong = static_cast<int>(seed);
        std::snprintf(why, sizeof why, "%s", what.c_str());
    }
};

void read_one(const std::string& text, unsigned seed, Outcome& outcome) {
    try {
        const ReadDocument read = read_document(text);
        const std::string written = write_document(read.toy);
        if (read_document(written).toy != read.toy) outcome.fail(seed, "comes back as another toy");
        ++outcome.read;
    } catch (const DocumentError& error) {
        ++outcome.refused;
        const bool whole_file =
            error.fault() == DocumentFault::not_a_toy || error.fault() == DocumentFault::too_large;
        if (!whole_file && (error.line() == 0 || error.column() == 0))
            outcome.fail(seed, std::string("refused without a place: ") + error.what());
    } catch (const std::exception& error) {
        outcome.fail(seed, std::string("another error: ") + error.what());
    }
}

std::string mutated_file(unsigned seed, const std::vector<std::string>& samples) {
    test::FileMutator mutator(seed, samples);
    if (mutator.below(2) == 0) return mutator.mutated(mutator.any_file());
    const Toy toy = test::random_toy(mutator.random());
    return mutator.mutated(
        write_document(mutator.below(2) == 0 ? toy : test::with_unknown_keys(toy, mutator.random())));
}

Outcome read_files(unsigned from, unsigned to) {
    const std::vector<std::string> samples = sample_files();
    Outcome outcome;
    for (unsigned seed = from; seed < to; ++seed) {
        const std::string text = mutated_file(seed, samples);
        const double before = processor_seconds();
        read_one(text, seed, outcome);
        outcome.slowest_seconds = std::max(outcome.slowest_seconds, processor_seconds() - before);
    }
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    outcome.peak_mib = usage.ru_maxrss / 1024;
    if (outcome.slowest_seconds > most_seconds) outcome.fail(from, "a file took too long");
    return outcome;
}

void limit_memory() {
#ifndef ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER  // it takes terabytes of addresses
    const rlimit limit{most_mib << 20, most_mib << 20};
    setrlimit(RLIMIT_AS, &limit);
#endif
}

/// Reads them in a process that has no more memory than a toy may take, so that a crash is seen too.
::testing::AssertionResult read_in_child(unsigned from, unsigned to, Outcome& outcome) {
    int ends[2];
    if (pipe(ends) != 0) return ::testing::AssertionFailure() << "no pipe";
    const pid_t child = fork();
    if (child == 0) {
        limit_memory();
        const Outcome made = read_files(from, to);
        const bool told = write(ends[1], &made, sizeof made) == static_cast<ssize_t>(sizeof made);
        _exit(told ? 0 : 1);
    }
    close(ends[1]);
    const bool heard = read(ends[0], &outcome, sizeof outcome) == static_cast<ssize_t>(sizeof outcome);
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    if (!heard || status != 0)
        return ::testing::AssertionFailure()
               << "files " << from << " to " << to << " end the program, status " << status;
    if (outcome.wrong >= 0)
        return ::testing::AssertionFailure() << "file " << outcome.wrong << ": " << outcome.why;
    return ::testing::AssertionSuccess();
}

TEST(MutatedFiles, AreReadWholeOrRefusedWithAPlaceInLittleTimeAndMemory) {
    const auto count = static_cast<unsigned>(testing::random_cases(100'000));
    constexpr unsigned files_a_child = 1'000;
    Outcome all;
    for (unsigned from = 0; from < count; from += files_a_child) {
        Outcome some;
        ASSERT_TRUE(read_in_child(from, std::min(from + files_a_child, count), some));
        all.read += some.read;
        all.refused += some.refused;
        all.slowest_seconds = std::max(all.slowest_seconds, some.slowest_seconds);
        all.peak_mib = std::max(all.peak_mib, some.peak_mib);
    }
    std::printf("%d read, %d refused; the slowest took %.3f s, the largest process %ld MiB\n", all.read,
                all.refused, all.slowest_seconds, all.peak_mib);
    EXPECT_GE(all.read, static_cast<int>(count / 25));  // or only refusals would be tested
    EXPECT_GE(all.refused, static_cast<int>(count / 25));
    EXPECT_LT(all.slowest_seconds, most_seconds);
}

}  // namespace
}  // namespace roundwright
