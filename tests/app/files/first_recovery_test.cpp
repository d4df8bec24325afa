#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QDir>
#include <QDirIterator>
#include <QProcess>

#include "app/files/autosave.h"
#include "app/files/document_files.h"
#include "app/pieces/piece_edits.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

// Run by the tests below as a program of its own, which they kill.
TEST(KillMe, DISABLED_KeepsAndWaits) {
    DocumentSession session;
    const QString document = qEnvironmentVariable("KILL_ME_DOCUMENT");
    session.start(toy_of({6, 12}));
    if (!document.isEmpty()) {
        ASSERT_FALSE(session.open(document));
    }
    Autosave autosave(session, qEnvironmentVariable("KILL_ME_STATE"));
    session.edit_piece(QStringLiteral("Rename"),
                       [](Piece& piece) { piece.name = qgetenv("KILL_ME_NAME").toStdString(); });
    if (qEnvironmentVariable("KILL_ME_BY_ITSELF").isEmpty()) autosave.keep_now();
    std::puts("kept");
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

    void killed(const QString& name, const QString& document, int after_ms = 0, bool by_itself = false) {
        QProcess program;
        auto environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("KILL_ME_STATE"), state);
        environment.insert(QStringLiteral("KILL_ME_DOCUMENT"), document);
        environment.insert(QStringLiteral("KILL_ME_NAME"), name);
        environment.insert(QStringLiteral("TMPDIR"), folder.path());
        if (by_itself) environment.insert(QStringLiteral("KILL_ME_BY_ITSELF"), QStringLiteral("1"));
        program.setProcessEnvironment(environment);
        program.start(QCoreApplication::applicationFilePath(),
                      {QStringLiteral("--gtest_filter=KillMe.*"), QStringLiteral("--gtest_also_run_disabled_tests")});
        while (!program.readAllStandardOutput().contains("kept"))
            ASSERT_TRUE(program.waitForReadyRead(20'000));
        QTest::qSleep(after_ms);
        program.kill();
        program.waitForFinished();
    }
    void start() {
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, state);
        window->show();
    }
    std::string name_after_open(const QString& path, int& asked) {
        QTimer answers;
        QObject::connect(&answers, &QTimer::timeout, [&asked] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            ++asked;
            for (auto* button : dialog->findChildren<QAbstractButton*>())
                if (button->text().contains(QStringLiteral("ring it back"))) return button->click();
            dialog->reject();
        });
        answers.start(5);
        start();
        window->begin(path);
        return session->piece() ? session->piece()->name : std::string();
    }

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
    EXPECT_EQ(victim.readAll(), "mine");
}
TEST_F(Recovery, AShippedCopyIsNotOffered) {
    ASSERT_FALSE(save_document_file(folder.filePath(QStringLiteral(".pup.roundwright.kept")), toy_of({7})));
    int asked = 0;
    name_after_open(pup, asked);
    EXPECT_EQ(asked, 0);
}
TEST_F(Recovery, NobodyElseReads) {
    QFile::setPermissions(pup, QFile::ReadOwner | QFile::WriteOwner);
    killed(QStringLiteral("Snout"), pup);
    QDirIterator files(folder.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        struct stat found {};
        ASSERT_EQ(stat(files.next().toLocal8Bit(), &found), 0);
        if (!files.filePath().contains(QStringLiteral("state")) && !files.filePath().contains(QStringLiteral("pup"))) continue;
        EXPECT_EQ(found.st_mode & 077, 0u) << files.filePath().toStdString();
    }
}
TEST_F(Recovery, TwoWindowsKeepTwoCopies) {
    DocumentSession one, two;
    ASSERT_FALSE(one.open(pup));
    ASSERT_FALSE(two.open(pup));
    Autosave a(one, state);
    Autosave b(two, state);
    one.edit_piece(QStringLiteral("x"), [](Piece& piece) { piece.name = "One"; });
    two.edit_piece(QStringLiteral("x"), [](Piece& piece) { piece.name = "Two"; });
    a.keep_now();
    b.keep_now();
    int with_one = 0, with_two = 0;
    QDirIterator files(folder.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        const auto bytes = file.readAll();
        with_one += bytes.contains("\"One\"");
        with_two += bytes.contains("\"Two\"");
    }
    EXPECT_EQ(with_one, 1);
    EXPECT_EQ(with_two, 1);
}
TEST_F(Recovery, LaterThenEdit) {
    killed(QStringLiteral("Snout"), pup);
    answer_next_dialog(QStringLiteral("Later"));
    start();
    window->begin(pup);
    session->edit_piece(QStringLiteral("x"), [](Piece& piece) { piece.name = "Later edit"; });
    window->autosave().keep_now();
    window.reset();
    int asked = 0;
    EXPECT_EQ(name_after_open(pup, asked), "Snout");
}
TEST_F(Recovery, DontSaveThenFail) {
    const QString broken = folder.filePath(QStringLiteral("broken.roundwright"));
    QFile file(broken);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{");
    file.close();
    start();
    window->begin(pup);
    session->edit_piece(QStringLiteral("x"), [](Piece& piece) { piece.name = "Edited"; });
    window->autosave().keep_now();
    answer_next_dialog(QStringLiteral("Don’t save"));
    QTimer::singleShot(50, [] { answer_next_dialog(QStringLiteral("OK")); });
    EXPECT_FALSE(window->files().open(broken));
    EXPECT_EQ(session->piece()->name, "Edited");
    bool kept = false;
    QDirIterator files(folder.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile f(files.next());
        ASSERT_TRUE(f.open(QIODevice::ReadOnly));
        kept |= f.readAll().contains("\"Edited\"");
    }
    EXPECT_TRUE(kept);
    answer_next_dialog(QStringLiteral("Don’t save"));
    window->close();
}
TEST_F(Recovery, AClockThatJumped) {
    killed(QStringLiteral("Snout"), pup);
    const timespec times[2] = {{4'000'000'000, 0}, {4'000'000'000, 0}};
    ASSERT_EQ(utimensat(AT_FDCWD, pup.toLocal8Bit(), times, 0), 0);
    int asked = 0;
    EXPECT_EQ(name_after_open(pup, asked), "Snout");
}
TEST_F(Recovery, ThroughALink) {
    killed(QStringLiteral("Snout"), pup);
    const QString link = folder.filePath(QStringLiteral("link.roundwright"));
    ASSERT_TRUE(QFile::link(pup, link));
    int asked = 0;
    EXPECT_EQ(name_after_open(link, asked), "Snout");
}
TEST_F(Recovery, NothingNewerIsNotOffered) {
    killed(QStringLiteral("Snout"), pup);
    Toy toy = toy_of({6, 12});
    toy.pieces[0].name = "Snout";
    ASSERT_FALSE(save_document_file(pup, toy));
    const timespec times[2] = {{1'000'000'000, 0}, {1'000'000'000, 0}};
    ASSERT_EQ(utimensat(AT_FDCWD, pup.toLocal8Bit(), times, 0), 0);
    int asked = 0;
    EXPECT_EQ(name_after_open(pup, asked), "Snout");
    EXPECT_EQ(asked, 0);
}
TEST_F(Recovery, WithinASecond) {
    // The child runs its event loop after saying so.
    killed(QStringLiteral("Snout"), pup, 1000, true);
    int asked = 0;
    EXPECT_EQ(name_after_open(pup, asked), "Snout");
}

}  // namespace
}  // namespace roundwright::app
