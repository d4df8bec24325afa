#include "app/read_pattern/pattern_review.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>

#include "app/read_pattern/pattern_text_actions.h"
#include "app/read_pattern/review_model.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const QString good_text = QStringLiteral(
    "Head\n"
    "Rnd 1: 6 sc in magic ring (6)\n"
    "Rnd 2: inc around (12)\n"
    "Rnd 3: [sc 1, inc] x 6 (18)\n"
    "Rnds 4-6: sc in each st around (18)\n");

TEST(PatternReview, SaysWhatWasUnderstoodAndTakesItAsOneStep) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    PatternReview review(session, good_text);
    review.show();
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    EXPECT_TRUE(review.pattern().proved());
    auto* take = review.findChildren<QPushButton*>().last();
    for (auto* button : review.findChildren<QPushButton*>()) {
        if (button->text().contains(QStringLiteral("Take"))) take = button;
    }
    QTest::mouseClick(take, Qt::LeftButton);
    ASSERT_EQ(session.toy().pieces.size(), 2u);
    EXPECT_EQ(counts_of(session.toy().pieces[1]), (std::vector<int>{6, 12, 18, 18, 18, 18}));
    EXPECT_EQ(session.current_piece(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().pieces.size(), 1u);
}

TEST(PatternReview, AWrongCountIsNamedWithItsPlaceAndMended) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    QString text = good_text;
    text.replace(QStringLiteral("(18)\nRnds"), QStringLiteral("(20)\nRnds"));
    PatternReview review(session, text);
    review.show();
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    ASSERT_FALSE(review.pattern().proved());
    auto* problems = review.findChild<QListWidget*>();
    ASSERT_GE(problems->count(), 1);
    EXPECT_TRUE(problems->item(0)->text().contains(QStringLiteral("Line 4")))
        << problems->item(0)->text().toStdString();
    review.mend(0);
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    EXPECT_TRUE(review.pattern().proved()) << review.source().toPlainText().toStdString();
    EXPECT_TRUE(review.source().document()->isUndoAvailable());
}

TEST(PatternReview, IsReadAnewAsTheTextIsTyped) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    PatternReview review(session, QString());
    review.show();
    EXPECT_TRUE(review.pattern().pieces.empty() || review.pattern().pieces[0].rounds.empty());
    review.source().setFocus();
    QTest::keyClicks(&review.source(), QStringLiteral("Rnd 1: 6 sc in magic ring (6)"));
    EXPECT_TRUE(wait_until(
        [&] { return !review.pattern().pieces.empty() && review.pattern().pieces[0].rounds.size() == 1; }));
}

TEST(PatternReview, TheTextIsReadInTheBackground) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    QString long_text = QStringLiteral("Head\nRnd 1: 6 sc in magic ring (6)\n");
    for (int round = 2; round < 1500; ++round)
        long_text += QStringLiteral("Rnd %1: sc in each st around (6)\n").arg(round);
    PatternReview review(session, long_text);
    EXPECT_FALSE(review.is_read());
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    ASSERT_EQ(review.pattern().pieces.size(), 1U);
    EXPECT_EQ(review.pattern().pieces[0].rounds.size(), 1499U);
}

TEST(PatternReview, WhatWasJustTypedIsReadBeforeThePiecesAreTaken) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    PatternReview review(session, good_text);
    review.show();
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    review.source().setFocus();
    review.source().moveCursor(QTextCursor::End);
    QTest::keyClicks(&review.source(), QStringLiteral("Rnd 7: sc in each st around (18)"));
    for (auto* button : review.findChildren<QPushButton*>())
        if (button->text().remove(u'&').startsWith(QStringLiteral("Add these")))
            QTest::mouseClick(button, Qt::LeftButton);
    ASSERT_TRUE(wait_until([&] { return session.toy().pieces.size() == 2; }));
    EXPECT_EQ(session.toy().pieces[1].rounds.size(), 7U);
}

TEST(PatternReview, LinesThatWereNotReadAreShownAndTold) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    PatternReview review(session, good_text + QStringLiteral("Reihe 7: 3 fM (18)\n\nTail: same as head\n"));
    review.show();
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    EXPECT_FALSE(review.pattern().proved());
    auto* problems = review.findChild<QListWidget*>();
    EXPECT_TRUE(problems->item(0)->text().contains(QStringLiteral("Line 6, column 1: “Reihe 7: 3 fM (18)”")))
        << problems->item(0)->text().toStdString();
    auto* table = review.findChild<QTableView*>();
    const auto& model = *qobject_cast<ReviewModel*>(table->model());
    const auto text = [&](int line, int column) {
        return model.index(model.row_of_line(line), column).data().toString();
    };
    EXPECT_EQ(text(6, ReviewModel::lot), QStringLiteral("not understood"));
    EXPECT_EQ(text(8, ReviewModel::lot), QStringLiteral("rounds 1–6"));
    EXPECT_EQ(text(8, ReviewModel::understood), QStringLiteral("like “Head”"));
    bool told = false;
    for (auto* label : review.findChildren<QLabel*>())
        told = told || label->text().contains(QStringLiteral("1 line not understood"));
    EXPECT_TRUE(told);
}

TEST(PatternReview, AssemblyAndNotesComeWithThePieces) {
    DocumentSession session;
    Toy toy = toy_of({6, 12});
    toy.text.assembly = "Sew on the head.";
    session.start(toy);
    PatternReview review(session,
                         good_text + QStringLiteral("\nAssembly\n1. Sew on the fin.\n2. Weave in.\n"));
    ASSERT_TRUE(wait_until([&] { return review.is_read(); }));
    EXPECT_EQ(review.toy_with_pieces().text.assembly, "Sew on the head.\n\nSew on the fin.\n\nWeave in.");
}

TEST(PatternReview, ItsModelIsOne) {
    ReviewModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.set_pattern(read_pattern(good_text.toStdString()));
    EXPECT_GE(model.rowCount(), 5);
    EXPECT_GE(model.row_of_line(3), 0);
    EXPECT_EQ(
        model.data(model.index(model.row_of_line(4), ReviewModel::stitches), Qt::DisplayRole).toString(),
        QStringLiteral("18"));
}

TEST(PatternTextActions, WhatIsCopiedReadsBackAsTheSamePiece) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18, 18, 12}));
    for (const Terms terms : {Terms::us, Terms::uk}) {
        session.preferences().set_terms(terms);
        QWidget window;
        PatternTextActions actions(session, &window);
        actions.copy_piece();
        const ReadPattern read = read_pattern(QGuiApplication::clipboard()->text().toStdString());
        ASSERT_EQ(read.pieces.size(), 1u);
        EXPECT_EQ(read.terms, terms == Terms::uk ? roundwright::Terms::uk : roundwright::Terms::us);
        EXPECT_EQ(counts_of(read.pieces[0]), (std::vector<int>{6, 12, 18, 18, 12}));
    }
    session.preferences().set_terms(Terms::us);
}

}  // namespace
}  // namespace roundwright::app
