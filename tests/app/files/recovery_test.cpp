#include <algorithm>
#include <array>
#include <csignal>
#include <cstddef>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSessionManager>

#include "app/files/display_gone.h"
#include "app/files/document_files.h"
#include "app/files/end_signals.h"
#include "app/files/recovery_dialog.h"
#include "app/kit/finish_typing.h"
#include "app/kit/notice_bar.h"
#include "app/read_pattern/pattern_review.h"
#include "app/read_pattern/pattern_text_actions.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/toy/toy_details.h"
#include "app/window/main_window.h"
#include "tests/app/files/kept_testing.h"
#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

// Run by tests as a program of its own, which they end.
TEST(KilledProgram, DISABLED_KeepsAndWaits) {
    DocumentSession session;
    const QString document = qEnvironmentVariable("KILL_ME_DOCUMENT");
    session.start(toy_of({6, 12}));
    if (!document.isEmpty()) {
        ASSERT_FALSE(session.open(document));
    }
    Autosave autosave(session, qEnvironmentVariable("KILL_ME_STATE"));
    EndSignals ends;
    QObject::connect(&ends, &EndSignals::asked_to_end, [&](int number) {
        autosave.keep_now();
        EndSignals::end_by(number);
    });
    DisplayGone display_gone;
    display_gone.keep_by([&] { return keep_and_say(autosave); });
    rename_piece(session, qgetenv("KILL_ME_NAME").constData());
    if (qEnvironmentVariableIsSet("KILL_ME_KEPT")) autosave.keep_now();
    std::puts("ready");
    std::fflush(stdout);
    wait_until([] { return false; });
}

class Recovery : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        ASSERT_FALSE(save_document_file(pup, toy_of({6, 12})));
    }

    void TearDown() override { window.reset(); }
    void killed(const QString& name, const QString& document) { KilledProgram(state, document, name).end(); }
    void start() {
        window.reset();
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, state);
        window->show();
    }
    /// Begins with a file, brings back what is offered, and says what the piece is called then.
    std::string name_after_beginning(const QString& path) {
        asked = 0;
        QTimer answers;
        QObject::connect(&answers, &QTimer::timeout, [this] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            ++asked;
            auto* back = dialog->findChild<QAbstractButton*>(QStringLiteral("bring-back"));
            back ? back->click() : dialog->reject();
        });
        answers.start(5);
        start();
        window->begin(path);
        return session->piece() ? session->piece()->name : std::string();
    }
    /// The words of the dialog that comes, which is left for later.
    void read_dialog_and_leave(QString& words) {
        auto* timer = new QTimer(qApp);
        QObject::connect(timer, &QTimer::timeout, timer, [timer, &words] {
            auto* dialog = qobject_cast<RecoveryDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            timer->deleteLater();
            words = dialog->heading() + u'\n' + dialog->details();
            dialog->reject();
        });
        timer->start(5);
    }
    /// What a kill would leave now, beside what the window goes on with.
    void copy_what_is_kept_to(const QString& to) const {
        ASSERT_TRUE(QDir().mkpath(to + QStringLiteral("/kept")));
        for (const QString& path : files_below(state)) {
            if (!path.endsWith(QStringLiteral(".kept"))) continue;
            ASSERT_TRUE(QFile::copy(path, to + QStringLiteral("/kept/") + QFileInfo(path).fileName()));
        }
    }
    /// A question that comes all the same is not answered.
    bool closes_without_a_question() {
        QTimer answers;
        QObject::connect(&answers, &QTimer::timeout, [] {
            if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget())) dialog->reject();
        });
        answers.start(5);
        return window->close();
    }
    void close_without_saving() {
        finish_typing();
        if (session->modified()) answer_next_dialog(QStringLiteral("Don’t save"));
        ASSERT_TRUE(window->close());
    }

    int asked = 0;
    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state"));
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(Recovery, APlantedLinkIsNotFollowed) {
    QFile victim(folder.filePath(QStringLiteral("victim")));
    ASSERT_TRUE(victim.open(QIODevice::WriteOnly));
    victim.write("mine");
    victim.close();
    ASSERT_TRUE(victim.link(folder.filePath(QStringLiteral(".pup.roundwright.kept"))));
    killed(QStringLiteral("Snout"), pup);
    ASSERT_TRUE(victim.open(QIODevice::ReadOnly));
    EXPECT_TRUE(victim.readAll() == "mine");
}

