#include "app/versions/version_store.h"

#include <cerrno>
#include <fcntl.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr int second = 1000;

class VersionStoreTest : public testing::Test {
  protected:
    [[nodiscard]] QString file(const QString& name) const { return toys_.filePath(name); }
    [[nodiscard]] VersionStore store() const { return VersionStore(state()); }
    [[nodiscard]] QString state() const { return state_.filePath(QStringLiteral("roundwright")); }

    static void write(const QString& path, const QByteArray& bytes) {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(bytes), bytes.size());
    }
    [[nodiscard]] std::vector<QByteArray> contents(const QString& path) const {
        std::vector<QByteArray> all;
        for (const Version& version : store().versions_of(path)) all.push_back(store().read(version).bytes);
        return all;
    }
    [[nodiscard]] QStringList all_files() const {
        QStringList found;
        QDir top(state() + QStringLiteral("/versions"));
        for (const QString& folder : top.entryList(QDir::Dirs | QDir::NoDotAndDotDot)) {
            const QDir inner(top.filePath(folder));
            for (const QString& name : inner.entryList(QDir::Files | QDir::Hidden | QDir::System))
                found << inner.filePath(name);
        }
        return found;
    }
    static mode_t mode_of(const QString& path) {
        struct ::stat found {};
        EXPECT_EQ(::lstat(QFile::encodeName(path).constData(), &found), 0);
        return found.st_mode & 07777;
    }

    QTemporaryDir toys_;
    QTemporaryDir state_;
};

TEST_F(VersionStoreTest, AVersionThatIsNotConfirmedThinsNoOlderOne) {
    const QString pup = file(QStringLiteral("pup"));
    const auto begin = QDateTime::currentDateTimeUtc().addSecs(-1000);
    for (int save = 0; save < 30; ++save)
        ASSERT_FALSE(
            store().keep(pup, QByteArray::number(save), VersionKind::saved, begin.addSecs(save)).fault);
    const auto before = contents(pup);
    FailingDisk disk;
    disk.sync_no_folders();
    EXPECT_FALSE(VersionStore(state(), disk).keep(pup, "new", VersionKind::saved).fault);
    const auto unconfirmed = contents(pup);
    EXPECT_EQ(unconfirmed.front(), "new");
    EXPECT_EQ(unconfirmed.size(), before.size() + 1);
    EXPECT_FALSE(store().keep(pup, "newer", VersionKind::saved).fault);
    EXPECT_EQ(contents(pup).size(), before.size());
}

TEST_F(VersionStoreTest, KeepsWhatIsSavedNewestFirst) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    EXPECT_THAT(contents(pup), IsEmpty());
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    EXPECT_THAT(contents(pup), ElementsAre("two", "one"));
    EXPECT_THAT(contents(file(QStringLiteral("other.roundwright"))), IsEmpty());
}

TEST_F(VersionStoreTest, TheSameIsNotKeptTwiceInARow) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    for (const char* bytes : {"one", "one", "two", "two", "one"})
        EXPECT_FALSE(store().keep(pup, bytes, VersionKind::saved).fault);
    EXPECT_THAT(contents(pup), ElementsAre("one", "two", "one"));
}

TEST_F(VersionStoreTest, WhatWasGivenUpStandsBesideWhatTheFileHeld) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    write(pup, "saved");
    EXPECT_FALSE(store().keep(pup, "saved", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "given up", VersionKind::not_saved).fault);
    EXPECT_FALSE(store().keep(pup, "given up", VersionKind::not_saved).fault);
    EXPECT_FALSE(store().keep_what_stands_in(pup).fault);
    EXPECT_THAT(contents(pup), ElementsAre("given up", "saved")) << "opening it again adds nothing";
    EXPECT_FALSE(store().keep(pup, "given up", VersionKind::saved).fault);
    EXPECT_THAT(contents(pup), ElementsAre("given up", "saved")) << "saved after all, it is kept once";
    EXPECT_EQ(store().versions_of(pup).front().kind, VersionKind::saved);
}

TEST_F(VersionStoreTest, WhatStandsInTheFileIsKeptOnceWithTheTimeItWasWritten) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    write(pup, "from another program");
    const auto written = QFileInfo(pup).lastModified();
    EXPECT_FALSE(store().keep_what_stands_in(pup).fault);
    EXPECT_FALSE(store().keep_what_stands_in(pup).fault);
    const auto all = store().versions_of(pup);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(all.front().kind, VersionKind::found);
    EXPECT_LE(std::abs(all.front().when.msecsTo(written)), second);
    EXPECT_EQ(all.front().bytes, 20);
}

