#include <csignal>
#include <gtest/gtest.h>
#include <memory>
#include <sys/stat.h>
#include <unistd.h>

#include <QAction>
#include <QDialogButtonBox>
#include <QDir>
#include <QFileDialog>
#include <QLabel>
#include <QMessageBox>
#include <QMimeData>
#include <QProcess>
#include <QPushButton>

#include "app/kit/notice_bar.h"
#include "app/session/live_preview.h"
#include "tests/app/on_disk/changing_files.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

using Counts = std::vector<int>;
const auto on_disk_cause = QStringLiteral("file-on-disk");
const auto right_cause = QStringLiteral("right-to-write");

/// One window of the program, on the state folder that it shares with the others.
struct Window {
    explicit Window(const QString& state) : window(std::make_unique<MainWindow>(session, state)) {
        window->resize(1280, 760);
        window->show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    [[nodiscard]] Counts counts() const { return counts_of(*session.piece()); }
    [[nodiscard]] QString said(const QString& cause) const { return window->notices().words(cause); }
    [[nodiscard]] bool says(const QString& cause, const QString& words) const {
        return wait_until([&] { return said(cause).contains(words); });
    }
    void press(const QString& cause, const QString& words) const {
        auto* button = window->notices().button(cause, words);
        ASSERT_TRUE(button) << words.toStdString();
        QTest::mouseClick(button, Qt::LeftButton);
        QTest::qWait(20);
    }

    DocumentSession session;
    std::unique_ptr<MainWindow> window;
};

/// Types a name in the next dialog for saving, and says yes to what the dialog itself asks.
void choose_in_next_dialog(const QString& path) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, path] {
        auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
        if (!dialog) return;
        auto* name = dialog->findChild<QLineEdit*>();
        // The dialog writes there too, once it has read its folder.
        if (name->text() != path) return name->setText(path);
        timer->stop();
        timer->deleteLater();
        dialog->setOption(QFileDialog::DontConfirmOverwrite);
        // Later: a question opened from here would hold up this timer.
        QTimer::singleShot(0, dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Save),
                           &QPushButton::click);
    });
    timer->start(100);
}

/// Answers the next messages one after the other, and is gone with the test.
class Answer {
  public:
    explicit Answer(const QStringList& words) : words_(words) {
        QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] {
            auto* message = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (message && !words_.isEmpty()) answer(*message, words_.takeFirst());
        });
        timer_.start(10);
    }
    ~Answer() { EXPECT_TRUE(words_.isEmpty()) << "not asked: " << words_.join(u' ').toStdString(); }
    Answer(const Answer&) = delete;
    Answer& operator=(const Answer&) = delete;

    QString seen;

  private:
    void answer(QMessageBox& message, const QString& words) {
        seen += message.text() + u'\n' + message.informativeText();
        for (auto* button : message.buttons()) {
            if (button->text().remove(u'&').contains(words)) return button->click();
        }
        ADD_FAILURE() << "no button " << words.toStdString() << " in " << seen.toStdString();
        message.reject();
    }

    QStringList words_;
    QTimer timer_;
};

/// Takes the name that a dialog for saving suggests, with Return.
class TakeSuggestion {
  public:
    TakeSuggestion() {
        QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] {
            auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
            if (!dialog) return;
            if (is_taken_) return dialog->reject();  // Return led somewhere else
            is_taken_ = true;
            QTest::keyClick(dialog->findChild<QLineEdit*>(), Qt::Key_Return);
        });
        timer_.start(300);
    }

  private:
    QTimer timer_;
    bool is_taken_ = false;
};

class OneFile : public ::testing::Test {
  protected:
    void SetUp() override {
        QApplication::setQuitOnLastWindowClosed(false);
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        write_in_place(pup, toy_bytes({6, 12}));
    }
    [[nodiscard]] std::unique_ptr<Window> open(const QString& path) {
        auto opened = std::make_unique<Window>(state);
        opened->window->begin(path);
        return opened;
    }
    [[nodiscard]] QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }

    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state/roundwright"));
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
};

TEST_F(OneFile, WhereAFolderHasTakenItsPlaceAnotherNameIsSuggested) {
    const auto opened = open(pup);
    set_first_count(opened->session, 7);
    ASSERT_TRUE(QFile::remove(pup));
    ASSERT_TRUE(QDir().mkdir(pup));
    const TakeSuggestion answer;
    EXPECT_TRUE(opened->window->files().save_as());
    EXPECT_EQ(opened->session.path().toStdString(), path("pup (2).roundwright").toStdString());
    EXPECT_FALSE(opened->session.modified());
}

