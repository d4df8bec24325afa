#include "app/reshape/reshape_dialog.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <memory>

#include <QAbstractItemModelTester>
#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QDoubleSpinBox>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QTableView>

#include "app/kit/length_spin_box.h"
#include "app/reshape/preview_stack.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const auto pup_sample = QStringLiteral(ROUNDWRIGHT_SOURCE "/samples/seal-pup.roundwright");

class ReshapeDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session = std::make_unique<DocumentSession>();
        session->preferences().set_units(LengthUnit::millimetres);
        window = std::make_unique<MainWindow>(*session, folder.filePath(QStringLiteral("state")));
        window->resize(1280, 760);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_FALSE(session->open(pup_sample));
        ASSERT_TRUE(wait_for_shape(*session));
    }

    void mark_worked(int rounds) {
        session->edit_piece(QStringLiteral("worked"),
                            [rounds](Piece& piece) { piece.worked.rounds = rounds; });
        ASSERT_TRUE(wait_for_shape(*session));
    }

    void open_dialog(Qt::KeyboardModifiers modifiers = Qt::ControlModifier) {
        QTest::keyClick(window.get(), Qt::Key_R, modifiers);
        ASSERT_TRUE(wait_until([&] { return window->findChild<ReshapeDialog*>() != nullptr; }));
        dialog = window->findChild<ReshapeDialog*>();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
        settle();
    }

    void settle() {
        ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
        QCoreApplication::processEvents();
    }

    void undo() {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    }

    /// Typed into the field that has the focus, as a maker does.
    void type(const QString& text) {
        auto* box = dialog->focusWidget();
        QTest::keyClick(box, Qt::Key_A, Qt::ControlModifier);
        for (const QChar letter : text) QTest::keyClick(box, letter.toLatin1());
        QTest::keyClick(box, Qt::Key_Return);
        settle();
    }

    template <class Button>
    Button* button_like(const QString& words) {
        for (auto* found : dialog->findChildren<Button*>())
            if (found->text().remove(u'&') == words) return found;
        return nullptr;
    }
    QPushButton* button(const QString& words) { return button_like<QPushButton>(words); }

    template <class View>
    View* named(const QString& name) {
        for (auto* found : dialog->findChildren<View*>())
            if (found->accessibleName() == name) return found;
        return nullptr;
    }

    void keep_picture(const QString& name) const {
        QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
        EXPECT_TRUE(dialog->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/%1.png").arg(name)));
    }

    QTemporaryDir folder;
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
    QPointer<ReshapeDialog> dialog;
};

TEST_F(ReshapeDialogTest, AWidthTypedGivesRoundsAndWhatToUndoAndOneUndoStep) {
    mark_worked(11);
    const Toy before = session->toy();
    open_dialog();
    type(QStringLiteral("60"));
    EXPECT_TRUE(dialog->answer().contains(QStringLiteral("mm wide"))) << dialog->answer().toStdString();
    EXPECT_EQ(dialog->frog_back().toStdString(), "Keep rounds 1 to 6, undo 5 rounds (234 stitches).");
    EXPECT_EQ(session->toy(), before);  // nothing happens before it is accepted
    keep_picture(QStringLiteral("reshape-width"));
    const int steps = session->undo_stack().count();
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Return);
    ASSERT_TRUE(wait_until([&] { return dialog.isNull() || !dialog->isVisible(); }));
    EXPECT_EQ(session->undo_stack().count(), steps + 1);
    EXPECT_EQ(session->piece()->worked.rounds, 6);
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_NEAR(session->study(0)->measures().width_mm, 60, 2.5);
    undo();
    EXPECT_EQ(session->toy(), before);
}

TEST_F(ReshapeDialogTest, TheFirstEnterShowsAndTheSecondUses) {
    open_dialog();
    type(QStringLiteral("55"));
    ASSERT_FALSE(dialog.isNull());
    EXPECT_TRUE(dialog->isVisible());
}

