#include "app/on_disk/file_claim.h"

#include <csignal>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "tests/app/on_disk/changing_files.h"

namespace roundwright::app {
namespace {

class FileClaimTest : public ::testing::Test {
  protected:
    void SetUp() override { write_in_place(pup, toy_bytes({6, 12})); }
    [[nodiscard]] static FileStamp stamp_in(const QString& path) { return read_whole(path, 1 << 20).stamp; }

    QTemporaryDir folder;
    QString locks = folder.filePath(QStringLiteral("state/open"));
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    FileClaim one{locks};
    FileClaim other{locks};
};

TEST_F(FileClaimTest, TheFirstWindowHasTheFileUntilItGivesItBack) {
    EXPECT_FALSE(other.is_taken_elsewhere(pup));
    ASSERT_TRUE(one.take(pup));
    EXPECT_TRUE(one.is_mine(pup));
    EXPECT_FALSE(one.is_taken_elsewhere(pup));
    EXPECT_TRUE(other.is_taken_elsewhere(pup));
    EXPECT_FALSE(other.take(pup));
    EXPECT_FALSE(other.is_mine(pup));
    one.give_back();
    EXPECT_FALSE(other.is_taken_elsewhere(pup));
    EXPECT_TRUE(other.take(pup));
    EXPECT_FALSE(one.take(pup));
}

TEST_F(FileClaimTest, AnotherFileFreesTheOneBefore) {
    ASSERT_TRUE(one.take(pup));
    ASSERT_TRUE(one.take(folder.filePath(QStringLiteral("fin.roundwright"))));
    EXPECT_TRUE(other.take(pup));
    EXPECT_EQ(QDir(locks).entryList(QDir::Files).size(), 2);
    one.give_back();
    other.give_back();
    EXPECT_TRUE(QDir(locks).entryList(QDir::Files).isEmpty()) << "nothing is left behind";
}

TEST_F(FileClaimTest, TheSameFileByAnyNameIsTheSame) {
    const QString link = folder.filePath(QStringLiteral("link.roundwright"));
    const QString hard = folder.filePath(QStringLiteral("hard.roundwright"));
    ASSERT_TRUE(QFile::link(pup, link));
    ASSERT_EQ(::link(QFile::encodeName(pup).constData(), QFile::encodeName(hard).constData()), 0);
    ASSERT_TRUE(one.take(pup, stamp_in(pup)));
    for (const QString& name :
         {link, hard, folder.filePath(QStringLiteral("./pup.roundwright")),
          folder.filePath(QStringLiteral("nowhere/../pup.roundwright")), QDir().relativeFilePath(pup)}) {
        EXPECT_TRUE(other.is_taken_elsewhere(name, stamp_in(pup))) << name.toStdString();
        EXPECT_FALSE(other.take(name, stamp_in(pup))) << name.toStdString();
    }
    EXPECT_TRUE(other.take(folder.filePath(QStringLiteral("fin.roundwright"))));
}

TEST_F(FileClaimTest, AFileThatWasSavedIsKnownByItsNewPlace) {
    const QString hard = folder.filePath(QStringLiteral("hard.roundwright"));
    ASSERT_TRUE(one.take(pup, stamp_in(pup)));
    rename_over(pup, toy_bytes({8}));
    one.follow(stamp_in(pup));
    ASSERT_EQ(::link(QFile::encodeName(pup).constData(), QFile::encodeName(hard).constData()), 0);
    EXPECT_FALSE(other.take(hard, stamp_in(hard)));
}

TEST_F(FileClaimTest, ANameThatNoFileHasYetCanBeClaimed) {
    const QString fin = folder.filePath(QStringLiteral("fin.roundwright"));
    ASSERT_TRUE(one.take(fin));
    EXPECT_FALSE(other.take(fin));
}

TEST_F(FileClaimTest, AProgramThatIsKilledHoldsNothing) {
    int ready[2];
    ASSERT_EQ(::pipe(ready), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        FileClaim held(locks);
        const char answer = held.take(pup, stamp_in(pup)) ? 'y' : 'n';
        if (::write(ready[1], &answer, 1) != 1) ::_exit(1);
        for (;;) ::pause();
    }
    char answer = 0;
    ASSERT_EQ(::read(ready[0], &answer, 1), 1);
    EXPECT_EQ(answer, 'y');
    EXPECT_TRUE(other.is_taken_elsewhere(pup));
    EXPECT_FALSE(other.take(pup));
    ::kill(child, SIGKILL);
    ASSERT_EQ(::waitpid(child, nullptr, 0), child);
    EXPECT_FALSE(other.is_taken_elsewhere(pup, stamp_in(pup)));
    EXPECT_TRUE(other.take(pup, stamp_in(pup)));
    ::close(ready[0]);
    ::close(ready[1]);
}

TEST_F(FileClaimTest, WhereThereCanBeNoLockEveryWindowMayWrite) {
    write_in_place(folder.filePath(QStringLiteral("state")), "a file, no folder");
    EXPECT_TRUE(one.take(pup));
    EXPECT_TRUE(other.take(pup));
    EXPECT_FALSE(other.is_taken_elsewhere(pup));
}

TEST_F(FileClaimTest, APlantedLinkIsNotFollowed) {
    ASSERT_TRUE(one.take(pup));
    const QString lock = locks + u'/' + QDir(locks).entryList(QDir::Files).value(0);
    one.give_back();
    const QString foreign = folder.filePath(QStringLiteral("foreign"));
    write_in_place(foreign, "not ours");
    ASSERT_TRUE(QFile::link(foreign, lock));
    EXPECT_TRUE(one.take(pup, stamp_in(pup))) << "as where there can be no lock";
    EXPECT_EQ(bytes_in(foreign), "not ours");
}

TEST(LockFileTest, AskingDisturbsNobodyWhoTakesIt) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("a.lock"));
    const pid_t child = ::fork();
    if (child == 0) {
        for (;;) static_cast<void>(LockFile::is_held(path));
    }
    for (int round = 0; round < 300; ++round) {
        LockFile lock;
        EXPECT_EQ(lock.take(path), LockAnswer::taken) << round;
    }
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    EXPECT_FALSE(QFile::exists(path));
}

}  // namespace
}  // namespace roundwright::app