// --- what was lost before

TEST_F(OneFile, TheSecondWindowsSaveDropsNothingOfTheFirst) {
    const auto first = open(pup);
    const auto second = open(pup);
    set_first_count(first->session, 7);
    ASSERT_TRUE(first->window->files().save());
    set_first_count(second->session, 8);
    if (second->session.modified()) {
        EXPECT_TRUE(second->window->files().save());
    }
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
}

TEST_F(OneFile, WhatAnotherProgramWroteIsNotOverwrittenWithoutAWord) {
    const auto here = open(pup);
    set_first_count(here->session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    const Answer answer({QStringLiteral("Cancel")});
    EXPECT_FALSE(here->window->files().save());
    EXPECT_TRUE(answer.seen.contains(QStringLiteral("pup"))) << answer.seen.toStdString();
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
    EXPECT_EQ(here->counts(), (Counts{7, 12}));
    EXPECT_TRUE(here->session.modified());
}

// --- two windows

TEST_F(OneFile, ASecondWindowIsToldAtOnceAndMayLook) {
    const auto first = open(pup);
    for (const QString& name : {pup, path("./pup.roundwright"), path("link"), path("hard")}) {
        if (name.endsWith(QStringLiteral("link"))) {
            ASSERT_TRUE(QFile::link(pup, name));
        }
        if (name.endsWith(QStringLiteral("hard"))) {
            ASSERT_EQ(::link(QFile::encodeName(pup).constData(), QFile::encodeName(name).constData()), 0);
        }
        const auto second = open(name);
        EXPECT_TRUE(second->said(right_cause).contains(QStringLiteral("open in another window")))
            << name.toStdString();
        EXPECT_EQ(second->counts(), (Counts{6, 12}));
        set_first_count(second->session, 9);
        EXPECT_EQ(second->counts(), (Counts{6, 12}));
        EXPECT_TRUE(second->window->windowTitle().contains(QStringLiteral("read-only")));
        EXPECT_TRUE(second->window->close()) << "there is nothing to ask";
    }
    EXPECT_EQ(first->said(right_cause), QString());
}

TEST_F(OneFile, LookOnlyPutsTheNoticeAwayUntilThereIsMoreToSay) {
    auto first = open(pup);
    const auto second = open(pup);
    second->press(right_cause, QStringLiteral("Look only"));
    EXPECT_EQ(second->said(right_cause), QString());
    second->window->follower().look();
    EXPECT_EQ(second->said(right_cause), QString());
    EXPECT_TRUE(second->session.read_only());
    first.reset();
    EXPECT_TRUE(second->says(right_cause, QStringLiteral("no longer open in the other window")));
}

TEST_F(OneFile, TheSecondWindowSeesWhatTheFirstSavesAndTakesOverWhenItCloses) {
    auto first = open(pup);
    const auto second = open(pup);
    set_first_count(first->session, 7);
    ASSERT_TRUE(first->window->files().save());
    EXPECT_TRUE(second->says(on_disk_cause, QStringLiteral("was saved elsewhere")));
    second->press(on_disk_cause, QStringLiteral("Show it as it is now"));
    EXPECT_EQ(second->counts(), (Counts{7, 12}));
    EXPECT_EQ(second->said(on_disk_cause), QString());
    set_first_count(first->session, 8);
    ASSERT_TRUE(first->window->files().save());
    first.reset();
    EXPECT_TRUE(second->says(right_cause, QStringLiteral("no longer open")));
    second->press(right_cause, QStringLiteral("Change it here"));
    EXPECT_EQ(second->counts(), (Counts{8, 12})) << "with what was saved last";
    EXPECT_EQ(second->said(right_cause), QString());
    EXPECT_EQ(second->said(on_disk_cause), QString());
    set_first_count(second->session, 9);
    EXPECT_TRUE(second->window->files().save());
    EXPECT_EQ(counts_in(pup), (Counts{9, 12}));
}

TEST_F(OneFile, ACopySavedFromTheLookingWindowIsItsOwn) {
    const auto first = open(pup);
    const auto second = open(pup);
    ASSERT_FALSE(second->session.save(path("copy.roundwright")));
    EXPECT_EQ(second->said(right_cause), QString());
    set_first_count(second->session, 9);
    EXPECT_TRUE(second->window->files().save());
    EXPECT_EQ(counts_in(pup), (Counts{6, 12}));
    const auto third = open(path("copy.roundwright"));
    EXPECT_TRUE(third->session.read_only());
}

/// The program itself, in a process of its own.
class OtherProgram {
  public:
    OtherProgram(const QString& state_home, const QString& path) {
        auto environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("XDG_STATE_HOME"), state_home);
        environment.insert(QStringLiteral("XDG_CONFIG_HOME"), state_home + QStringLiteral("/config"));
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        environment.insert(QStringLiteral("ROUNDWRIGHT_VIEW"), QStringLiteral("painter"));
        process.setProcessEnvironment(environment);
        process.start(QStringLiteral(ROUNDWRIGHT_PROGRAM), {path});
        EXPECT_TRUE(process.waitForStarted());
    }
    ~OtherProgram() {
        process.kill();
        process.waitForFinished();
    }
    void kill() {
        process.kill();
        EXPECT_TRUE(process.waitForFinished());
    }
    QProcess process;
};

