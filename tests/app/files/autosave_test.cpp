#include "app/files/autosave.h"

#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "app/files/document_files.h"
#include "app/session/live_preview.h"
#include "tests/app/files/kept_testing.h"
#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

class AutosaveTest : public ::testing::Test {
  protected:
    [[nodiscard]] int copies() const { return copies_with(state, {}); }
    [[nodiscard]] std::string name_in_copy() const {
        std::optional<KeptCopy> newest;
        for (const QString& path : files_below(state)) {
            auto copy = KeptFolder(state).read(path);
            if (copy && (!newest || copy->head.number > newest->head.number)) newest = std::move(copy);
        }
        if (!newest) return {};
        return read_document({newest->toy.constData(), static_cast<std::size_t>(newest->toy.size())})
            .toy.pieces[0]
            .name;
    }

    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state"));
    QString document = folder.filePath(QStringLiteral("pup.roundwright"));
};

TEST_F(AutosaveTest, KeepsNothingWhileNothingChanged) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    autosave.keep_now();
    EXPECT_EQ(copies(), 0);
}

TEST_F(AutosaveTest, KeepsByItselfAndForgetsOnSave) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    EXPECT_TRUE(wait_until([&] { return copies() == 1; }));
    EXPECT_TRUE(wait_until([&] { return session.standing().kept; }));
    ASSERT_FALSE(session.save(document));
    EXPECT_EQ(copies(), 0) << "whatever ends the program now, nothing older is offered";
    rename_piece(session, "Nose");
    EXPECT_TRUE(wait_until([&] { return copies() == 1; }));
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files | QDir::Hidden),
              QStringList{QStringLiteral("pup.roundwright")})
        << "nothing lies beside the toy's file";
    session.undo_stack().undo();
    EXPECT_TRUE(wait_until([&] { return copies() == 0; })) << "undone to what was saved";
}

TEST_F(AutosaveTest, TheCopyIsNoOlderThanTheFileWhileItIsSaved) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    autosave.keep_now();
    rename_piece(session, "Nose");
    std::string in_copy;
    QObject::connect(&session, &DocumentSession::about_to_save, &session, [&] { in_copy = name_in_copy(); });
    ASSERT_FALSE(session.save(document));
    EXPECT_EQ(in_copy, "Nose");
}

TEST_F(AutosaveTest, WhatIsSavedAtOnceIsInACopyWhileTheDiskTakesItsTime) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    std::string in_copy;
    QObject::connect(&session, &DocumentSession::about_to_save, &session, [&] { in_copy = name_in_copy(); });
    ASSERT_FALSE(session.save(document));
    EXPECT_EQ(in_copy, "Snout");
    EXPECT_EQ(copies(), 0);
}

TEST_F(AutosaveTest, WhatCouldNotBeSavedStaysInACopyThatIsMadeSafe) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    autosave.set_interval_ms(60'000);
    rename_piece(session, "Snout");
    ASSERT_TRUE(session.save(folder.filePath(QStringLiteral("no/such/folder/pup.roundwright"))));
    EXPECT_EQ(copies(), 1);
    EXPECT_TRUE(wait_until([&] { return autosave.all_kept(); }));
}

TEST_F(AutosaveTest, WhatIsTypedGoesAlongWithSaveAs) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    autosave.set_pending({QStringLiteral("24, 30"), 0, {}});
    ASSERT_FALSE(session.save(document));
    QString kept_for;
    for (const QString& path : files_below(state)) {
        if (const auto copy = KeptFolder(state).read(path)) kept_for = copy->head.document;
    }
    EXPECT_EQ(kept_for, document);
}

TEST_F(AutosaveTest, SteadyTypingDoesNotPutKeepingOff) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    QString typed;
    QElapsedTimer since;
    since.start();
    // A key every 20 ms, for ever: a timer that began anew with each would never come to its end.
    while (copies() == 0 && since.elapsed() < 10'000) {
        autosave.set_pending({typed += u'6', 0});
        QTest::qWait(20);
    }
    EXPECT_EQ(copies(), 1);
}

TEST_F(AutosaveTest, WritesOnlyWhatChanged) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    FailingDisk disk;
    Autosave autosave(session, state, nullptr, disk);
    rename_piece(session, "Snout");
    autosave.keep_now();
    const int writes = disk.calls(DiskCall::write);
    EXPECT_GT(writes, 0);
    autosave.keep_now();
    autosave.keep_soon();
    session.set_current_piece(0);
    LivePreview preview(session, QStringLiteral("Drag"));
    Toy shown = session.said_toy();
    shown.pieces[0].name = "Half dragged";
    preview.show(shown);
    QTest::qWait(700);
    EXPECT_EQ(disk.calls(DiskCall::write), writes);
}