TEST_F(Recovery, BehindALinkInPlaceOfTheFolderNothingIsLookedForOrTouched) {
    killed(QStringLiteral("Snout"), pup);
    const QString kept = state + QStringLiteral("/kept");
    const QString theirs = folder.filePath(QStringLiteral("theirs"));
    ASSERT_TRUE(QDir().rename(kept, theirs));
    ASSERT_TRUE(QFile::link(theirs, kept));
    const auto touched = QFileInfo(theirs).lastModified();
    QTest::qSleep(20);
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 0);
    EXPECT_EQ(QFileInfo(theirs).lastModified(), touched);
}

TEST_F(Recovery, AShippedCopyIsNotOffered) {
    ASSERT_FALSE(save_document_file(folder.filePath(QStringLiteral(".pup.roundwright.kept")), toy_of({7})));
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 0);
}

TEST_F(Recovery, NobodyElseReads) {
    QFile::setPermissions(pup, QFile::ReadOwner | QFile::WriteOwner);
    KilledProgram program(state, pup, QStringLiteral("Snout"));
    for (const QString& path : files_below(state)) {
        struct ::stat found {};
        ASSERT_EQ(::stat(QFile::encodeName(path).constData(), &found), 0);
        EXPECT_EQ(found.st_mode & 077, 0u) << path.toStdString();
    }
    EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral(".pup.roundwright.kept"))));
}

TEST_F(Recovery, TwoWindowsKeepTwoCopies) {
    DocumentSession one;
    DocumentSession two;
    ASSERT_FALSE(one.open(pup));
    ASSERT_FALSE(two.open(pup));
    Autosave first(one, state);
    Autosave second(two, state);
    rename_piece(one, "One");
    rename_piece(two, "Two");
    first.keep_now();
    second.keep_now();
    EXPECT_EQ(copies_with(state, "\"One\""), 1);
    EXPECT_EQ(copies_with(state, "\"Two\""), 1);
    first.give_up();
    EXPECT_EQ(copies_with(state, "\"Two\""), 1) << "the other's copy is not this window's";
}

TEST_F(Recovery, LaterThenEdit) {
    killed(QStringLiteral("Snout"), pup);
    answer_next_dialog(QStringLiteral("Later"));
    start();
    window->begin(pup);
    rename_piece(*session, "Later edit");
    window->autosave().keep_now();
    ASSERT_TRUE(window->files().save());
    close_without_saving();
    EXPECT_EQ(name_after_beginning(pup), "Snout");
    EXPECT_EQ(asked, 1);
    close_without_saving();
}