TEST_F(ReshapeDialogTest, AWayOnThatUndoesNothingCanBeChosen) {
    mark_worked(11);
    open_dialog();
    type(QStringLiteral("60"));
    auto* ways = named<QTableView>(QStringLiteral("Other ways to go on"));
    ASSERT_NE(ways, nullptr);
    ASSERT_TRUE(ways->isVisible());
    ASSERT_GE(ways->model()->rowCount(), 3);
    const QAbstractItemModelTester tester(ways->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    ways->setFocus();
    QTest::keyClick(ways, Qt::Key_End, Qt::ControlModifier);
    EXPECT_EQ(dialog->frog_back().toStdString(), "Keep rounds 1 to 11 and go on from there.");
    QTest::mouseClick(button(QStringLiteral("Use these rounds")), Qt::LeftButton);
    EXPECT_EQ(session->piece()->worked.rounds, 11);
    EXPECT_NE(session->piece()->rounds.size(), 23u);
}

// "as wante" and "57 mm, 2 mm off" when 48 was asked for.
TEST_F(ReshapeDialogTest, NoAnswerIsCutAtTheDefaultSizeAndSaysHowFarTheSizeIsOff) {
    mark_worked(16);
    open_dialog();
    type(QStringLiteral("48"));
    auto* ways = named<QTableView>(QStringLiteral("Other ways to go on"));
    ASSERT_NE(ways, nullptr);
    ASSERT_TRUE(ways->isVisible());
    QCoreApplication::processEvents();
    const int last = ways->model()->columnCount() - 1;
    EXPECT_LE(ways->columnViewportPosition(last) + ways->columnWidth(last), ways->viewport()->width());
    for (int column = 0; column <= last; ++column)
        EXPECT_GE(ways->columnWidth(column),
                  static_cast<QAbstractItemView*>(ways)->sizeHintForColumn(column));
    dialog->resize(1016, 660);  // a screen of 1024 x 700
    QCoreApplication::processEvents();
    EXPECT_LE(dialog->width(), 1016);
    EXPECT_LE(ways->mapTo(dialog.data(), QPoint(ways->width(), 0)).x(), dialog->width());
    const int row = ways->model()->rowCount() - 1;
    const QString width = ways->model()->index(row, 1).data().toString();
    EXPECT_TRUE(width.contains(QStringLiteral("(+"))) << width.toStdString();
}

TEST_F(ReshapeDialogTest, TheRoundsStandSideBySide) {
    open_dialog();
    type(QStringLiteral("60"));
    auto* rounds = named<QTableView>(QStringLiteral("Rounds, now and new"));
    ASSERT_NE(rounds, nullptr);
    const auto text = [&](int row, int column) {
        return rounds->model()->index(row, column).data().toString();
    };
    const QAbstractItemModelTester tester(rounds->model(),
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(text(0, 3).toStdString(), "same");
    EXPECT_EQ(text(10, 1).toStdString(), "48");
    EXPECT_EQ(text(22, 3).toStdString(), "gone");
    type(QStringLiteral("90"));  // other rows under the tester
    EXPECT_EQ(text(23, 3).toStdString(), "new");
}

TEST_F(ReshapeDialogTest, CancelLeavesEverythingAsItWas) {
    const Toy before = session->toy();
    const int steps = session->undo_stack().count();
    open_dialog();
    type(QStringLiteral("44"));
    QTest::keyClick(dialog, Qt::Key_Escape);
    EXPECT_EQ(session->toy(), before);
    EXPECT_EQ(session->undo_stack().count(), steps);
}

TEST_F(ReshapeDialogTest, WhatCannotBeHadIsSaidAndCannotBeUsed) {
    open_dialog();
    type(QStringLiteral("2"));
    EXPECT_EQ(dialog->answer().toStdString(), "That is too small to work in this yarn.");
    EXPECT_FALSE(button(QStringLiteral("Use these rounds"))->isEnabled());
    type(QStringLiteral("60"));
    EXPECT_TRUE(button(QStringLiteral("Use these rounds"))->isEnabled());
}

TEST_F(ReshapeDialogTest, AnotherHookGivesAllPiecesNewRounds) {
    open_dialog();
    dialog->set_wish(Wish::yarn_and_hook);
    settle();
    auto* hook = dialog->findChildren<QDoubleSpinBox*>().last();
    for (auto* box : dialog->findChildren<QDoubleSpinBox*>())
        if (box->isVisible()) hook = box;
    hook->setFocus();
    type(QStringLiteral("4.5"));
    QTest::mouseClick(button(QStringLiteral("Use these rounds")), Qt::LeftButton);
    EXPECT_EQ(session->toy().hook_mm, 4.5);
    EXPECT_EQ(session->undo_stack().undoText().toStdString(), "Resize all pieces");
    undo();
    EXPECT_EQ(session->toy().hook_mm, 3.5);
}

TEST_F(ReshapeDialogTest, AllPiecesMayBecomeSmallerAlike) {
    open_dialog();
    auto* alike = button_like<QCheckBox>(QStringLiteral("All pieces"));
    ASSERT_NE(alike, nullptr);
    ASSERT_TRUE(alike->isVisible());
    std::vector<double> widths;
    for (int piece = 0; piece < 4; ++piece) widths.push_back(session->study(piece)->measures().width_mm);
    type(QStringLiteral("61"));
    alike->click();
    settle();
    QTest::mouseClick(button(QStringLiteral("Use these rounds")), Qt::LeftButton);
    EXPECT_EQ(session->undo_stack().undoText().toStdString(), "Resize all pieces");
    ASSERT_TRUE(wait_for_shape(*session));
    const double scale = 61 / widths[0];
    for (int piece = 0; piece < 4; ++piece) {
        ASSERT_TRUE(wait_until([&] { return session->is_up_to_date(piece); }));
        EXPECT_NEAR(session->study(piece)->measures().width_mm, scale * widths[std::size_t(piece)], 2.5) << piece;
    }
    undo();
    EXPECT_EQ(session->undo_stack().undoText().toStdString(), "");
}

// The head is 48 stitches around: in yarn half as thick again it is half as wide again.
TEST_F(ReshapeDialogTest, TheSameRoundsInAnotherYarnSayTheirSize) {
    mark_worked(11);
    open_dialog();
    dialog->set_wish(Wish::yarn_and_hook);
    settle();
    EXPECT_FALSE(button(QStringLiteral("Use these rounds"))->isEnabled());  // nothing changes yet
    auto* weight = named<QComboBox>(QStringLiteral("Yarn"));
    ASSERT_NE(weight, nullptr);
    weight->setFocus();
    QTest::keyClick(weight, Qt::Key_5);  // "5  Bulky"
    settle();
    for (auto* choice : dialog->findChildren<QRadioButton*>())
        if (choice->text() == QStringLiteral("Keep the roun&ds")) choice->click();
    settle();
    EXPECT_TRUE(dialog->answer().contains(QStringLiteral("23 rounds"))) << dialog->answer().toStdString();
    EXPECT_EQ(dialog->frog_back().toStdString(), "Keep nothing: undo all 11 rounds (360 stitches).");
    keep_picture(QStringLiteral("reshape-yarn"));
    const Toy before = session->toy();
    const double width_before = session->study(0)->measures().width_mm;
    QTest::mouseClick(button(QStringLiteral("Use these rounds")), Qt::LeftButton);
    EXPECT_EQ(session->piece()->rounds, before.pieces[0].rounds);
    EXPECT_GT(session->toy().hook_mm, 6);
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_GT(session->study(0)->measures().width_mm, 1.4 * width_before);
    EXPECT_EQ(session->undo_stack().undoText().toStdString(), "Change yarn or hook");
    undo();
    EXPECT_EQ(session->toy(), before);
}

TEST_F(ReshapeDialogTest, SaysHowNearTheRoundsComeToALinePulled) {
    open_dialog(Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(dialog->answer().startsWith(QStringLiteral("Drag a handle, or")))
        << dialog->answer().toStdString();
    OutlineView& outline = dialog->preview().outline();
    outline.set_handle(16);
    for (int i = 0; i < 2; ++i) QTest::keyClick(&outline, Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_TRUE(dialog->answer().contains(QStringLiteral("off the line on average")))
        << dialog->answer().toStdString();
}

TEST_F(ReshapeDialogTest, TheOutlineIsPulledByMouseAndByKeys) {
    open_dialog(Qt::ControlModifier | Qt::ShiftModifier);
    OutlineView& outline = dialog->preview().outline();
    ASSERT_TRUE(outline.drawn());
    EXPECT_FALSE(button(QStringLiteral("Use these rounds"))->isEnabled());
    outline.set_handle(12);
    const double width_before = outline.drawn()->points[12].x();
    QTest::keyClick(&outline, Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_NEAR(outline.drawn()->points[12].x(), width_before - 5, 1e-9);
    const QPoint at = outline.handle_position(12).toPoint();
    QTest::mousePress(&outline, Qt::LeftButton, {}, at);
    for (int step = 1; step <= 6; ++step) QTest::mouseMove(&outline, at - QPoint(6 * step, 0));
    QTest::mouseRelease(&outline, Qt::LeftButton, {}, at - QPoint(36, 0));
    EXPECT_LT(outline.drawn()->points[12].x(), width_before - 8);
    keep_picture(QStringLiteral("reshape-outline"));
    EXPECT_TRUE(button(QStringLiteral("Use these rounds"))->isEnabled());
    QTest::mouseClick(button(QStringLiteral("Use these rounds")), Qt::LeftButton);
    EXPECT_EQ(session->undo_stack().undoText().toStdString(), "Reshape Head");
    const auto counts = counts_of(*session->piece());
    EXPECT_LT(*std::min_element(counts.begin() + 8, counts.end() - 8), 42);
}

TEST_F(ReshapeDialogTest, TheKeysGoThroughAllWishesWithoutLosingTheFocus) {
    open_dialog();
    auto* wish = named<QComboBox>(QStringLiteral("What to change"));
    ASSERT_NE(wish, nullptr);
    wish->setFocus();
    for (int i = 0; i < wish->count(); ++i) {
        EXPECT_TRUE(wish->hasFocus()) << i;
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Down);
    }
    EXPECT_EQ(wish->currentIndex(), static_cast<int>(Wish::by_hand));
    QTest::keyClick(wish, Qt::Key_Up);
    EXPECT_EQ(wish->currentIndex(), static_cast<int>(Wish::yarn_and_hook));
}

TEST_F(ReshapeDialogTest, StartOverGivesTheOutlineBack) {
    open_dialog(Qt::ControlModifier | Qt::ShiftModifier);
    OutlineView& outline = dialog->preview().outline();
    const auto before = outline.drawn()->points;
    outline.set_handle(9);
    QTest::keyClick(&outline, Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_NE(outline.drawn()->points, before);
    QTest::mouseClick(button(QStringLiteral("Start over")), Qt::LeftButton);
    EXPECT_EQ(outline.drawn()->points, before);
    EXPECT_FALSE(button(QStringLiteral("Use these rounds"))->isEnabled());
}

TEST_F(ReshapeDialogTest, WhatWasPulledIsTakenBackStepByStep) {
    open_dialog(Qt::ControlModifier | Qt::ShiftModifier);
    OutlineView& outline = dialog->preview().outline();
    const auto untouched = outline.drawn()->points;
    outline.set_handle(9);
    for (int i = 0; i < 3; ++i) QTest::keyClick(&outline, Qt::Key_Right);
    const auto nudged = outline.drawn()->points;
    outline.set_handle(14);
    QTest::keyClick(&outline, Qt::Key_Left, Qt::ShiftModifier);
    const auto both = outline.drawn()->points;
    const QPoint at = outline.handle_position(14).toPoint();
    QTest::mousePress(&outline, Qt::LeftButton, {}, at);
    QTest::mouseMove(&outline, at + QPoint(30, 0));
    QTest::keyClick(&outline, Qt::Key_Escape);  // a drag given up is no step
    QTest::mouseRelease(&outline, Qt::LeftButton, {}, at + QPoint(30, 0));
    EXPECT_EQ(outline.drawn()->points, both);
    QTest::keyClick(&outline, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(outline.drawn()->points, nudged);
    QTest::keyClick(&outline, Qt::Key_Z, Qt::ControlModifier);  // three keys, one step
    EXPECT_EQ(outline.drawn()->points, untouched);
    EXPECT_FALSE(button(QStringLiteral("Use these rounds"))->isEnabled());
    QTest::keyClick(&outline, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(outline.drawn()->points, untouched);
    QTest::keyClick(&outline, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(outline.drawn()->points, nudged);
    QTest::mouseClick(button(QStringLiteral("Start over")), Qt::LeftButton);
    QTest::keyClick(&outline, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(outline.drawn()->points, nudged);
}

TEST_F(ReshapeDialogTest, TheNewFabricIsShownWithTheOldAsAGhost) {
    open_dialog();
    type(QStringLiteral("60"));
    QTest::mouseClick(button(QStringLiteral("Show fabric")), Qt::LeftButton);
    EXPECT_TRUE(dialog->preview().shows_fabric());
    ASSERT_TRUE(wait_until([&] { return !dialog->preview().busy(); }));
    keep_picture(QStringLiteral("reshape-fabric"));
}

TEST_F(ReshapeDialogTest, FitsASmallScreenAndNamesItsControls) {
    open_dialog();
    EXPECT_LE(dialog->minimumSizeHint().width(), 1024);
    EXPECT_LE(dialog->minimumSizeHint().height(), 700);
    for (auto* widget : dialog->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
        if (qobject_cast<QLineEdit*>(widget) || widget->objectName().startsWith(QStringLiteral("qt_")))
            continue;
        auto* accessible = QAccessible::queryAccessibleInterface(widget);
        ASSERT_NE(accessible, nullptr);
        EXPECT_FALSE(accessible->text(QAccessible::Name).isEmpty()) << widget->metaObject()->className();
    }
}

}  // namespace
}  // namespace roundwright::app