TEST_F(AutosaveTest, AToyThatIsGoneIsFoundAndBroughtBack) {
    leave_behind(state, {}, "Snout");
    DocumentSession session;
    session.start(toy_of({6}));
    Autosave autosave(session, state);
    auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    EXPECT_TRUE(left.front().head.document.isEmpty());
    const QString file = left.front().file;
    ASSERT_FALSE(autosave.recover(std::move(left.front()), {}));
    EXPECT_EQ(session.piece()->name, "Snout");
    EXPECT_TRUE(session.modified());
    EXPECT_TRUE(autosave.left_behind().empty());
    EXPECT_FALSE(QFile::exists(file));
    EXPECT_EQ(copies(), 1) << "kept on by this window";
}

TEST_F(AutosaveTest, ChangesOfAFileComeBackUnderItsName) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    leave_behind(state, document, "Snout");
    DocumentSession session;
    Autosave autosave(session, state);
    auto left = autosave.left_of(document);
    ASSERT_EQ(left.size(), 1u);
    ASSERT_FALSE(autosave.recover(std::move(left.front()), document));
    EXPECT_EQ(session.piece()->name, "Snout");
    EXPECT_EQ(session.path(), document);
    EXPECT_TRUE(session.modified());
    EXPECT_EQ(load_document_file(document).document.toy.pieces.front().name, "Head")
        << "the file itself is untouched";
    EXPECT_EQ(copies_with(state, "Snout"), 1) << "kept on, until it is saved";
    ASSERT_FALSE(session.save(document)) << "what the changes start from is known";
}

TEST_F(AutosaveTest, AFileChangedMeanwhileIsNotOverwrittenByWhatCameBack) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    leave_behind(state, document, "Snout");
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12, 18, 24})));
    DocumentSession session;
    Autosave autosave(session, state);
    auto left = autosave.left_of(document);
    ASSERT_EQ(left.size(), 1u);
    ASSERT_FALSE(autosave.recover(std::move(left.front()), document));
    const auto problem = session.save(document);
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->was_changed);
    EXPECT_EQ(load_document_file(document).document.toy.pieces[0].rounds.size(), 4u);
}

TEST_F(AutosaveTest, ARunningWindowsCopyIsNotOffered) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    DocumentSession one;
    ASSERT_FALSE(one.open(document));
    Autosave keeps(one, state);
    rename_piece(one, "Snout");
    keeps.keep_now();
    DocumentSession other;
    const Autosave looks(other, state);
    EXPECT_TRUE(looks.left_behind().empty());
    EXPECT_TRUE(looks.left_of(document).empty());
    EXPECT_TRUE(looks.another_is_running());
}

TEST_F(AutosaveTest, AProgramThatIsStoppedStillHoldsItsCopyAndAKilledOneDoesNot) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    KilledProgram killed(state, document, QStringLiteral("Snout"));
    ::kill(static_cast<pid_t>(killed.program.processId()), SIGSTOP);
    DocumentSession session;
    const Autosave autosave(session, state);
    EXPECT_TRUE(autosave.left_behind().empty());
    killed.end();
    EXPECT_EQ(autosave.left_behind().size(), 1u);
    EXPECT_EQ(autosave.left_of(document).size(), 1u);
}

TEST_F(AutosaveTest, OnlyOneWindowIsOfferedACopyAtATime) {
    leave_behind(state, {}, "Snout");
    DocumentSession one;
    DocumentSession two;
    const Autosave first(one, state);
    const Autosave second(two, state);
    auto left = first.left_behind();
    ASSERT_EQ(left.size(), 1u);
    EXPECT_TRUE(second.left_behind().empty());
    left.clear();
    EXPECT_EQ(second.left_behind().size(), 1u);
}

TEST_F(AutosaveTest, ADiscardedCopyIsGone) {
    leave_behind(state, {}, "Snout");
    DocumentSession session;
    const Autosave autosave(session, state);
    auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    EXPECT_FALSE(autosave.discard(left.front()));
    left.clear();
    EXPECT_TRUE(autosave.left_behind().empty());
    EXPECT_EQ(copies(), 0);
}

