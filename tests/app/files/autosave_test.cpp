#include "app/files/autosave.h"

#include <gtest/gtest.h>

#include <QDir>

#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

void rename_piece(DocumentSession& session, const char* name) {
    session.edit_piece(QStringLiteral("Rename"), [name](Piece& piece) { piece.name = name; });
}

/// A program that goes without saving: what it left in the folder stays, its lock does not.
void crash_with(const QString& state, const QString& document, const char* piece_name) {
    DocumentSession session;
    if (document.isEmpty()) {
        session.start(toy_of({6, 12}));
    } else {
        ASSERT_FALSE(session.open(document));
    }
    const QString keep = state + QStringLiteral("-before-the-end");
    {
        Autosave autosave(session, state);
        rename_piece(session, piece_name);
        autosave.keep_now();
        ASSERT_TRUE(QDir().mkpath(keep));
        for (const auto& entry : QDir(state).entryInfoList(QDir::Files | QDir::Hidden)) {
            if (!entry.fileName().endsWith(QStringLiteral(".lock"))) {
                QFile::copy(entry.filePath(), keep + QLatin1Char('/') + entry.fileName());
            }
        }
        if (!document.isEmpty()) {
            const QFileInfo file(document);
            const QString copy =
                file.path() + QStringLiteral("/.") + file.fileName() + QStringLiteral(".kept");
            ASSERT_TRUE(QFile::copy(copy, keep + QStringLiteral("/beside")));
        }
    }
    for (const auto& entry : QDir(keep).entryInfoList(QDir::Files)) {
        QString target = state + QLatin1Char('/') + entry.fileName();
        if (entry.fileName() == QStringLiteral("beside")) {
            const QFileInfo file(document);
            target = file.path() + QStringLiteral("/.") + file.fileName() + QStringLiteral(".kept");
        }
        ASSERT_TRUE(QFile::copy(entry.filePath(), target));
    }
}

class AutosaveTest : public ::testing::Test {
  protected:
    QTemporaryDir folder;
    QString state = folder.filePath(QStringLiteral("state"));
    QString document = folder.filePath(QStringLiteral("pup.roundwright"));
};

TEST_F(AutosaveTest, KeepsNothingWhileNothingChanged) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    autosave.keep_now();
    EXPECT_EQ(QDir(state).entryList({QStringLiteral("*.roundwright")}, QDir::Files).size(), 0);
}

TEST_F(AutosaveTest, KeepsByItselfAfterAWhileAndForgetsOnSave) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, state);
    autosave.set_interval_ms(10);
    rename_piece(session, "Snout");
    const QDir kept(state);
    EXPECT_TRUE(wait_until(
        [&] { return kept.entryList({QStringLiteral("*.roundwright")}, QDir::Files).size() == 1; }));
    ASSERT_FALSE(session.save(document));
    EXPECT_EQ(kept.entryList({QStringLiteral("*.roundwright"), QStringLiteral("*.note")}, QDir::Files).size(),
              0);
    rename_piece(session, "Nose");
    EXPECT_TRUE(
        wait_until([&] { return QFile::exists(folder.filePath(QStringLiteral(".pup.roundwright.kept"))); }));
}

TEST_F(AutosaveTest, AToyThatIsGoneIsFoundAndBroughtBack) {
    crash_with(state, {}, "Snout");
    DocumentSession session;
    session.start(toy_of({6}));
    Autosave autosave(session, state);
    const auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    EXPECT_TRUE(left.front().document.isEmpty());
    ASSERT_FALSE(autosave.recover(left.front()));
    EXPECT_EQ(session.piece()->name, "Snout");
    EXPECT_TRUE(session.modified());
    EXPECT_TRUE(autosave.left_behind().empty());
    EXPECT_FALSE(QFile::exists(left.front().copy));
}

TEST_F(AutosaveTest, ChangesOfAFileComeBackUnderItsName) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    crash_with(state, document, "Snout");
    DocumentSession session;
    Autosave autosave(session, state);
    const auto left = autosave.left_beside(document);
    ASSERT_TRUE(left);
    ASSERT_FALSE(autosave.recover(*left));
    EXPECT_EQ(session.piece()->name, "Snout");
    EXPECT_EQ(session.path(), document);
    EXPECT_TRUE(session.modified());
    EXPECT_EQ(load_document_file(document).document.toy.pieces.front().name, "Head")
        << "the file itself is untouched";
    EXPECT_TRUE(QFile::exists(left->copy)) << "kept on, until it is saved";
}

TEST_F(AutosaveTest, ARunningProgramsCopyIsNotOffered) {
    ASSERT_FALSE(save_document_file(document, toy_of({6, 12})));
    DocumentSession one;
    ASSERT_FALSE(one.open(document));
    Autosave keeps(one, state);
    rename_piece(one, "Snout");
    keeps.keep_now();
    DocumentSession other;
    const Autosave looks(other, state);
    EXPECT_TRUE(looks.left_behind().empty());
    EXPECT_FALSE(looks.left_beside(document));
}

TEST_F(AutosaveTest, AnUnreadableNoteIsCleanedUp) {
    ASSERT_TRUE(QDir().mkpath(state));
    QFile note(state + QStringLiteral("/gone.note"));
    ASSERT_TRUE(note.open(QIODevice::WriteOnly));
    note.write("{ not json");
    note.close();
    DocumentSession session;
    const Autosave autosave(session, state);
    EXPECT_TRUE(autosave.left_behind().empty());
    EXPECT_FALSE(note.exists());
}

TEST_F(AutosaveTest, ADiscardedCopyIsGone) {
    crash_with(state, {}, "Snout");
    DocumentSession session;
    const Autosave autosave(session, state);
    const auto left = autosave.left_behind();
    ASSERT_EQ(left.size(), 1u);
    Autosave::discard(left.front());
    EXPECT_TRUE(autosave.left_behind().empty());
    EXPECT_FALSE(QFile::exists(left.front().copy));
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
    const auto kept = [&] {
        autosave.keep_now();
        const auto files = QDir(state).entryInfoList({QStringLiteral("*.roundwright")}, QDir::Files);
        return files.isEmpty() ? std::string()
                               : load_document_file(files.front().filePath()).document.toy.pieces[0].name;
    };
    EXPECT_EQ(kept(), "Beak");
    preview.commit();
    EXPECT_EQ(kept(), "Half dragged");
}

}  // namespace
}  // namespace roundwright::app