TEST_F(VersionStoreTest, NoFileAFolderAndADeviceAreNothingToKeep) {
    EXPECT_FALSE(store().keep_what_stands_in(file(QStringLiteral("none.roundwright"))).fault);
    EXPECT_FALSE(store().keep_what_stands_in(toys_.path()).fault);
    EXPECT_FALSE(store().keep_what_stands_in(QStringLiteral("/dev/null")).fault);
    EXPECT_THAT(all_files(), IsEmpty());
}

TEST_F(VersionStoreTest, IsPrivate) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const mode_t before = ::umask(0);
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    ::umask(before);
    EXPECT_EQ(mode_of(state()), 0700u);
    EXPECT_EQ(mode_of(state() + QStringLiteral("/versions")), 0700u);
    ASSERT_EQ(all_files().size(), 2) << "the version and the note";
    for (const QString& path : all_files()) EXPECT_EQ(mode_of(path), 0600u) << path.toStdString();
    EXPECT_EQ(mode_of(QFileInfo(all_files().front()).path()), 0700u);
}

TEST_F(VersionStoreTest, FollowsNoLinkOfItsOwn) {
    QTemporaryDir elsewhere;
    const QString pup = file(QStringLiteral("pup.roundwright"));
    ASSERT_TRUE(QDir().mkpath(state()));
    ASSERT_TRUE(QFile::link(elsewhere.path(), state() + QStringLiteral("/versions")));
    EXPECT_TRUE(store().keep(pup, "one", VersionKind::saved).fault);
    EXPECT_TRUE(QDir(elsewhere.path()).isEmpty());
}

TEST_F(VersionStoreTest, ALinkAmongTheVersionsIsNone) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const QString secret = file(QStringLiteral("secret"));
    write(secret, "secret");
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    const Version one = store().versions_of(pup).front();
    Version planted = one;
    planted.number = 7;
    const QString link = QFileInfo(one.file).dir().filePath(version_file_name(planted));
    ASSERT_TRUE(QFile::link(secret, link));
    EXPECT_THAT(contents(pup), ElementsAre("one"));
    planted.file = link;
    EXPECT_TRUE(store().read(planted).fault);
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    QFile file(secret);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll(), "secret");
}

TEST_F(VersionStoreTest, AToyHasTheSameVersionsByEveryNameThatLeadsToIt) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const QString link = file(QStringLiteral("link.roundwright"));
    write(pup, "one");
    ASSERT_TRUE(QFile::link(QStringLiteral("pup.roundwright"), link));
    EXPECT_FALSE(store().keep(link, "one", VersionKind::saved).fault);
    EXPECT_THAT(contents(pup), ElementsAre("one"));
    EXPECT_EQ(canonical_toy_path(toys_.path() + QStringLiteral("/../") + QFileInfo(toys_.path()).fileName() +
                                 QStringLiteral("/pup.roundwright")),
              canonical_toy_path(pup));
    ASSERT_TRUE(QFile::remove(pup));
    EXPECT_THAT(contents(link), ElementsAre("one")) << "when the file is gone too";
}

TEST_F(VersionStoreTest, ARenamedToyFindsItsVersions) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const QString seal = file(QStringLiteral("seal.roundwright"));
    write(pup, "two");
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "given up", VersionKind::not_saved).fault);
    ASSERT_TRUE(QFile::rename(pup, seal));
    EXPECT_FALSE(store().keep_what_stands_in(seal).fault);
    EXPECT_THAT(contents(seal), ElementsAre("given up", "two", "one"));
    EXPECT_THAT(contents(pup), IsEmpty());
    // And again: the note follows.
    const QString pup_again = file(QStringLiteral("harbour pup.roundwright"));
    ASSERT_TRUE(QFile::rename(seal, pup_again));
    EXPECT_FALSE(store().keep_what_stands_in(pup_again).fault);
    EXPECT_THAT(contents(pup_again), ElementsAre("given up", "two", "one"));
}

