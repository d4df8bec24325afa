#include <gtest/gtest.h>
#include <memory>

#include <QAbstractItemModelTester>
#include <QKeyEvent>
#include <QListView>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSettings>
#include <QTableView>
#include <QTextBlock>

#include "app/kit/action_keys.h"
#include "app/kit/still_label.h"
#include "app/read_pattern/added_pieces.h"
#include "app/read_pattern/findings_part.h"
#include "app/read_pattern/mends_model.h"
#include "app/read_pattern/pattern_review.h"
#include "app/read_pattern/review_model.h"
#include "app/read_pattern/text_places.h"
#include "core/assembly/sewing_steps.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const QString slips = QStringLiteral(
    "Head\n"
    "Rnd 1: 6 sc in magic ring (6)\n"
    "Rnd 2: inc around (12)\n"
    "Rnd 3: [sc 1, inc] x 5 (18)\n"
    "Rnd 4: sc in each st around (18)\n"
    "Rnd 5: [sc 2, inc] x 7 (24)\n"
    "Rnd 6: sc in each st around (24)\n");

/// The review with the keyboard in it, and nothing else.
class ReviewWalk : public ::testing::Test {
  protected:
    void open(const QString& text) {
        session.start(toy_of({6, 12}));
        review = std::make_unique<PatternReview>(session, text);
        for (QAbstractItemModel* model : models())
            testers.push_back(std::make_unique<QAbstractItemModelTester>(
                model, QAbstractItemModelTester::FailureReportingMode::Fatal));
        review->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(review.get()));
        ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    }
    void TearDown() override { ActionKeys::instance().take_usual_for_all(); }

    [[nodiscard]] std::vector<QAbstractItemModel*> models() const {
        return {review->findChild<ReviewModel*>(), review->findChild<MendsModel*>()};
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    void press_and_read(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        press(key, modifiers);
        ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    }
    [[nodiscard]] QString said() const { return review->findChild<StillLabel*>()->words(); }
    [[nodiscard]] QString line(int number) const {
        return review->source().document()->findBlockByNumber(number - 1).text();
    }
    [[nodiscard]] QString chosen() const { return review->source().textCursor().selectedText(); }
    [[nodiscard]] int cursor_line() const { return review->source().textCursor().blockNumber() + 1; }
    [[nodiscard]] bool at_mends() const {
        return QApplication::focusWidget() != nullptr &&
               QApplication::focusWidget()->accessibleName() == QStringLiteral("Fixes for this finding");
    }

    DocumentSession session;
    std::unique_ptr<PatternReview> review;
    std::vector<std::unique_ptr<QAbstractItemModelTester>> testers;
};

TEST_F(ReviewWalk, AKeyGoesFromFindingToFindingAndSaysWhereItTurns) {
    open(slips);
    ASSERT_EQ(review->pattern().diagnostics.size(), 2U);
    EXPECT_EQ(QApplication::focusWidget(), &review->source());
    press(Qt::Key_F8);
    EXPECT_EQ(cursor_line(), 4);
    EXPECT_FALSE(chosen().isEmpty());
    EXPECT_TRUE(said().startsWith(QStringLiteral("Finding 1 of 2. Line 4, column "))) << said().toStdString();
    EXPECT_TRUE(at_mends());
    auto* table = review->findChild<QTableView*>();
    EXPECT_EQ(review->findChild<ReviewModel*>()->line(table->currentIndex().row()), 4);
    press(Qt::Key_F8);
    EXPECT_EQ(cursor_line(), 6);
    press(Qt::Key_F8);
    EXPECT_EQ(cursor_line(), 4);
    EXPECT_TRUE(said().startsWith(QStringLiteral("From the end back to the top."))) << said().toStdString();
    press(Qt::Key_F8, Qt::ShiftModifier);
    EXPECT_EQ(cursor_line(), 6);
    EXPECT_TRUE(said().startsWith(QStringLiteral("From the top to the end."))) << said().toStdString();
}

TEST_F(ReviewWalk, TheNextFindingIsNextToWhereTheMakerIs) {
    open(slips);
    press(Qt::Key_End, Qt::ControlModifier);
    press(Qt::Key_F8, Qt::ShiftModifier);
    EXPECT_EQ(cursor_line(), 6);
    press(Qt::Key_T, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), &review->source());
    press(Qt::Key_Home, Qt::ControlModifier);
    press(Qt::Key_F8);
    EXPECT_EQ(cursor_line(), 4);
}

