#include "app/materials/takes_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>

#include "app/kit/read_out.h"
#include "app/materials/earns_panel.h"
#include "app/materials/materials_now.h"
#include "app/materials/yarn_panel.h"
#include "core/document/json_document.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class Takes : public ::testing::Test {
  protected:
    Takes() {
        Toy toy = toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6});
        Yarn yarn;
        yarn.name = "Foam";
        yarn.metres_per_100_g = 250;
        yarn.ball_grams = 50;
        toy.yarns = {yarn};
        toy.pieces[0].make = 2;
        session.start(std::move(toy));
    }
    template <class Field>
    static Field* beside(QWidget& panel, const QString& label) {
        for (auto* one : panel.findChildren<QLabel*>()) {
            if (one->text().remove(QLatin1Char('&')) == label) return qobject_cast<Field*>(one->buddy());
        }
        return nullptr;
    }
    static QString said(QWidget& panel, const QString& name) {
        for (auto* one : panel.findChildren<ReadOut*>())
            if (one->name() == name) return one->text();
        return {};
    }
    static void type(QWidget* field, const QString& text) {
        field->setFocus();
        QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(field, text);
        QTest::keyClick(field, Qt::Key_Return);
    }
    DocumentSession session;
};

TEST_F(Takes, WhatAToyTakesIsThereAndFollowsItsRounds) {
    TakesPanel panel(session);
    panel.show();
    const QString name = QStringLiteral("What it takes");
    ASSERT_TRUE(wait_until([&] { return said(panel, name).contains(QStringLiteral("Foam: ")); }));
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("1 ball")));
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("Time to crochet: ")));
    const QString before = said(panel, name);
    session.edit_piece(QStringLiteral("longer"), [](Piece& piece) {
        piece.rounds.insert(piece.rounds.begin() + 4, 10, piece.rounds[4]);
    });
    EXPECT_TRUE(wait_until([&] { return said(panel, name) != before; }));
    session.undo_stack().undo();
    EXPECT_TRUE(wait_until([&] { return said(panel, name) == before; }));
}

TEST_F(Takes, OnePieceTakesHalfOfTwoAndABatchItsShareOfBalls) {
    TakesPanel panel(session);
    panel.show();
    ASSERT_TRUE(wait_until([&] { return materials_now(session, TakenFor::toy).has_value(); }));
    const double toy = materials_now(session, TakenFor::toy)->yarns[0].metres.likely;
    EXPECT_NEAR(materials_now(session, TakenFor::piece)->yarns[0].metres.likely, toy / 2, 1e-9);
    type(beside<QSpinBox>(panel, QStringLiteral("How many")), QStringLiteral("40"));
    EXPECT_TRUE(said(panel, QStringLiteral("What it takes")).contains(QStringLiteral(" balls")));
    EXPECT_FALSE(session.modified()) << "only a question";
}

TEST_F(Takes, TenStitchesUndoneMakeTheRangeSmaller) {
    TakesPanel panel(session);
    panel.show();
    ASSERT_TRUE(wait_until([&] { return materials_now(session, TakenFor::toy).has_value(); }));
    const auto reach = [&] {
        const Estimate metres = materials_now(session, TakenFor::toy)->yarns[0].metres;
        return metres.high / metres.low;
    };
    const double before = reach();
    type(beside<QDoubleSpinBox>(panel, QStringLiteral("Ten stitches undone")), QStringLiteral("330"));
    EXPECT_EQ(session.toy().making.yarn_per_ten_stitches_mm, 330);
    EXPECT_LT(reach(), before);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().making.yarn_per_ten_stitches_mm, std::nullopt);
}

TEST_F(Takes, APriceSaysWhatItLeaves) {
    EarnsPanel panel(session);
    panel.show();
    const QString name = QStringLiteral("What it earns");
    ASSERT_TRUE(wait_until([&] { return !said(panel, name).isEmpty(); }));
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("no price is known: Foam")));
    type(beside<QLineEdit>(panel, QStringLiteral("Currency")), QStringLiteral("kr"));
    type(beside<QDoubleSpinBox>(panel, QStringLiteral("Price")), QStringLiteral("350"));
    type(beside<QDoubleSpinBox>(panel, QStringLiteral("My hour")), QStringLiteral("180"));
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("Sold at 350.00 kr, ")))
        << said(panel, name).toStdString();
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("an hour")));
    EXPECT_TRUE(said(panel, name).contains(QStringLiteral("Taxes are in none")));
    EXPECT_EQ(session.undo_stack().count(), 3);
    const std::string written = write_document(session.toy());
    while (session.undo_stack().canUndo()) session.undo_stack().undo();
    while (session.undo_stack().canRedo()) session.undo_stack().redo();
    EXPECT_EQ(write_document(session.toy()), written);
}

TEST_F(Takes, ALabelIsReadAsItIsPrintedInOneStep) {
    YarnPanel panel(session);
    panel.show();
    auto* label = beside<QLineEdit>(panel, QStringLiteral("Read its label"));
    ASSERT_NE(label, nullptr);
    type(label, QStringLiteral("aran, 100 g = 160 m"));
    const Yarn yarn = session.toy().yarns[0];
    EXPECT_EQ(yarn.metres_per_100_g, 160);
    EXPECT_EQ(yarn.ball_grams, 100);
    EXPECT_EQ(yarn.weight, YarnWeight::medium);
    EXPECT_TRUE(label->text().isEmpty());
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(Takes, ALabelThatIsNotUnderstoodStaysAndIsTold) {
    YarnPanel panel(session);
    panel.show();
    auto* label = beside<QLineEdit>(panel, QStringLiteral("Read its label"));
    type(label, QStringLiteral("50 g = soft"));
    EXPECT_EQ(label->text(), QStringLiteral("50 g = soft"));
    EXPECT_TRUE(said(panel, QStringLiteral("The label in words")).contains(QStringLiteral("not understood")));
    EXPECT_FALSE(session.modified());
}

TEST_F(Takes, ABallsWeightAndPriceAreTheYarns) {
    YarnPanel panel(session);
    panel.show();
    type(beside<QDoubleSpinBox>(panel, QStringLiteral("Ball price")), QStringLiteral("4.5"));
    EXPECT_EQ(session.toy().yarns[0].ball_price, 4.5);
    EXPECT_EQ(session.toy().yarns[0].ball_grams, 50);
}

}  // namespace
}  // namespace roundwright::app