TEST_F(VersionStoreTest, ACopyBeginsWithWhatItIs) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const QString copy = file(QStringLiteral("copy.roundwright"));
    write(pup, "two");
    write(copy, "two");
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep_what_stands_in(copy).fault);
    EXPECT_THAT(contents(copy), ElementsAre("two"));
    EXPECT_THAT(contents(pup), ElementsAre("two", "one"));
}

TEST_F(VersionStoreTest, AnotherToyInThePlaceOfOneThatIsGoneLeavesItsVersions) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    EXPECT_FALSE(store().keep(pup, "pup", VersionKind::saved).fault);
    write(pup, "quite another toy");
    EXPECT_FALSE(store().keep_what_stands_in(pup).fault);
    EXPECT_THAT(contents(pup), ElementsAre("quite another toy", "pup"));
}

TEST_F(VersionStoreTest, TenStay) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    for (int i = 0; i < 25; ++i) {
        EXPECT_FALSE(store()
                         .keep(pup, QByteArray::number(i), VersionKind::saved,
                               QDateTime::currentDateTimeUtc().addSecs(-1000 * (25 - i)))
                         .fault);
        EXPECT_LE(store().versions_of(pup).size(), 10u);
    }
    const auto all = contents(pup);
    EXPECT_EQ(all.front(), "24");
    EXPECT_EQ(all.back(), "0") << "the original";
    EXPECT_EQ(all.size(), 10u);
}

TEST_F(VersionStoreTest, OverTheLimitOfAllTheOldestGoAndNoToyThatIsGoneLosesItsLast) {
    VersionLimits limits;
    limits.bytes_in_all = 50;
    const VersionStore small(state(), Disk::real(), limits);
    const QString here = file(QStringLiteral("here.roundwright"));
    const QString gone = file(QStringLiteral("gone.roundwright"));
    const QString now = file(QStringLiteral("now.roundwright"));
    write(here, "x");
    write(now, "x");
    const auto ago = [](int days) { return QDateTime::currentDateTimeUtc().addDays(-days); };
    const auto keep = [&](const QString& path, const char* bytes, int days) {
        EXPECT_FALSE(small.keep(path, bytes, VersionKind::saved, ago(days)).fault);
    };
    keep(gone, "gone-old--", 90);
    keep(gone, "gone-new--", 80);
    keep(here, "here-old--", 70);
    keep(here, "here-new--", 60);
    keep(now, "now-------", 2);
    EXPECT_THAT(contents(gone), ElementsAre("gone-new--", "gone-old--"));
    keep(now, "now-2-----", 1);
    EXPECT_THAT(contents(gone), ElementsAre("gone-new--")) << "the oldest of all";
    keep(now, "now-3-----", 0);
    EXPECT_THAT(contents(here), ElementsAre("here-new--")) << "the next oldest, while each toy has one left";
    keep(now, "now-4-----now-4-----now-4-----now-4-----", 0);
    EXPECT_THAT(contents(gone), ElementsAre("gone-new--")) << "all there is of it";
    EXPECT_THAT(contents(here), IsEmpty()) << "it is in its file";
    EXPECT_EQ(contents(now).size(), 1u);
}

TEST_F(VersionStoreTest, ForgetLeavesNothing) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    EXPECT_FALSE(store().forget(pup));
    EXPECT_THAT(contents(pup), IsEmpty());
    EXPECT_TRUE(QDir(state() + QStringLiteral("/versions")).isEmpty());
    EXPECT_FALSE(store().forget(pup)) << "nothing is nothing to complain of";
}

TEST_F(VersionStoreTest, WhatAWriteThatWasCutOffLeftGoesInTime) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    const QDir folder = QFileInfo(store().versions_of(pup).front().file).dir();
    const QString old = folder.filePath(QStringLiteral(".00000002.k3.part"));
    const QString fresh = folder.filePath(QStringLiteral(".00000002.k4.part"));
    write(old, "tw");
    write(fresh, "tw");
    QFile file(old);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(
        file.setFileTime(QDateTime::currentDateTime().addDays(-1), QFileDevice::FileModificationTime));
    file.close();
    EXPECT_THAT(contents(pup), ElementsAre("one"));
    EXPECT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
    EXPECT_FALSE(QFile::exists(old));
    EXPECT_TRUE(QFile::exists(fresh)) << "another window may be writing it";
}