TEST_F(OneFile, AProgramOfItsOwnHasTheFileUntilItIsKilled) {
    OtherProgram other(folder.filePath(QStringLiteral("state")), pup);
    const FileClaim asking(state + QStringLiteral("/open"));
    ASSERT_TRUE(wait_until([&] { return asking.is_taken_elsewhere(pup); }));
    const auto second = open(pup);
    EXPECT_TRUE(second->said(right_cause).contains(QStringLiteral("open in another window")));
    EXPECT_TRUE(second->session.read_only());
    other.kill();
    EXPECT_TRUE(second->says(right_cause, QStringLiteral("no longer open")));
    second->press(right_cause, QStringLiteral("Change it here"));
    EXPECT_FALSE(second->session.read_only());
}

// --- changed by another program

TEST_F(OneFile, WithNothingUnsavedTheirsIsToldAndTakenByOneKey) {
    const auto here = open(pup);
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("changed by another program")));
    EXPECT_EQ(here->counts(), (Counts{6, 12})) << "nothing moves unasked";
    QTest::keyClick(here->window.get(), Qt::Key_F5);
    EXPECT_EQ(here->counts(), (Counts{8, 16}));
    EXPECT_EQ(here->said(on_disk_cause), QString());
    EXPECT_FALSE(here->session.modified());
    here->session.undo_stack().undo();
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
}

TEST_F(OneFile, TheNoticeIsAnsweredByKeysAlone) {
    const auto here = open(pup);
    set_first_count(here->session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("not saved")));
    EXPECT_EQ(here->window->notices().answers(on_disk_cause),
              (QStringList{QStringLiteral("Take theirs"), QStringLiteral("Keep mine"),
                           QStringLiteral("Keep both")}));
    QTest::keyClick(here->window.get(), Qt::Key_F6, Qt::ShiftModifier);
    ASSERT_EQ(QApplication::focusWidget(),
              here->window->notices().button(on_disk_cause, QStringLiteral("Take theirs")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(wait_until([&] { return here->session.path() == path("pup (2).roundwright"); }));
    EXPECT_TRUE(here->window->rounds_view().hasFocus()) << "back to the work";
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
    EXPECT_EQ(counts_in(here->session.path()), (Counts{7, 12}));
}

TEST_F(OneFile, EachAnswerBeforeSavingKeepsWhatItSays) {
    for (const QString& answer :
         {QStringLiteral("Keep mine"), QStringLiteral("Take theirs"), QStringLiteral("Keep both")}) {
        write_in_place(pup, toy_bytes({6, 12}));
        const auto here = open(pup);
        set_first_count(here->session, 7);
        rename_over(pup, toy_bytes({8, 16}));
        const Answer given({answer});
        const bool saved = here->window->files().save();
        EXPECT_EQ(saved, answer != QStringLiteral("Take theirs"));
        EXPECT_EQ(counts_in(pup), answer == QStringLiteral("Keep mine") ? (Counts{7, 12}) : (Counts{8, 16}));
        EXPECT_FALSE(here->session.modified());
        if (answer == QStringLiteral("Take theirs")) {
            EXPECT_EQ(here->counts(), (Counts{8, 16}));
            here->session.undo_stack().undo();
        }
        EXPECT_EQ(here->counts(), (Counts{7, 12}));
        if (!here->session.modified()) continue;
        const Answer leaving({QStringLiteral("Don’t save")});
        EXPECT_TRUE(here->window->close());
    }
}

TEST_F(OneFile, ClosingWithAConflictLosesNothing) {
    const auto here = open(pup);
    set_first_count(here->session, 7);
    rename_over(pup, toy_bytes({8, 16}));
    const Answer answer({QStringLiteral("Save"), QStringLiteral("Take theirs")});
    EXPECT_FALSE(here->window->close()) << "what was mine is one step back: the window stays";
    here->session.undo_stack().undo();
    EXPECT_EQ(here->counts(), (Counts{7, 12}));
}

TEST_F(OneFile, AFileThatIsGoneIsSaidAndSavedAgain) {
    const auto here = open(pup);
    ASSERT_TRUE(QFile::remove(pup));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("no longer in its folder")));
    EXPECT_TRUE(here->window->isWindowModified());
    EXPECT_TRUE(wait_until([&] { return here->session.standing().kept; })) << "no file has it: it is kept";
    here->press(on_disk_cause, QStringLiteral("Save it again"));
    EXPECT_EQ(counts_in(pup), (Counts{6, 12}));
    EXPECT_EQ(here->said(on_disk_cause), QString());
    EXPECT_FALSE(here->window->isWindowModified());
}