TEST_F(Recovery, DontSaveThenFail) {
    const QString broken = folder.filePath(QStringLiteral("broken.roundwright"));
    QFile file(broken);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{");
    file.close();
    start();
    window->begin(pup);
    rename_piece(*session, "Edited");
    window->autosave().keep_now();
    answer_next_dialog(QStringLiteral("Don’t save"));
    QTimer::singleShot(50, [] { answer_next_dialog(QStringLiteral("OK")); });
    EXPECT_FALSE(window->files().open(broken));
    EXPECT_EQ(session->piece()->name, "Edited");
    EXPECT_EQ(copies_with(state, "\"Edited\""), 1);
    QTest::qWait(300);
    EXPECT_EQ(copies_with(state, "\"Edited\""), 1);
    close_without_saving();
    EXPECT_EQ(copies_with(state, {}), 0);
}

TEST_F(Recovery, WhatIsNotSavedGoesOnceAnotherToyIsOpen) {
    const QString fin = folder.filePath(QStringLiteral("fin.roundwright"));
    ASSERT_FALSE(save_document_file(fin, toy_of({8})));
    start();
    window->begin(pup);
    rename_piece(*session, "Edited");
    window->autosave().keep_now();
    answer_next_dialog(QStringLiteral("Don’t save"));
    EXPECT_TRUE(window->files().open(fin));
    EXPECT_TRUE(wait_until([&] { return copies_with(state, {}) == 0; }));
}

TEST_F(Recovery, ClosingWithoutSavingDropsOnlyThisWindowsCopy) {
    killed(QStringLiteral("Snout"), {});
    answer_next_dialog(QStringLiteral("Later"));
    start();
    window->begin({});
    rename_piece(*session, "Mine");
    window->autosave().keep_now();
    close_without_saving();
    window.reset();
    EXPECT_EQ(copies_with(state, "Mine"), 0);
    EXPECT_EQ(copies_with(state, "Snout"), 1);
}

TEST_F(Recovery, AClockThatJumped) {
    killed(QStringLiteral("Snout"), pup);
    const timespec times[2] = {{4'000'000'000, 0}, {4'000'000'000, 0}};
    ASSERT_EQ(::utimensat(AT_FDCWD, QFile::encodeName(pup).constData(), times, 0), 0);
    EXPECT_EQ(name_after_beginning(pup), "Snout");
    close_without_saving();
}

TEST_F(Recovery, ThroughALink) {
    const QString sub = folder.filePath(QStringLiteral("sub"));
    ASSERT_TRUE(QDir().mkpath(sub));
    const QString link = folder.filePath(QStringLiteral("link.roundwright"));
    const QString folder_link = folder.filePath(QStringLiteral("other"));
    const QString hard_link = folder.filePath(QStringLiteral("hard.roundwright"));
    ASSERT_TRUE(QFile::link(pup, link));
    ASSERT_TRUE(QFile::link(folder.path(), folder_link));
    ASSERT_EQ(::link(QFile::encodeName(pup).constData(), QFile::encodeName(hard_link).constData()), 0);
    const QString before = QDir::currentPath();
    ASSERT_TRUE(QDir::setCurrent(sub));
    leave_behind(state, pup, "Snout");
    DocumentSession other;
    const Autosave autosave(other, state);
    for (const QString& name : {pup, link, hard_link, QStringLiteral("../pup.roundwright"),
                                folder_link + QStringLiteral("/pup.roundwright")})
        EXPECT_EQ(autosave.left_of(name).size(), 1u) << name.toStdString();
    EXPECT_TRUE(autosave.left_of(folder.filePath(QStringLiteral("fin.roundwright"))).empty());
    EXPECT_EQ(name_after_beginning(link), "Snout");
    EXPECT_EQ(session->path(), link) << "opened as it was named";
    close_without_saving();
    QDir::setCurrent(before);
}

TEST_F(Recovery, ARenamedFileStillFindsItsCopy) {
    leave_behind(state, pup, "Snout");
    const QString now = folder.filePath(QStringLiteral("seal.roundwright"));
    ASSERT_TRUE(QFile::rename(pup, now));
    EXPECT_EQ(name_after_beginning(now), "Snout");
    EXPECT_EQ(session->path(), now);
    close_without_saving();
}

TEST_F(Recovery, AFileThatIsGoneIsNoReasonToLoseItsCopy) {
    leave_behind(state, pup, "Snout");
    ASSERT_TRUE(QFile::remove(pup));
    EXPECT_EQ(name_after_beginning(pup), "Snout");
    close_without_saving();
}

TEST_F(Recovery, FromAReadOnlyFolder) {
    const QString there = folder.filePath(QStringLiteral("there"));
    ASSERT_TRUE(QDir().mkpath(there));
    const QString fin = there + QStringLiteral("/fin.roundwright");
    ASSERT_FALSE(save_document_file(fin, toy_of({8})));
    QFile::setPermissions(fin, QFile::ReadOwner);
    QFile::setPermissions(there, QFile::ReadOwner | QFile::ExeOwner);
    killed(QStringLiteral("Snout"), fin);
    EXPECT_EQ(name_after_beginning(fin), "Snout");
    QFile::setPermissions(there, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    close_without_saving();
}

TEST_F(Recovery, NothingNewerIsNotOffered) {
    killed(QStringLiteral("Snout"), pup);
    Toy toy = toy_of({6, 12});
    toy.pieces[0].name = "Snout";
    ASSERT_FALSE(save_document_file(pup, toy));
    const timespec times[2] = {{1'000'000'000, 0}, {1'000'000'000, 0}};
    ASSERT_EQ(::utimensat(AT_FDCWD, QFile::encodeName(pup).constData(), times, 0), 0);
    EXPECT_EQ(name_after_beginning(pup), "Snout");
    EXPECT_EQ(asked, 0);
    EXPECT_EQ(copies_with(state, {}), 0);
}

TEST_F(Recovery, OfferedWhenAFileIsOpenedFromTheWindow) {
    killed(QStringLiteral("Snout"), pup);
    start();
    session->start(toy_of({8}));
    answer_next_dialog(QStringLiteral("Bring it back"));
    EXPECT_TRUE(window->files().open(pup));  // as File > Open, recent files and a drop do
    EXPECT_EQ(session->piece()->name, "Snout");
    close_without_saving();
}

TEST_F(Recovery, SaysThatTheFileWasChangedMeanwhile) {
    killed(QStringLiteral("Snout"), pup);
    ASSERT_FALSE(save_document_file(pup, toy_of({6, 12, 18})));
    QString words;
    read_dialog_and_leave(words);
    start();
    window->begin(pup);
    EXPECT_TRUE(words.contains(QStringLiteral("pup.roundwright"))) << words.toStdString();
    EXPECT_TRUE(
        words.contains(QStringLiteral("Snout: 2 rounds, 18 stitches (in the file: 3 rounds, 36 stitches)")))
        << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("The file was changed after this copy was begun")))
        << words.toStdString();
}

