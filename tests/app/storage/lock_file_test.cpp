#include "app/storage/lock_file.h"

#include <cerrno>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

namespace roundwright::app {
namespace {

class LockPlaceTest : public ::testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(QDir().mkdir(theirs));
        ASSERT_TRUE(QFile::link(theirs, link));
    }
    /// When anything was made in a stranger's folder, or removed from it.
    [[nodiscard]] std::int64_t touched_ns() const {
        struct ::stat found {};
        EXPECT_EQ(::stat(QFile::encodeName(theirs).constData(), &found), 0);
        return std::int64_t{found.st_mtim.tv_sec} * 1'000'000'000 + found.st_mtim.tv_nsec;
    }

    QTemporaryDir folder;
    QString theirs = folder.filePath(QStringLiteral("theirs"));
    QString link = folder.filePath(QStringLiteral("link"));
};

TEST_F(LockPlaceTest, IsMadeTakenOnceAndGoes) {
    const QString path = folder.filePath(QStringLiteral("one.lock"));
    LockFile one;
    LockFile other;
    EXPECT_EQ(one.take(path), LockAnswer::taken);
    EXPECT_TRUE(one.is_in_place());
    EXPECT_TRUE(LockFile::is_held(path));
    EXPECT_EQ(other.take(path), LockAnswer::held_elsewhere);
    one.release();
    EXPECT_FALSE(QFile::exists(path));
    EXPECT_FALSE(LockFile::is_held(path));
    EXPECT_EQ(other.take(path), LockAnswer::taken);
}

TEST_F(LockPlaceTest, IsNotMadeBehindALink) {
    const auto before = touched_ns();
    LockFile lock;
    EXPECT_EQ(lock.take(link + QStringLiteral("/one.lock")), LockAnswer::impossible);
    EXPECT_EQ(lock.error(), ENOTDIR);
    lock.release();
    EXPECT_EQ(touched_ns(), before);
}

TEST_F(LockPlaceTest, OfAFolderThatBecameALinkNothingIsTouchedBehindIt) {
    const QString ours = folder.filePath(QStringLiteral("ours"));
    ASSERT_TRUE(QDir().mkdir(ours));
    LockFile lock;
    ASSERT_EQ(lock.take(ours + QStringLiteral("/one.lock")), LockAnswer::taken);
    ASSERT_TRUE(QDir().rename(ours, ours + QStringLiteral("-aside")));
    ASSERT_TRUE(QFile::link(theirs, ours));
    const auto before = touched_ns();
    EXPECT_FALSE(lock.is_in_place());
    EXPECT_FALSE(LockFile::is_held(ours + QStringLiteral("/one.lock")));
    lock.release();
    EXPECT_EQ(touched_ns(), before);
}

}  // namespace
}  // namespace roundwright::app