TEST_F(ReviewWalk, EnterMakesTheMarkedFixSaysWhatCameOfItAndGoesOn) {
    open(slips);
    press(Qt::Key_F8);
    press_and_read(Qt::Key_Return);
    EXPECT_EQ(line(4), QStringLiteral("Rnd 3: [sc 1, inc] x 6 (18)"));
    EXPECT_TRUE(said().startsWith(QStringLiteral(
        "It is now 6 times instead of 5. Round 3 comes out now, with 18 stitches. Finding 1 of 1. "
        "Line 6")))
        << said().toStdString();
    EXPECT_TRUE(at_mends());
    press_and_read(Qt::Key_Return);
    EXPECT_EQ(line(6), QStringLiteral("Rnd 5: [sc 2, inc] x 6 (24)"));
    EXPECT_TRUE(said().endsWith(QStringLiteral("Nothing left to fix: the pieces can be added.")))
        << said().toStdString();
    EXPECT_TRUE(review->pattern().proved());
    press(Qt::Key_Return);
    EXPECT_TRUE(review->isVisible()) << "one Enter too many adds nothing";
    EXPECT_EQ(session.toy().pieces.size(), 1U);
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(session.toy().pieces.size(), 2U);
}

TEST_F(ReviewWalk, AnotherFixThanTheFirstIsChosenWithTheArrows) {
    open(QStringLiteral(
        "Head\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\nRnd 3: [sc 2, inc] x 6\n"));
    press(Qt::Key_F8);
    const auto& mends = review->pattern().diagnostics[0].mends;
    ASSERT_GE(mends.size(), 2U);
    const QString wanted =
        QString::fromStdString(mended(review->source().toPlainText().toStdString(), mends[1]));
    press(Qt::Key_Down);
    press_and_read(Qt::Key_Enter, Qt::KeypadModifier);
    EXPECT_EQ(review->source().toPlainText(), wanted);
}

