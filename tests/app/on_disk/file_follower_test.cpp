#include "app/on_disk/file_follower.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QDir>

#include "tests/app/on_disk/changing_files.h"

namespace roundwright::app {
namespace {

using Counts = std::vector<int>;

/// A toy that is open, without a window, while others do things to its file.
class FileFollowerTest : public ::testing::Test {
  protected:
    void SetUp() override {
        write_in_place(pup, toy_bytes({6, 12}));
        ASSERT_FALSE(session.open(pup));
        EXPECT_EQ(on_disk(), OnDisk::same);
    }
    [[nodiscard]] OnDisk on_disk() const { return session.standing().on_disk; }
    [[nodiscard]] bool becomes(OnDisk wanted) {
        return wait_until([&] { return on_disk() == wanted; });
    }
    /// For so long nothing is told.
    [[nodiscard]] bool stays(OnDisk wanted, int ms = 1200) {
        for (int waited = 0; waited < ms && on_disk() == wanted; waited += 20) QTest::qWait(20);
        return on_disk() == wanted;
    }
    [[nodiscard]] Counts counts() const { return counts_of(*session.piece()); }
    [[nodiscard]] QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }

    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state"));
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    DocumentSession session;
    FileFollower follower{session, state};
};

TEST_F(FileFollowerTest, EveryWayToWriteAFileIsNoticed) {
    write_in_place(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed));
    EXPECT_FALSE(session.modified()) << "nothing of the maker's is unsaved";
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(counts(), (Counts{8, 16}));
    rename_over(pup, toy_bytes({9, 18}));
    EXPECT_TRUE(becomes(OnDisk::changed));
    ASSERT_FALSE(follower.take_theirs());
    rename_over(pup, toy_bytes({10, 20}));
    EXPECT_TRUE(becomes(OnDisk::changed)) << "the one that took its place is watched too";
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(counts(), (Counts{10, 20}));
    EXPECT_FALSE(session.modified());
}

TEST_F(FileFollowerTest, TheirsIsOneStepAndMineComesBackByUndo) {
    set_first_count(session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed));
    EXPECT_EQ(counts(), (Counts{7, 12})) << "nothing is taken unasked";
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(counts(), (Counts{8, 16}));
    EXPECT_FALSE(session.modified());
    EXPECT_EQ(on_disk(), OnDisk::same);
    const VersionStore versions(state);
    const auto kept = versions.versions_of(pup);
    EXPECT_TRUE(std::ranges::any_of(kept, [&](const Version& version) {
        return version.kind == VersionKind::not_saved && versions.read(version).bytes == toy_bytes({7, 12});
    })) << "mine is a version too, should the program end now";
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (Counts{7, 12}));
    EXPECT_TRUE(session.modified());
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (Counts{6, 12}));
    EXPECT_TRUE(session.modified()) << "what was read at first stands in no file any more";
    ASSERT_FALSE(session.save(pup)) << "over theirs, which the maker has seen";
    EXPECT_EQ(counts_in(pup), (Counts{6, 12}));
}

TEST_F(FileFollowerTest, TheSameContentWithOtherTimesIsNoChange) {
    const std::vector<std::function<void()>> touches{
        [&] { EXPECT_EQ(::utimensat(AT_FDCWD, QFile::encodeName(pup).constData(), nullptr, 0), 0); },
        [&] {
            rename_over(pup, toy_bytes({6, 12}));
        },
        [&] {
            write_in_place(pup, toy_bytes({6, 12}));
        },
        [&] { EXPECT_EQ(::chmod(QFile::encodeName(pup).constData(), 0640), 0); },
        [&] {
            EXPECT_EQ(
                ::link(QFile::encodeName(pup).constData(), QFile::encodeName(path("other-name")).constData()),
                0);
        }};
    for (std::size_t touch = 0; touch < touches.size(); ++touch) {
        touches[touch]();
        EXPECT_TRUE(stays(OnDisk::same, 500)) << touch;
        set_first_count(session, 7 + static_cast<int>(touch));
        EXPECT_FALSE(session.save(pup)) << touch;
        write_in_place(pup, toy_bytes({6, 12}));
        follower.look_now();
        ASSERT_FALSE(follower.take_theirs());
    }
}

TEST_F(FileFollowerTest, ASaveFindsOutWhatNobodyHasNoticedYet) {
    set_first_count(session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    const auto problem = session.save(pup);
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->was_changed);
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
    EXPECT_TRUE(session.modified());
    rename_over(pup, toy_bytes({6, 12}));
    EXPECT_FALSE(session.save(pup)) << "what was read stands there again";
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
}

