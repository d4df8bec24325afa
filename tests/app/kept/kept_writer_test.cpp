#include "app/kept/kept_writer.h"

#include <condition_variable>
#include <gtest/gtest.h>
#include <thread>

#include <QDir>
#include <QTemporaryDir>

#include "tests/app/app_testing.h"
#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

/// A disk whose syncs come to no end until they are let.
class WaitingDisk : public FailingDisk {
  public:
    int sync(int file) override {
        std::unique_lock lock(mutex_);
        ++waiting_;
        stirred_.notify_all();
        stirred_.wait(lock, [this] { return lets_; });
        return FailingDisk::sync(file);
    }
    void let() {
        const std::scoped_lock lock(mutex_);
        lets_ = true;
        stirred_.notify_all();
    }
    void wait_for_sync() {
        std::unique_lock lock(mutex_);
        stirred_.wait(lock, [this] { return waiting_ > 0; });
    }

  private:
    std::mutex mutex_;
    std::condition_variable stirred_;
    int waiting_ = 0;
    bool lets_ = false;
};

UnsavedWork work_called(const std::string& name) {
    UnsavedWork work{toy_of({6, 12}), {}};
    work.toy.pieces[0].name = name;
    return work;
}

std::string name_in(const std::optional<KeptCopy>& copy) {
    if (!copy) return {};
    return read_document({copy->toy.constData(), static_cast<std::size_t>(copy->toy.size())})
        .toy.pieces[0]
        .name;
}

class KeptWriterTest : public ::testing::Test {
  protected:
    QTemporaryDir folder;
    const QString name = KeptFolder::new_name();
    const KeptFolder sound{folder.path()};
};

TEST_F(KeptWriterTest, WhatIsWrittenIsThereBeforeItIsSynced) {
    WaitingDisk disk;
    KeptWriter writer(KeptFolder(folder.path(), disk), name);
    ASSERT_FALSE(writer.keep(1, work_called("One")));
    EXPECT_EQ(name_in(sound.newest_of(name)), "One");
    std::jthread syncs([&] { EXPECT_FALSE(writer.make_safe().fault); });
    disk.wait_for_sync();
    for (KeptWriter::Turn turn = 2; turn < 20; ++turn) {
        ASSERT_FALSE(writer.keep(turn, work_called(std::to_string(turn)))) << "waits for no sync";
        EXPECT_EQ(name_in(sound.newest_of(name)), std::to_string(turn));
        EXPECT_LE(sound.files_of(name).size(), 3u);
    }
    disk.let();
    syncs.join();
    EXPECT_EQ(sound.files_of(name).size(), 2u) << "the one that is safe, and the newest";
    EXPECT_EQ(writer.make_safe().turn, 19u);
    EXPECT_EQ(sound.files_of(name).size(), 1u);
}

TEST_F(KeptWriterTest, WhatIsRemovedWhileItIsSyncedStaysRemoved) {
    WaitingDisk disk;
    KeptWriter writer(KeptFolder(folder.path(), disk), name);
    ASSERT_FALSE(writer.keep(1, work_called("One")));
    std::jthread syncs([&] { EXPECT_FALSE(writer.make_safe().fault) << "it is of no account any more"; });
    disk.wait_for_sync();
    std::jthread removes([&] { EXPECT_FALSE(writer.remove(2)); });
    while (!sound.files_of(name).empty()) std::this_thread::yield();
    disk.let();
    syncs.join();
    removes.join();
    EXPECT_TRUE(sound.files_of(name).empty());
    EXPECT_FALSE(writer.keep(3, work_called("Three")));
    EXPECT_EQ(name_in(sound.newest_of(name)), "Three");
}