TEST_F(VersionStoreTest, WhereverTheDiskFailsWhatWasKeptIsThereWhole) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    for (int n = 1;; ++n) {
        ASSERT_LT(n, 200);
        ASSERT_FALSE(store().forget(pup));
        ASSERT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
        FailingDisk failing;
        failing.fail_at(n, ENOSPC);
        const auto fault = VersionStore(state(), failing).keep(pup, "two", VersionKind::saved).fault;
        const auto all = contents(pup);
        if (fault) {
            EXPECT_EQ(fault->error, ENOSPC);
        }
        if (!fault) {
            EXPECT_THAT(all, ElementsAre("two", "one"));
        }
        if (fault) {
            EXPECT_THAT(all, testing::AnyOf(ElementsAre("one"), ElementsAre("two", "one")));
        }
        ASSERT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
        EXPECT_THAT(contents(pup), ElementsAre("two", "one")) << "the next time makes it good";
        EXPECT_EQ(all_files().size(), 3) << "two versions and a note";
        if (failing.calls() < n) break;
    }
}

TEST_F(VersionStoreTest, WheneverThePowerGoesWhatIsListedIsWhole) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    for (const auto unsynced : {FailingDisk::Unsynced::kept, FailingDisk::Unsynced::lost}) {
        for (int n = 1;; ++n) {
            ASSERT_LT(n, 200);
            ASSERT_FALSE(store().forget(pup));
            ASSERT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
            FailingDisk failing;
            failing.lose_power_at(n, unsynced);
            (void)VersionStore(state(), failing).keep(pup, "two", VersionKind::saved);
            EXPECT_THAT(contents(pup), testing::AnyOf(ElementsAre("one"), ElementsAre("two", "one"))) << n;
            if (failing.calls() < n) break;
        }
    }
}

TEST_F(VersionStoreTest, WhereverTheDiskFailsARenamedToyLosesNothing) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    const QString seal = file(QStringLiteral("seal.roundwright"));
    for (int n = 1;; ++n) {
        ASSERT_LT(n, 200);
        ASSERT_FALSE(store().forget(pup));
        ASSERT_FALSE(store().forget(seal));
        write(pup, "two");
        ASSERT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
        ASSERT_FALSE(store().keep(pup, "two", VersionKind::saved).fault);
        QFile::remove(seal);
        ASSERT_TRUE(QFile::rename(pup, seal));
        FailingDisk failing;
        failing.fail_at(n, EIO);
        (void)VersionStore(state(), failing).keep_what_stands_in(seal);
        const std::vector<QByteArray> whole{"two", "one"};
        EXPECT_TRUE(contents(pup) == whole || contents(seal) == whole) << "failing at " << n;
        if (failing.calls() < n) break;
    }
}

TEST_F(VersionStoreTest, AFullFolderOfStrangersIsLeftAlone) {
    const QString pup = file(QStringLiteral("pup.roundwright"));
    EXPECT_FALSE(store().keep(pup, "one", VersionKind::saved).fault);
    const QDir folder = QFileInfo(store().versions_of(pup).front().file).dir();
    const QStringList strangers{
        QStringLiteral("notes.txt"), QStringLiteral("1-2-saved-x.roundwright"),
        QStringLiteral("99999999999999999999-20260304T140503250Z-saved-a.roundwright")};
    for (const QString& name : strangers) write(folder.filePath(name), "mine");
    EXPECT_THAT(contents(pup), ElementsAre("one"));
    EXPECT_FALSE(store().forget(pup));
    for (const QString& name : strangers) EXPECT_TRUE(folder.exists(name)) << name.toStdString();
}

TEST(VersionName, IsReadBack) {
    for (const VersionKind kind : {VersionKind::found, VersionKind::saved, VersionKind::not_saved}) {
        const Version version{12,   QDateTime::fromMSecsSinceEpoch(1'772'633'103'250, Qt::UTC),
                              kind, content_sha256("one"),
                              {},   0};
        EXPECT_EQ(version_named(version_file_name(version)), version);
    }
    EXPECT_FALSE(version_named(QStringLiteral("toy.json")));
    EXPECT_FALSE(version_named(QStringLiteral("00000012-20269999T140503250Z-saved-") +
                               QString(64, QLatin1Char('a')) + QStringLiteral(".roundwright")));
}

}  // namespace
}  // namespace roundwright::app