TEST_F(AutosaveTest, KeepsNoPreviewButWhatIsSaid) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Beak");
    LivePreview preview(session, QStringLiteral("Drag"));
    Toy shown = session.said_toy();
    shown.pieces[0].name = "Half dragged";
    preview.show(shown);
    autosave.keep_now();
    EXPECT_EQ(name_in_copy(), "Beak");
    preview.commit();
    autosave.keep_now();
    EXPECT_EQ(name_in_copy(), "Half dragged");
}

TEST_F(AutosaveTest, WhatIsGivenUpGoesAndWhatIsChangedAfterwardsIsKeptAgain) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    autosave.keep_now();
    autosave.give_up();
    EXPECT_EQ(copies(), 0);
    rename_piece(session, "Nose");
    autosave.keep_now();
    EXPECT_EQ(copies(), 1);
}

TEST_F(AutosaveTest, TheLatestComesFirstWhateverTheClockSays) {
    for (const char* name : {"First", "Second", "Third"}) leave_behind(state, {}, name);
    for (const QString& path : files_below(state)) {
        const bool third = copies_with(state, "Third") == 1 && [&] {
            QFile file(path);
            return file.open(QIODevice::ReadOnly) && file.readAll().contains("\"Third\"");
        }();
        const timespec times[2] = {{third ? 1'000 : 4'000'000'000, 0}, {third ? 1'000 : 4'000'000'000, 0}};
        ASSERT_EQ(::utimensat(AT_FDCWD, QFile::encodeName(path).constData(), times, 0), 0);
    }
    DocumentSession session;
    const Autosave autosave(session, state);
    const auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 3u);
    EXPECT_EQ(autosave.look_into(left[0]).document.toy.pieces[0].name, "Third");
    EXPECT_EQ(autosave.look_into(left[2]).document.toy.pieces[0].name, "First");
}

// --- a disk that fails

TEST_F(AutosaveTest, AFullDiskIsSaidTriedAgainAndOver) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    FailingDisk disk;
    Autosave autosave(session, state, nullptr, disk);
    int failures = 0;
    int works = 0;
    QObject::connect(&autosave, &Autosave::keeping_failed, [&](const DiskFault& fault) {
        ++failures;
        EXPECT_EQ(fault.error, ENOSPC);
    });
    QObject::connect(&autosave, &Autosave::keeping_works, [&] { ++works; });
    disk.have_room_for(20);
    rename_piece(session, "Snout");
    EXPECT_TRUE(wait_until([&] { return failures == 1; }));
    EXPECT_FALSE(session.standing().kept);
    EXPECT_FALSE(autosave.all_kept());
    disk.be_sound();
    EXPECT_TRUE(wait_until([&] { return works == 1; })) << "tried again by itself";
    EXPECT_TRUE(autosave.all_kept());
    EXPECT_EQ(name_in_copy(), "Snout");
}

TEST_F(AutosaveTest, ALaterFailureLeavesTheCopyBefore) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    FailingDisk disk;
    Autosave autosave(session, state, nullptr, disk);
    rename_piece(session, "Snout");
    autosave.keep_now();
    disk.have_room_for(20);
    rename_piece(session, "Nose");
    autosave.keep_now();
    EXPECT_TRUE(autosave.fault());
    EXPECT_EQ(name_in_copy(), "Snout");
}

TEST_F(AutosaveTest, OldCopyOrNewOneWhicheverCallFails) {
    for (int n = 1; n < 200; ++n) {
        QTemporaryDir own;
        DocumentSession session;
        session.start(toy_of({6, 12}));
        FailingDisk disk;
        state = own.filePath(QStringLiteral("state"));
        auto autosave = std::make_unique<Autosave>(session, state, nullptr, disk);
        rename_piece(session, "Old");
        autosave->keep_now();
        disk.fail_at(n, EIO);
        const int before = disk.calls();
        rename_piece(session, "New");
        autosave->keep_now();
        const bool reached = disk.calls() - before >= n;
        EXPECT_TRUE(name_in_copy() == "Old" || name_in_copy() == "New") << "call " << n;
        if (!autosave->fault()) {
            EXPECT_EQ(name_in_copy(), "New") << "call " << n;
        }
        if (!reached) return;
    }
    ADD_FAILURE() << "no end of calls";
}