TEST_F(Recovery, TouchingTheFileIsNoChange) {
    leave_behind(state, pup, "Snout");
    const timespec times[2] = {{4'000'000'000, 0}, {4'000'000'000, 0}};
    ASSERT_EQ(::utimensat(AT_FDCWD, QFile::encodeName(pup).constData(), times, 0), 0);
    QString words;
    read_dialog_and_leave(words);
    start();
    window->begin(pup);
    EXPECT_FALSE(words.contains(QStringLiteral("changed after"))) << words.toStdString();
}

TEST_F(Recovery, SeveralCopiesAreLookedAtOneByOne) {
    leave_behind(state, pup, "First");
    leave_behind(state, pup, "Second");
    DocumentSession other;
    const Autosave autosave(other, state);
    RecoveryDialog dialog(autosave, autosave.left_of(pup), pup);
    dialog.show();
    auto* list = dialog.findChild<QListWidget*>();
    ASSERT_EQ(list->count(), 2);
    EXPECT_TRUE(dialog.details().contains(QStringLiteral("Second"))) << "the latest first";
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Down);
    EXPECT_TRUE(dialog.details().contains(QStringLiteral("First")));
    QTest::keyClick(list, Qt::Key_Return);
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    const auto chosen = dialog.take_chosen();
    ASSERT_TRUE(chosen);
    EXPECT_EQ(autosave.look_into(*chosen).document.toy.pieces[0].name, "First");
}