TEST_F(FileFollowerTest, MineGoesOverTheirsWhichStaysAsAVersion) {
    set_first_count(session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed));
    ASSERT_FALSE(follower.keep_mine());
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
    EXPECT_EQ(on_disk(), OnDisk::same);
    EXPECT_FALSE(session.modified());
    const VersionStore versions(state);
    const auto kept = versions.versions_of(pup);
    ASSERT_FALSE(kept.empty());
    EXPECT_TRUE(std::ranges::any_of(kept, [&](const Version& version) {
        return versions.read(version).bytes == toy_bytes({8, 16});
    }));
    EXPECT_TRUE(stays(OnDisk::same, 400)) << "one's own save is no news";
}

TEST_F(FileFollowerTest, BothAreKeptUnderANameThatIsFree) {
    write_in_place(path("pup (2).roundwright"), "somebody else's");
    set_first_count(session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed));
    ASSERT_FALSE(follower.keep_both());
    EXPECT_EQ(session.path(), path("pup (3).roundwright"));
    EXPECT_EQ(counts_in(session.path()), (Counts{7, 12}));
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
    EXPECT_EQ(bytes_in(path("pup (2).roundwright")), "somebody else's");
    EXPECT_FALSE(session.modified());
    FileClaim other(state + QStringLiteral("/open"));
    EXPECT_TRUE(other.take(pup)) << "the old name is free";
    EXPECT_FALSE(other.take(session.path()));
}

TEST_F(FileFollowerTest, AFileThatIsGoneLeavesTheToyUnsaved) {
    ASSERT_TRUE(QFile::remove(pup));
    EXPECT_TRUE(becomes(OnDisk::gone));
    EXPECT_TRUE(session.modified());
    EXPECT_EQ(counts(), (Counts{6, 12}));
    ASSERT_FALSE(session.save(pup));
    EXPECT_EQ(counts_in(pup), (Counts{6, 12}));
    EXPECT_FALSE(session.modified());
    ASSERT_TRUE(QFile::remove(pup));
    EXPECT_TRUE(becomes(OnDisk::gone)) << "the file that was saved again is watched";
}

TEST_F(FileFollowerTest, AFileThatIsMovedAndMovedBackIsThereAgain) {
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("elsewhere")));
    move_file(pup, path("elsewhere/pup.roundwright"));
    EXPECT_TRUE(becomes(OnDisk::gone));
    move_file(path("elsewhere/pup.roundwright"), pup);
    EXPECT_TRUE(becomes(OnDisk::same));
    EXPECT_FALSE(session.modified());
    move_file(pup, path("elsewhere/pup.roundwright"));
    EXPECT_TRUE(becomes(OnDisk::gone));
    write_in_place(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed)) << "another one came back";
}

TEST_F(FileFollowerTest, AFolderThatIsMovedAndMovedBackIsThereAgain) {
    const QString harbour = path("harbour/pup.roundwright");
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("harbour")));
    write_in_place(harbour, toy_bytes({6, 12}));
    ASSERT_FALSE(session.open(harbour));
    move_file(path("harbour"), path("away"));
    EXPECT_TRUE(becomes(OnDisk::gone));
    move_file(path("away"), path("harbour"));
    EXPECT_TRUE(becomes(OnDisk::same));
    rename_over(harbour, toy_bytes({8, 16}));
    EXPECT_TRUE(becomes(OnDisk::changed));
}

TEST_F(FileFollowerTest, ARenamedFileIsFollowed) {
    QString told;
    QObject::connect(&follower, &FileFollower::renamed, &follower,
                     [&](const QString&, const QString& now) { told = now; });
    set_first_count(session, 7);
    move_file(pup, path("seal.roundwright"));
    EXPECT_TRUE(wait_until([&] { return session.path() == path("seal.roundwright"); }));
    EXPECT_EQ(told, session.path());
    EXPECT_TRUE(becomes(OnDisk::same));
    EXPECT_TRUE(session.modified());
    ASSERT_FALSE(session.save(session.path()));
    EXPECT_EQ(counts_in(session.path()), (Counts{7, 12}));
    EXPECT_FALSE(QFile::exists(pup));
    move_file(session.path(), pup);
    EXPECT_TRUE(wait_until([&] { return session.path() == pup; }));
}

TEST_F(FileFollowerTest, AnotherProgramsDetourOverABackupIsNeitherARenameNorALoss) {
    bool was_gone = false;
    QObject::connect(&session, &DocumentSession::standing_changed, &session,
                     [&] { was_gone = was_gone || on_disk() == OnDisk::gone; });
    QElapsedTimer away;
    away.start();
    move_file(pup, path("pup.roundwright~"));
    QTest::qWait(180);  // so that the gap is looked at
    write_in_place(pup, toy_bytes({8, 16}));
    const bool was_short = away.elapsed() < 250;
    EXPECT_TRUE(becomes(OnDisk::changed));
    EXPECT_EQ(session.path(), pup);
    EXPECT_FALSE(was_short && was_gone) << "nobody need be alarmed";
}

