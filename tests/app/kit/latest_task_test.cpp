#include "app/kit/latest_task.h"

#include <atomic>
#include <gtest/gtest.h>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(LatestTask, DeliversTheNewestAnswerOnly) {
    LatestTask task;
    std::vector<int> answers;
    for (int i = 0; i < 50; ++i) {
        task.start([&answers, i](const std::stop_token&) -> LatestTask::Delivery {
            return [&answers, i] { answers.push_back(i); };
        });
    }
    EXPECT_TRUE(task.busy());
    ASSERT_TRUE(wait_until([&] { return !task.busy(); }));
    EXPECT_EQ(answers, std::vector<int>{49});
}

TEST(LatestTask, StopsWhatAnOlderWishWasDoing) {
    LatestTask task;
    std::atomic<bool> began = false;
    std::atomic<bool> stopped = false;
    task.start([&](const std::stop_token& stop) -> LatestTask::Delivery {
        began = true;
        while (!stop.stop_requested()) QThread::msleep(1);
        stopped = true;
        return [] { ADD_FAILURE() << "a stale answer"; };
    });
    ASSERT_TRUE(wait_until([&] { return began.load(); }));
    bool answered = false;
    task.start([&](const std::stop_token&) -> LatestTask::Delivery { return [&] { answered = true; }; });
    ASSERT_TRUE(wait_until([&] { return answered; }));
    EXPECT_TRUE(stopped);
}

TEST(LatestTask, CancelledGivesNoAnswer) {
    bool answered = false;
    LatestTask task;
    task.start([&](const std::stop_token&) -> LatestTask::Delivery { return [&] { answered = true; }; });
    task.cancel();
    EXPECT_FALSE(task.busy());
    QTest::qWait(50);
    EXPECT_FALSE(answered);
}

}  // namespace
}  // namespace roundwright::app