TEST_F(Recovery, CopiesOfTwoToysAreShownWhole) {
    leave_behind(state, {}, "Snout", {QStringLiteral("24, 30, 36x4"), 0});
    leave_behind(state, pup, "Snout", {QStringLiteral("24, 30"), 0, TypedCell{QStringLiteral("18"), 1}});
    ASSERT_FALSE(save_document_file(pup, toy_of({6, 12, 18})));
    DocumentSession other;
    const Autosave autosave(other, state);
    ASSERT_TRUE(QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS)));
    for (const bool all : {true, false}) {
        RecoveryDialog dialog(autosave, all ? autosave.left_behind() : autosave.left_of(pup), {});
        dialog.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&dialog));
        EXPECT_EQ(dialog.findChild<QListWidget*>()->isVisible(), all);
        for (const auto* label : dialog.findChildren<QLabel*>())
            EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
        EXPECT_TRUE(
            dialog.grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/recovery-%1.png").arg(all ? 2 : 1)));
    }
}

TEST_F(Recovery, DeletingACopyAsksAndKeepsItUnlessToldTo) {
    leave_behind(state, pup, "First");
    leave_behind(state, pup, "Second");
    DocumentSession other;
    const Autosave autosave(other, state);
    RecoveryDialog dialog(autosave, autosave.left_of(pup), pup);
    dialog.show();
    auto* remove = dialog.findChild<QAbstractButton*>(QStringLiteral("delete-copy"));
    answer_next_dialog(QStringLiteral("Keep it"));
    remove->click();
    EXPECT_EQ(copies_with(state, {}), 2);
    answer_next_dialog(QStringLiteral("Delete it"));
    remove->click();
    EXPECT_EQ(copies_with(state, "Second"), 0);
    EXPECT_EQ(copies_with(state, "First"), 1);
    EXPECT_TRUE(dialog.details().contains(QStringLiteral("First")));
    answer_next_dialog(QStringLiteral("Delete it"));
    remove->click();
    EXPECT_EQ(copies_with(state, {}), 0);
    EXPECT_FALSE(dialog.isVisible());
}

TEST_F(Recovery, MarkupInNamesIsText) {
    Toy toy = toy_of({6});
    toy.title = "<b>Pup</b>";
    DocumentSession one;
    one.start(toy);
    {
        Autosave autosave(one, state);
        rename_piece(one, "<img src='x'>");
    }
    DocumentSession other;
    const Autosave autosave(other, state);
    RecoveryDialog dialog(autosave, autosave.left_behind(), {});
    EXPECT_TRUE(dialog.heading().contains(QStringLiteral("<b>Pup</b>")));
    for (const auto* label : dialog.findChildren<QLabel*>()) EXPECT_EQ(label->textFormat(), Qt::PlainText);
}

TEST_F(Recovery, AtStartWithAFileTheCopiesOfOthersAreSaidAndStandInNobodysWay) {
    const QString fin = folder.filePath(QStringLiteral("fin.roundwright"));
    ASSERT_FALSE(save_document_file(fin, toy_of({8})));
    killed(QStringLiteral("Snout"), fin);
    start();
    window->begin(pup);  // would wait for an answer
    EXPECT_EQ(session->path(), pup);
    auto* look = window->notices().button(QStringLiteral("left-behind"), QStringLiteral("Look at them…"));
    ASSERT_TRUE(look);
    answer_next_dialog(QStringLiteral("Bring it back"));
    look->click();
    EXPECT_TRUE(wait_until([&] { return session->path() == fin; }));
    EXPECT_EQ(session->piece()->name, "Snout");
    EXPECT_TRUE(wait_until([&] { return window->notices().words(QStringLiteral("left-behind")).isEmpty(); }));
    close_without_saving();
}

TEST_F(Recovery, ACopyWhoseProgramWasStillEndingIsOfferedAMomentLater) {
    killed(QStringLiteral("Snout"), pup);
    LockFile ending;
    const KeptFolder kept(state);
    const QString name = QFileInfo(files_below(kept.path()).front()).fileName().section(u'.', 0, 0);
    ASSERT_EQ(ending.take(kept.lock_file(name)), LockAnswer::taken);
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 0);
    ending.release();
    ASSERT_TRUE(
        wait_until([&] { return !window->notices().words(QStringLiteral("left-behind")).isEmpty(); }));
    answer_next_dialog(QStringLiteral("Bring it back"));
    window->notices().button(QStringLiteral("left-behind"), QStringLiteral("Look at them…"))->click();
    EXPECT_TRUE(wait_until([&] { return session->piece()->name == "Snout"; }));
    close_without_saving();
}