TEST_F(AutosaveTest, WhatCannotBeKeptOnStaysWhereItWasFound) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    leave_behind(state, document, "Snout");
    {
        DocumentSession session;
        FailingDisk disk;
        Autosave autosave(session, state, nullptr, disk);
        auto left = autosave.left_of(document);
        ASSERT_EQ(left.size(), 1u);
        disk.have_room_for(20);
        ASSERT_FALSE(autosave.recover(std::move(left.front()), document)) << "offered on a full disk too";
        EXPECT_EQ(session.piece()->name, "Snout");
        EXPECT_TRUE(autosave.fault());
        EXPECT_EQ(copies_with(state, "Snout"), 1);
    }
    DocumentSession session;
    Autosave autosave(session, state);
    auto left = autosave.left_of(document);
    ASSERT_EQ(left.size(), 1u) << "the window is gone with its full disk, the copy is not";
    ASSERT_FALSE(autosave.recover(std::move(left.front()), document));
    ASSERT_FALSE(session.save(document));
    EXPECT_TRUE(wait_until([&] { return copies() == 0; }));
}

TEST_F(AutosaveTest, ASaveIsAsGoodAsACopyOfItsOwn) {
    leave_behind(state, {}, "Snout");
    DocumentSession session;
    FailingDisk disk;
    Autosave autosave(session, state, nullptr, disk);
    auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    disk.have_room_for(20);
    ASSERT_FALSE(autosave.recover(std::move(left.front()), {}));
    EXPECT_EQ(copies(), 1);
    ASSERT_FALSE(session.save(document));
    EXPECT_EQ(copies(), 0);
}

// --- a disk that cannot confirm

TEST_F(AutosaveTest, ACopyThatMayNotSurviveAPowerFailureIsSaidAndLeavesTheOneBefore) {
    leave_behind(state, {}, "Snout");
    DocumentSession session;
    FailingDisk disk;
    disk.sync_no_folders();
    Autosave autosave(session, state, nullptr, disk);
    auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    ASSERT_FALSE(autosave.recover(std::move(left.front()), {}));
    EXPECT_EQ(copies(), 2) << "this window's own, and the one that is safe";
    EXPECT_FALSE(session.standing().kept);
    EXPECT_FALSE(autosave.all_kept());
    ASSERT_TRUE(autosave.fault());
    EXPECT_EQ(autosave.fault()->step, DiskStep::sync);
}

TEST_F(AutosaveTest, ASaveThatTheDiskCouldNotConfirmLeavesItsCopy) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    QFile file(document);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray before = file.readAll();
    file.close();
    {
        DocumentSession session;
        ASSERT_FALSE(session.open(document));
        Autosave autosave(session, state);
        rename_piece(session, "Snout");
        FailingDisk disk;
        disk.sync_no_folders();
        {
            const DiskInUse in_use(disk);
            ASSERT_FALSE(session.save(document));
        }
        EXPECT_FALSE(session.modified());
        EXPECT_FALSE(session.saved_safely());
        QTest::qWait(700);
        EXPECT_EQ(name_in_copy(), "Snout") << "a loss of power may undo the save";
        autosave.give_up();  // as closing the window does
        EXPECT_EQ(name_in_copy(), "Snout");
    }
    {
        DocumentSession session;
        const Autosave autosave(session, state);
        QFile::copy(document, folder.filePath(QStringLiteral("saved")));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
        file.write(before);
        file.close();
        EXPECT_EQ(autosave.left_of(document).size(), 1u) << "the power did go";
        ASSERT_TRUE(QFile::remove(document));
        ASSERT_TRUE(QFile::rename(folder.filePath(QStringLiteral("saved")), document));
        EXPECT_TRUE(autosave.left_of(document).empty()) << "it did not: there is nothing to say";
        EXPECT_EQ(copies(), 0);
    }
}

TEST_F(AutosaveTest, ASaveThatIsConfirmedLaterTakesTheCopyAway) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    FailingDisk disk;
    disk.sync_no_folders();
    {
        const DiskInUse in_use(disk);
        ASSERT_FALSE(session.save(document));
    }
    EXPECT_TRUE(wait_until([&] { return copies() == 1; }));
    ASSERT_FALSE(session.save(document));
    EXPECT_TRUE(session.saved_safely());
    EXPECT_TRUE(wait_until([&] { return copies() == 0; }));
}

