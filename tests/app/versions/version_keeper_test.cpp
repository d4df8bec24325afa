#include "app/versions/version_keeper.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// What a version holds, as the counts of its first piece.
class VersionKeeperTest : public ::testing::Test {
  protected:
    [[nodiscard]] QString file(const QString& name = QStringLiteral("pup.roundwright")) const {
        return toys_.filePath(name);
    }
    [[nodiscard]] VersionStore store() const { return VersionStore(state_.path()); }
    [[nodiscard]] std::vector<std::vector<int>> versions(const QString& path) const {
        std::vector<std::vector<int>> all;
        for (const Version& version : store().versions_of(path)) {
            const auto bytes = store().read(version).bytes.toStdString();
            const ReadDocument read = read_document(bytes);
            all.push_back(counts_of(read.toy.pieces[0]));
        }
        return all;
    }
    void add_round(int stitches) {
        session.edit_piece(QStringLiteral("Add a round"), [&](Piece& piece) {
            piece.rounds.push_back({WorkedEvenly{stitches}, 0, false, ""});
        });
    }
    static void write(const QString& path, std::initializer_list<int> counts) {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        file.write(QByteArray::fromStdString(write_document(toy_of(counts))));
    }

    QTemporaryDir toys_;
    QTemporaryDir state_;
    DocumentSession session;
};

using Counts = std::vector<int>;

TEST_F(VersionKeeperTest, EachSaveStaysAndSoDoesWhatWasThereBefore) {
    write(file(), {6});
    VersionKeeper keeper(session, store());
    ASSERT_FALSE(session.open(file()));
    ASSERT_TRUE(wait_until([&] { return !keeper.busy(); }));
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6}));
    add_round(12);
    ASSERT_FALSE(session.save(file()));
    add_round(18);
    ASSERT_FALSE(session.save(file()));
    ASSERT_TRUE(wait_until([&] { return !keeper.busy(); }));
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6, 12, 18}, Counts{6, 12}, Counts{6}));
}

TEST_F(VersionKeeperTest, SavedRightAfterOpeningTheOriginalIsKeptFirst) {
    write(file(), {6});
    VersionKeeper keeper(session, store());
    ASSERT_FALSE(session.open(file()));
    add_round(12);
    ASSERT_FALSE(session.save(file()));
    EXPECT_THAT(versions(file()), testing::Contains(Counts{6})) << "before anything ran in the background";
}

TEST_F(VersionKeeperTest, WhatIsSavedLastIsKeptWhenTheWindowGoes) {
    {
        VersionKeeper keeper(session, store());
        session.start(toy_of({6}));
        ASSERT_FALSE(session.save(file()));
        add_round(12);
        ASSERT_FALSE(session.save(file()));
        session.edit_piece(QStringLiteral("Empty it"), [](Piece& piece) { piece.rounds.clear(); });
        keeper.keep_given_up();
    }
    EXPECT_THAT(versions(file()), ElementsAre(Counts{}, Counts{6, 12}, Counts{6}));
    EXPECT_EQ(store().versions_of(file()).front().kind, VersionKind::not_saved);
}

TEST_F(VersionKeeperTest, AToyWithoutAFileHasNoVersions) {
    VersionKeeper keeper(session, store());
    session.start(toy_of({6}), true);
    keeper.keep_given_up();
    keeper.settle();
    EXPECT_THAT(store().versions_of(QString()), IsEmpty());
}

TEST_F(VersionKeeperTest, SaveAsBeginsAnewAndKeepsWhatStoodThere) {
    VersionKeeper keeper(session, store());
    session.start(toy_of({6}));
    ASSERT_FALSE(session.save(file()));
    const QString other = file(QStringLiteral("walrus.roundwright"));
    write(other, {8, 16});
    ASSERT_FALSE(session.save(other));
    keeper.settle();
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6}));
    EXPECT_THAT(versions(other), ElementsAre(Counts{6}, Counts{8, 16})) << "the walrus is not lost";
}

TEST_F(VersionKeeperTest, WhatAnotherProgramWroteIsKeptBeforeItIsReplaced) {
    VersionKeeper keeper(session, store());
    session.start(toy_of({6}));
    ASSERT_FALSE(session.save(file()));
    keeper.settle();
    write(file(), {9, 9, 9});
    ASSERT_FALSE(session.save(file(), SaveOver::anything));
    keeper.settle();
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6}, Counts{9, 9, 9}, Counts{6}));
}

TEST_F(VersionKeeperTest, AFullDiskFailsNoSaveAndIsSaidOnce) {
    // A file where the folder should be: nothing can be kept.
    const QString blocked = state_.filePath(QStringLiteral("blocked"));
    write(blocked, {6});
    VersionKeeper keeper(session, VersionStore(blocked));
    QSignalSpy failures(&keeper, &VersionKeeper::keeping_failed);
    session.start(toy_of({6}));
    EXPECT_FALSE(session.save(file()));
    add_round(12);
    EXPECT_FALSE(session.save(file()));
    EXPECT_FALSE(session.modified());
    ASSERT_TRUE(wait_until([&] { return !keeper.busy(); }));
    ASSERT_EQ(failures.size(), 1);
    EXPECT_TRUE(
        failures.front().front().toString().startsWith(QStringLiteral("No earlier version of this toy")));
    ASSERT_TRUE(QFile::remove(blocked));
    add_round(18);
    EXPECT_FALSE(session.save(file()));
    ASSERT_TRUE(wait_until([&] { return !keeper.busy(); }));
    EXPECT_EQ(failures.size(), 1);
    EXPECT_EQ(VersionStore(blocked).versions_of(file()).size(), 2u) << "the file as it stood is made good";
}

TEST_F(VersionKeeperTest, ACrashBetweenSaveAndVersionIsMadeGoodOnOpening) {
    write(file(), {6});
    {
        VersionKeeper keeper(session, store());
        ASSERT_FALSE(session.open(file()));
    }
    write(file(), {6, 12});  // saved, and the program was gone before the version was there
    DocumentSession next;
    VersionKeeper keeper(next, store());
    ASSERT_FALSE(next.open(file()));
    keeper.settle();
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6, 12}, Counts{6}));
}

TEST_F(VersionKeeperTest, TakingTheirsKeepsTheirs) {
    write(file(), {6});
    VersionKeeper keeper(session, store());
    ASSERT_FALSE(session.open(file()));
    keeper.settle();
    write(file(), {7, 14});
    session.happened(FileEvent::changed_by_another);
    session.take_theirs(load_document_file(file()));
    keeper.settle();
    EXPECT_THAT(versions(file()), ElementsAre(Counts{7, 14}, Counts{6}));
}

TEST_F(VersionKeeperTest, ForgetLeavesNoneAndTheNextSaveBeginsAgain) {
    VersionKeeper keeper(session, store());
    session.start(toy_of({6}));
    ASSERT_FALSE(session.save(file()));
    EXPECT_FALSE(keeper.forget());
    EXPECT_THAT(versions(file()), IsEmpty());
    add_round(12);
    ASSERT_FALSE(session.save(file()));
    keeper.settle();
    EXPECT_THAT(versions(file()), ElementsAre(Counts{6, 12}));
}

}  // namespace
}  // namespace roundwright::app