TEST_F(KeptWriterTest, ACopyThatCannotBeSyncedLeavesTheOneBefore) {
    FailingDisk disk;
    KeptWriter writer(KeptFolder(folder.path(), disk), name);
    ASSERT_FALSE(writer.keep(1, work_called("One")));
    ASSERT_FALSE(writer.make_safe().fault);
    ASSERT_FALSE(writer.keep(2, work_called("Two")));
    disk.fail_each({DiskCall::sync}, EIO);
    ASSERT_TRUE(writer.make_safe().fault);
    EXPECT_EQ(name_in(sound.newest_of(name)), "Two") << "for a kill";
    EXPECT_EQ(name_in(sound.read(sound.files_of(name).front().path)), "One") << "for a loss of power";
    disk.be_sound();
    ASSERT_FALSE(writer.keep(3, work_called("Three")));
    ASSERT_FALSE(writer.make_safe().fault);
    EXPECT_EQ(sound.files_of(name).size(), 1u);
}

TEST_F(KeptWriterTest, ACopyThatWasTornIsNotTakenForTheNewest) {
    KeptWriter writer(sound, name);
    ASSERT_FALSE(writer.keep(1, work_called("One")));
    ASSERT_FALSE(writer.make_safe().fault);
    ASSERT_FALSE(writer.keep(2, work_called("Two")));
    QFile newest(sound.files_of(name).back().path);
    ASSERT_TRUE(newest.resize(newest.size() / 2));
    EXPECT_EQ(name_in(sound.newest_of(name)), "One");
}

TEST_F(KeptWriterTest, WhatWasSafeIsThereWhereverThePowerIsLost) {
    for (const auto unsynced : {FailingDisk::Unsynced::kept, FailingDisk::Unsynced::lost}) {
        for (int call = 1;; ++call) {
            ASSERT_LT(call, 1000);
            const QTemporaryDir own;
            const KeptFolder after(own.path());
            FailingDisk disk;
            disk.lose_power_at(call, unsynced);
            int safe = 0;
            int written = 0;
            {
                KeptWriter writer(KeptFolder(own.path(), disk), name);
                for (int turn = 1; turn <= 4; ++turn) {
                    if (writer.keep(static_cast<KeptWriter::Turn>(turn), work_called(std::to_string(turn))))
                        break;
                    written = turn;
                    // Two of them are written for each that is synced.
                    if (turn % 2 == 0 && !writer.make_safe().fault && !disk.has_failed()) safe = turn;
                }
            }
            const std::string found = name_in(after.newest_of(name));
            const int number = found.empty() ? 0 : std::stoi(found);
            EXPECT_GE(number, safe) << "call " << call;
            EXPECT_LE(number, written + 1) << "call " << call;
            if (disk.calls() < call) break;
        }
    }
}

TEST_F(KeptWriterTest, WhileCopiesAreRemovedNoOlderOneComesToLight) {
    for (int call = 1;; ++call) {
        ASSERT_LT(call, 1000);
        const QTemporaryDir own;
        const KeptFolder after(own.path());
        FailingDisk disk;
        KeptWriter writer(KeptFolder(own.path(), disk), name);
        ASSERT_FALSE(writer.keep(1, work_called("1")));
        ASSERT_FALSE(writer.make_safe().fault);
        ASSERT_FALSE(writer.keep(2, work_called("2")));
        const int before = disk.calls();
        disk.lose_power_at(call, FailingDisk::Unsynced::kept);
        (void)writer.remove(3);
        const std::string found = name_in(after.newest_of(name));
        EXPECT_TRUE(found.empty() || found == "2") << found << ", call " << call;
        if (disk.calls() - before < call) break;
    }
}

TEST_F(KeptWriterTest, ACopyOfAProgramBeforeThisOneIsFoundAndGoes) {
    KeptWriter writer(sound, name);
    ASSERT_FALSE(writer.keep(1, work_called("One")));
    const QString old_name = KeptFolder::new_name();
    ASSERT_TRUE(QFile::rename(sound.files_of(name).front().path,
                              sound.path() + u'/' + old_name + QStringLiteral(".kept")));
    const auto left = sound.left_behind();
    ASSERT_EQ(left.size(), 1u);
    EXPECT_EQ(left.front().window, old_name);
    EXPECT_EQ(name_in(sound.read(left.front().file)), "One");
    EXPECT_FALSE(sound.remove_all(old_name));
    EXPECT_TRUE(sound.files_of(old_name).empty());
}

}  // namespace
}  // namespace roundwright::app