TEST_F(FileFollowerTest, AHalfWrittenFileIsWaitedFor) {
    const QByteArray theirs = toy_bytes({8, 16, 24, 32});
    QFile file(pup);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
    QElapsedTimer since_last;
    since_last.start();
    bool was_left_alone =
        false;  // a busy machine may hold the writer up for longer than anybody waits for it
    for (qsizetype at = 0; at < theirs.size(); at += theirs.size() / 6) {
        was_left_alone = was_left_alone || since_last.restart() > 400;
        file.write(theirs.mid(at, theirs.size() / 6));
        file.flush();
        QTest::qWait(100);
        EXPECT_TRUE(was_left_alone || on_disk() != OnDisk::unreadable);
    }
    file.close();
    EXPECT_TRUE(becomes(OnDisk::changed));
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(counts(), (Counts{8, 16, 24, 32}));
}

TEST_F(FileFollowerTest, GarbageNeverTakesTheToysPlace) {
    for (const QByteArray& garbage : {QByteArray(), QByteArray("{"), toy_bytes({6, 12}).left(100),
                                      QByteArray("\x89PNG\r\n", 6), QByteArray(1 << 20, 'x')}) {
        write_in_place(pup, garbage);
        EXPECT_TRUE(becomes(OnDisk::unreadable)) << garbage.left(10).toStdString();
        EXPECT_FALSE(follower.why_unreadable().isEmpty());
        EXPECT_TRUE(session.modified());
        EXPECT_TRUE(follower.take_theirs().has_value());
        EXPECT_EQ(counts(), (Counts{6, 12}));
        EXPECT_TRUE(session.save(pup).has_value()) << "not without a word";
        EXPECT_EQ(bytes_in(pup), garbage);
        write_in_place(pup, toy_bytes({6, 12}));
        EXPECT_TRUE(becomes(OnDisk::same));
        EXPECT_FALSE(session.modified());
    }
}

TEST_F(FileFollowerTest, AFolderInItsPlaceIsSaid) {
    ASSERT_TRUE(QFile::remove(pup));
    ASSERT_TRUE(QDir().mkdir(pup));
    EXPECT_TRUE(becomes(OnDisk::unreadable));
    EXPECT_FALSE(follower.why_unreadable().isEmpty());
    EXPECT_TRUE(session.save(pup).has_value());
    EXPECT_TRUE(session.modified());
    ASSERT_FALSE(follower.keep_both());
    EXPECT_EQ(counts_in(session.path()), (Counts{6, 12}));
}

TEST_F(FileFollowerTest, ALinkThatLeadsElsewhereIsAChange) {
    const QString link = path("link.roundwright");
    write_in_place(path("other.roundwright"), toy_bytes({8, 16}));
    ASSERT_TRUE(QFile::link(pup, link));
    ASSERT_FALSE(session.open(link));
    set_first_count(session, 7);
    ASSERT_FALSE(session.save(link));
    EXPECT_TRUE(QFileInfo(link).isSymLink());
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
    ASSERT_TRUE(QFile::remove(link));
    ASSERT_TRUE(QFile::link(path("other.roundwright"), link));
    EXPECT_TRUE(becomes(OnDisk::changed));
    const auto problem = session.save(link);
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->was_changed);
    EXPECT_EQ(counts_in(path("other.roundwright")), (Counts{8, 16}));
}

TEST_F(FileFollowerTest, WhatIsBehindALinkIsWatchedInItsOwnFolder) {
    ASSERT_TRUE(QDir(folder.path()).mkdir(QStringLiteral("far")));
    const QString far = path("far/pup.roundwright");
    const QString link = path("near.roundwright");
    write_in_place(far, toy_bytes({6, 12}));
    ASSERT_TRUE(QFile::link(far, link));
    ASSERT_FALSE(session.open(link));
    for (const int stitches : {8, 9, 10}) {
        rename_over(far, toy_bytes({stitches, 16}));
        EXPECT_TRUE(becomes(OnDisk::changed)) << stitches;
        ASSERT_FALSE(follower.take_theirs());
        EXPECT_EQ(counts(), (Counts{stitches, 16}));
    }
}

TEST_F(FileFollowerTest, AWriteProtectedFileMayBeChangedHereAndSavedElsewhere) {
    ASSERT_EQ(::chmod(QFile::encodeName(pup).constData(), 0444), 0);
    EXPECT_TRUE(wait_until([&] { return read_only(session.standing()) == ReadOnly::no_right; }));
    set_first_count(session, 7);
    EXPECT_EQ(counts(), (Counts{7, 12}));
    ASSERT_EQ(::chmod(QFile::encodeName(pup).constData(), 0644), 0);
    EXPECT_TRUE(wait_until([&] { return may_be_saved(session.standing()); }));
    EXPECT_FALSE(session.save(pup));
}