TEST_F(ReviewWalk, AFixIsTakenBackWithOneKey) {
    open(slips);
    press(Qt::Key_F8);
    press_and_read(Qt::Key_Return);
    ASSERT_NE(review->source().toPlainText(), slips);
    press_and_read(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(review->source().toPlainText(), slips);
    EXPECT_TRUE(said().startsWith(QStringLiteral("Taken back. Finding 1 of 2. Line 4")))
        << said().toStdString();
    EXPECT_TRUE(at_mends());
    press_and_read(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(said(), QStringLiteral("Nothing to take back."));
    press_and_read(Qt::Key_X, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(line(4), QStringLiteral("Rnd 3: [sc 1, inc] x 6 (18)"));
    press(Qt::Key_T, Qt::ControlModifier);
    press_and_read(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(review->source().toPlainText(), slips) << "in the text it is the text's own";
}

TEST_F(ReviewWalk, WhatIsTypedIsLookedAtFromThere) {
    open(slips);
    press(Qt::Key_F8);
    press(Qt::Key_T, Qt::ControlModifier);
    press(Qt::Key_End);
    for (int k = 0; k < 6; ++k) press(Qt::Key_Backspace);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("6 (18)"));
    press(Qt::Key_F8);
    ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    EXPECT_EQ(line(4), QStringLiteral("Rnd 3: [sc 1, inc] x 6 (18)"));
    EXPECT_EQ(cursor_line(), 6) << "the finding that is left, none is skipped";
}

TEST_F(ReviewWalk, ATextEditedWhileItIsReadGetsNoFixOfTheOldOne) {
    open(slips);
    press(Qt::Key_F8);
    press(Qt::Key_T, Qt::ControlModifier);
    press(Qt::Key_Home, Qt::ControlModifier);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("A"));
    press(Qt::Key_Return);
    ASSERT_FALSE(review->is_read());
    // What is shown is the text of before: the fix goes where the finding is now.
    review->mend(0);
    ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    EXPECT_EQ(line(5), QStringLiteral("Rnd 3: [sc 1, inc] x 6 (18)"));
    // And what is typed stays as it is.
    press(Qt::Key_T, Qt::ControlModifier);
    press(Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("Rnd 1: 6 sc in mr (6)"));
    ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    EXPECT_EQ(review->source().toPlainText(), QStringLiteral("Rnd 1: 6 sc in mr (6)"));
}

TEST_F(ReviewWalk, AFixForAFindingThatIsGoneIsNotMade) {
    open(slips);
    auto& source = review->source();
    source.selectAll();
    source.insertPlainText(QStringLiteral("Rnd 1: 6 sc in mr (6)"));
    ASSERT_FALSE(review->is_read());
    review->mend(0);
    ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    EXPECT_EQ(source.toPlainText(), QStringLiteral("Rnd 1: 6 sc in mr (6)"));
    EXPECT_TRUE(said().contains(QStringLiteral("does not fit any more"))) << said().toStdString();
}

TEST_F(ReviewWalk, AnAnswerForAnOldTextIsNotShown) {
    QString long_text = QStringLiteral("Head\nRnd 1: 6 sc in magic ring (6)\n");
    for (int round = 2; round < 1500; ++round)
        long_text += QStringLiteral("Rnd %1: sc in each st around (6)\n").arg(round);
    session.start(toy_of({6, 12}));
    review = std::make_unique<PatternReview>(session, long_text);
    review->show();
    ASSERT_FALSE(review->is_read());
    review->source().selectAll();
    review->source().insertPlainText(slips);
    QTest::keyClick(&review->source(), Qt::Key_F8);
    bool old_shown = false;
    ASSERT_TRUE(wait_until([&] {
        old_shown = old_shown ||
                    (!review->pattern().pieces.empty() && review->pattern().pieces[0].rounds.size() > 100);
        return review->is_read();
    }));
    EXPECT_FALSE(old_shown);
    EXPECT_EQ(review->pattern().diagnostics.size(), 2U);
}

TEST_F(ReviewWalk, AHeldEnterMakesOneFix) {
    open(slips);
    press(Qt::Key_F8);
    QWidget* mends = QApplication::focusWidget();
    for (int k = 0; k < 5; ++k) {
        QKeyEvent held(QEvent::KeyPress, Qt::Key_Return, Qt::NoModifier, QStringLiteral("\r"), k > 0);
        QApplication::sendEvent(mends, &held);
    }
    ASSERT_TRUE(wait_until([&] { return review->is_read(); }));
    EXPECT_EQ(line(4), QStringLiteral("Rnd 3: [sc 1, inc] x 6 (18)"));
    EXPECT_EQ(line(6), QStringLiteral("Rnd 5: [sc 2, inc] x 7 (24)"));
}

TEST_F(ReviewWalk, ClosedInTheMiddleItLeavesTheToyAlone) {
    for (const bool by_key : {true, false}) {
        open(slips);
        press(Qt::Key_F8);
        press(Qt::Key_Return);
        if (by_key) press(Qt::Key_Escape);
        review.reset();
        testers.clear();
        QTest::qWait(50);
        EXPECT_EQ(session.toy().pieces.size(), 1U);
        EXPECT_TRUE(session.drafts().texts().empty());
    }
}

TEST_F(ReviewWalk, AFindingWithoutAFixIsGoneToInTheText) {
    open(QStringLiteral(
        "Head\nRnd 1: 6 sc in magic ring (6)\nRnd 2: wibble (12)\nRnd 3: sc in each st around (12)\n"
        "Rows 4-??: sc in each st around (12)\n"));
    press(Qt::Key_F8, Qt::ShiftModifier);
    ASSERT_TRUE(review->pattern().diagnostics.back().mends.empty());
    EXPECT_EQ(QApplication::focusWidget(), &review->source());
    EXPECT_TRUE(said().endsWith(QStringLiteral("Change it in the text."))) << said().toStdString();
}

TEST_F(ReviewWalk, NothingFoundIsSaid) {
    open(QStringLiteral("Head\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n"));
    press(Qt::Key_F8);
    EXPECT_TRUE(said().startsWith(QStringLiteral("Nothing to fix"))) << said().toStdString();
}

TEST_F(ReviewWalk, TheListsAreWalkedWithArrowsAndEnter) {
    open(slips);
    auto* list = review->findChild<QListWidget*>();
    list->setFocus();
    press(Qt::Key_Down);
    EXPECT_EQ(cursor_line(), 6);
    EXPECT_FALSE(chosen().isEmpty());
    press(Qt::Key_Return);
    EXPECT_TRUE(at_mends());
    EXPECT_TRUE(review->isVisible());
    auto* table = review->findChild<QTableView*>();
    table->setFocus();
    table->setCurrentIndex(table->model()->index(0, 0));
    for (int k = 0; k < 3; ++k) press(Qt::Key_Down);
    EXPECT_EQ(cursor_line(), 4);
    EXPECT_EQ(list->currentRow(), 0) << "its finding is the current one";
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), &review->source());
    EXPECT_EQ(cursor_line(), 4);
}