TEST_F(OneFile, ABrokenFileIsSaidAndTheToyIsSafe) {
    const auto here = open(pup);
    write_in_place(pup, "half of a");
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("can no longer be read")));
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
    const Answer answer({QStringLiteral("OK")});
    QTest::keyClick(here->window.get(), Qt::Key_F5);
    EXPECT_TRUE(answer.seen.contains(QStringLiteral("could not be read"))) << answer.seen.toStdString();
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
    here->press(on_disk_cause, QStringLiteral("Keep mine"));
    EXPECT_EQ(counts_in(pup), (Counts{6, 12}));
    EXPECT_EQ(here->said(on_disk_cause), QString());
}

TEST_F(OneFile, ARenamedFileIsFollowedAndSaid) {
    const auto here = open(pup);
    move_file(pup, path("seal.roundwright"));
    EXPECT_TRUE(wait_until([&] { return here->window->windowTitle().startsWith(QStringLiteral("seal")); }));
    EXPECT_EQ(here->said(on_disk_cause), QString());
}

TEST_F(OneFile, AWriteProtectedFileIsSaid) {
    ASSERT_EQ(::chmod(QFile::encodeName(pup).constData(), 0444), 0);
    const auto here = open(pup);
    EXPECT_TRUE(here->said(right_cause).contains(QStringLiteral("write-protected")));
    set_first_count(here->session, 7);
    EXPECT_EQ(here->counts(), (Counts{7, 12})) << "it may be changed, and saved under another name";
    ASSERT_FALSE(here->session.save(path("mine.roundwright")));
    EXPECT_EQ(here->said(right_cause), QString());
}

// --- while something else goes on

TEST_F(OneFile, WhatIsTypedInACellWhenTheFileChangesIsNotLost) {
    MakerAtTheWindow maker(toy_of({6, 12, 18}));
    maker.click_cell(1);
    maker.type(QStringLiteral("2"));
    rename_over(maker.file(), toy_bytes({8, 16}));
    EXPECT_TRUE(wait_until([&] { return !maker.window->notices().words(on_disk_cause).isEmpty(); }));
    maker.type(QStringLiteral("4"));
    auto* theirs = maker.window->notices().button(on_disk_cause, QStringLiteral("Take theirs"));
    ASSERT_TRUE(theirs);
    maker.click(theirs);
    EXPECT_TRUE(wait_until([&] { return maker.counts() == (Counts{8, 16}); }));
    maker.session.undo_stack().undo();
    EXPECT_EQ(maker.counts(), (Counts{6, 24, 18})) << "what was typed was said before theirs was taken";
}