TEST_F(AutosaveTest, ADiskThatCannotSyncStillHasEveryChangeForAKill) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    FailingDisk disk;
    Autosave autosave(session, state, nullptr, disk);
    disk.fail_each({DiskCall::sync}, EIO);
    rename_piece(session, "Snout");
    EXPECT_TRUE(wait_until([&] { return autosave.fault().has_value(); }));
    EXPECT_EQ(name_in_copy(), "Snout");
    QElapsedTimer since;
    rename_piece(session, "Nose");
    since.start();
    EXPECT_TRUE(wait_until([&] { return name_in_copy() == "Nose"; }));
    RecordProperty("written_after_ms", static_cast<int>(since.elapsed()));
    disk.be_sound();
    EXPECT_TRUE(wait_until([&] { return autosave.all_kept(); })) << "tried again by itself";
    EXPECT_EQ(copies(), 1);
    EXPECT_FALSE(autosave.fault());
}

// --- privacy

TEST_F(AutosaveTest, OnlyItsOwnerReadsIt) {
    const mode_t before = ::umask(0);
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    autosave.keep_now();
    ::umask(before);
    struct ::stat found {};
    for (const QString& path : files_below(state)) {
        ASSERT_EQ(::stat(QFile::encodeName(path).constData(), &found), 0);
        EXPECT_EQ(found.st_mode & 0777, 0600u) << path.toStdString();
    }
    ASSERT_EQ(::stat(QFile::encodeName(state + QStringLiteral("/kept")).constData(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777, 0700u);
}

TEST_F(AutosaveTest, ALinkInPlaceOfTheFolderIsRefusedAndSaid) {
    const QString elsewhere = folder.filePath(QStringLiteral("elsewhere"));
    ASSERT_TRUE(QDir().mkpath(elsewhere));
    ASSERT_TRUE(QDir().mkpath(state));
    ASSERT_TRUE(QFile::link(elsewhere, state + QStringLiteral("/kept")));
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    rename_piece(session, "Snout");
    autosave.keep_now();
    EXPECT_TRUE(autosave.fault());
    EXPECT_TRUE(files_below(elsewhere).isEmpty());
}

TEST_F(AutosaveTest, LinksAndSecondNamesInTheFolderAreNotOffered) {
    leave_behind(state, {}, "Snout");
    const QString kept = QDir(state + QStringLiteral("/kept"))
                             .entryInfoList({QStringLiteral("*.kept")}, QDir::Files)
                             .first()
                             .filePath();
    const QString away = folder.filePath(QStringLiteral("away"));
    ASSERT_TRUE(QFile::rename(kept, away));
    ASSERT_TRUE(QFile::link(away, kept));
    DocumentSession session;
    const Autosave autosave(session, state);
    EXPECT_TRUE(autosave.left_behind().empty());
    ASSERT_TRUE(QFile::remove(kept));
    ASSERT_EQ(::link(QFile::encodeName(away).constData(), QFile::encodeName(kept).constData()), 0);
    EXPECT_TRUE(autosave.left_behind().empty());
    ASSERT_TRUE(QFile::remove(away));
    EXPECT_EQ(autosave.left_behind().size(), 1u);
}

// --- what programs before this one left

TEST_F(AutosaveTest, ACopyBesideTheFileIsOfferedOnlyIfOurNoteNamesIt) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    const QString beside = folder.filePath(QStringLiteral(".pup.roundwright.kept"));
    Toy toy = toy_of({6, 12});
    toy.pieces[0].name = "Snout";
    ASSERT_FALSE(save_document_file(beside, toy));
    DocumentSession session;
    Autosave autosave(session, state);
    EXPECT_TRUE(autosave.left_of(document).empty()) << "it may have come with the toy";
    QFile note(state + QStringLiteral("/11111111-2222-3333-4444-555555555555.note"));
    ASSERT_TRUE(note.open(QIODevice::WriteOnly));
    note.write(QStringLiteral(R"({"copy": "%1", "document": "%2", "typed": "18, 24", "typed_for_piece": 0})")
                   .arg(beside, document)
                   .toUtf8());
    note.close();
    auto left = autosave.left_of(document);
    ASSERT_EQ(left.size(), 1u);
    EXPECT_EQ(left.front().head.typed.text, QStringLiteral("18, 24"));
    ASSERT_FALSE(autosave.recover(std::move(left.front()), document));
    EXPECT_EQ(session.piece()->name, "Snout");
    EXPECT_FALSE(QFile::exists(beside));
    EXPECT_FALSE(note.exists());
    EXPECT_EQ(copies_with(state, "Snout"), 1);
}

}  // namespace
}  // namespace roundwright::app