TEST_F(ReviewWalk, ItsKeysAreTheMakersToChoose) {
    ActionKeys::instance().choose(QStringLiteral("review.next"), {QKeySequence(Qt::CTRL | Qt::Key_K)});
    open(slips);
    press(Qt::Key_K, Qt::ControlModifier);
    EXPECT_EQ(cursor_line(), 4);
    for (const ActionEntry& entry : action_catalogue()) {
        if (entry.place != ActionPlace::review) continue;
        const auto* action = review->findChild<QAction*>(entry.id);
        ASSERT_NE(action, nullptr) << entry.id.toStdString();
        EXPECT_EQ(action->shortcuts(), ActionKeys::instance().keys(entry.id)) << entry.id.toStdString();
        for (const QKeySequence& keys : entry.usual)
            EXPECT_FALSE(ActionKeys::instance().fault(entry.id, keys)) << entry.id.toStdString();
    }
}

TEST(MakeMend, ChangesWhatTheTextOfTheMendSays) {
    const QString texts[] = {
        slips,
        QStringLiteral("Head\nRnd 1: 6 sc in mr (6)\nRnd 2: (inc around (12)\nRnd 3: [sc 1, inc x 6 (18)\n"),
        QString::fromUtf8("🧶 Head\n🧶 R1: 6 sc in MR (6)\n🧶🧶 R2: inc x 5 (12) 🧶\n🧶 R3: (sc, "
                          "inc) x 6 (18)\n"),
        QStringLiteral("Head\nRnd 1: 6 sc in mr (6)\nRnd 2: 12 (12)\nRnd 3: sk 1, inx around (24)\n")};
    int made = 0;
    for (const QString& text : texts) {
        for (const ReadDiagnostic& finding : read_pattern(text.toStdString()).diagnostics) {
            for (const Mend& mend : finding.mends) {
                QPlainTextEdit edit(text);
                static_cast<void>(make_mend(*edit.document(), mend));
                EXPECT_EQ(edit.toPlainText().toStdString(), mended(text.toStdString(), mend));
                edit.undo();
                EXPECT_EQ(edit.toPlainText(), text) << "one step back";
                ++made;
            }
        }
    }
    EXPECT_GT(made, 4);
}

constexpr auto on_legs =
    "Legs (x2)\n"
    "R1: 8 sc in MR (8)\n"
    "R2: sc around (8)\n"
    "R3: sc around (8). Do not fasten off the second leg.\n"
    "R4: ch 2, sc in each st of the first leg (8), sc in 2 ch, sc in each st of the second leg (8), sc in "
    "the "
    "other side of the 2 ch (20)\n"
    "R5: sc around (20)\n";

TEST(AddedPieces, ABodyOnJoinedLegsComesWithItsJoins) {
    const ReadPattern pattern = read_pattern(on_legs);
    const Toy alone = with_pieces_read(Toy{}, pattern);
    ASSERT_EQ(alone.pieces.size(), 2U);
    EXPECT_EQ(worked_on_edges(alone, 1).size(), 2U);

    // Beside legs that the toy has already, it stands on its own.
    Toy toy = toy_of({8, 8, 8});
    toy.pieces[0].make = 2;
    toy.pieces.push_back(piece_of({6, 12, 18, 12, 6}, "Shell"));
    toy.joins.push_back({.piece = {toy.pieces.id(1), 0}, .onto = {toy.pieces.id(0), 0}, .at = {}});
    const Toy both = with_pieces_read(toy, pattern);
    ASSERT_EQ(both.pieces.size(), 4U);
    ASSERT_EQ(both.joins.size(), 3U);
    EXPECT_EQ(both.joins[0], toy.joins[0]);
    const auto edges = worked_on_edges(both, 3);
    ASSERT_EQ(edges.size(), 2U);
    for (const PieceCopy& edge : edges) EXPECT_EQ(edge.piece, both.pieces.id(2));
}

TEST(AddedPieces, JoinsOfPiecesThatGoDoNotBecomeThoseOfOthers) {
    Toy toy = toy_of({});
    toy.pieces.push_back(piece_of({}, "Fin"));
    toy.joins.push_back({.piece = {toy.pieces.id(1), 0}, .onto = {toy.pieces.id(0), 0}, .at = {}});
    const Toy read = with_pieces_read(
        toy,
        read_pattern("Head\nRnd 1: 6 sc in mr (6)\nRnd 2: inc around (12)\n\nTail\nRnd 1: 6 sc in mr (6)\n"));
    ASSERT_EQ(read.pieces.size(), 2U);
    EXPECT_TRUE(read.joins.empty());
}

}  // namespace
}  // namespace roundwright::app