TEST_F(OneFile, F5SaysWhatIsTypedInACellBeforeItTakesTheirs) {
    MakerAtTheWindow maker(toy_of({6, 12, 18}));
    maker.click_cell(1);
    maker.type(QStringLiteral("24"));
    rename_over(maker.file(), toy_bytes({8, 16}));
    EXPECT_TRUE(wait_until([&] { return !maker.window->notices().words(on_disk_cause).isEmpty(); }));
    maker.press(Qt::Key_F5);
    EXPECT_EQ(maker.counts(), (Counts{8, 16}));
    maker.session.undo_stack().undo();
    EXPECT_EQ(maker.counts(), (Counts{6, 24, 18}));
}

TEST_F(OneFile, TheLineOfNextRoundsKeepsItsWords) {
    MakerAtTheWindow maker(toy_of({6, 12, 18}));
    maker.window->fast_entry().focus_line();
    maker.type(QStringLiteral("24, 30"));
    rename_over(maker.file(), toy_bytes({8, 16}));
    EXPECT_TRUE(wait_until([&] { return !maker.window->notices().words(on_disk_cause).isEmpty(); }));
    EXPECT_TRUE(maker.window->fast_entry().line()->hasFocus()) << "a notice takes the keyboard from nobody";
    maker.press(Qt::Key_F5);
    EXPECT_EQ(maker.window->fast_entry().line()->text(), QStringLiteral("24, 30"));
    maker.press(Qt::Key_Return);
    EXPECT_EQ(maker.counts(), (Counts{8, 16, 24, 30}));
}

TEST_F(OneFile, APreviewGivesWayToTheirsAndComesBackAsItWas) {
    const auto here = open(pup);
    LivePreview preview(here->session, QStringLiteral("Drag"));
    preview.show(toy_of({10, 20}));
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("changed by another program")));
    EXPECT_EQ(counts_of(*here->session.piece()), (Counts{10, 20})) << "the preview goes on";
    here->window->files().reload();
    EXPECT_EQ(here->counts(), (Counts{8, 16}));
    preview.show(toy_of({11, 22}));
    preview.commit();
    EXPECT_EQ(here->counts(), (Counts{8, 16})) << "a preview of the toy of before is over";
    here->session.undo_stack().undo();
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
}

TEST_F(OneFile, ADialogThatIsOpenMeanwhileIsLeftAlone) {
    const auto here = open(pup);
    QDialog dialog(here->window.get());
    dialog.setModal(true);
    dialog.show();
    rename_over(pup, toy_bytes({8, 16}));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("changed by another program")));
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
    dialog.close();
    here->press(on_disk_cause, QStringLiteral("Take theirs"));
    EXPECT_EQ(here->counts(), (Counts{8, 16}));
}

// --- the same file again, and odd names to save under

TEST_F(OneFile, OpeningTheOpenFileAgainAsksOnlyWhereThereIsSomethingToLose) {
    const auto here = open(pup);
    EXPECT_TRUE(here->window->files().open(pup)) << "nothing to do, nothing to ask";
    set_first_count(here->session, 7);
    const Answer answers({QStringLiteral("Keep what is here"), QStringLiteral("Take what is in the file")});
    EXPECT_TRUE(here->window->files().open(path("./pup.roundwright")));
    EXPECT_EQ(here->counts(), (Counts{7, 12}));
    EXPECT_TRUE(here->window->files().open(pup));
    EXPECT_EQ(here->counts(), (Counts{6, 12}));
    EXPECT_FALSE(here->session.modified());
    here->session.undo_stack().undo();
    EXPECT_EQ(here->counts(), (Counts{7, 12})) << "even that can be undone";
}