TEST_F(Recovery, WithinASecond) {
    QElapsedTimer since;
    KilledProgram program(state, pup, QStringLiteral("Snout"), false);
    since.start();
    while (copies_with(state, "Snout") == 0 && since.elapsed() < 10'000) QTest::qSleep(5);
    EXPECT_EQ(copies_with(state, "Snout"), 1);
    RecordProperty("kept_after_ms", static_cast<int>(since.elapsed()));
}

TEST_F(Recovery, EndedBySignalsItKeepsFirst) {
    for (const int number : {SIGTERM, SIGHUP, SIGINT}) {
        KilledProgram ended(state, {}, QStringLiteral("Snout%1").arg(number), false);
        ::kill(static_cast<pid_t>(ended.program.processId()), number);
        ASSERT_TRUE(ended.program.waitForFinished());
        EXPECT_EQ(ended.program.exitStatus(), QProcess::CrashExit) << "as the signal ends programs";
        EXPECT_EQ(copies_with(state, QStringLiteral("\"Snout%1\"").arg(number).toUtf8()), 1) << number;
    }
}

/// An X server of its own, to be taken away.
class OwnDisplay {
  public:
    OwnDisplay() {
        server.start(QStringLiteral("Xvfb"), {QStringLiteral("-displayfd"), QStringLiteral("1"),
                                              QStringLiteral("-nolisten"), QStringLiteral("tcp")});
        while (!number.endsWith('\n') && server.waitForReadyRead(20'000))
            number += server.readAllStandardOutput();
    }
    ~OwnDisplay() { take_away(); }

    [[nodiscard]] QString name() const {
        return number.endsWith('\n') ? u':' + QString::fromLatin1(number.trimmed()) : QString();
    }
    void take_away() {
        server.kill();
        server.waitForFinished();
    }

  private:
    QProcess server;
    QByteArray number;
};

TEST_F(Recovery, WhenItsDisplayGoesItKeepsFirstAndEndsByItself) {
    for (int turn = 1; turn <= 3; ++turn) {
        OwnDisplay display;
        if (display.name().isEmpty()) GTEST_SKIP() << "there is no Xvfb here";
        KilledProgram ended(state, {}, QStringLiteral("Snout%1").arg(turn), false, display.name());
        display.take_away();
        ASSERT_TRUE(ended.program.waitForFinished());
        EXPECT_EQ(ended.program.exitStatus(), QProcess::NormalExit);
        EXPECT_EQ(ended.program.exitCode(), DisplayGone::exit_code);
        EXPECT_EQ(copies_with(state, QStringLiteral("\"Snout%1\"").arg(turn).toUtf8()), 1);
        const auto said = ended.program.readAllStandardError();
        EXPECT_TRUE(said.contains("The display is gone. What was not saved is kept")) << said.constData();
    }
}

TEST(NoDisplay, IsSaidInWords) {
    QProcess program;
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("xcb"));
    environment.insert(QStringLiteral("DISPLAY"), QStringLiteral(":nowhere"));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(ROUNDWRIGHT_PROGRAM));
    ASSERT_TRUE(program.waitForFinished());
    EXPECT_EQ(program.exitStatus(), QProcess::NormalExit);
    EXPECT_EQ(program.exitCode(), DisplayGone::exit_code);
    const auto said = program.readAllStandardError();
    EXPECT_TRUE(said.contains("There is no display to open the window on.")) << said.constData();
}

TEST_F(Recovery, KeepingThatIsImpossibleIsSaidAsLongAsItLasts) {
    FailingDisk disk;
    const DiskInUse in_use(disk);
    start();
    window->begin(pup);
    disk.have_room_for(20);
    rename_piece(*session, "Snout");
    const auto words = [&] { return window->notices().words(QStringLiteral("keeping")); };
    EXPECT_TRUE(wait_until([&] { return !words().isEmpty(); }));
    EXPECT_TRUE(words().contains(QStringLiteral("is full"))) << words().toStdString();
    disk.be_sound();
    EXPECT_TRUE(wait_until([&] { return words().isEmpty(); }));
    close_without_saving();
    window.reset();
}

TEST_F(Recovery, ThereIsNothingToSayOnceThereIsNothingLeftToKeep) {
    FailingDisk disk;
    const DiskInUse in_use(disk);
    start();
    window->begin(pup);
    const auto words = [&] { return window->notices().words(QStringLiteral("keeping")); };
    disk.have_room_for(20);
    rename_piece(*session, "Snout");
    EXPECT_TRUE(wait_until([&] { return !words().isEmpty(); }));
    session->undo_stack().undo();
    EXPECT_TRUE(words().isEmpty());
    disk.be_sound();
    window.reset();
}

TEST_F(Recovery, LosingTheFocusKeepsAtOnce) {
    start();
    window->begin(pup);
    window->autosave().set_interval_ms(600'000);
    rename_piece(*session, "Snout");
    Q_EMIT qGuiApp->applicationStateChanged(Qt::ApplicationInactive);
    EXPECT_TRUE(wait_until([&] { return copies_with(state, "Snout") == 1; }));
    close_without_saving();
}

TEST_F(Recovery, WhatIsTypedInACellComesBackIntoItsCell) {
    start();
    window->begin(pup);
    window->rounds_view().setFocus();
    session->select_rounds({1});
    QTest::keyClicks(&window->rounds_view(), QStringLiteral("1"));
    auto* cell = window->rounds_view().findChild<QLineEdit*>();
    ASSERT_TRUE(cell);
    QTest::keyClicks(cell, QStringLiteral("8"));
    window->autosave().keep_now();
    const QString saved_state = folder.filePath(QStringLiteral("left"));
    copy_what_is_kept_to(saved_state);
    close_without_saving();
    window.reset();
    state = saved_state;
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 1);
    cell = window->rounds_view().findChild<QLineEdit*>();
    ASSERT_TRUE(cell);
    EXPECT_EQ(cell->text(), QStringLiteral("18"));
    QTest::keyClick(cell, Qt::Key_Return);
    EXPECT_EQ(counts_of(*session->piece()), (std::vector{6, 18}));
    close_without_saving();
}

/// Does something with the modal dialog that comes next.
template <typename Dialog>
void with_next_dialog(const std::function<void(Dialog&)>& what) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, what] {
        auto* dialog = qobject_cast<Dialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) return;
        timer->deleteLater();
        what(*dialog);
    });
    timer->start(5);
}

