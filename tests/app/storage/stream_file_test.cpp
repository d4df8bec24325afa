#include "app/storage/stream_file.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <thread>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "app/kit/save_bytes.h"
#include "app/storage/disk_words.h"
#include "tests/app/storage/failing_disk.h"
#include "tests/app/storage/small_disk.h"

namespace roundwright::app {
namespace {

TEST(StreamFile, FilesAndFoldersAreNoDevices) {
    const QTemporaryDir folder;
    EXPECT_FALSE(is_device(folder.path()));
    EXPECT_FALSE(is_device(folder.filePath(QStringLiteral("nothing"))));
    EXPECT_TRUE(is_device(QStringLiteral("/dev/null")));
}

TEST(StreamFile, AFullDeviceSaysSo) {
    if (!is_device(QStringLiteral("/dev/full"))) GTEST_SKIP();
    const auto written = write_stream(QStringLiteral("/dev/full"), "6 sc");
    EXPECT_EQ(written.fault, (DiskFault{DiskStep::write, ENOSPC, QStringLiteral("/dev/full")}));
    EXPECT_EQ(save_bytes(QStringLiteral("/dev/full"), "6 sc").problem, disk_fault_words(*written.fault));
    EXPECT_EQ(save_bytes(QStringLiteral("/dev/null"), "6 sc").problem, std::nullopt);
}

TEST(StreamFile, WhatGoesIntoAPipeComesOutWhole) {
    const QTemporaryDir folder;
    const QString pipe = folder.filePath(QStringLiteral("pipe"));
    ASSERT_EQ(::mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
    const QByteArray bytes(300'000, 'x');
    WrittenFile written;
    std::thread writer([&] { written = write_bytes(pipe, bytes); });
    FailingDisk disk;
    disk.pass_at_most(999);
    disk.interrupt_each_call();
    const ReadFile read = read_stream(pipe, 1 << 20, disk);
    writer.join();
    EXPECT_TRUE(written.ok());
    EXPECT_EQ(read.bytes, bytes);
    struct ::stat found {};
    ASSERT_EQ(::lstat(pipe.toLocal8Bit().constData(), &found), 0);
    EXPECT_TRUE(S_ISFIFO(found.st_mode));
}

TEST(SmallDiskTest, AFullDiskKeepsTheFileOfBeforeAndNothingBeside) {
    const SmallDisk disk;
    if (!disk.is_there()) GTEST_SKIP() << "no disk can be mounted here";
    const QString path = disk.path(QStringLiteral("pup"));
    ASSERT_FALSE(save_bytes(path, "6, 12, 18").problem);
    const auto saved = save_bytes(path, QByteArray(100'000, 'x'));
    ASSERT_TRUE(saved.problem);
    EXPECT_TRUE(saved.problem->startsWith(QStringLiteral("The disk is full.")))
        << saved.problem->toStdString();
    disk.fill();
    EXPECT_TRUE(save_bytes(path, QByteArray(9'000, 'x')).problem);
    EXPECT_EQ(read_whole(path, 1 << 20).bytes, "6, 12, 18");
    disk.make_room();
    EXPECT_EQ(QDir(QFileInfo(path).path()).entryList(QDir::Files | QDir::Hidden),
              QStringList(QStringLiteral("pup")));
    EXPECT_FALSE(save_bytes(path, QByteArray(9'000, 'x')).problem);
    ASSERT_TRUE(disk.become_read_only());
    EXPECT_EQ(save_bytes(path, "new").problem,
              QStringLiteral("This disk is read-only. Save to another one."));
    EXPECT_EQ(read_whole(path, 1 << 20).bytes.size(), 9'000);
}

}  // namespace
}  // namespace roundwright::app
