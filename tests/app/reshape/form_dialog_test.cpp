#include "app/reshape/form_dialog.h"

#include <gtest/gtest.h>
#include <memory>

#include <QDir>
#include <QListWidget>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QSpinBox>

#include "app/kit/length_spin_box.h"
#include "app/reshape/join_dialog.h"
#include "app/reshape/reshape_actions.h"
#include "tests/app/app_testing.h"
#include "tests/app/listener.h"

namespace roundwright::app {
namespace {

QPushButton* button(QDialog& dialog, const QString& words) {
    for (auto* found : dialog.findChildren<QPushButton*>())
        if (found->text().remove(u'&') == words) return found;
    return nullptr;
}

QAction* turn_over(const QWidget& window) {
    for (auto* action : window.actions())
        if (action->text().contains(QStringLiteral("Turn upside down"))) return action;
    return nullptr;
}

class FormDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_units(LengthUnit::millimetres);
        session.start(toy_of({6, 12, 18, 24, 24, 18}));
    }

    void open() {
        dialog = std::make_unique<FormDialog>(session);
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        settle();
    }
    void settle() {
        ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
        QCoreApplication::processEvents();
    }
    void choose(int row) {
        auto* kinds = dialog->findChild<QListWidget*>();
        kinds->setFocus();
        QTest::keyClick(kinds, Qt::Key_Home);
        for (int i = 0; i < row; ++i) QTest::keyClick(kinds, Qt::Key_Down);
        settle();
    }

    DocumentSession session;
    std::unique_ptr<FormDialog> dialog;
};

TEST_F(FormDialogTest, AFormBecomesANewPieceInOneStep) {
    open();
    choose(1);
    EXPECT_TRUE(dialog->answer().contains(QStringLiteral("mm wide"))) << dialog->answer().toStdString();
    EXPECT_TRUE(dialog->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/form-egg.png")) ||
                QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS)));
    QTest::mouseClick(button(*dialog, QStringLiteral("Use this shape")), Qt::LeftButton);
    ASSERT_EQ(session.toy().pieces.size(), 2u);
    EXPECT_EQ(session.toy().pieces[1].name, "Egg");
    EXPECT_EQ(session.current_piece(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().pieces.size(), 1u);
}

TEST_F(FormDialogTest, TheAnswerIsSaidAndSaidAgain) {
    Listener listener;
    if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    open();
    QTest::qWait(300);
    (void)listener.take_said();
    choose(1);
    QTest::qWait(300);
    const QStringList said = listener.take_said();
    ASSERT_EQ(said.size(), 1) << said.join(QStringLiteral(" | ")).toStdString();
    EXPECT_TRUE(said.front().startsWith(dialog->answer())) << said.front().toStdString();
    QTest::keyClick(dialog->focusWidget(), Qt::Key_F7);
    EXPECT_EQ(listener.take_said(), said);
}

TEST_F(FormDialogTest, OrTakesThePlaceOfTheRounds) {
    open();
    choose(0);
    for (auto* choice : dialog->findChildren<QRadioButton*>())
        if (choice->text().contains(QStringLiteral("place"))) choice->click();
    settle();
    QTest::mouseClick(button(*dialog, QStringLiteral("Use this shape")), Qt::LeftButton);
    ASSERT_EQ(session.toy().pieces.size(), 1u);
    EXPECT_EQ(session.toy().pieces[0].name, "Head");
    EXPECT_EQ(session.toy().pieces[0].end, End::drawn_closed);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NEAR(session.study(0)->measures().width_mm, 60, 2.5);
}

// A cylinder's stuffed ends bulge: with the nearest stitches it comes out a good deal taller than its form.
TEST_F(FormDialogTest, RoundsAreForTheSizeUnlessTheFormIsWanted) {
    open();
    choose(4);
    const QRegularExpression size(QStringLiteral("^6[0-2].mm wide .*, 7[0-4].mm tall "));  // 60 and 72 wanted
    EXPECT_TRUE(size.match(dialog->answer()).hasMatch()) << dialog->answer().toStdString();
    for (auto* choice : dialog->findChildren<QRadioButton*>())
        if (choice->text().remove(u'&').startsWith(QStringLiteral("Closest"))) choice->click();
    settle();
    EXPECT_TRUE(dialog->answer().startsWith(QStringLiteral("Comes out 6"))) << dialog->answer().toStdString();
    EXPECT_TRUE(dialog->answer().endsWith(QStringLiteral("Choose tidy rounds to get closer to the size.")));
}

