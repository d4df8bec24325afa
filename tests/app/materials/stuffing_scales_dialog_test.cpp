#include "app/materials/stuffing_scales_dialog.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QPushButton>

#include "app/materials/stuffing_panel.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class StuffingScales : public ::testing::Test {
  protected:
    StuffingScales() {
        session.start(toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6}));
        session.edit_piece(QStringLiteral("Close"), [](Piece& piece) { piece.end = End::drawn_closed; });
        EXPECT_TRUE(wait_for_shape(session));
    }

    /// As they follow each other in the dialog.
    enum Field { before, after };
    static void type(StuffingScalesDialog& dialog, Field field, const char* grams) {
        auto* box = dialog.findChildren<QDoubleSpinBox*>()[field];
        box->setFocus();
        QCoreApplication::processEvents();
        box->selectAll();
        QTest::keyClicks(box, QString::fromLatin1(grams));
    }
    static QPushButton* button(StuffingScalesDialog& dialog, const char* words) {
        for (auto* one : dialog.findChildren<QPushButton*>())
            if (one->text().remove(u'&') == QLatin1String(words)) return one;
        return nullptr;
    }
    [[nodiscard]] double volume_mm3() const { return session.study(0)->measures().volume_mm3; }

    DocumentSession session;
};

TEST_F(StuffingScales, NothingIsFilledInBeforeItIsWeighed) {
    StuffingScalesDialog dialog(session);
    dialog.show();
    for (auto* box : dialog.findChildren<QDoubleSpinBox*>())
        EXPECT_EQ(box->text(), QStringLiteral("not weighed"));
    EXPECT_FALSE(button(dialog, "Use this")->isEnabled());
    EXPECT_EQ(button(dialog, "Back to the guess"), nullptr);
}

// Arithmetic: the density kept gives the weight back.
TEST_F(StuffingScales, WhatIsWeighedBecomesTheMakersOwnDensity) {
    StuffingScalesDialog dialog(session);
    dialog.show();
    type(dialog, before, "18");
    type(dialog, after, "24");
    EXPECT_TRUE(dialog.answer().startsWith(QStringLiteral("6.0 g of stuffing (5.0 g to 7.0 g)")))
        << dialog.answer().toStdString();
    QTest::keyClick(&dialog, Qt::Key_Return);
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    const Making& making = session.toy().making;
    ASSERT_TRUE(making.stuffing_density_kg_per_m3);
    EXPECT_NEAR(stuffing_grams(volume_mm3(), session.piece()->area_stretch, making).likely, 6, 1e-9);
    EXPECT_EQ(session.undo_stack().count(), 2);
    StuffingScalesDialog again(session);
    again.show();
    QTest::mouseClick(button(again, "Back to the guess"), Qt::LeftButton);
    EXPECT_EQ(session.toy().making, Making{});
}

TEST_F(StuffingScales, FinerScalesLeaveLessOpen) {
    StuffingScalesDialog dialog(session);
    dialog.show();
    type(dialog, before, "18.2");
    type(dialog, after, "24.3");
    auto* scales = dialog.findChild<QComboBox*>();
    scales->setFocus();
    QTest::keyClick(scales, Qt::Key_Down);
    EXPECT_TRUE(dialog.answer().startsWith(QStringLiteral("6.1 g of stuffing (6.0 g to 6.2 g)")))
        << dialog.answer().toStdString();
}

TEST_F(StuffingScales, WithoutTheWeightBeforeTheYarnIsEstimatedAndSaidSo) {
    StuffingScalesDialog dialog(session);
    dialog.show();
    type(dialog, after, "90");
    EXPECT_TRUE(dialog.answer().contains(QStringLiteral("The weight of the yarn is an estimate")))
        << dialog.answer().toStdString();
    EXPECT_TRUE(button(dialog, "Use this")->isEnabled());
    type(dialog, after, "3");
    EXPECT_TRUE(dialog.answer().contains(QStringLiteral("The yarn alone weighs")));
    EXPECT_FALSE(button(dialog, "Use this")->isEnabled());
}

TEST_F(StuffingScales, WeightsThatTellNothingAreNotUsed) {
    StuffingScalesDialog dialog(session);
    dialog.show();
    type(dialog, before, "24");
    for (const char* grams : {"24", "20", "25"}) {
        type(dialog, after, grams);
        EXPECT_FALSE(button(dialog, "Use this")->isEnabled()) << grams;
        EXPECT_TRUE(dialog.answer().contains(QStringLiteral("too little stuffing for these scales to show")))
            << grams;
        QTest::keyClick(&dialog, Qt::Key_Return);
        EXPECT_TRUE(dialog.isVisible());
    }
    EXPECT_EQ(session.toy().making, Making{});
}

TEST_F(StuffingScales, OnlyAStuffedPieceIsWeighed) {
    StuffingPanel panel(session);
    panel.show();
    auto* weigh = panel.findChild<QPushButton*>();
    EXPECT_TRUE(weigh->isEnabled());
    session.edit_piece(QStringLiteral("None"), [](Piece& piece) { piece.area_stretch = 0; });
    EXPECT_FALSE(weigh->isEnabled());
}

}  // namespace
}  // namespace roundwright::app
