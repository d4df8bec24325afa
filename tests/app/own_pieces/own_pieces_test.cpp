#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QInputDialog>
#include <QLineEdit>
#include <QMenu>
#include <QTemporaryDir>
#include <QTimer>

#include "app/own_pieces/own_piece_actions.h"
#include "app/own_pieces/own_pieces_dialog.h"
#include "app/own_pieces/piece_clipboard.h"
#include "core/toy/own_piece.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

struct OwnPiecesTest : ::testing::Test {
    OwnPiecesTest() {
        Toy toy = toy_of({6, 12, 18, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 9}, "Fin / left"));
        toy.pieces[1].features.push_back({.name = {}, .round = 1});
        for (Round& round : toy.pieces[1].rounds) round.yarn = 1;
        session.start(toy);
        session.set_current_piece(1);
    }
    static QAction* action(const QMenu& menu, const QString& name) {
        for (QAction* each : menu.actions())
            if (each->objectName() == name) return each;
        return nullptr;
    }

    QTemporaryDir folder;
    DocumentSession session;
    QWidget window;
    OwnPieceActions actions{session, &window, OwnPiecesFolder(folder.filePath(QStringLiteral("own")))};
};

TEST_F(OwnPiecesTest, APieceGoesToAnotherToyByTheClipboard) {
    QMenu menu;
    actions.fill_edit_menu(&menu);
    action(menu, QStringLiteral("edit.copy-piece"))->trigger();
    EXPECT_EQ(QApplication::clipboard()->text(), QStringLiteral("Fin / left"));
    Toy other = toy_of({6, 12, 6});
    other.yarns.resize(1);
    session.start(other);
    action(menu, QStringLiteral("edit.paste-piece"))->trigger();
    const Toy& toy = session.toy();
    ASSERT_EQ(toy.pieces.size(), 2u);
    EXPECT_EQ(toy.pieces[1].name, "Fin / left");
    EXPECT_EQ(toy.pieces[1].features.size(), 1u);
    ASSERT_EQ(toy.yarns.size(), 2u);
    EXPECT_EQ(toy.yarns[toy.pieces[1].rounds[0].yarn].name, "Tide blue");
    EXPECT_EQ(toy.joins.size(), 1u);  // it is sewn on at once
    EXPECT_EQ(session.current_piece(), 1);
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), other);
}

TEST_F(OwnPiecesTest, WhatIsNoPieceOnTheClipboardIsRefusedWithWords) {
    QApplication::clipboard()->setText(QStringLiteral("6 sc in magic ring"));
    QMenu menu;
    actions.fill_edit_menu(&menu);
    QString why;
    QObject::connect(&session, &DocumentSession::edit_refused, &session,
                     [&](const QString& words) { why = words; });
    action(menu, QStringLiteral("edit.paste-piece"))->trigger();
    EXPECT_TRUE(why.contains(QStringLiteral("No piece was copied"))) << why.toStdString();
    QMimeData broken;
    broken.setData(QStringLiteral("application/x-roundwright-piece+json"), "{\"pieces\": 3");
    EXPECT_FALSE(pieces_from_clipboard(broken));
}

TEST_F(OwnPiecesTest, KeptPiecesAreSmallToysUnderTheirNamesAndNoneIsOverwritten) {
    QMenu menu;
    actions.fill_piece_menu(&menu);
    for (int k = 0; k < 2; ++k) action(menu, QStringLiteral("piece.keep"))->trigger();
    const auto files = OwnPiecesFolder(folder.filePath(QStringLiteral("own"))).files();
    ASSERT_EQ(files.size(), 2u);
    EXPECT_TRUE(files[0].endsWith(QStringLiteral("/Fin left 2.roundwright"))) << files[0].toStdString();
    EXPECT_TRUE(files[1].endsWith(QStringLiteral("/Fin left.roundwright"))) << files[1].toStdString();
    const auto loaded = load_document_file(files[1]);
    ASSERT_FALSE(loaded.problem);
    EXPECT_EQ(loaded.document.toy.pieces.size(), 1u);
    EXPECT_EQ(loaded.document.toy.yarns.size(), 1u);
}

TEST_F(OwnPiecesTest, TheDialogShowsThemAsPicturesAndEnterTakesOne) {
    const OwnPiecesFolder own(folder.filePath(QStringLiteral("own")));
    ASSERT_FALSE(own.keep(toy_of_piece(session.toy(), 0)));
    ASSERT_FALSE(own.keep(toy_of_piece(session.toy(), 1)));
    OwnPiecesDialog dialog(own);
    dialog.show();
    auto* model = dialog.list().model();
    ASSERT_TRUE(wait_until([&] { return model->rowCount() == 2; }));
    EXPECT_EQ(model->index(0, 0).data().toString(), QStringLiteral("Fin left"));
    EXPECT_FALSE(model->index(1, 0).data(Qt::DecorationRole).value<QIcon>().isNull());
    dialog.list().setFocus();
    QTest::keyClick(&dialog.list(), Qt::Key_Right);
    QTest::keyClick(&dialog.list(), Qt::Key_Return);
    ASSERT_TRUE(dialog.chosen());
    EXPECT_EQ(std::as_const(*dialog.chosen()).pieces.front().name, "Head");
}

/// Types a name into the next dialog that asks for one.
void name_it_in_next_dialog(const QString& name) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, name] {
        auto* dialog = qobject_cast<QInputDialog*>(QApplication::activeModalWidget());
        if (!dialog) return;
        timer->stop();
        timer->deleteLater();
        auto* line = dialog->findChild<QLineEdit*>();
        line->selectAll();
        QTest::keyClicks(line, name);
        QTest::keyClick(line, Qt::Key_Return);
    });
    timer->start(5);
}