TEST_F(OneFile, DroppingTheOpenFileOnItsWindowAsks) {
    const auto here = open(pup);
    set_first_count(here->session, 7);
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(pup)});
    const Answer answer({QStringLiteral("Take what is in the file")});
    QDragEnterEvent enter(QPoint(20, 20), Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(&here->window->rounds_view(), &enter);
    QDropEvent drop(QPointF(20, 20), Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(&here->window->rounds_view(), &drop);
    EXPECT_TRUE(wait_until([&] { return here->counts() == (Counts{6, 12}); }));
}

TEST_F(OneFile, SaveAsOntoAFileThatIsOpenElsewhereIsRefusedInWords) {
    const QString fin = path("fin.roundwright");
    write_in_place(fin, toy_bytes({5}));
    const auto other = open(fin);
    const auto here = open(pup);
    choose_in_next_dialog(fin);
    const Answer answer({QStringLiteral("OK")});
    EXPECT_FALSE(here->window->files().save_as());
    EXPECT_TRUE(answer.seen.contains(QStringLiteral("open in another window"))) << answer.seen.toStdString();
    EXPECT_EQ(counts_in(fin), (Counts{5}));
    EXPECT_EQ(here->session.path(), pup);
}

TEST_F(OneFile, SaveAsOntoItselfSaves) {
    const auto here = open(pup);
    set_first_count(here->session, 7);
    choose_in_next_dialog(pup);
    EXPECT_TRUE(here->window->files().save_as());
    EXPECT_EQ(counts_in(pup), (Counts{7, 12}));
    rename_over(pup, toy_bytes({8, 16}));
    set_first_count(here->session, 9);
    choose_in_next_dialog(pup);
    const Answer answer({QStringLiteral("Cancel")});
    EXPECT_FALSE(here->window->files().save_as()) << "theirs is not overwritten by that way either";
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
}

TEST_F(OneFile, SaveAsUnderAnotherNameOfItsOwnFileIsNoOtherWindow) {
    const QString link = path("link.roundwright");
    const QString hard = path("hard.roundwright");
    ASSERT_TRUE(QFile::link(pup, link));
    const auto here = open(pup);
    rename_over(pup, toy_bytes({8, 16}));
    set_first_count(here->session, 7);
    {
        choose_in_next_dialog(link);
        const Answer answer({QStringLiteral("Cancel")});
        EXPECT_FALSE(here->window->files().save_as()) << "through the link it is the file that was changed";
    }
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
    ASSERT_EQ(::link(QFile::encodeName(pup).constData(), QFile::encodeName(hard).constData()), 0);
    choose_in_next_dialog(hard);
    EXPECT_TRUE(here->window->files().save_as());
    EXPECT_EQ(here->session.path(), hard);
    EXPECT_EQ(counts_in(hard), (Counts{7, 12}));
    EXPECT_EQ(counts_in(pup), (Counts{8, 16}));
}

TEST_F(OneFile, NamesAreTextInNoticesAndQuestions) {
    const QString odd = path("<b>pup<img src=x>.roundwright");
    ASSERT_NO_FATAL_FAILURE(write_in_place(odd, toy_bytes({6, 12})));
    const auto here = open(odd);
    set_first_count(here->session, 7);
    rename_over(odd, toy_bytes({8, 16}));
    EXPECT_TRUE(here->says(on_disk_cause, QStringLiteral("<b>pup<img src=x>")));
    auto* theirs = here->window->notices().button(on_disk_cause, QStringLiteral("Keep both"));
    ASSERT_TRUE(theirs);
    EXPECT_TRUE(theirs->toolTip().contains(QStringLiteral("<b>pup<img src=x> (2)")))  // tips are plain text
        << theirs->toolTip().toStdString();
    Qt::TextFormat format = Qt::AutoText;
    QTimer::singleShot(200, qApp, [&format] {
        auto* message = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
        ASSERT_TRUE(message);
        format = message->textFormat();
        message->reject();
    });
    EXPECT_FALSE(here->window->files().save());
    EXPECT_EQ(format, Qt::PlainText);
}

TEST_F(OneFile, SaveAsOntoWhatIsNoToyAsks) {
    const QString list = path("list.roundwright");
    write_in_place(list, "milk, yarn, buttons");
    const auto here = open(pup);
    choose_in_next_dialog(list);
    const Answer answer({QStringLiteral("Cancel")});
    EXPECT_FALSE(here->window->files().save_as());
    EXPECT_TRUE(answer.seen.contains(QStringLiteral("is not a toy"))) << answer.seen.toStdString();
    EXPECT_EQ(bytes_in(list), "milk, yarn, buttons");
}

TEST_F(OneFile, SaveAsOntoAWriteProtectedFileIsRefusedInWords) {
    const QString fin = path("fin.roundwright");
    write_in_place(fin, toy_bytes({5}));
    ASSERT_EQ(::chmod(QFile::encodeName(fin).constData(), 0444), 0);
    const auto here = open(pup);
    choose_in_next_dialog(fin);
    const Answer answer({QStringLiteral("OK")});
    EXPECT_FALSE(here->window->files().save_as());
    EXPECT_TRUE(answer.seen.contains(QStringLiteral("write-protected"))) << answer.seen.toStdString();
    EXPECT_EQ(counts_in(fin), (Counts{5}));
}

}  // namespace
}  // namespace roundwright::app