QPlainTextEdit& box_called(const QDialog& dialog, const QString& hint) {
    const auto boxes = dialog.findChildren<QPlainTextEdit*>();
    const auto found = std::ranges::find_if(
        boxes, [&](const QPlainTextEdit* box) { return box->placeholderText().startsWith(hint); });
    EXPECT_NE(found, boxes.end());
    return **found;
}

TEST_F(Recovery, WhatIsTypedAboutTheToyComesBackIntoItsDialog) {
    const auto hint = QStringLiteral("Saved with the toy, never printed");
    const QString left = folder.filePath(QStringLiteral("left"));
    start();
    window->begin(pup);
    with_next_dialog<ToyDetailsDialog>([&](ToyDetailsDialog& dialog) {
        QTest::keyClicks(&box_called(dialog, hint), QStringLiteral("Sew the fins on last, and tighter"));
        EXPECT_TRUE(wait_until([&] { return copies_with(state, "on last, and tighter") > 0; }));
        copy_what_is_kept_to(left);
        dialog.reject();
    });
    ask_toy_details(*session, window.get());
    EXPECT_TRUE(wait_until([&] { return copies_with(state, {}) == 0; })) << "given up";
    close_without_saving();
    window.reset();
    state = left;
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 1);
    bool came_back = false;
    with_next_dialog<ToyDetailsDialog>([&](ToyDetailsDialog& dialog) {
        came_back = true;
        EXPECT_EQ(box_called(dialog, hint).toPlainText(),
                  QStringLiteral("Sew the fins on last, and tighter"));
        dialog.accept();
    });
    EXPECT_TRUE(wait_until([&] { return came_back && session->modified(); }));
    EXPECT_EQ(session->toy().private_notes, "Sew the fins on last, and tighter");
    EXPECT_TRUE(session->drafts().texts().empty());
    close_without_saving();
}