struct OwnPiecesDialogTest : OwnPiecesTest {
    OwnPiecesDialogTest() {
        for (std::size_t piece = 0; piece < 2; ++piece)
            EXPECT_FALSE(own.keep(toy_of_piece(session.toy(), piece)));
        dialog = std::make_unique<OwnPiecesDialog>(own);
        dialog->show();
        dialog->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        EXPECT_TRUE(wait_until([&] { return list().model()->rowCount() == 2; }));
    }
    QListView& list() { return dialog->list(); }
    [[nodiscard]] QStringList shown() {
        QStringList names;
        for (int row = 0; row < list().model()->rowCount(); ++row)
            names << list().model()->index(row, 0).data().toString();
        return names;
    }
    void come_back() {
        dialog->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }

    OwnPiecesFolder own{folder.filePath(QStringLiteral("own"))};
    std::unique_ptr<OwnPiecesDialog> dialog;
};

TEST_F(OwnPiecesDialogTest, APieceIsRenamedByKeysInItsFileToo) {
    EXPECT_TRUE(list().hasFocus());
    name_it_in_next_dialog(QStringLiteral("Flipper: long"));
    QTest::keyClick(&list(), Qt::Key_F2);
    come_back();
    EXPECT_EQ(shown(), (QStringList{QStringLiteral("Flipper long"), QStringLiteral("Head")}));
    const auto files = own.files();
    ASSERT_EQ(files.size(), 2u);
    const auto loaded = load_document_file(files[0]);
    ASSERT_FALSE(loaded.problem);
    EXPECT_EQ(loaded.document.toy.pieces[0].name, "Flipper: long");
    EXPECT_EQ(loaded.document.toy.title, "Flipper: long");
    EXPECT_EQ(loaded.document.toy.pieces[0].features.size(), 1u);
    // No other piece is written over.
    name_it_in_next_dialog(QStringLiteral("Head"));
    QTest::keyClick(&list(), Qt::Key_F2);
    come_back();
    EXPECT_EQ(shown(), (QStringList{QStringLiteral("Head 2"), QStringLiteral("Head")}));
    QTest::keyClick(&list(), Qt::Key_Return);
    ASSERT_TRUE(dialog->chosen());
    EXPECT_EQ(std::as_const(*dialog->chosen()).pieces.front().name, "Head");
    EXPECT_EQ(std::as_const(*dialog->chosen()).pieces.front().features.size(), 1u);
}

TEST_F(OwnPiecesDialogTest, APieceIsRemovedAfterAQuestionAndComesBack) {
    const QString before = own.files()[0];
    QString asked;
    answer_next_dialog(QStringLiteral("Cancel"), &asked);
    QTest::keyClick(&list(), Qt::Key_Delete);
    EXPECT_TRUE(asked.contains(QStringLiteral("Fin left"))) << asked.toStdString();
    EXPECT_EQ(own.files().size(), 2u);
    come_back();
    answer_next_dialog(QStringLiteral("Remove"));
    QTest::keyClick(&list(), Qt::Key_Delete);
    come_back();
    EXPECT_EQ(shown(), QStringList{QStringLiteral("Head")});
    EXPECT_EQ(own.files().size(), 1u);
    EXPECT_TRUE(list().hasFocus());
    EXPECT_TRUE(dialog->words().contains(QStringLiteral("“Fin left” is removed")))
        << dialog->words().toStdString();
    EXPECT_TRUE(QFile::exists(own.removed_path() + QStringLiteral("/Fin left.roundwright")));
    // One of that name was kept meanwhile.
    EXPECT_FALSE(own.keep(toy_of_piece(session.toy(), 1)));
    QTest::keyClick(&list(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(shown(), (QStringList{QStringLiteral("Head"), QStringLiteral("Fin left 2")}));
    EXPECT_EQ(own.files().size(), 3u);
    QTest::keyClick(&list(), Qt::Key_Z, Qt::ControlModifier);  // nothing more
    EXPECT_EQ(own.files().size(), 3u);
}

TEST_F(OwnPiecesDialogTest, WhatCannotBeDoneIsSaidAndNothingIsLost) {
    ASSERT_TRUE(QFile::remove(own.files()[0]));
    answer_next_dialog(QStringLiteral("Remove"));
    QTest::keyClick(&list(), Qt::Key_Delete);
    come_back();
    EXPECT_EQ(shown().size(), 2);
    EXPECT_FALSE(dialog->words().contains(QStringLiteral("is removed")));
    name_it_in_next_dialog(QStringLiteral("Other"));
    QTest::keyClick(&list(), Qt::Key_F2);
    come_back();
    EXPECT_EQ(shown()[0], QStringLiteral("Fin left"));
}

TEST_F(OwnPiecesTest, AFileThatCannotBeReadIsPassedOver) {
    ASSERT_TRUE(QDir(folder.path()).mkpath(QStringLiteral("own")));
    QFile broken(folder.filePath(QStringLiteral("own/Broken.roundwright")));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write("{");
    broken.close();
    const OwnPiecesFolder own(folder.filePath(QStringLiteral("own")));
    ASSERT_FALSE(own.keep(toy_of_piece(session.toy(), 0)));
    OwnPiecesDialog dialog(own);
    ASSERT_TRUE(wait_until([&] { return dialog.list().model()->rowCount() == 1; }));
    EXPECT_EQ(dialog.list().model()->index(0, 0).data().toString(), QStringLiteral("Head"));
}

}  // namespace
}  // namespace roundwright::app
