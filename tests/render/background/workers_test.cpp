#include "render/background/workers.h"

#include <atomic>
#include <chrono>
#include <fstream>
#include <gtest/gtest.h>
#include <latch>
#include <memory>
#include <new>
#include <stdexcept>
#include <thread>
#include <vector>

#ifdef __linux__
#include <sys/resource.h>
#include <unistd.h>
#endif

#include "render/background/fault_words.h"
#include "tests/support/sanitizers.h"

namespace roundwright::render {
namespace {

using namespace std::chrono_literals;

TEST(Workers, BeginsTheJobsOfALaneInTheirOrder) {
    Workers workers(1);
    std::vector<int> order;
    std::latch ended(20);
    for (int i = 0; i < 20; ++i)
        workers.post(Lane::longer, [&, i] {
            order.push_back(i);
            ended.count_down();
        });
    ended.wait();
    for (int i = 0; i < 20; ++i) EXPECT_EQ(order[static_cast<std::size_t>(i)], i);
}

TEST(Workers, WhatTakesLongNeverStandsBeforeTheNextKey) {
    Workers workers(1);
    std::latch pressed(1), long_ended(3);
    for (int i = 0; i < 3; ++i)
        workers.post(Lane::longer, [&] {
            pressed.wait();
            long_ended.count_down();
        });
    workers.post(Lane::next_key, [&] { pressed.count_down(); });
    long_ended.wait();  // and not for ever
}

TEST(Workers, FinishStopsWhatRunsAndDropsWhatWaits) {
    Workers workers(1);
    std::atomic<bool> began = false, waiting_began = false;
    std::stop_source stop;
    workers.post(
        Lane::longer,
        [&, token = stop.get_token()] {
            began = true;
            while (!token.stop_requested()) std::this_thread::sleep_for(1ms);
        },
        stop);
    workers.post(Lane::longer, [&] { waiting_began = true; });
    while (!began) std::this_thread::sleep_for(1ms);
    EXPECT_TRUE(workers.finish(10s));
    EXPECT_FALSE(waiting_began);
    std::latch again(1);
    workers.post(Lane::longer, [&] { again.count_down(); });
    again.wait();
}

TEST(Workers, FinishLetsGoOfWhatJobsHold) {
    const auto held = std::make_shared<int>(1);
    Workers workers(2);
    for (int i = 0; i < 50; ++i) workers.post(Lane::next_key, [held] {});
    EXPECT_TRUE(workers.finish(10s));
    EXPECT_EQ(held.use_count(), 1);
}

/// Work that hears nothing, until the test lets it go.
struct Deaf {
    std::shared_ptr<std::atomic<bool>> may_end = std::make_shared<std::atomic<bool>>(false);
    std::shared_ptr<std::atomic<int>> running = std::make_shared<std::atomic<int>>(0);

    void operator()() const {
        ++*running;
        while (!*may_end) std::this_thread::sleep_for(1ms);
        --*running;
    }
};

TEST(Workers, FinishLetsGoOfWorkThatNeverEnds) {
    Workers workers(2);
    const Deaf deaf;
    for (int i = 0; i < 2; ++i) workers.post(Lane::longer, deaf);
    while (*deaf.running < 2) std::this_thread::sleep_for(1ms);
    EXPECT_FALSE(workers.finish(10ms));
    std::latch again(1);
    workers.post(Lane::longer, [&] { again.count_down(); });
    again.wait();  // by threads of its own
    EXPECT_TRUE(workers.finish(10s));
    *deaf.may_end = true;
    while (*deaf.running > 0) std::this_thread::sleep_for(1ms);
}

TEST(Workers, WorkThatNobodyWantsAnyMoreKeepsNoKeyWaiting) {
    Workers workers(2);
    const Deaf deaf;
    for (int i = 0; i < 2; ++i) {
        std::stop_source stop;
        workers.post(Lane::next_key, deaf, stop);
        stop.request_stop();
    }
    while (*deaf.running < 2) std::this_thread::sleep_for(1ms);
    std::latch pressed(1);
    workers.post(Lane::next_key, [&] { pressed.count_down(); });
    pressed.wait();  // and not for ever
    *deaf.may_end = true;
}

TEST(Workers, AJobThatThrowsEndsItselfAlone) {
    Workers workers(1);
    workers.post(Lane::longer, [] { throw std::runtime_error("the tide"); });
    workers.post(Lane::longer, [] { throw 1; });
    std::latch next(1);
    workers.post(Lane::longer, [&] { next.count_down(); });
    next.wait();
}

TEST(ShareOut, DoesEveryPartOnce) {
    Workers workers(4);
    for (int round = 0; round < 200; ++round) {
        std::vector<std::atomic<int>> parts(37);
        std::atomic<std::size_t> next = 0;
        share_out(
            Lane::next_key,
            [&] {
                for (std::size_t k = next++; k < parts.size(); k = next++) ++parts[k];
            },
            workers);
        for (const auto& part : parts) ASSERT_EQ(part, 1);
    }
}

TEST(ShareOut, DoesNotWaitForThreadsThatAreBusy) {
    Workers workers(2);
    std::latch free(1), busy(2);
    for (int i = 0; i < 2; ++i)
        workers.post(Lane::longer, [&] {
            busy.count_down();
            free.wait();
        });
    busy.wait();
    int calls = 0;
    share_out(
        Lane::longer, [&] { ++calls; }, workers);
    EXPECT_EQ(calls, 1);
    free.count_down();
}

TEST(ShareOut, MayBeCalledInsideAJob) {
    Workers workers(2);
    std::atomic<int> calls = 0;
    std::latch ended(4);
    for (int i = 0; i < 4; ++i)
        workers.post(Lane::next_key, [&] {
            share_out(
                Lane::next_key, [&] { ++calls; }, workers);
            ended.count_down();
        });
    ended.wait();
    EXPECT_GE(calls, 4);
}

#if defined(__linux__)
/// From here on the process gets no memory for a thread's stack.
void leave_little_memory() {
    constexpr rlim_t little = rlim_t{2} << 20U;
    long pages = 0;
    std::ifstream("/proc/self/statm") >> pages;
    const rlim_t now = static_cast<rlim_t>(pages) * static_cast<rlim_t>(sysconf(_SC_PAGESIZE));
    const rlimit limit{now + little, now + little};
    setrlimit(RLIMIT_AS, &limit);
}

// Work that is shared is done without help, and other work is refused, not lost.
TEST(ShareOutDeathTest, WithoutThreads) {
    if (test::under_sanitizer) GTEST_SKIP() << "no address space to limit";
    const auto without_threads = [] {
        leave_little_memory();
        Workers workers(4);
        int calls = 0;
        share_out(
            Lane::next_key, [&] { ++calls; }, workers);
        try {
            workers.post(Lane::longer, [] {});
        } catch (const std::exception& problem) {
            _exit(calls == 1 && is_out_of_memory(problem) ? 0 : 1);
        }
        _exit(2);
    };
    EXPECT_EXIT(without_threads(), ::testing::ExitedWithCode(0), "");
}
#endif

TEST(ShareOut, ThrowsWhatOneOfTheCallsThrows) {
    Workers workers(2);
    for (int round = 0; round < 50; ++round)
        EXPECT_THROW(share_out(
                         Lane::next_key, [] { throw std::runtime_error("full"); }, workers),
                     std::runtime_error);
}

}  // namespace
}  // namespace roundwright::render