TEST_F(Recovery, APatternThatWasBeingReadComesBack) {
    const QString left = folder.filePath(QStringLiteral("left"));
    start();
    window->begin(pup);
    with_next_dialog<PatternReview>([&](PatternReview& dialog) {
        dialog.source().moveCursor(QTextCursor::End);
        QTest::keyClicks(&dialog.source(), QStringLiteral("Rnd 3: 18 sc"));
        EXPECT_TRUE(wait_until([&] { return copies_with(state, "Rnd 3: 18 sc") > 0; }));
        copy_what_is_kept_to(left);
        dialog.reject();
    });
    PatternTextActions(*session, window.get()).review(QStringLiteral("Rnd 1: 6 sc\nRnd 2: 12 sc\n"));
    close_without_saving();
    window.reset();
    state = left;
    EXPECT_EQ(name_after_beginning(pup), "Head");
    EXPECT_EQ(asked, 1);
    QString came_back;
    with_next_dialog<PatternReview>([&](PatternReview& dialog) {
        came_back = dialog.source().toPlainText();
        dialog.reject();
    });
    EXPECT_TRUE(wait_until([&] { return !came_back.isEmpty(); }));
    EXPECT_EQ(came_back, QStringLiteral("Rnd 1: 6 sc\nRnd 2: 12 sc\nRnd 3: 18 sc"));
    EXPECT_TRUE(wait_until([&] { return session->drafts().texts().empty(); }));
    close_without_saving();
}

/// As the desktop's session manager does, through Qt. Nothing looks at the manager itself, which only Qt
/// makes.
void ask_for_end_of_session() {
    alignas(std::max_align_t) static std::array<std::byte, sizeof(QSessionManager)> nobody{};
    Q_EMIT qGuiApp->commitDataRequest(reinterpret_cast<QSessionManager&>(nobody));
}

TEST_F(Recovery, TheEndOfTheSessionKeepsEverythingAndAsksNothing) {
    start();
    window->begin(pup);
    window->autosave().set_interval_ms(600'000);
    rename_piece(*session, "Snout");
    QTest::keyClicks(window->findChild<FastEntryLine*>()->line(), QStringLiteral("24, 30"));
    ask_for_end_of_session();
    EXPECT_EQ(copies_with(state, "\"Snout\""), 1);
    EXPECT_EQ(copies_with(state, "24, 30"), 1);
    EXPECT_TRUE(closes_without_a_question());
    window.reset();
    EXPECT_EQ(copies_with(state, "\"Snout\""), 1) << "and nothing was given up";
    EXPECT_EQ(name_after_beginning(pup), "Snout");
    EXPECT_EQ(window->findChild<FastEntryLine*>()->line()->text(), QStringLiteral("24, 30"));
    close_without_saving();
}

TEST_F(Recovery, AnEndOfTheSessionThatIsCalledOffIsForgotten) {
    start();
    window->begin(pup);
    rename_piece(*session, "Snout");
    ask_for_end_of_session();
    rename_piece(*session, "Nose");
    window->autosave().keep_now();
    EXPECT_FALSE(closes_without_a_question());
    close_without_saving();
}

}  // namespace
}  // namespace roundwright::app