TEST_F(FileFollowerTest, ASecondWindowLooksUntilTheFirstOneIsClosed) {
    auto first = std::make_unique<DocumentSession>();
    const QString fin = path("fin.roundwright");
    write_in_place(fin, toy_bytes({5}));
    auto keeper = std::make_unique<FileFollower>(*first, state);
    ASSERT_FALSE(first->open(fin));
    ASSERT_FALSE(session.open(fin));
    EXPECT_EQ(read_only(session.standing()), ReadOnly::open_elsewhere);
    EXPECT_EQ(read_only(first->standing()), ReadOnly::no);
    EXPECT_FALSE(session.edit_piece(QStringLiteral("Set"), [](Piece& piece) { piece.rounds.clear(); }));
    EXPECT_FALSE(follower.change_here());
    set_first_count(*first, 8);
    ASSERT_FALSE(first->save(fin));
    EXPECT_TRUE(becomes(OnDisk::changed)) << "and it is told what the first one saves";
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(counts(), (Counts{8}));
    set_first_count(*first, 9);
    ASSERT_FALSE(first->save(fin));
    keeper.reset();
    first.reset();
    EXPECT_TRUE(wait_until([&] { return follower.is_free_again(); }));
    EXPECT_TRUE(session.read_only()) << "until the maker says so";
    ASSERT_TRUE(follower.change_here());
    EXPECT_EQ(counts(), (Counts{9})) << "with what was saved last";
    EXPECT_FALSE(session.read_only());
    set_first_count(session, 10);
    ASSERT_FALSE(session.save(fin));
    EXPECT_EQ(counts_in(fin), (Counts{10}));
}

TEST_F(FileFollowerTest, WhatWasBroughtBackIsHeldAgainstTheFileThatIsThereNow) {
    const FileStamp based_on = session.stamp();
    rename_over(pup, toy_bytes({8, 16}));
    session.recover(toy_of({7, 12}), pup, based_on);
    EXPECT_TRUE(session.modified());
    EXPECT_TRUE(becomes(OnDisk::changed));
    const auto problem = session.save(pup);
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->was_changed);
    rename_over(pup, toy_bytes({6, 12}));
    EXPECT_TRUE(becomes(OnDisk::same)) << "what the changes start from";
    EXPECT_TRUE(session.modified());
    EXPECT_FALSE(session.save(pup));
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
}

TEST_F(FileFollowerTest, TheirFileOfANewerProgramIsReadOnlyAndMineComesBack) {
    QByteArray newer = toy_bytes({8, 16});
    newer.replace("\"version\": 2", "\"version\": 99");
    ASSERT_TRUE(load_document_file(pup).document.version == 2);
    set_first_count(session, 7);
    rename_over(pup, newer);
    EXPECT_TRUE(becomes(OnDisk::changed));
    ASSERT_FALSE(follower.take_theirs());
    EXPECT_EQ(read_only(session.standing()), ReadOnly::newer_format);
    session.undo_stack().undo();
    EXPECT_EQ(counts(), (Counts{7, 12}));
    EXPECT_TRUE(session.modified());
    EXPECT_FALSE(session.save(path("mine.roundwright")));
    EXPECT_FALSE(session.read_only());
}

TEST(NextFreeName, CountsOn) {
    const std::pair<const char*, const char*> cases[] = {
        {"/a/pup.roundwright", "/a/pup (2).roundwright"},
        {"/a/pup (2).roundwright", "/a/pup (3).roundwright"},
        {"/a/pup (9).roundwright", "/a/pup (10).roundwright"},
        {"/a/pup (1).roundwright", "/a/pup (1) (2).roundwright"},
        {"/a/pup (grey).roundwright", "/a/pup (grey) (2).roundwright"},
        {"/a/pup.of.june.roundwright", "/a/pup.of.june (2).roundwright"},
        {"/a/pup", "/a/pup (2)"},
        {"/a/.roundwright", "/a/.roundwright (2)"},
        {"/a/(2).roundwright", "/a/(2) (2).roundwright"}};
    for (const auto& [name, next] : cases)
        EXPECT_EQ(next_free_name(QLatin1String(name)).toStdString(), next) << name;
    const QString longest = QString(240, u'ö') + QStringLiteral(".roundwright");
    const QString next = next_free_name(u'/' + longest);
    EXPECT_LE(QFile::encodeName(next).size(), 256);
    EXPECT_TRUE(next.endsWith(QStringLiteral("ö (2).roundwright")));
}

}  // namespace
}  // namespace roundwright::app
