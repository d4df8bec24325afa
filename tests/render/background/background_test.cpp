#include "render/background/background.h"

#include <atomic>
#include <gtest/gtest.h>
#include <new>
#include <stdexcept>
#include <vector>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QThread>

namespace roundwright::render {
namespace {

/// Lets events through until something holds; false after ten seconds.
template <typename Holds>
bool wait_until(Holds holds) {
    QElapsedTimer timer;
    timer.start();
    while (!holds()) {
        if (timer.elapsed() > 10'000) return false;
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
        QThread::usleep(200);
    }
    return true;
}

void let_events_through(int ms) {
    QElapsedTimer timer;
    timer.start();
    wait_until([&] { return timer.elapsed() > ms; });
}

/// Runs until it is asked to stop.
Background::Work endless(std::atomic<bool>& began, std::atomic<bool>& stopped) {
    return [&](const TaskRun& run) -> Delivery {
        began = true;
        while (!run.stop.stop_requested()) QThread::usleep(200);
        stopped = true;
        return [] { ADD_FAILURE() << "a stale answer"; };
    };
}

TEST(Background, DeliversInTheOwnersThreadAndThenIsIdle) {
    Background background;
    std::vector<bool> busy;
    QObject::connect(&background, &Background::busy_changed, [&](bool now) { busy.push_back(now); });
    QThread *worked = nullptr, *delivered = nullptr;
    background.start(Lane::longer, [&](const TaskRun&) -> Delivery {
        worked = QThread::currentThread();
        return [&] {
            delivered = QThread::currentThread();
            EXPECT_FALSE(background.busy());
        };
    });
    EXPECT_TRUE(background.busy());
    ASSERT_TRUE(wait_until([&] { return delivered != nullptr; }));
    EXPECT_EQ(delivered, background.thread());
    EXPECT_NE(worked, background.thread());
    EXPECT_EQ(busy, (std::vector<bool>{true, false}));
}

TEST(Background, TasksOfALaneBeginInTheirOrder) {
    Workers workers(1);
    Background background(nullptr, workers);
    std::vector<int> answers;
    for (int i = 0; i < 30; ++i)
        background.start(Lane::next_key, [&answers, i](const TaskRun&) -> Delivery {
            return [&answers, i] { answers.push_back(i); };
        });
    ASSERT_TRUE(wait_until([&] { return !background.busy(); }));
    ASSERT_EQ(answers.size(), 30U);
    for (int i = 0; i < 30; ++i) EXPECT_EQ(answers[static_cast<std::size_t>(i)], i);
}

TEST(Background, TheNextKeyOvertakesWhatTakesLonger) {
    Workers workers(1);
    Background background(nullptr, workers);
    std::atomic<bool> began = false, stopped = false;
    const auto endlessly = background.start(Lane::longer, endless(began, stopped));
    background.start(Lane::longer, [](const TaskRun&) -> Delivery { return {}; });
    bool answered = false;
    background.start(Lane::next_key, [&](const TaskRun&) -> Delivery { return [&] { answered = true; }; });
    ASSERT_TRUE(wait_until([&] { return answered; }));
    EXPECT_TRUE(background.busy());
    background.cancel(endlessly);
    ASSERT_TRUE(wait_until([&] { return !background.busy(); }));
}

TEST(Background, OnlyTheLatestAnswerComes) {
    Background background;
    std::vector<int> answers;
    for (int i = 0; i < 50; ++i)
        background.start_latest(Lane::longer, [&answers, i](const TaskRun&) -> Delivery {
            return [&answers, i] { answers.push_back(i); };
        });
    ASSERT_TRUE(wait_until([&] { return !background.busy(); }));
    let_events_through(20);
    EXPECT_EQ(answers, std::vector<int>{49});
}

TEST(Background, TheLatestStopsWhatRunsAndDoesNotWaitForIt) {
    Workers workers(2);
    Background background(nullptr, workers);
    std::atomic<bool> began = false, may_end = false, ended = false;
    background.start_latest(Lane::longer, [&](const TaskRun& run) -> Delivery {
        began = true;
        while (!may_end) QThread::usleep(200);  // deaf to its stop token
        EXPECT_TRUE(run.stop.stop_requested());
        ended = true;
        return [] { ADD_FAILURE() << "a stale answer"; };
    });
    ASSERT_TRUE(wait_until([&] { return began.load(); }));
    bool answered = false;
    background.start_latest(Lane::longer,
                            [&](const TaskRun&) -> Delivery { return [&] { answered = true; }; });
    EXPECT_TRUE(wait_until([&] { return answered; }));
    EXPECT_FALSE(ended);
    may_end = true;
    ASSERT_TRUE(wait_until([&] { return ended.load(); }));
    let_events_through(20);
}

TEST(Background, CancelStopsWhatRunsAndWhatWaitsNeverBegins) {
    Workers workers(1);
    Background background(nullptr, workers);
    std::atomic<bool> began = false, stopped = false, waiting_began = false;
    background.start(Lane::longer, endless(began, stopped));
    const auto held = std::make_shared<int>(0);
    const auto waiting = background.start(Lane::longer, [&, held](const TaskRun&) -> Delivery {
        waiting_began = true;
        return {};
    });
    ASSERT_TRUE(wait_until([&] { return began.load(); }));
    background.cancel(waiting);
    EXPECT_EQ(held.use_count(), 1) << "what a task holds goes with it";
    EXPECT_TRUE(background.busy());
    background.cancel();
    EXPECT_FALSE(background.busy());
    ASSERT_TRUE(wait_until([&] { return stopped.load(); }));
    let_events_through(20);
    EXPECT_FALSE(waiting_began);
}

TEST(Background, AnAnswerOnItsWayIsDroppedByCancel) {
    Background background;
    std::atomic<bool> worked = false;
    background.start(Lane::next_key, [&](const TaskRun& run) -> Delivery {
        run.report(1, 2);
        run.deliver([] { ADD_FAILURE() << "a step of a cancelled task"; });
        worked = true;
        return [] { ADD_FAILURE() << "an answer of a cancelled task"; };
    });
    QObject::connect(&background, &Background::progressed, [] { ADD_FAILURE() << "progress"; });
    while (!worked) QThread::usleep(200);  // no events meanwhile
    QThread::msleep(5);
    background.cancel();
    let_events_through(20);
}

TEST(Background, NothingIsDeliveredAfterItsOwnerIsGone) {
    std::atomic<bool> began = false, stopped = false, worked = false;
    {
        Background background;
        background.start(Lane::longer, endless(began, stopped));
        background.start(Lane::next_key, [&](const TaskRun&) -> Delivery {
            worked = true;
            return [] { ADD_FAILURE() << "delivered to nobody"; };
        });
        while (!began || !worked) QThread::usleep(200);
    }
    ASSERT_TRUE(wait_until([&] { return stopped.load(); }));
    let_events_through(20);
}

TEST(Background, OwnersThatComeAndGoWhileTasksEndAreNeverMetAgain) {
    std::atomic<int> worked = 0;
    for (int i = 0; i < 300 || worked == 0; ++i) {
        Background background;
        for (int k = 0; k < 4; ++k)
            background.start(k % 2 == 0 ? Lane::next_key : Lane::longer, [&](const TaskRun& run) -> Delivery {
                run.report(0, 1);
                ++worked;
                return [&background] { EXPECT_TRUE(background.thread() != nullptr); };
            });
        if (i % 3 == 0) QCoreApplication::processEvents();
    }
    let_events_through(20);
}

TEST(Background, ADeliveryMayDestroyItsOwner) {
    auto* background = new Background;
    bool gone = false;
    background->start(Lane::next_key, [&, background](const TaskRun&) -> Delivery {
        return [&, background] {
            delete background;
            gone = true;
        };
    });
    ASSERT_TRUE(wait_until([&] { return gone; }));
}

TEST(Background, StepsAndProgressComeInOrderBeforeTheAnswer) {
    Background background;
    std::vector<int> seen;
    QObject::connect(&background, &Background::progressed,
                     [&](int done, int of) { seen.push_back(100 * of + done); });
    background.start(Lane::longer, [&](const TaskRun& run) -> Delivery {
        run.report(1, 2);
        run.deliver([&] {
            EXPECT_TRUE(background.busy());
            seen.push_back(-1);
        });
        run.report(2, 2);
        return [&] { seen.push_back(-2); };
    });
    ASSERT_TRUE(wait_until([&] { return !background.busy(); }));
    EXPECT_EQ(seen, (std::vector<int>{201, -1, 202, -2}));
}

TEST(Background, WhatATaskThrowsBecomesAMessage) {
    Background background;
    std::vector<QString> said;
    QObject::connect(&background, &Background::failed,
                     [&](Background::Ticket, const QString& why) { said.push_back(why); });
    const std::vector<Background::Work> works = {
        [](const TaskRun&) -> Delivery { throw std::bad_alloc(); },
        [](const TaskRun&) -> Delivery { throw std::runtime_error("the harbour is closed"); },
        [](const TaskRun&) -> Delivery { throw 7; },
        [](const TaskRun&) -> Delivery { throw std::length_error("vector"); }};
    for (const auto& work : works) {
        background.start(Lane::longer, work);
        ASSERT_TRUE(wait_until([&] { return !background.busy(); }));
    }
    ASSERT_EQ(said.size(), 4U);
    EXPECT_EQ(said[3], said[0]);  // a length beyond what memory may hold
    EXPECT_TRUE(said[0].contains(QLatin1String("memory")));
    EXPECT_TRUE(said[1].contains(QLatin1String("the harbour is closed")));
    bool answered = false;
    background.start(Lane::longer, [&](const TaskRun&) -> Delivery { return [&] { answered = true; }; });
    EXPECT_TRUE(wait_until([&] { return answered; }));
}

}  // namespace
}  // namespace roundwright::render