TEST_F(FormDialogTest, InThePlaceOfRoundsItSaysWhatToUndoAndKeepsTheFace) {
    Toy toy = toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6});
    toy.pieces[0].worked.rounds = 5;
    Feature eyes;
    eyes.round = 4;
    toy.pieces[0].features = {eyes};
    session.start(toy);
    open();
    choose(0);
    EXPECT_TRUE(dialog->frog_back().isEmpty());  // a new piece undoes nothing
    for (auto* choice : dialog->findChildren<QRadioButton*>())
        if (choice->text().contains(QStringLiteral("place"))) choice->click();
    settle();
    EXPECT_EQ(dialog->frog_back().toStdString(), "Keep rounds 1 to 4, undo 1 round (24 stitches).");
    QTest::mouseClick(button(*dialog, QStringLiteral("Use this shape")), Qt::LeftButton);
    EXPECT_EQ(session.piece()->worked.rounds, 4);
    EXPECT_EQ(session.piece()->features.size(), 1u);
}

TEST_F(FormDialogTest, EveryFormCanBeUsed) {
    open();
    for (int kind = 0; kind < 8; ++kind) {
        choose(kind);
        EXPECT_TRUE(button(*dialog, QStringLiteral("Use this shape"))->isEnabled()) << kind;
    }
}

TEST_F(FormDialogTest, SizesThatDoNotGoTogetherAreSaid) {
    open();
    choose(2);  // pear
    LengthSpinBox* top = nullptr;
    for (auto* box : dialog->findChildren<LengthSpinBox*>())
        if (box->isVisible()) top = box;  // the last of wide, tall, top
    top->setFocus();
    QTest::keyClick(top, Qt::Key_A, Qt::ControlModifier);
    for (const char letter : {'9', '9'}) QTest::keyClick(top, letter);
    QTest::keyClick(top, Qt::Key_Tab);
    settle();
    EXPECT_EQ(dialog->answer().toStdString(), "The top must be narrower than the widest part.");
    EXPECT_FALSE(button(*dialog, QStringLiteral("Use this shape"))->isEnabled());
}

TEST_F(FormDialogTest, TwoPiecesAreWorkedAsOne) {
    Toy toy = toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6});
    toy.pieces.push_back(piece_of({6, 12, 18, 18, 18, 12, 6}, "Body"));
    toy.pieces[0].end = End::drawn_closed;
    toy.pieces[0].worked.rounds = 9;  // past the neck
    session.start(toy);
    JoinDialog join(session);
    join.show();
    join.findChild<QSpinBox*>()->setValue(12);
    EXPECT_EQ(join.frog_back().toStdString(), "Keep rounds 1 to 8, undo 1 round (6 stitches).");
    QTest::mouseClick(button(join, QStringLiteral("Join them")), Qt::LeftButton);
    EXPECT_GT(session.toy().pieces[0].rounds.size(), 9u);
    EXPECT_EQ(session.piece()->worked.rounds, 8);
    EXPECT_EQ(session.toy().pieces[1], toy.pieces[1]);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), toy);
}

TEST_F(FormDialogTest, APieceIsTurnedOver) {
    QWidget window;
    ReshapeActions actions(session, &window);
    QAction* turn = turn_over(window);
    ASSERT_NE(turn, nullptr);
    turn->trigger();
    EXPECT_EQ(counts_of(*session.piece()), (std::vector<int>{24, 24, 18, 12, 6}));
    EXPECT_EQ(std::get<OpenTube>(session.piece()->start).chains, 18);
}

TEST_F(FormDialogTest, APieceBegunIsNotTurnedOverUnasked) {
    session.edit_piece(QStringLiteral("worked"), [](Piece& piece) { piece.worked.rounds = 3; });
    const auto before = counts_of(*session.piece());
    QWidget window;
    ReshapeActions actions(session, &window);
    QAction* turn = turn_over(window);
    ASSERT_NE(turn, nullptr);
    QString asked;
    answer_next_dialog(QStringLiteral("Cancel"), &asked);
    turn->trigger();
    EXPECT_TRUE(asked.contains(QStringLiteral("You have worked 3 rounds of Head"))) << asked.toStdString();
    EXPECT_EQ(counts_of(*session.piece()), before);
    answer_next_dialog(QStringLiteral("Turn it upside down"), &asked);
    turn->trigger();
    EXPECT_NE(counts_of(*session.piece()), before);
}

}  // namespace
}  // namespace roundwright::app
